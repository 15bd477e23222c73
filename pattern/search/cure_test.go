package search

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// TestCrowdedLeaf crowds the fronds of a leaf, and cures it.
//
// The fronds are level and cut 1 mm deep by a right-angled mitre, so that each
// is 2 mm wide where it is deep. The roots of n pairs are 60 mm × 0.702 × 2/(2n - 1)
// apart: 2.905 mm for 15 pairs, 2.717 for 16, where the land is to be 0.8 mm.
func TestCrowdedLeaf(t *testing.T) {
	leaf := motif(t, "leaf", motifs.Values{"fronds": 20, "lean": 90, "arch": 0, "crown": 0.22, "stalk": 0.1}, size(0.8, 1), depth(1))
	j := jobOn(straight(t), 3, leaf)
	j.Limits.Clear, j.Limits.Reach = 0.25, 0 // what the shortest fronds, near the stalk, can do
	p := planned(t, j)

	between, land := [2]int{1 << 30, 0}, 1.0
	for _, f := range p.Findings {
		// The stem is cut 1, and fronds follow by pairs: the next on the same
		// side is two on.
		if f.Kind != pattern.Crowded || f.Share || len(f.Cuts) != 2 || f.Cuts[1] != f.Cuts[0]+2 || f.Cuts[0] == 1 {
			t.Errorf("found %+v", f)
		}
		between = [2]int{min(between[0], f.Cuts[0]), max(between[1], f.Cuts[1])}
		land = min(land, f.Measured)
	}
	// Twenty pairs stand 2.160 mm apart. The lowest and the highest fronds are
	// so short that they are shallower and narrower; those between all crowd.
	if !near(land, 60*0.702*2/39-2, 1e-3) {
		t.Errorf("the least land is %.4f mm, by hand 0.1600", land)
	}
	if n := len(p.Findings); between[0] > 6 || between[1] < 36 || n != between[1]-between[0]-1 {
		t.Errorf("%d pairs crowd, from cut %d to cut %d", n, between[0], between[1])
	}
	for _, f := range p.Findings {
		if left := f.Cuts[0]%2 == 0; left != (f.Theta < 0) {
			t.Errorf("cuts %v are on the left: %v, but stand at θ = %g", f.Cuts, left, f.Theta)
		}
	}

	cure := p.Findings[0].Cure
	if text := said(j, cure); text != "motif 1 (leaf): fronds = 15" {
		t.Errorf("the cure is %q", text)
	}
	if found := planned(t, changed(j, cure)).Findings; len(found) > 0 {
		t.Errorf("cured, it still finds %+v", found)
	}
	if leaf.Values["fronds"] != 20 {
		t.Error("the cure changed the job itself")
	}
}

// TestTallLeaf sets a leaf into thin glass, and cures it.
//
// From 60 to 100 mm the wall goes from 3 to 1.4 mm: 0.04 mm less for each. Under
// a cut 0.8 mm deep, with 1.6 mm to be left, it must be 2.4 mm: up to 75 mm.
func TestTallLeaf(t *testing.T) {
	b := blank(t, glass.Station{Height: 0, Radius: 40, Wall: 6},
		glass.Station{Height: 60, Radius: 40, Wall: 3}, glass.Station{Height: 100, Radius: 40, Wall: 1.4})
	j := jobOn(b, 4, motif(t, "leaf", motifs.Values{"fronds": 5, "arch": 0}, size(0.8, 1), depth(0.8)))
	j.Layout.Band.Top = 90
	p := planned(t, j)
	if len(p.Findings) == 0 {
		t.Fatal("nothing found")
	}
	for _, f := range p.Findings {
		c := p.Cuts[f.Cuts[0]-1]
		if f.Kind != pattern.Thin || f.Wanted != 1.6 || f.Measured >= 1.6 || f.Height <= 75 {
			t.Errorf("found %+v", f)
		}
		// What is left is the wall on its straight line, less the depth at the
		// sample next to there, which is at most half a millimetre away.
		next := slices.MinFunc(c.Samples, func(a, b groove.Sample) int {
			return cmp.Compare(math.Abs(a.Height-f.Height), math.Abs(b.Height-f.Height))
		})
		if left := 3 - 0.04*(next.Height-60) - next.Depth; !near(left, f.Measured, 0.02) {
			t.Errorf("cut %d: %g mm left, by hand %g", c.ID, f.Measured, left)
		}
	}
	// The stem is at its full depth until its tail, 8.91 mm below its tip: there
	// 3 - 0.04 × 21.09 - 0.8 = 1.356 mm are left. Along the tail the wall goes on
	// thinning while the groove rises by s²/100: by 0.04 mm, at 2 mm, no more.
	stem := p.Findings[0]
	if stem.Cuts[0] != 1 || !near(stem.Measured, 1.356-0.04, 5e-3) {
		t.Errorf("under the stem %+v", stem)
	}
	// 0.4 mm deep, the tail is 6.31 mm: 3 - 0.04 × 23.69 - 0.4 - 0.04 = 1.61 mm.
	// 0.5 mm deep, it is 7.05 mm, and 1.54 mm are left.
	cure := stem.Cure
	if text := said(j, cure); text != `motif 1 (leaf): depth = "0.4 mm", or layout: band = ["20.0 mm", "75.0 mm"]` || cure.Or[0].Brings {
		t.Errorf("the cure is %q", text)
	}
	if found := planned(t, changed(j, cure)).Findings; len(found) > 0 {
		t.Errorf("cured, it still finds %+v", found)
	}
	j.Layout.Band.Top = 75
	if found := laid(t, j).Findings; len(found) > 0 {
		t.Errorf("kept below 75 mm, it still finds %+v", found)
	}
}

// changed returns the job a cure leads to.
func changed(j *job.Job, cure *pattern.Cure) *job.Job { return j.With(cure.Changes...) }

// TestCures applies every cure there is in random jobs: the kind it is for is
// found on its motifs no more, and nothing else is that it doesn't say it brings.
// A step less would not do.
func TestCures(t *testing.T) {
	t.Parallel()
	const jobs = 48 // few of more than one motif: they have many cures to look for
	random := rand.New(rand.NewPCG(2, 71))
	cured, keys, effects := map[pattern.Kind]int{}, map[string]int{}, 0
	for n := range jobs {
		j := scattered(t, random)
		if n%4 > 0 {
			j.Motifs = j.Motifs[:1]
		}
		j.Rack = j.Rack[:olive] // broad edges, set askew, take long to trace
		for i := range j.Motifs {
			j.Motifs[i].Wheel %= olive
		}
		p := planned(t, j)
		for _, g := range mergedGroups(p) {
			cure := g.Worst().Cure
			if cure == nil {
				t.Fatalf("job %d: no cure was sought for %v on motifs %v", n, g.Kind, g.Motifs)
			}
			if cure.Changes == nil {
				continue
			}
			cured[g.Kind]++
			after := changed(j, cure)
			then := checked(t, after)
			if found(then, g) {
				t.Errorf("job %d: %v on motifs %v is not cured by %q", n, g.Kind, g.Motifs, said(j, cure))
			}
			fresh := brought(p, then, g)
			for _, h := range fresh {
				effects++
				if !slices.ContainsFunc(cure.Brings, func(b pattern.Brought) bool { return b.Is(h.Kind, h.Motifs) && b.Blank == "" }) {
					t.Errorf("job %d: %v on motifs %v: %q brings %v on motifs %v, %v", n, g.Kind, g.Motifs, said(j, cure), h.Kind, h.Motifs, h.Parts)
				}
			}
			if len(cure.Brings) > 0 && len(fresh) == 0 {
				t.Errorf("job %d: %v on motifs %v: %q brings nothing", n, g.Kind, g.Motifs, said(j, cure))
			}
			if len(fresh) > 0 {
				continue
			}
			for _, c := range cure.Changes {
				keys[c.Key]++
			}
			for i, m := range after.Motifs {
				before := j.Motifs[i]
				// A little less: it leaves the finding, or brings another.
				less := func(change func(m *job.Motif)) {
					almost := after.Clone()
					change(&almost.Motifs[i])
					if q := checked(t, almost); !found(q, g) && len(brought(p, q, g)) == 0 {
						t.Errorf("job %d: %v on motifs %v: %q is not the smallest change", n, g.Kind, g.Motifs, said(j, cure))
					}
				}
				for name, value := range m.Values {
					if param, _ := m.Kind.Param(name); param.Sort == motifs.Count && value != before.Values[name] {
						less(func(m *job.Motif) { m.Values[name]++ })
					}
				}
				if m.Depth != before.Depth {
					less(func(m *job.Motif) { m.Depth = min(m.Depth+0.1, before.Depth) }) // mm: a caliper's step
				}
				if m.Y != before.Y {
					less(func(m *job.Motif) { m.Y.Value -= math.Copysign(0.01, m.Y.Value-before.Y.Value) })
				}
				if m.Width.Value > before.Width.Value && m.Height == before.Height {
					less(func(m *job.Motif) { m.Width.Value = max(before.Width.Value, m.Width.Value-before.Width.Value/50-0.001) })
				}
			}
		}
	}
	t.Logf("cured %v, by %v; %d things brought", cured, keys, effects)
	for kind, few := range map[pattern.Kind]int{pattern.Crowded: 5, pattern.Thin: 1, pattern.Rim: 3, pattern.Foot: 3, pattern.Shallow: 5, pattern.Off: 5} {
		if cured[kind] < few {
			t.Errorf("only %d cures for %v", cured[kind], kind)
		}
	}
	for _, key := range []string{"at", "depth", "height"} {
		if keys[key] == 0 {
			t.Errorf("no cure changes %s", key)
		}
	}
	if effects == 0 {
		t.Error("no cure brings anything")
	}
}

// found reports whether a whole check found a group's kind on its motifs.
func found(p *pattern.Plan, g pattern.Group) bool {
	return slices.ContainsFunc(p.Groups(), func(h pattern.Group) bool {
		return h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs)
	})
}

// TestCuresOfASet applies the cures found on one blank of a set to all of it:
// what they bring on the others is told, with the blank's name.
func TestCuresOfASet(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	tried := 0
	for n := range 16 {
		between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
		leaf := motif(t, "leaf", motifs.Values{"fronds": float64(3 + random.IntN(12)), "arch": 0},
			size(between(0.4, 0.95), between(0.5, 0.9)), at(0, between(0.4, 0.6)), depth(between(0.4, 1)), with(fine))
		j := three(t, leaf, bar(t, 0, between(2, 9), 30, turn(90), depth(0.4), with(fine)))
		j.Limits.Clear, j.Limits.Reach = 0.2, between(0.2, 0.6)
		if j.Layout.Match = job.Match(n % 2); n%4 > 1 {
			j.Blanks[2] = named(t, "narrow", 96, between(28, 38), 4, between(1.5, 2.5))
			j.Layout.Band = &job.Band{Foot: between(2, 8), Top: between(60, 86)}
		}
		j.Layout.Repeats = 3 + random.IntN(4)
		plans := laidAll(t, j)
		for k, p := range plans {
			for _, g := range mergedGroups(p) {
				cure := g.Worst().Cure
				if cure.Changes == nil {
					continue
				}
				tried++
				after := changed(j, cure)
				for other, q := range checkedOn(t, after) {
					for _, h := range q.Groups() {
						known := slices.ContainsFunc(plans[other].Groups(), func(x pattern.Group) bool { return alikeGroups(x, h) })
						switch told := slices.ContainsFunc(cure.Brings, func(b pattern.Brought) bool { return b.Kind == h.Kind && b.Blank == q.Blank.Name }); {
						case k == other && h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs):
							t.Errorf("job %d, %s: %q doesn't cure %v", n, p.Blank.Name, said(j, cure), g.Kind)
						case k != other && !known && !told:
							t.Errorf("job %d, %s: %q brings %v on %s", n, p.Blank.Name, said(j, cure), h.Kind, q.Blank.Name)
						}
					}
				}
			}
		}
	}
	if tried < 20 {
		t.Errorf("only %d cures", tried)
	}
}

// A bar 40 mm long reaches half a millimetre into the margin of two glasses. On
// the low one it ends 0.3 mm below the rim's margin: what moves it up there lets
// it run into that. So it is not moved, but made shorter, by fiftieths.
func TestCureForALowGlassToo(t *testing.T) {
	j := jobOn(nil, 4, bar(t, 0, 19.5, 40))
	j.Layout.Band, j.Layout.Match = nil, job.Own
	j.Blanks = []*glass.Blank{named(t, "tall", 100, 40, 7, 5), named(t, "low", 6.4+39.5+0.3+9.5, 40, 7, 5)}
	p := planned(t, j)
	if len(p.Findings) != 1 || p.Findings[0].Kind != pattern.Foot {
		t.Fatalf("found %+v", p.Findings)
	}
	cure := p.Findings[0].Cure
	if text := said(j, cure); text != "motif 1 (fan): height = \"38.4 mm\"" {
		t.Errorf("the cure is %q", text)
	}
	for _, p := range laidAll(t, changed(j, cure)) {
		if len(p.Findings) > 0 {
			t.Errorf("%s: found %+v", p.Blank.Name, p.Findings)
		}
	}
}

func alikeGroups(a, b pattern.Group) bool {
	return a.Kind == b.Kind && slices.Equal(a.Motifs, b.Motifs) && slices.Equal(a.Parts, b.Parts) &&
		a.Findings[0].Share == b.Findings[0].Share && len(a.Findings[0].Cuts) == len(b.Findings[0].Cuts)
}

// brought returns what a whole check of a changed job found that it didn't find
// of the job: kinds in places where there was none, or more of them, or worse by a
// tenth. What a cure is for doesn't count.
func brought(before, after *pattern.Plan, but pattern.Group) []pattern.Group {
	key := func(g pattern.Group) string {
		return fmt.Sprint(g.Kind, g.Motifs, g.Parts, g.Findings[0].Share, len(g.Findings[0].Cuts))
	}
	had := map[string]pattern.Group{}
	for _, g := range before.Groups() {
		had[key(g)] = g
	}
	miss := func(g pattern.Group) float64 { return math.Abs(g.Worst().Measured - g.Worst().Wanted) }
	var all []pattern.Group
	for _, g := range after.Groups() {
		was, known := had[key(g)]
		if g.Kind == but.Kind && slices.Equal(g.Motifs, but.Motifs) {
			continue
		}
		if !known || len(g.Findings) > len(was.Findings) || miss(g) > 1.1*miss(was)+1e-6 {
			all = append(all, g)
		}
	}
	return all
}

// What a cure says of a size can be written into the job as it stands, and then
// the job is the one that was tried.
func TestCuresOfSize(t *testing.T) {
	for _, width := range []job.Measure{of(1.37), mm(86.1)} {
		m := motif(t, "diamond", nil, depth(0.3))
		m.Width = width
		j := jobOn(straight(t), 4, m)
		p := planned(t, j)
		i := slices.IndexFunc(p.Findings, func(f pattern.Finding) bool { return f.Kind == pattern.Off })
		if i < 0 {
			t.Fatalf("%v: nothing is off: %v", width, p.Findings)
		}
		cure := p.Findings[i].Cure
		after := changed(j, cure)
		got := after.Motifs[0]
		want := "motif 1 (diamond): width = " + job.Change{Key: "width"}.Says(after)
		if got.Height != m.Height {
			want = "motif 1 (diamond): height = " + job.Change{Key: "height"}.Says(after)
		}
		if text := said(j, cure); text != want {
			t.Errorf("%v: the cure is %q, and makes the width %v, the height %v", width, text, got.Width, got.Height)
		}
		if tidied := tidy(j, got.Width); got.Width != width && !near(tidied, got.Width.Value, 1e-9) {
			t.Errorf("%v: a width of %v can't be written", width, got.Width)
		}
	}
}
