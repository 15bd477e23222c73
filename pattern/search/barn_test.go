package search

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// barn is a shop's tumbler: a leaf between a swag and a ring, with words in place
// of what its tests try.
const barn = `
title = "Barn tumbler"
length = "in"
[blank]
station = [
  {height = 0, across = "2 5/8", wall = "3/8"},
  {height = 2, across = "2 7/8", wall = "3/16"},
  {height = 4, across = "3 1/8", wall = "3/32"},
]
[limits]
land = "1/32"
[[wheel]]
name = "3in mitre"
edge = "mitre"
across = 3
thick = "1/4"
angle = 90
[[wheel]]
name = "6in mitre"
edge = "mitre"
across = 6
thick = "3/8"
angle = 90
[[wheel]]
name = "wide mitre"
edge = "mitre"
across = 4
thick = "3/8"
angle = 120
[[wheel]]
name = "olive"
edge = "round"
across = 4
thick = "3/8"
radius = "1/4"
[layout]
repeats = REPEATS
[[motif]]
kind = "leaf"
wheel = "3in mitre"
depth = "LEAFDEPTH"
at = LEAFAT
width = 0.8
height = LEAFHEIGHT
fronds = 9
[[motif]]
kind = "swag"
wheel = "SWAGWHEEL"
depth = "1/32"
at = [0, 0.9]
width = 1
height = 0.16
rows = 2
[[motif]]
kind = "ring"
wheel = "6in mitre"
depth = "1/32"
at = [0, RINGAT]
width = RINGWIDTH
height = 0.05
rings = 1
lines = LINES
`

// tumbler returns the barn's text with some of its words given: as it comes from
// no words given, the leaf's stem and the ring crowd.
func tumbler(words ...string) string {
	all := append(slices.Clone(words),
		"REPEATS", "6", "LEAFDEPTH", "1/32", "LEAFAT", "[0, 0.38]", "LEAFHEIGHT", "0.7", "SWAGWHEEL", "wide mitre",
		"RINGAT", "0.02", "RINGWIDTH", "1", "LINES", "1")
	text := barn
	for i := 0; i < len(all); i += 2 {
		text = strings.ReplaceAll(text, all[i], all[i+1])
	}
	return text
}

func read(t *testing.T, text string) *job.Job {
	t.Helper()
	j, err := job.Read("barn.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// rewritten writes changes into a job's file, and reads it.
func rewritten(t *testing.T, j *job.Job, text string, changes []job.Change) *job.Job {
	t.Helper()
	edits := make([]job.Edit, len(changes))
	for i, c := range changes {
		edits[i] = job.Edit{Motif: c.Motif, Key: c.Key, Value: c.Says(j.With(changes...)), Note: "a change"}
	}
	out, err := job.Rewrite([]byte(text), edits)
	if err != nil {
		t.Fatal(err)
	}
	return read(t, string(out))
}

// TestBarnCures holds the cures of the tumbler, each written into its file, to
// what a whole check then finds.
func TestBarnCures(t *testing.T) {
	for _, c := range []struct {
		name  string
		text  string
		cures []string // of its findings, in their order
	}{
		{"a stem and a ring", tumbler(), []string{"motif 3 (ring): at = [0, 0.01]"}},
		{"marks too short", tumbler("LEAFHEIGHT", "0.6"), []string{
			`motif 1 (leaf): crown = 0.235, or motif 1 (leaf): width = 0.88, or motif 1 (leaf): depth = "1/64 in", or limits: reach = 0.44 for 0.35 to 0.35 mm`,
		}},
		// Raising the band would leave fronds too short.
		{"a ring in the margin", tumbler("RINGAT", "0"), []string{"motif 3 (ring): at = [0, 0.01]"}},
		// The ring's two lines crowd, and so they do across the repeat's edge: once.
		{"too much at once", tumbler("LEAFDEPTH", "3/64", "SWAGWHEEL", "6in mitre", "LINES", "2"), []string{
			"motif 1 (leaf): at = [0, 0.4]", "motif 3 (ring): lines = 1",
			`motif 2 (swag): sag = 0.1, or motif 2 (swag): wheel = "wide mitre", or a wheel up to 2 47/64 in`,
			`motif 1 (leaf): depth = "1/32 in", or limits: reach = 0.33 for 0.40 to 0.44 mm`,
		}},
		// The ring is not cut up to let the stem through, and what runs out of the
		// band into the margin is told once. Its shortest marks are too short by less than
		// a hand holds.
		{"a leaf too low", tumbler("LEAFAT", `["1/4", "1"]`), []string{
			`motif 1 (leaf): at = ["1/4 in", "1 21/64 in"]`, `motif 1 (leaf): at = ["1/4 in", "1 3/16 in"]`,
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := read(t, c.text)
			p := planned(t, j)
			var cures []string
			for _, g := range mergedGroups(p) {
				cure := g.Worst().Cure
				cures = append(cures, said(j, cure))
				after := checked(t, rewritten(t, j, c.text, cure.Changes))
				if found(after, g) {
					t.Errorf("%v is not cured by %q", g.Kind, said(j, cure))
				}
				if more := brought(p, after, g); len(more) > 0 {
					t.Errorf("%q brings %v on %v", said(j, cure), more[0].Kind, more[0].Motifs)
				}
			}
			if !slices.Equal(cures, c.cures) {
				t.Errorf("the cures are\n%s\nwanted\n%s", strings.Join(cures, "\n"), strings.Join(c.cures, "\n"))
			}
		})
	}
}

// TestBarnFits holds what fit offers first for the tumbler to what takes least from its
// look: all six repeats, and a little of each motif.
func TestBarnFits(t *testing.T) {
	for _, c := range []struct {
		name string
		text string
		want string
	}{
		{"a stem and a ring", tumbler(), "motif 3 (ring): at = [0, 0.01], now [0, 0.02]"},
		{"marks too short", tumbler("LEAFHEIGHT", "0.6"), "motif 1 (leaf): crown = 0.235, now 0.22"},
		{"too much at once", tumbler("LEAFDEPTH", "3/64", "SWAGWHEEL", "6in mitre", "LINES", "2"),
			`motif 1 (leaf): depth = "1/32 in", now "3/64 in"; motif 2 (swag): sag = 0.1, now 0.14; ` +
				"motif 3 (ring): lines = 1, now 2; motif 3 (ring): at = [0, 0.01], now [0, 0.02]"},
		{"a ring with gaps", tumbler("RINGWIDTH", "0.98", "LINES", "2", "LEAFAT", "[0, 0.42]"),
			"motif 3 (ring): width = 1, now 0.98; motif 3 (ring): lines = 1, now 2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := read(t, c.text)
			f, err := NewFit(t.Context(), j)
			if err != nil || len(f.Offers) == 0 {
				t.Fatalf("%v: nothing offered", err)
			}
			if got := strings.Join(offered(f.Job, f.Offers[0]), "; "); got != c.want {
				t.Errorf("offered first is %s", got)
			}
			for _, o := range f.Offers {
				if found := planned(t, rewritten(t, j, c.text, o.Changes)).Findings; len(found) > 0 {
					t.Errorf("with %q a check finds %v", offered(f.Job, o), found[0].Kind)
				}
				for i, m := range o.Job.Motifs {
					if was := j.Motifs[i].Width.Value; was == 1 && m.Width.Value < was {
						t.Errorf("%q: what runs on doesn't any more", offered(f.Job, o))
					}
				}
			}
		})
	}
}

// A wheel that would do is told only if a job may have it: with 60 repeats the
// fronds are so small that it would be an eighth of an inch across.
func TestWheelThatNoJobTakes(t *testing.T) {
	p := planned(t, read(t, tumbler("REPEATS", "60", "LEAFAT", "[0, 0.41]")))
	tight := 0
	for _, f := range p.Findings {
		if f.Kind != pattern.Tight {
			continue
		}
		tight++
		c := &p.Cuts[(f.Cuts[0]-1)%len(p.Cuts)]
		fits := 2*c.WheelFor(p.Job.Rack[c.Wheel], pattern.MaxSweep) >= 5 // mm
		if len(f.Cure.Or) > 0 && !fits {
			t.Errorf("cut %d: %q", c.ID, said(p.Job, f.Cure))
		}
	}
	if tight == 0 {
		t.Error("nothing is tight")
	}
}

// A motif that lies on its own next copy is told so once, however many of its
// cuts touch those of the next and however many only come near.
func TestOverlapIsToldOnce(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", nil, size(1.4, 0.8), depth(0.2), with(fine)))
	j.Limits.Clear, j.Limits.Reach = 0, 0
	touch, near := 0, 0
	for _, f := range laid(t, j).Findings {
		if f.Kind != pattern.Off || len(f.Cuts) != 2 {
			t.Errorf("found %+v", f)
		}
		if f.Measured == 0 {
			touch++
		} else {
			near++
		}
	}
	if touch == 0 || near == 0 {
		t.Errorf("%d pairs touch, %d are near: this leaf proves little", touch, near)
	}
}

// TestBarrels goes from barrels that paper bears to two bellies one above the
// other, on which gores don't lie flat.
func TestBarrels(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"arch": 0}, size(0.6, 0.96), depth(0.3), with(fine))
	for _, c := range []struct {
		radii   []float64
		repeats int
		paper   bool // found uneven
	}{
		{[]float64{38, 38.1, 38.2, 38.1, 38}, 5, false},
		{[]float64{36, 37.5, 38, 37.5, 36}, 5, false},
		{[]float64{29, 36, 38, 36, 29}, 5, false},
		{[]float64{8, 30.5, 38, 30.5, 8}, 5, false},
		{[]float64{30, 60, 30, 60, 30}, 12, true},
	} {
		name := fmt.Sprint(c.radii)
		j := jobOn(blankOf(t, c.radii...), c.repeats, leaf)
		j.Layout.Band = &job.Band{Foot: 6.5, Top: 90}
		j.Limits.Leave, j.Limits.Clear, j.Limits.Reach = 1, 0, 0
		p := planned(t, j)
		paper := false
		for _, f := range p.Findings {
			if f.Kind != pattern.Uneven {
				continue
			}
			paper = true
			if len(f.Cuts) > 0 || f.Measured <= f.Wanted {
				t.Errorf("%s: %+v", name, f)
			}
		}
		if paper != c.paper {
			t.Errorf("%s: paper %v", name, paper)
		}
		for _, g := range mergedGroups(p) {
			cure := g.Worst().Cure
			t.Logf("%s: %v: %s", name, g.Motifs, said(j, cure))
			if cure.Changes == nil {
				if len(cure.Or) == 0 && cure.Tried != pattern.TriedAll { // or a wheel that is not on the rack
					t.Errorf("%s: %+v", name, cure)
				}
				continue
			}
			after := checked(t, changed(j, cure))
			if found(after, g) || len(brought(p, after, g)) > 0 != (len(cure.Brings) > 0) {
				t.Errorf("%s: %q doesn't", name, said(j, cure))
			}
		}
		wheels, err := Wheels(t.Context(), j)
		if err != nil || wheels[fine].Clear != (len(p.Findings) == 0) {
			t.Errorf("%s: %v, %+v", name, err, wheels[fine])
		}
		f, err := NewFit(t.Context(), j)
		if err != nil || f.Clear != (len(p.Findings) == 0) {
			t.Errorf("%s: fit says clear: %v", name, f.Clear)
		}
		t.Logf("%s: %d offers", name, len(f.Offers))
	}
}
