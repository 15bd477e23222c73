package search

import (
	"math/rand/v2"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// TestWheels tries what is told of each wheel, in random jobs, by whole checks.
func TestWheels(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(6, 31))
	isClear, counted, deep := 0, 0, 0
	for n := range 6 {
		j := small(t, random)
		j.Rack = j.Rack[:olive]
		all, err := Wheels(t.Context(), j)
		if err != nil {
			continue // no glass that may be cut
		}
		if len(all) != len(j.Rack) {
			t.Fatalf("%d wheels told of %d", len(all), len(j.Rack))
		}
		for _, w := range all {
			on := j.Clone()
			for i := range on.Motifs {
				on.Motifs[i].Wheel = w.Wheel
			}
			found := checked(t, on).Findings
			if w.Clear != (len(found) == 0) {
				t.Errorf("job %d, wheel %d clears: %v, a check finds %d", n, w.Wheel, w.Clear, len(found))
			}
			if against := w.Against != nil && len(w.Against.Findings) > 0; against == w.Clear && !w.Short && w.Unfit == nil {
				t.Errorf("job %d, wheel %d clears: %v, and yet something stands in the way: %v", n, w.Wheel, w.Clear, against)
			}
			if w.Clear {
				isClear++
			}
			param, _ := on.Motifs[w.Count.Motif].Kind.Param(w.Count.Key)
			for c := param.Max; c > float64(w.Max) || c == param.Max; c-- {
				if c < param.Min {
					break
				}
				if len(checked(t, on.With(job.Change{Motif: w.Count.Motif, Key: w.Count.Key, Value: c})).Findings) == 0 && c != float64(w.Max) {
					t.Errorf("job %d, wheel %d: at most %d, but %g clears", n, w.Wheel, w.Max, c)
				}
			}
			if w.Max > 0 {
				counted++
				if len(checked(t, on.With(job.Change{Motif: w.Count.Motif, Key: w.Count.Key, Value: float64(w.Max)})).Findings) > 0 {
					t.Errorf("job %d, wheel %d: %d don't clear", n, w.Wheel, w.Max)
				}
			}
			if w.Depth > 0 {
				deep++
				for i := range on.Motifs {
					on.Motifs[i].Depth = w.Depth
				}
				if len(checked(t, on).Findings) > 0 {
					t.Errorf("job %d, wheel %d: %g mm doesn't clear", n, w.Wheel, w.Depth)
				}
			}
		}
	}
	if isClear < 2 || counted < 4 || deep < 4 {
		t.Errorf("%d wheels clear, %d with a count, %d with a depth: this proves little", isClear, counted, deep)
	}
}

// TestWheelsLand works out groove and land of two bars by hand: upright, 6 mm
// apart on a straight glass 80 mm across, cut 0.5 mm deep by a right-angled
// mitre. Each half width is less than the depth by b²/2r of the wall's curve:
// b = 0.5 - b²/80, which is 0.49693.
func TestWheelsLand(t *testing.T) {
	j := jobOn(straight(t), 1, bar(t, -3, 30, 30), bar(t, 3, 30, 30))
	j.Rack = j.Rack[:1]
	all, err := Wheels(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	w := all[0]
	if !w.Clear || w.Count != (job.Count{Motif: 0, Key: "rays"}) || !near(w.Groove, 2*0.49693, 2e-3) || !near(w.Land, 6-2*0.49693, 2e-3) {
		t.Errorf("%+v", w)
	}
	param, _ := motifs.Fan().Param("rays")
	if w.Max < 1 || w.Max > int(param.Max) {
		t.Errorf("at most %d rays", w.Max)
	}
}
