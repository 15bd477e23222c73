package pattern

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// withBase returns a job with a base of 70 mm across in so many sectors, under a floor of 9 mm
// on a straight glass of 80 mm. On its side is one upright bar in each of three repeats.
func withBase(t testing.TB, sectors int, band *job.Band, on ...job.Motif) *job.Job {
	t.Helper()
	b, err := glass.NewBlank("trial", 9, []glass.Station{{Height: 0, Radius: 40, Wall: 7}, {Height: 100, Radius: 40, Wall: 3}})
	if err != nil {
		t.Fatal(err)
	}
	b.BaseAcross = 70
	j := jobOn(b, 3, bar(t, 0, 20, 30))
	j.Limits.Edge = 3
	j.Rack[fine].Radius = 3 // small, so that a cut soon comes to its depth
	j.Base = &job.Layout{Repeats: sectors, Band: band}
	for _, m := range on {
		m.Face = job.Base
		j.Motifs = append(j.Motifs, m)
	}
	return j
}

// ray is a cut straight out from one distance from the middle to another, in the middle of its
// sector. The band begins at the given foot.
func ray(t testing.TB, foot, from, to float64, change ...func(*job.Motif)) job.Motif {
	return bar(t, 0, (from+to)/2-foot, to-from, change...)
}

func inMiddle(m *job.Motif) { m.Middle = true }

// Sixteen rays, 2.4 mm wide with square ends: 3 mm from the middle they crowd, 14 mm out they
// don't. Outlines are true to 0.003 mm. By hand the land between the nearer corners of two is
// 2 r sin(π/16) − w cos(π/16).
func TestSixteenRays(t *testing.T) {
	const wide = 2.4
	for _, c := range []struct {
		from    float64
		crowded bool
	}{{3, true}, {5, true}, {7, true}, {8.5, false}, {14, false}} {
		j := withBase(t, 16, &job.Band{Foot: 2, Top: 31}, ray(t, 2, c.from, 30, with(panel)))
		j.Rack[panel].Thick = wide
		p := planned(t, j).Base
		byHand := 2*c.from*math.Sin(math.Pi/16) - wide*math.Cos(math.Pi/16)
		if got := p.MinLand(10); math.Abs(got-max(byHand, 0)) > 3e-3 {
			t.Errorf("%g mm from the middle: a land of %.4f, by hand %.4f", c.from, got, byHand)
		}
		found := slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == Crowded || f.Kind == Off })
		if found != c.crowded || found != (byHand < j.Limits.Land) {
			t.Errorf("%g mm from the middle: %v", c.from, p.Findings)
		}
		if p.Repeats != 16 || p.Totals().Cuts != 16 || p.Face != job.Base {
			t.Errorf("%d repeats, %d cuts", p.Repeats, p.Totals().Cuts)
		}
	}
}

// A mitre of 90° that cuts 1.2 mm deep is 2.4 mm wide once it has come down: the same.
func TestSixteenMitreRays(t *testing.T) {
	for from, crowded := range map[float64]bool{3: true, 14: false} {
		j := withBase(t, 16, &job.Band{Foot: 2, Top: 31}, ray(t, 2, from, 30, depth(1.2), with(fine)))
		p := planned(t, j).Base
		if !near(p.Cuts[0].Width, 2.4, 1e-6) {
			t.Errorf("%g wide", p.Cuts[0].Width)
		}
		if got := slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == Crowded || f.Kind == Off }); got != crowded {
			t.Errorf("%g mm from the middle: %v", from, p.Findings)
		}
	}
}

// Chords for equal parts of a circle of radius 1, from The Engineering ToolBox, "Chord lengths
// when dividing a circle in equal segments".
func TestBaseChords(t *testing.T) {
	for parts, chord := range map[int]float64{4: 1.4142, 6: 1, 8: 0.7654, 12: 0.5176, 16: 0.3902, 24: 0.2611} {
		j := withBase(t, parts, &job.Band{Foot: 12, Top: 31}, ray(t, 12, 20, 30))
		p := planned(t, j).Base
		for i, radius := range []float64{35, 31, 12} {
			c := p.Chords[i]
			if c.Parts != parts || c.Radius != radius || math.Abs(c.Chord-radius*chord) > radius*0.5e-4 {
				t.Errorf("%d parts: %+v, by the table %g", parts, c, radius*chord)
			}
		}
	}
}

// Glass left is the floor less the depth, and where the punty mark was ground out less its
// hollow too. The floor's corner and the wall are further away.
func TestBaseLeft(t *testing.T) {
	inner, outer := ray(t, 2, 3, 18, depth(1), with(fine)), ray(t, 2, 20, 31, depth(1.5), with(fine))
	outer.X = of(0.5)
	for _, c := range []struct {
		hollow       glass.Hollow
		inner, outer float64
	}{
		{glass.Hollow{}, 9 - 1, 9 - 1.5},
		{glass.Hollow{Across: 20, Depth: 2}, 9 - 1 - 2, 9 - 1.5},     // under the inner ray's root only
		{glass.Hollow{Across: 48, Depth: 2}, 9 - 1 - 2, 9 - 1.5 - 2}, // the outer one begins in it
	} {
		j := withBase(t, 4, &job.Band{Foot: 2, Top: 32}, inner, outer)
		j.Blanks[0].Hollow = c.hollow
		p := planned(t, j).Base
		for _, cut := range p.Cuts {
			want := c.inner
			if cut.Motif == 2 {
				want = c.outer
			}
			if !near(cut.Left, want, 1e-3) {
				t.Errorf("%+v: motif %d leaves %.4f, by hand %.4f", c.hollow, cut.Motif, cut.Left, want)
			}
		}
	}
	j := withBase(t, 4, nil, ray(t, 15, 8, 25, depth(2), with(fine)))
	j.Blanks[0].Hollow = glass.Hollow{Across: 30, Depth: 6}
	p := planned(t, j).Base
	if i := slices.IndexFunc(p.Findings, func(f Finding) bool { return f.Kind == Thin }); i < 0 || !near(p.Findings[i].Measured, 1, 1e-3) || p.Findings[i].Height > 15 {
		t.Errorf("1 mm is left: %+v", p.Findings)
	}
}

// Without a band the design has all that can be cut: from the hollow's edge, or a sixteenth of
// an inch from the middle, to the margin at the edge.
func TestBaseBand(t *testing.T) {
	j := withBase(t, 4, nil, motif(t, "star", nil))
	if band := planned(t, j).Base.Band; band != (job.Band{Foot: 1.5875, Top: 32}) {
		t.Errorf("%+v", band)
	}
	j.Blanks[0].Hollow = glass.Hollow{Across: 16, Depth: 1}
	if band := planned(t, j).Base.Band; band != (job.Band{Foot: 8, Top: 32}) {
		t.Errorf("%+v", band)
	}
	j.Limits.Edge = 30
	if _, err := New(context.Background(), j, j.Blanks[0]); err == nil || !strings.Contains(err.Error(), "base") {
		t.Errorf("%v", err)
	}
}

// A star over the middle stands there once: its rays lie as they are drawn, and each is as far
// from the middle as its hub. They join there, and with a land of 0 nothing is found.
func TestStarOverMiddle(t *testing.T) {
	star := motif(t, "star", motifs.Values{"points": 8, "hub": 0.2, "double": 0}, inMiddle, depth(0.8), with(fine))
	j := withBase(t, 8, &job.Band{Foot: 4, Top: 30}, star)
	p := planned(t, j).Base
	if len(p.Findings) > 0 || p.Totals().Cuts != 8 {
		t.Errorf("%d cuts: %+v", p.Totals().Cuts, p.Findings)
	}
	for i, c := range p.All() {
		out := math.Hypot(c.Ends()[1].X, c.Ends()[1].Y)
		if root := math.Hypot(c.Ends()[0].X, c.Ends()[0].Y); !near(root, 6, 1e-9) || !near(out, 30, 1e-9) || !near(c.Length, 24, 1e-6) {
			t.Errorf("ray %d from %g to %g", i+1, root, out)
		}
		if off := math.Remainder(math.Atan2(c.Ends()[1].X, c.Ends()[1].Y)*4/math.Pi, 1); !near(off, 0, 1e-9) {
			t.Errorf("ray %d leads to %v", i+1, c.Ends()[1])
		}
		if c.Repeat != 1 || len(c.Joins) != 7 {
			t.Errorf("ray %d is in repeat %d, joins %v", i+1, c.Repeat, c.Joins)
		}
	}
	// One that reaches over the margin at the edge is found there.
	j.Motifs[1].Width, j.Motifs[1].Height = mm(66), mm(66)
	if p = planned(t, j).Base; !slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == AtEdge && near(f.Measured, 33, 0.1) && f.Wanted == 32 }) {
		t.Errorf("%+v", p.Findings)
	}
}

// A ring becomes a circle, cut in one go, and so it does in a single sector.
func TestBaseRing(t *testing.T) {
	for _, sectors := range []int{1, 2, 3, 8} {
		ring := motif(t, "ring", motifs.Values{"rings": 1, "lines": 1}, with(fine))
		p := planned(t, withBase(t, sectors, &job.Band{Foot: 10, Top: 30}, ring)).Base
		chains := p.Chains()
		if len(p.Findings) > 0 || len(chains) != 1 || !chains[0].Closed || len(chains[0].Cuts) != sectors {
			t.Errorf("%d sectors: %+v, found %+v", sectors, chains, p.Findings)
			continue
		}
		for _, c := range p.All() {
			for _, s := range c.Samples {
				if !near(s.Height, 20, 2e-3) { // straight pieces of a circle
					t.Errorf("%d sectors: the ring is %g from the middle", sectors, s.Height)
				}
			}
		}
		if !near(p.Totals().Length, 40*math.Pi, 0.01) {
			t.Errorf("%d sectors: %g long", sectors, p.Totals().Length)
		}
	}
}

// The base's cuts are numbered on from those of the side, and the side is as it is without.
func TestBaseNumbers(t *testing.T) {
	j := withBase(t, 5, nil, motif(t, "star", motifs.Values{"points": 3}, size(0.5, 0.4)))
	with := planned(t, j)
	bare := j.Clone()
	bare.Base, bare.Motifs = nil, bare.Motifs[:1]
	alone := planned(t, bare)
	if alone.Base != nil || len(alone.Cuts) != len(with.Cuts) || alone.Band != with.Band || alone.Volume() != with.Volume() {
		t.Error("the side differs")
	}
	for i, c := range with.Base.All() {
		if c.ID != with.Totals().Cuts+i+1 || c.Motif != 1 || with.Base.CutOf(c.ID).Part != c.Part {
			t.Errorf("cut %d is number %d, of motif %d", i, c.ID, c.Motif+1)
		}
		for _, id := range c.Joins {
			if id <= with.Totals().Cuts || id > with.Totals().Cuts+with.Base.Totals().Cuts {
				t.Errorf("%d joins %d", c.ID, id)
			}
		}
	}
	all := with.Base.Sequence()
	slices.Sort(all)
	for i, id := range all {
		if id != with.Totals().Cuts+i+1 {
			t.Fatalf("the order is %v", all)
		}
	}
}

// Every pair of cuts is measured once, wherever on the disc: the findings are those of a walk
// over all pairs of all cuts.
func TestBasePairs(t *testing.T) {
	for _, sectors := range []int{1, 2, 3, 4, 5, 6, 7, 12} {
		star := motif(t, "star", motifs.Values{"points": 3, "hub": 0.3}, size(0.9, 0.7), depth(0.7), with(fine), trueShape)
		p := planned(t, withBase(t, sectors, &job.Band{Foot: 3, Top: 31}, star)).Base
		all := p.All()
		least := math.Inf(1)
		for i := range all {
			for k := range i {
				if slices.Contains(all[i].Joins, all[k].ID) {
					continue
				}
				near, _, _ := distance(all[i].Groove, all[k].Groove, 10)
				least = min(least, near)
			}
		}
		if got := p.MinLand(10); !near(got, min(least, 10), 1e-9) {
			t.Errorf("%d sectors: a land of %g, over all pairs %g", sectors, got, least)
		}
	}
}

// Where cuts cross over the middle the glass counts once.
func TestBaseGround(t *testing.T) {
	cross := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, inMiddle, depth(1.5), with(mitre))
	other := cross
	other.Turn = math.Pi / 2
	p := planned(t, withBase(t, 4, &job.Band{Foot: 3, Top: 30}, cross, other)).Base
	sum := 0.0
	for _, c := range p.Cuts {
		sum += c.Volume
	}
	// Both are deeper than z within |x| < d − z and |y| < d − z: a square of side 2(d − z),
	// ∫ 4 (d − z)² dz = 4 d³/3.
	shared := 4 * 1.5 * 1.5 * 1.5 / 3
	if got := sum - p.Volume(); !near(got, shared, 0.02*shared) {
		t.Errorf("%.4f mm³ shared, by hand %.4f", got, shared)
	}
	// Sixteen rays by sectors come to the same as one star of them over the middle.
	rays := planned(t, withBase(t, 16, &job.Band{Foot: 1, Top: 29}, ray(t, 1, 1.45, 29, depth(1.2), with(fine)))).Base
	star := motif(t, "star", motifs.Values{"points": 16, "double": 0, "hub": 0.05}, inMiddle, depth(1.2), with(fine))
	whole := planned(t, withBase(t, 1, &job.Band{Foot: 1, Top: 29}, star)).Base
	if a, b := rays.Volume(), whole.Volume(); !near(a, b, 0.002*b) || a > 0.99*16*rays.Cuts[0].Volume {
		t.Errorf("%g mm³ by sectors, %g as a star, %g without what they share", a, b, 16*rays.Cuts[0].Volume)
	}
}

// An Editor keeps the base too, and what is kept is what is laid out anew.
func TestBaseEditor(t *testing.T) {
	j := withBase(t, 6, nil, motif(t, "leaf", nil, size(0.7, 0.9), with(fine)), motif(t, "star", nil, inMiddle, size(0.2, 0.2), with(fine)))
	e := new(Editor)
	for _, change := range []func(*job.Job){
		func(*job.Job) {}, func(j *job.Job) { j.Base.Repeats = 7 }, func(j *job.Job) { j.Limits.Edge = 5 },
		func(j *job.Job) { j.Motifs[1].Values["fronds"] = 3 }, func(j *job.Job) { j.Motifs[0].Depth = 0.4 },
		func(j *job.Job) { j.Base = nil; j.Motifs = j.Motifs[:1] },
	} {
		j = j.Clone()
		change(j)
		plans, err := e.Lay(context.Background(), j)
		if err != nil {
			t.Fatal(err)
		}
		again := planned(t, j)
		if (plans[0].Base == nil) != (again.Base == nil) {
			t.Fatal("a base is lost")
		}
		if again.Base == nil {
			continue
		}
		a, b := plans[0].Base, again.Base
		if len(a.Cuts) != len(b.Cuts) || len(a.Findings) != len(b.Findings) || a.Band != b.Band || len(a.Chords) != len(b.Chords) {
			t.Errorf("%d cuts, %d findings; anew %d, %d", len(a.Cuts), len(a.Findings), len(b.Cuts), len(b.Findings))
			continue
		}
		for i := range a.Cuts {
			if a.Cuts[i].ID != b.Cuts[i].ID || a.Cuts[i].Width != b.Cuts[i].Width || !slices.Equal(a.Cuts[i].Joins, b.Cuts[i].Joins) {
				t.Errorf("cut %d differs", a.Cuts[i].ID)
			}
		}
	}
}
