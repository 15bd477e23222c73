package search

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// TestEvaluator holds what an evaluator answers, of random jobs and of changes to them, to
// the whole check.
func TestEvaluator(t *testing.T) {
	t.Parallel()
	const jobs = 60
	random := rand.New(rand.NewPCG(6, 28))
	isClear, not := 0, 0
	for n := range jobs {
		j := small(t, random)
		tried := pattern.NewEvaluator()
		for k := range 4 { // one evaluator for all the changes
			if k > 0 {
				m := &j.Motifs[random.IntN(len(j.Motifs))]
				m.Depth *= 0.7
				m.Width.Value *= 0.8
			}
			found := checked(t, j).Findings
			if got := tried.Clears(t.Context(), j); got != (len(found) == 0) {
				t.Errorf("job %d, change %d: clears is %v, a check finds %v", n, k, got, found)
			}
			for i := range j.Motifs {
				if got := tried.ClearsMotif(t.Context(), j, i); got == involves(t, j, i) {
					t.Errorf("job %d, change %d: clearsMotif of %d is %v", n, k, i, got)
				}
			}
			if len(found) == 0 {
				isClear++
			} else {
				not++
			}
		}
	}
	if isClear < 20 || not < 20 {
		t.Errorf("%d clear, %d don't: these jobs prove little", isClear, not)
	}
}

// TestFit applies every change that is offered for random jobs: with each the
// whole check finds nothing.
func TestFit(t *testing.T) {
	t.Parallel()
	const jobs = 90
	random := rand.New(rand.NewPCG(6, 29))
	keys := map[string]int{}
	helped, asked, combined, room := 0, 0, 0, 0
	for n := range jobs {
		j := small(t, random)
		j.Rack = append(j.Rack[:olive:olive], groove.Wheel{Name: "narrow", Edge: groove.Mitre, Radius: 25, Thick: 5, Angle: math.Pi / 3})
		j.Limits.Rim, j.Limits.Foot = 6*random.Float64(), 4
		if n%2 == 1 {
			j.Limits.Land *= 2 // or too many clear
		}
		if names := counts(j.Motifs[0]); n%5 == 0 {
			j.Motifs[0].Most = names[:1]
		}
		f, err := NewFit(t.Context(), j)
		if err != nil {
			continue // no glass that may be cut
		}
		if isClear := len(laid(t, j).Findings) == 0; isClear != f.Clear {
			t.Errorf("job %d clears: %v, a check says %v", n, f.Clear, isClear)
		}
		if !f.Clear {
			asked++
			if len(f.Offers) > 0 {
				helped++
			}
		}
		for k, o := range f.Offers {
			if k > 0 && o.Score < f.Offers[k-1].Score {
				t.Errorf("job %d: offer %d costs less than the one before it", n, k+1)
			}
			if f.Clear {
				room++
			}
			if len(o.Changes) > 1 {
				combined++
			}
			for _, c := range o.Changes {
				keys[c.Key]++
			}
			// From the job as its owner wrote it.
			if found := laid(t, j.With(o.Changes...)).Findings; len(found) > 0 {
				t.Errorf("job %d: with %q a check finds %v on %v", n, offered(f.Job, o), found[0].Kind, found[0].Cuts)
			}
			if math.IsNaN(o.Score) || math.IsInf(o.Score, 0) {
				t.Errorf("job %d: %q costs %+v", n, offered(f.Job, o), o.Cost)
			}
		}
	}
	t.Logf("%d of %d jobs helped; %d offers combine changes, %d are room; %v", helped, asked, combined, room, keys)
	if asked < 15 || helped < asked*2/3 || combined < 10 || room < 20 {
		t.Errorf("%d of %d jobs helped, %d offers combine changes, %d are room", helped, asked, combined, room)
	}
	for _, key := range []string{"fronds", "rays", "depth", "wheel", "at", "width", "height", "repeats", "band"} {
		if keys[key] == 0 {
			t.Errorf("no offer changes %s", key)
		}
	}
}

// ten returns a design of ten motifs and a rack of eight wheels, too dense in
// some of them.
func ten(t testing.TB) *job.Job {
	t.Helper()
	j := jobOn(blankOf(t, 36, 42), 4)
	j.Layout.Band = nil
	j.Limits.Reach, j.Limits.Clear = 0.1, 0.2
	for i := range 8 - len(j.Rack) {
		j.Rack = append(j.Rack, groove.Wheel{Name: string(rune('a' + i)), Edge: groove.Mitre, Radius: 30 + 10*float64(i), Thick: 8, Angle: 1.2 + 0.3*float64(i)})
	}
	for i := range 10 {
		kind, count := "leaf", motifs.Values{"fronds": 6, "arch": 0}
		if i%2 == 1 {
			kind, count = "fan", motifs.Values{"rays": 5, "hub": 0.3}
		}
		m := motif(t, kind, count, depth(0.3), with(fine), size(0.17, 0.44))
		m.X, m.Y = of(-0.4+0.2*float64(i%5)), of(0.25+0.5*float64(i/5))
		j.Motifs = append(j.Motifs, m)
	}
	j.Motifs[0].Values["fronds"], j.Motifs[6].Depth = 8, 0.45
	return j
}

// BenchmarkFit is the whole answer for ten motifs and eight wheels.
func BenchmarkFit(b *testing.B) {
	j := ten(b)
	for b.Loop() {
		f, err := NewFit(b.Context(), j)
		if err != nil || f.Clear || len(f.Offers) == 0 {
			b.Fatalf("%v, %+v", err, f)
		}
	}
}

// TestFitTen is the answer that BenchmarkFit measures.
func TestFitTen(t *testing.T) {
	f, err := NewFit(t.Context(), ten(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range f.Offers {
		t.Logf("%q %+v", offered(f.Job, o), o.Cost)
		if found := checked(t, o.Job).Findings; len(found) > 0 {
			t.Errorf("with %q a check finds %+v", offered(f.Job, o), found[0])
		}
	}
	if f.Clear || len(f.Offers) < 3 || !slices.ContainsFunc(f.Offers, func(o Offer) bool { return len(o.Changes) == 2 }) {
		t.Errorf("clear %v, %d offers", f.Clear, len(f.Offers))
	}
}
