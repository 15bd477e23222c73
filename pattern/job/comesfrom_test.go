package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// What a job has from where, and what of that doesn't hold.
func TestIncludedFrom(t *testing.T) {
	j := readWith(t, including+`[limits]
land = "1/32"
[[wheel]]
name = "mitre"
edge = "mitre"
across = 3
thick = "1/4"
angle = 90
[[motif]]
name = "fern"
depth = "1/16"
[motif.parts.frond]
depth = "1/32"
`+ownMotif)
	want := `[{shop.toml [olive] [] [shop.rate shop.order limits.polish layout.repeats] [limits.land wheel "mitre"]} {fern.toml [] [1 2] [] [motif[1].depth motif[1].parts.frond.depth]}]`
	if got := fmt.Sprint(j.Included()); got != want {
		t.Errorf("%s\nwanted %s", got, want)
	}
	if got := j.Needs(); !slices.Equal(got, []string{"shop.toml", "fern.toml"}) {
		t.Errorf("needs %q", got)
	}
	// A file that changes the motif of one before it.
	j = readWith(t, strings.Replace(including, `"fern.toml"`, `"fern.toml", "more.toml"`, 1)+ownMotif, "more.toml", "[[motif]]\nname = \"fern\"\nfronds = 3\n")
	want = `{fern.toml [] [1 2] [] [motif[1].fronds]} {more.toml [] [] [motif[1].fronds] []}]`
	if got := fmt.Sprint(j.Included()); !strings.HasSuffix(got, want) {
		t.Errorf("%s\nwanted %s", got, want)
	}
	alone, err := Read("x.toml", base().bytes())
	if err != nil || alone.Included() != nil || alone.Needs() != nil {
		t.Errorf("%v: %v, %v", err, alone.Included(), alone.Needs())
	}
}

// A value is changed in the file where it stands, if that is asked.
func TestRewriteIncluded(t *testing.T) {
	text := []byte(including + "[limits]\nfoot = \"1/4\"\n" + ownMotif)
	j := readWith(t, string(text), "fern.toml", "\ufeff"+fernFile)
	out, changed, err := j.RewriteIncluded(text, []Edit{
		{Motif: 0, Key: "fronds", Value: "5", Note: "fit: fronds was 9"}, {Motif: 1, Key: "depth", Value: `"1/64 in"`},
		{Motif: 2, Key: "depth", Value: `"1/64"`}, {Motif: OfLimits, Key: "reach", Value: "0.4"},
		{Motif: 0, Part: "frond", Key: "depth", Value: `"0.3 mm"`}, {Motif: 1, Part: "ray", Key: "wheel", Value: `"mitre"`},
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(changed) != 1 || changed[0].Name != "fern.toml" {
		t.Fatalf("changed: %+v", changed)
	}
	for _, line := range []string{"# fit: fronds was 9\nfronds = 5\n", "depth = \"0.3 mm\"\n", "depth = \"1/64 in\"\ninside = 1\n[motif.parts.ray]\nwheel = \"mitre\"\n", "\ufeff# a fern"} {
		if !strings.Contains(string(changed[0].Data), line) {
			t.Errorf("no %q in\n%s", line, changed[0].Data)
		}
	}
	if !strings.Contains(string(out), "foot = \"1/4\"\nreach = 0.4\n") || strings.Contains(string(out), "fern\"\n") {
		t.Errorf("the job is\n%s", out)
	}
	again, err := j.ReadAgain("x.toml", out, changed...)
	if err != nil {
		t.Fatal(err)
	}
	if again.Motifs[0].Values["fronds"] != 5 || again.Motifs[1].WheelOf("ray") != 0 || again.Motifs[2].Depth > 0.5 || again.Limits.Reach != 0.4 {
		t.Errorf("%+v", again)
	}
	// The rate is the shop's, which stands in shop.toml alone; what is the same again is not written.
	out, changed, err = j.RewriteIncluded(text, []Edit{{Motif: OfShop, Key: "finish", Value: `"felt"`}, {Motif: 0, Key: "fronds", Value: "9"}})
	if err != nil || string(out) != string(text) || len(changed) != 1 || changed[0].Name != "shop.toml" || !strings.Contains(string(changed[0].Data), "order = [\"olive\"]\nfinish = \"felt\"\n") {
		t.Errorf("%v, %+v", err, changed)
	}
}
