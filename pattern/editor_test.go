package pattern

import (
	"context"
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// TestEditor edits random jobs at random, undoes edits, and goes through jobs that
// can't be laid out: what an editor makes of each is what is made of it from scratch.
func TestEditor(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(27, 18))
	refused, found, kept := 0, 0, 0
	for n := range 10 {
		jobs := []*job.Job{scattered(t, random)}
		if n%3 == 0 { // a set
			jobs[0].Blanks = append(jobs[0].Blanks, blankOf(t, 36, 40))
		}
		e := new(Editor)
		for step := range 10 {
			j := jobs[len(jobs)-1]
			switch {
			case step == 0:
			case random.IntN(5) == 0:
				j = jobs[random.IntN(len(jobs))]
			default:
				j = edited(t, random, j)
			}
			before := e.count
			plans, err := e.Lay(t.Context(), j)
			fresh, wrong := new(Editor).Lay(t.Context(), j)
			if (err == nil) != (wrong == nil) || err != nil && err.Error() != wrong.Error() {
				t.Fatalf("job %d, step %d: %v; from scratch: %v", n, step, err, wrong)
			}
			if err != nil {
				refused++
				continue
			}
			jobs = append(jobs, j)
			if off := samePlan(fresh, plans); off != "" {
				t.Fatalf("job %d, step %d differs from scratch: %s", n, step, off)
			}
			for _, p := range plans {
				found += len(p.Findings)
			}
			if e.count-before < len(j.Motifs)*len(j.Blanks) {
				kept++
			}
		}
	}
	if refused < 3 || found < 300 || kept < 40 {
		t.Errorf("%d refused, %d findings, %d times something was kept", refused, found, kept)
	}
}

// edited returns a job with one thing changed: of a motif, a blank, a wheel, the
// limits, the layout, or of which motifs there are.
func edited(t *testing.T, random *rand.Rand, was *job.Job) *job.Job {
	t.Helper()
	j := was.Clone()
	j.Blanks, j.Rack = slices.Clone(j.Blanks), slices.Clone(j.Rack)
	j.Blanks[0] = remade(t, j.Blanks[0], func([]glass.Station) {}) // as if read anew
	i := random.IntN(len(j.Motifs))
	m := &j.Motifs[i]
	some := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	edits := []func(){
		func() { m.Depth = some(0.1, 1.5) },
		func() { m.Depth = 60 }, // deeper than the wheel's middle
		func() { m.X = of(some(-0.5, 0.5)) },
		func() { m.Width, m.Height = of(some(0.2, 1)), mm(some(5, 60)) },
		func() { m.Turn = geometry.Angle(some(-3, 3)) },
		func() { m.Mirror = !m.Mirror },
		func() { m.Shape = job.True - m.Shape },
		func() { m.Wheel = random.IntN(len(j.Rack)) },
		func() { p := m.Kind.Params[0]; m.Values[p.Name] = p.Min },
		func() { own := some(0, 2); m.Land = &own },
		func() { own := some(0, 1); m.Clear = &own },
		func() { m.CutOrder = random.IntN(4) },
		func() { j.Motifs = append(j.Motifs, *m) },
		func() { j.Motifs = append([]job.Motif{jobtest.DrawMotif(t, random, 1)}, j.Motifs...) },
		func() { j.Motifs = slices.Delete(j.Motifs, i, min(i+1, len(j.Motifs)-1)) },
		func() { slices.Reverse(j.Motifs) },
		func() { j.Blanks[0] = remade(t, j.Blanks[0], func(s []glass.Station) { s[0].Radius += some(-1, 1) }) },
		func() { j.Blanks[0] = remade(t, j.Blanks[0], func(s []glass.Station) { s[1].Wall += some(-0.5, 0.5) }) },
		func() { j.Rack[m.Wheel].Radius += some(-2, 2) },
		func() { slices.Reverse(j.Rack) },
		func() { j.Limits.Land = some(0, 1.5) },
		func() { j.Limits.Polish = some(0, 0.2) },
		func() { j.Limits.Leave = some(0.5, 3) },
		func() { j.Limits.Rim, j.Limits.Clear = some(3, 12), some(0.1, 0.9) },
		func() { j.Layout.Repeats = 2 * (1 + random.IntN(4)) },
		func() { j.Layout.Band = &job.Band{Foot: some(3, 20), Top: some(65, 120)} },
		func() { j.Layout.Band = nil },
		func() { j.Limits.Rim = 200 },
		func() { j.Layout.Match = job.Own - j.Layout.Match },
	}
	edits[random.IntN(len(edits))]()
	return j
}

// remade returns a blank measured anew, with its readings changed.
func remade(t *testing.T, b *glass.Blank, change func([]glass.Station)) *glass.Blank {
	t.Helper()
	stations := slices.Clone(b.Stations)
	change(stations)
	return blank(t, stations...)
}

// What an edit leaves as it was isn't made again: its grooves are the same in memory,
// and the editor cuts one figure more.
func TestEditorKeeps(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", nil, size(0.5, 0.4)), motif(t, "fan", nil, at(0.5, 0.8), size(0.4, 0.2)))
	e := new(Editor)
	lay := func(j *job.Job) *Plan {
		t.Helper()
		plans, err := e.Lay(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		return plans[0]
	}
	first := lay(j)
	deeper := j.Clone()
	deeper.Motifs[1].Depth = 0.7
	second := lay(deeper)
	same := func(n int) bool { return &first.Cuts[n].Samples[0] == &second.Cuts[n].Samples[0] }
	if last := len(first.Cuts) - 1; !same(0) || same(last) || e.count != 3 {
		t.Errorf("the leaf is kept: %v, the fan: %v; %d figures cut, wanted 3", same(0), same(last), e.count)
	}
	if lay(j); e.count != 3 {
		t.Errorf("undone: %d figures cut, wanted 3", e.count)
	}
	j.Limits.Land = 0.3 // nothing but lands is measured again
	if lay(j); e.count != 3 {
		t.Errorf("another limit: %d figures cut, wanted 3", e.count)
	}
	// No more is kept than two layouts are made of, however many there were.
	for n := range 20 {
		deeper.Motifs[1].Depth = 0.2 + 0.01*float64(n)
		lay(deeper)
	}
	if n := len(e.figures.last) + len(e.figures.before); n != 4 {
		t.Errorf("%d figures are kept, wanted 4", n)
	}
	// A layout that is refused takes nothing away.
	before := e.count
	deeper.Motifs[1].Depth = 60
	if _, err := e.Lay(t.Context(), deeper); err == nil {
		t.Error("laid out 60 mm deep")
	}
	deeper.Motifs[1].Depth = 0.2 + 0.01*18
	if lay(deeper); e.count != before {
		t.Errorf("after a refusal %d figures are cut again", e.count-before)
	}
}

// Each of the things that a key is made of tells it apart; what is not part of its
// value does not.
func TestKey(t *testing.T) {
	one, two := 1.0, 2.0
	kind, _ := motifs.Find("leaf")
	other, _ := motifs.Find("fan")
	all := []any{
		&one, &two, 1, 2, 1.0, "1", "", "ab", []string{"a", "b"}, []string{"ab", ""}, []string{"ab"}, true, false,
		motifs.Values{"a": 1, "b": 2}, motifs.Values{"a": 2, "b": 1}, motifs.Values{"a": 1},
		job.Measure{Value: 1}, job.Measure{Value: 1, Fraction: true}, kind, other,
		job.Motif{Kind: kind, Depth: 1}, job.Motif{Kind: kind, Turn: 1},
	}
	for i, a := range all {
		for k, b := range all {
			if (i == k) != slices.Equal(keyOf(a), keyOf(b)) && i <= k {
				t.Errorf("the keys of %#v and %#v", a, b)
			}
		}
	}
	if same := keyOf(motifs.Values{"b": 2, "a": 1}); !slices.Equal(same, keyOf(all[13])) {
		t.Error("a map's key depends on its order")
	}
}

// A context that is done ends a layout with its error, names the blank, and leaves
// the editor as it was.
func TestEditorStopped(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", nil, size(0.5, 0.4)))
	e := new(Editor)
	if _, err := e.Lay(t.Context(), j); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := e.Lay(ctx, j); !errors.Is(err, context.Canceled) || err.Error() != `laying out blank "trial": context canceled` {
		t.Errorf("stopped: %v", err)
	}
	before := e.count
	if _, err := e.Lay(t.Context(), j); err != nil || e.count != before {
		t.Errorf("%v, and %d figures cut again", err, e.count-before)
	}
}
