package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// randomHand returns a hand that swells, rocks or both, now and then at the ends of what is
// taken.
func randomHand(rnd *rand.Rand) groove.Hand {
	var h groove.Hand
	what := rnd.IntN(4)
	if what != 0 {
		h.Swell = make([]float64, 2+rnd.IntN(5))
		for i := range h.Swell {
			h.Swell[i] = chance(rnd, 0.1, 1)
		}
		if rnd.IntN(5) == 0 {
			h.Swell[rnd.IntN(2)*(len(h.Swell)-1)] = 0
		}
	}
	if what != 1 {
		h.Rock = [2]float64{chance(rnd, 0, degrees(30)), chance(rnd, 0, degrees(30))}
		if rnd.IntN(8) == 0 {
			h.Rock[rnd.IntN(2)] = groove.MaxRock
		}
		if rnd.IntN(2) == 0 {
			h.Rock[rnd.IntN(2)] = 0
		}
	}
	return h
}

// randomHanded returns a cut by hand with a wheel of the given edge on a vessel of some kind.
func randomHanded(rnd *rand.Rand, edge groove.Edge, on func(*rand.Rand) (*vessel, float64)) *handed {
	for {
		s := &handed{turning: randomTurningOn(rnd, edge, on), hand: randomHand(rnd)}
		s.allow()
		s.dress()
		if s.hand.Even() || s.wheel.Radius < 1.5*s.peak() {
			continue
		}
		return s
	}
}

// randomHandedArc is randomHanded on an arc of the chart of 15 to 200 mm radius, to either side,
// long enough to draw the wheel along: one touch goes straight from end to end of an arc.
func randomHandedArc(rnd *rand.Rand, edge groove.Edge, on func(*rand.Rand) (*vessel, float64)) *handed {
	for {
		s := randomHanded(rnd, edge, on)
		s.bend = math.Copysign(1/between(rnd, 15, 200), between(rnd, -1, 1))
		if s.length*math.Abs(s.bend) > math.Pi {
			continue
		}
		if s.draw(); !s.within(15, 70) {
			continue
		}
		if _, room := s.fairest(); room > 0.02 {
			return s
		}
	}
}

// allow takes back the rolls of a wheel with flanks to what a job may have: five degrees have to
// be left between a flank and the glass.
func (s *handed) allow() {
	if s.wheel.Edge != groove.Mitre && s.wheel.Edge != groove.Gang {
		return
	}
	for i, by := range s.hand.Rock {
		s.hand.Rock[i] = min(by, max(math.Pi/2-s.wheel.Angle/2-degrees(5), 0))
	}
}

// gestures is how many cuts of each edge are compared: more with ROUNDLAY_GESTURES.
func gestures() int {
	if n, err := strconv.Atoi(os.Getenv("ROUNDLAY_GESTURES")); err == nil {
		return n
	}
	return 40
}

// TestHandAgainstSolids compares cuts by hand with the search of both solids.
func TestHandAgainstSolids(t *testing.T) {
	t.Parallel()
	w := &worst{of: map[string]float64{}, n: map[string]int{}}
	t.Run("gestures", func(t *testing.T) {
		for _, edge := range []groove.Edge{groove.Mitre, groove.Round, groove.Flat, groove.Gang} {
			const batch = 20
			for from := 0; from < gestures(); from += batch {
				t.Run(fmt.Sprint(edge, from), func(t *testing.T) {
					t.Parallel()
					for i := from; i < min(from+batch, gestures()); i++ {
						rnd := rand.New(rand.NewPCG(uint64(edge), uint64(700_000+i)))
						scene := randomHanded
						if i%5 == 4 {
							scene = randomHandedArc
						}
						s := scene(rnd, edge, randomOfThree)
						endless := time.AfterFunc(endlessly, func() { panic(fmt.Sprintf("%v %d does not end: %v", edge, i, s)) })
						compareHanded(t, w, rnd, s, fmt.Sprint(edge, " ", i))
						endless.Stop()
					}
				})
			}
		}
	})
	for kind, d := range w.of {
		t.Logf("%s: worst %.5f mm of %d", kind, d, w.n[kind])
	}
	if passed := 4*gestures() - w.n["compared"] - w.n["bridged"]; passed > gestures()/50 {
		t.Errorf("%d are passed over, and only %d compared", passed, w.n["compared"])
	}
}

// compareHanded compares a cut by hand with what the search makes of it.
func compareHanded(t *testing.T, w *worst, rnd *rand.Rand, s *handed, which string) {
	line, err := s.drawing().ByHand(s.hand)
	if err != nil {
		t.Fatalf("%s: %v", which, err)
	}
	g := s.cutter().Cut(line, s.wheel, s.depth, 0)
	if g.Bridges() {
		compareBridged(t, w, s, g, which)
		return
	}
	k := s.works()
	if k.unclear != "" {
		w.note("unclear: "+k.unclear, 0)
		return
	}
	kind := s.kind(k)
	fail := func(what string, got, want, along float64) {
		t.Errorf("%s: %s%s is %.4f, searched %.4f at %.3f (%.3f to %.3f): %v", which, kind, what, got, want, along, k.first, k.last, s)
	}
	if g.Touch != k.touch && math.Abs(k.room) < 0.02 {
		w.note("unclear: nearly a touch", 0)
		return
	}
	if g.Touch != k.touch {
		fail("touch or drawn", g.Depth, s.peak(), 0)
		return
	}
	w.note("compared", 0)
	if rnd.IntN(3) == 0 {
		depth, left := s.bites(k)
		safe := func(what string, got, want, better float64) {
			over := better * (got - want)
			if got == want { // both may be without end, where no mitre reaches the glass
				over = 0
			}
			w.note(kind+what+", safer than it is by", over)
			w.note(kind+what+", worse than it is by", -over)
			if !(over <= safeTolerance) {
				fail(what, got, want, 0)
			}
		}
		safe("bite", g.Depth, depth, -1)
		safe("glass left", max(g.Remains.Min, 0), max(left, 0), 1)
	}
	n := len(g.Samples)
	for _, i := range []int{1 + rnd.IntN(max(n-2, 1)), n / 2} {
		at := g.Samples[i]
		if s.bend != 0 && !k.touch && (at.Along < k.first+1 || at.Along > k.last-1) {
			continue // next to a tail their way is half a straight one
		}
		place := s.chart.space(at.At)
		foot := s.vessel.looking(place, s.line.at(at.Along).ahead)
		if s.bend != 0 { // its section is square to the way of the wheel that bites deepest there
			foot = s.square(place, at)
		}
		near := s.near(k, at.Along)
		differ := func(what string, got, want, tolerance float64) {
			d := math.Abs(got - want)
			w.note(kind+what, d)
			if !(d <= tolerance) {
				fail(what, got, want, at.Along)
			}
		}
		for _, side := range []struct {
			name      string
			hand, got float64
			edge      geometry.Point
		}{{"left", 1, at.Left, at.LeftEdge}, {"right", -1, at.Right, at.RightEdge}} {
			got := max(side.got, 0)
			want, trail := s.edgeOf(near, foot, side.hand)
			if math.Abs(got-want) > widthTolerance && !k.touch { // a wheel between two places may graze the glass
				finer := k
				s.spreadOut(&finer, 0.02)
				want, trail = s.edgeOf(s.near(finer, at.Along), foot, side.hand)
				w.note(kind+"looked at more closely", 0)
			}
			if math.Abs(got-want) > widthTolerance {
				want, trail = s.edgeBetween(near, foot, side.hand, got, want)
				w.note(kind+"looked at between places and rolls", 0)
			}
			differ(side.name, got, want, widthTolerance)
			if side.got > 0 {
				off := r3.Norm(r3.Sub(s.chart.space(side.edge), trail.at(side.got)))
				differ(side.name+" edge's place", off, 0, widthTolerance)
			}
		}
		differ("depth", at.Depth, s.sunkAt(near, foot), safeTolerance)
	}
}

// TestNarrowBites compares two cuts in which little of a wheel bites far out: the corner of a
// round one beside a place where the swell is least, and an outer mitre of a gang that, askew
// on a taper, bites only ahead of where the wheel is pressed in.
func TestNarrowBites(t *testing.T) {
	t.Parallel()
	for _, of := range []struct {
		edge groove.Edge
		seed uint64
	}{{groove.Round, 700_065}, {groove.Gang, 700_077}, {groove.Round, 700_204}} {
		w := &worst{of: map[string]float64{}, n: map[string]int{}}
		rnd := rand.New(rand.NewPCG(uint64(of.edge), of.seed))
		compareHanded(t, w, rnd, randomHanded(rnd, of.edge, randomOfThree), of.edge.String())
		if w.n["compared"] != 1 {
			t.Errorf("%v is not compared: %v", of.edge, w.n)
		}
	}
}

// TestGlassPastTheHub cuts with a small wheel, rolled far, into a waist so tight that the
// glass at the groove's left edge stands higher than the wheel's hub. There the wheel's far
// side is what ends the groove.
func TestGlassPastTheHub(t *testing.T) {
	t.Parallel()
	const seed = 700_200
	w := &worst{of: map[string]float64{}, n: map[string]int{}}
	rnd := rand.New(rand.NewPCG(uint64(groove.Round), seed))
	compareHanded(t, w, rnd, randomHanded(rnd, groove.Round, randomVessel), "past the hub")
	if w.n["compared"] != 1 {
		t.Errorf("it is not compared: %v", w.n)
	}
}
