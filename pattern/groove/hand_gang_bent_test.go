package groove_test

import (
	"math/rand/v2"
	"testing"

	"roundlay/pattern/groove"
)

// TestGangsRoundBends compares gangs along arcs: one whose outer mitre bites only beside its own
// line, and one that is deepest in a trough of its swell under a wheel that passes beside it.
func TestGangsRoundBends(t *testing.T) {
	t.Parallel()
	for _, seed := range []uint64{700_099, 700_409} {
		w := &worst{of: map[string]float64{}, n: map[string]int{}}
		rnd := rand.New(rand.NewPCG(uint64(groove.Gang), seed))
		compareHanded(t, w, rnd, randomHandedArc(rnd, groove.Gang, randomOfThree), "round a bend")
		if w.n["compared"] != 1 {
			t.Errorf("seed %d is not compared: %v", seed, w.n)
		}
	}
}
