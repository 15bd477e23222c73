package report

import (
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// A motif that lies on its own next copy is told so in words, with how far, and where that
// was measured: a level bar 64 mm long on a pitch of 62.83 mm.
func TestOverlapping(t *testing.T) {
	j, err := job.Read("bar.toml", []byte(`title = "Bars"
length = "mm"
blank.station = [{height=0, across=80, wall=7}, {height=100, across=80, wall=7}]
[[wheel]]
name = "m"
edge = "mitre"
across = 100
thick = 12
angle = 90
[layout]
repeats = 4
band = [20, 80]
[[motif]]
kind = "fan"
wheel = "m"
depth = 0.5
width = "1 mm"
height = "64 mm"
turn = 90
rays = 1
hub = 0
`))
	if err != nil {
		t.Fatal(err)
	}
	plans, err := pattern.Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := Check(&b, plans[0]); err != nil {
		t.Fatal(err)
	}
	want := "its own copies overlap: one reaches 1.17 mm into the next, measured round the glass 50.0 mm above the table"
	if said := strings.Join(strings.Fields(b.String()), " "); !strings.Contains(said, want) || strings.Contains(said, "land of") {
		t.Errorf("no %q:\n%s", want, b.String())
	}
}
