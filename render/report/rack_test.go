package report

import (
	"strings"
	"testing"

	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// A wheel on which a design doesn't clear, and one on which it can't be laid out, each say
// why. An edge 2 mm thick is 1 mm high, and the glass falls away from its shoulders by
// 1²/80 mm: 1.01 mm is the most. A wheel 5 mm across goes no deeper than its middle.
func TestRackSaysWhy(t *testing.T) {
	wheels := func(across, name string) string {
		return "[[wheel]]\nname = \"" + name + "\"\nedge = \"mitre\"\nacross = " + across + "\nthick = 2\nangle = 90\n"
	}
	j, err := job.Read("rack.toml", []byte("title = \"Bars\"\nlength = \"mm\"\n"+
		"blank.station = [{height=0, across=80, wall=9}, {height=100, across=80, wall=9}]\n"+
		wheels("100", "large")+wheels("5", "tiny")+
		"[layout]\nrepeats = 4\n[[motif]]\nkind = \"fan\"\nwheel = \"large\"\ndepth = 3\nrays = 1\nhub = 0\n"))
	if err != nil {
		t.Fatal(err)
	}
	found, err := search.Wheels(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	var b, out strings.Builder
	if err := Rack(&b, j, found); err != nil {
		t.Fatal(err)
	}
	if err := RackJSON(&out, j, found); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"large: buried, a cut 3.00 mm deep buries the wheel's shoulders; 1.01 mm is the most",
		`tiny: rack.toml:21: motif[1].depth: read 3; accepted: a depth below 2.5 mm`,
	} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q:\n%s", want, b.String())
		}
	}
	if !strings.Contains(out.String(), `"kind": "buried"`) {
		t.Errorf("the JSON:\n%s", out.String())
	}
}
