package search

import (
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// curesAll reports where the cure of a job's only finding reads otherwise than it
// should, or leaves anything to be found.
func curesAll(t *testing.T, j *job.Job, kind pattern.Kind, text string) {
	t.Helper()
	p := planned(t, j)
	if len(p.Findings) != 1 || p.Findings[0].Kind != kind {
		t.Fatalf("found %+v, and not one %v", p.Findings, kind)
	}
	cure := p.Findings[0].Cure
	if got := said(j, cure); !strings.HasPrefix(got, text) {
		t.Errorf("the cure is %q, and not %q", got, text)
	}
	if found := planned(t, changed(j, cure)).Findings; len(found) > 0 {
		t.Errorf("cured by %q, it still finds %+v", said(j, cure), found)
	}
}

// The shoulders of a mitre 6 mm thick are buried past 3 mm under a level cut, past
// 3.1124 mm under an upright one: package pattern's TestBuried works it out.
func TestBuriedCures(t *testing.T) {
	thick := blank(t, glass.Station{Height: 0, Radius: 40, Wall: 8}, glass.Station{Height: 100, Radius: 40, Wall: 8})
	for _, c := range []struct {
		turn, depth float64
		cure        string
	}{
		{90, 3.5, "motif 1 (fan): depth = \"3.0 mm\""},
		{90, 3.05, "motif 1 (fan): depth = \"3.0 mm\""},
		{0, 3.5, "motif 1 (fan): depth = \"3.1 mm\""},
		{0, 3.16, "motif 1 (fan): depth = \"3.1 mm\""},
	} {
		j := jobOn(thick, 4, bar(t, 0, 30, 40, turn(c.turn), depth(c.depth), with(fine)))
		curesAll(t, j, pattern.Buried, c.cure)
	}
}

// An arc of radius 30 mm is too tight for a wheel of radius 50 mm. That of the other,
// of 20 mm, rolls off at 1/20 + 0.02402 /mm: its contact stands off by 0.225 mm, where
// 0.25 mm is the most. Package pattern's TestTight works it out.
func TestTightCures(t *testing.T) {
	swag := motif(t, "swag", motifs.Values{"rows": 1, "sag": 0.05})
	swag.Width, swag.Height = mm(30/2.525), mm(20)
	j := jobOn(straight(t), 4, swag)
	j.Rack = j.Rack[:2]
	j.Rack[fine].Radius = 20
	curesAll(t, j, pattern.Tight, `motif 1 (swag): sag = 0.03, or motif 1 (swag): wheel = "fine", or a wheel up to `)
}

// A wheel with the edge that the cut has now is offered before one with another edge, which
// would look different, however little the other costs.
func TestSameEdgeIsOfferedFirst(t *testing.T) {
	swag := motif(t, "swag", motifs.Values{"rows": 1, "sag": 0.05})
	swag.Width, swag.Height = mm(30/2.525), mm(20)
	j := jobOn(straight(t), 4, swag)
	round := groove.Wheel{Name: "thumb", Edge: groove.Round, Radius: 20, Thick: 12, Convex: 6}
	fine := j.Rack[fine]
	fine.Radius = 20 // both would do, and the round edge costs less
	j.Rack = []groove.Wheel{j.Rack[0], round, fine}
	words := said(j, planned(t, j).Findings[0].Cure)
	same, other := strings.Index(words, `wheel = "fine"`), strings.Index(words, `wheel = "thumb"`)
	if same < 0 || other >= 0 && other < same {
		t.Errorf("the cure is %s", words)
	}
}

// The wheel that the whole motif could have is told once, beside that of the part alone.
func TestWheelIsToldOnce(t *testing.T) {
	const text = `
length = "mm"
[blank]
floor = 9
station = [{height = 0, across = 84, wall = 8}, {height = 95, across = 84, wall = 6}]
[[wheel]]
name = "wide"
edge = "mitre"
across = 40
thick = 4
angle = 90
[[wheel]]
name = "thumb"
edge = "round"
across = 50
thick = 10
radius = 8
[layout]
repeats = 4
[[motif]]
kind = "drawing"
file = "two.svg"
wheel = "wide"
depth = 0.5
height = "60 mm"
[motif.parts.stem]
wheel = "wide"
`
	const drawn = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 80" fill="none" stroke="black">
<path id="stem" d="M20 78V6"/><path id="blade" d="M22 66C27 62 33 56 36 46"/></svg>`
	j, err := job.ReadWith("told.toml", []byte(text), func(string) ([]byte, error) { return []byte(drawn), nil })
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, f := range planned(t, j).Findings {
		if f.Kind != pattern.Tight {
			continue
		}
		told++
		words := said(j, f.Cure)
		if strings.Count(words, `motif 1 (drawing): wheel = "thumb"`) != 1 {
			t.Errorf("the cure is %s", words)
		}
	}
	if told == 0 {
		t.Error("nothing is tight")
	}
}

// A cure that is offered for one blank of a set clears it as one of the set: 2.4 mm
// of wall at 80 mm, for 1 mm and 1.6 mm.
func TestCureOfTheThinOne(t *testing.T) {
	j := three(t, motif(t, "fan", motifs.Values{"rays": 3}, depth(1), size(0.5, 1)))
	j.Layout.Band = &job.Band{Foot: 10, Top: 80}
	j.Blanks[0] = named(t, "thin", 100, 40, 4, 2)
	findings := laidAll(t, j)[0].Findings
	if len(findings) == 0 {
		t.Fatal("nothing found")
	}
	for _, f := range findings {
		if f.Cure.Changes == nil {
			t.Fatalf("no cure for %v", f.Kind)
		}
		for _, p := range checkedOn(t, j.With(f.Cure.Changes...)) {
			for _, g := range p.Findings {
				if g.Kind == f.Kind {
					t.Errorf("%s leaves %v on %s", said(j, f.Cure), g.Kind, p.Blank.Name)
				}
			}
		}
	}
}
