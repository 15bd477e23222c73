package pattern

import (
	"math/rand/v2"
	"reflect"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// samePlan compares all of two plans, except what is computed on first use.
func samePlan(a, b any) string {
	return cmp.Diff(a, b,
		cmp.Exporter(func(reflect.Type) bool { return true }),
		cmpopts.IgnoreFields(Plan{}, "goreError", "ground"),
		cmp.Comparer(func(a, b motifs.Kind) bool { return a.Name == b.Name && a.Contents == b.Contents }),
		// These are large, and hold neither functions nor what is no number.
		cmp.Comparer(func(a, b groove.Groove) bool { return reflect.DeepEqual(a, b) }),
		cmp.Comparer(func(a, b geometry.Surface) bool { return reflect.DeepEqual(a, b) }),
		cmp.Comparer(func(a, b *glass.Blank) bool { return reflect.DeepEqual(a, b) }),
		cmpopts.EquateNaNs())
}

// TestChecksArePure checks plans again and again, also at once: each time the same
// is found, and the plan stays what it is when it is laid out once more.
func TestChecksArePure(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(8, 15))
	jobs := []*job.Job{
		jobOn(straight(t), 3, motif(t, "diamond", motifs.Values{"across": 2, "up": 3})), // joins from copy to copy
		helices(t),
	}
	for range 8 {
		jobs = append(jobs, scattered(t, random))
	}
	some := 0
	for n, j := range jobs {
		p, untouched := laid(t, j), laid(t, j)
		first := p.findings()
		some += len(first)
		var others sync.WaitGroup
		for range 4 {
			others.Go(func() {
				again := p.findings()
				if off := samePlan(first, again); off != "" {
					t.Errorf("job %d, checked again: %s", n, off)
				}
				p.ShortMarks()
				p.TooThin()
				p.Unseen(p.Outside())
				p.Chains()
			})
		}
		others.Wait()
		if off := samePlan(untouched, p); off != "" {
			t.Errorf("job %d is changed by its checks: %s", n, off)
		}
	}
	if some < 30 {
		t.Errorf("only %d findings", some)
	}
}

// TestJoinsComplete holds the joins of plans that are laid out and not checked yet to
// a walk over all the ends on the glass, as far round as the chart runs on.
func TestJoinsComplete(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(23, 42))
	across := 0
	for n := range 60 {
		j := scattered(t, random)
		if n < 6 {
			j = jobOn(straight(t), n+1, diamonds(t, 2, 3))
		}
		p := laid(t, j)
		cuts := p.All()
		for i, a := range cuts {
			joins := map[int]bool{}
			for _, id := range a.Joins {
				if joins[id] || id == a.ID {
					t.Errorf("job %d: cut %d joins %v", n, a.ID, a.Joins)
				}
				joins[id] = true
			}
			for k, b := range cuts {
				if a.Repeat == b.Repeat && p.Repeats > 1 || i == k || a.Motif != b.Motif {
					continue // within a copy the motif says what joins
				}
				meets := touchRound(p, a, b)
				across += map[bool]int{true: 1}[meets]
				if p.Repeats == 1 && joins[b.ID] && !meets {
					continue // of the one copy that there is
				}
				if joins[b.ID] != meets {
					t.Errorf("job %d, %d repeats: cuts %d and %d meet: %v, their joins: %v", n, p.Repeats, a.ID, b.ID, meets, a.Joins)
				}
			}
		}
	}
	if across < 100 {
		t.Errorf("only %d joins from copy to copy", across)
	}
}

// touchRound reports whether two cuts end in one place when one of them is carried
// no more than some turns round the glass; within one copy not where it stands.
func touchRound(p *Plan, a, b Cut) bool {
	for turns := -4; turns <= 4; turns++ {
		if turns == 0 && a.Repeat == b.Repeat {
			continue
		}
		moved := p.Surface.Turned(float64(turns) * float64(p.Repeats) * p.PitchAngle())
		for _, at := range a.Ends() {
			for _, other := range b.Ends() {
				if d := geometry.BoxOf(moved.Apply(other)).Distance2(geometry.BoxOf(at)); d < touching*touching {
					return true
				}
			}
		}
	}
	return false
}
