package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// What the code may differ by from the search, in millimetres.
const (
	widthTolerance   = 0.02 // to each side
	contactTolerance = 0.1
	depthTolerance   = 0.005
)

// between returns a random number in a range.
func between(rnd *rand.Rand, from, to float64) float64 { return from + (to-from)*rnd.Float64() }

func degrees(a float64) float64 { return a * math.Pi / 180 }

// randomWheel returns a wheel of the given edge.
func randomWheel(rnd *rand.Rand, edge groove.Edge) groove.Wheel {
	w := groove.Wheel{Edge: edge, Radius: between(rnd, 10, 100), Thick: between(rnd, 3, 12)}
	switch edge {
	case groove.Mitre:
		w.Angle = degrees(between(rnd, 60, 140))
		switch rnd.IntN(6) { // dressed, now and then
		case 0:
			w.Tip = between(rnd, 0.1, 1)
		case 1:
			w.TipRadius = between(rnd, 0.1, 1)
		}
	case groove.Round:
		w.Convex = between(rnd, 1, 20)
	case groove.Flat:
		w.Thick = between(rnd, 1, 12)
	case groove.Gang:
		w.Angle, w.Mitres, w.Spacing = degrees(between(rnd, 60, 140)), 2+rnd.IntN(3), between(rnd, 1, 3)
		w.Thick = (float64(w.Mitres) + 1) * w.Spacing
	}
	return w
}

// randomScene returns a wheel of the given edge on a glass whose radius is from
// 20 to 60 mm all along the line.
func randomScene(rnd *rand.Rand, edge groove.Edge) *scene {
	for {
		s := &scene{
			wheel:  randomWheel(rnd, edge),
			angle:  between(rnd, 0, 2*math.Pi),
			length: math.Exp(between(rnd, math.Log(1), math.Log(60))),
			depth:  between(rnd, 0.05, 2.5),
		}
		if rnd.IntN(3) == 0 { // as cuts mostly run: up the glass or round it
			s.angle = float64(rnd.IntN(4)) * math.Pi / 2
		}
		half := degrees(between(rnd, -20, 20))
		if rnd.IntN(4) == 0 {
			half = 0
		}
		s.cone = geometry.NewCone(half, between(rnd, 20, 60), between(rnd, 0, 100), between(rnd, 0, 100))
		s.prepare()
		end := s.track.at(s.length).at
		if r := math.Hypot(end.X, end.Y); r >= 20 && r <= 60 {
			return s
		}
	}
}

// String tells a scene.
func (s *scene) String() string {
	return fmt.Sprintf("%v wheel %+v on a glass of radius %.4f, half-angle %.6f; %.4f mm long at %.5f rad, bend %.5f, depth %.4f",
		s.wheel.Edge, s.wheel, s.cone.Radius, s.cone.HalfAngle, s.length, s.angle, s.bend, s.depth)
}

// worst keeps the greatest difference of each kind.
type worst struct {
	sync.Mutex
	of map[string]float64
	n  map[string]int
}

func (w *worst) note(kind string, difference float64) {
	w.Lock()
	defer w.Unlock()
	w.of[kind] = max(w.of[kind], difference)
	w.n[kind]++
}

// each runs a check on so many random scenes of each edge, every one with its
// own seed, and logs the worst differences.
func each(t *testing.T, edges []groove.Edge, count int, make func(*rand.Rand, groove.Edge) *scene, check func(*testing.T, *scene, *worst)) {
	w := &worst{of: map[string]float64{}, n: map[string]int{}}
	t.Run("scenes", func(t *testing.T) {
		for _, edge := range edges {
			// A few cases a run, so that the processors share them evenly.
			const batch = 50
			for from := 0; from < count; from += batch {
				t.Run(fmt.Sprint(edge, from), func(t *testing.T) {
					t.Parallel()
					for i := from; i < min(from+batch, count); i++ {
						check(t, make(rand.New(rand.NewPCG(uint64(edge), uint64(i))), edge), w)
					}
				})
			}
		}
	})
	for kind, d := range w.of {
		t.Logf("%s: worst %.5f mm of %d", kind, d, w.n[kind])
	}
}

// TestCutAgainstSolids compares straight cuts with the search of both solids.
func TestCutAgainstSolids(t *testing.T) {
	t.Parallel()
	each(t, []groove.Edge{groove.Mitre, groove.Round, groove.Flat}, 800, randomScene, compare)
}

// TestBentAgainstSolids compares cuts along arcs, drawn, between their tails: as
// tight as the check lets pass, with the wheel's edge alone in the glass.
func TestBentAgainstSolids(t *testing.T) {
	t.Parallel()
	bent := func(rnd *rand.Rand, edge groove.Edge) *scene {
		for {
			s := randomScene(rnd, edge)
			s.bend = 1 / between(rnd, 15, 200)
			if rnd.IntN(2) == 0 {
				s.bend = -s.bend
			}
			s.prepare()
			end := s.track.at(s.length).at
			r := math.Hypot(end.X, end.Y)
			if s.length*math.Abs(s.bend) > math.Pi/2 || r < 20 || r > 60 {
				continue
			}
			g := groove.Cut(s.cone, s.line(), s.wheel, s.depth, 0)
			if !g.Touch && g.Strain.Share < 0.5 && g.Strain.Buried < 0 {
				return s
			}
		}
	}
	each(t, []groove.Edge{groove.Mitre, groove.Round}, 150, bent, compare)
}

// TestGangAgainstSolids compares the outermost edges of gangs, where their
// grooves are wide enough for the search's steps.
func TestGangAgainstSolids(t *testing.T) {
	t.Parallel()
	wide := func(rnd *rand.Rand, edge groove.Edge) *scene {
		for {
			if s := randomScene(rnd, edge); s.length > 10 && s.depth > 0.3 {
				return s
			}
		}
	}
	each(t, []groove.Edge{groove.Gang}, 100, wide, compare)
}

// compare checks a scene's groove against the search.
func compare(t *testing.T, s *scene, w *worst) {
	g := groove.Cut(s.cone, s.line(), s.wheel, s.depth, 0)
	k := s.work()
	if g.Touch != k.touch {
		t.Errorf("touch is %v, wanted %v: %v", g.Touch, k.touch, s)
		return
	}
	kind := s.wheel.Edge.String() + " drawn"
	if g.Touch {
		kind = s.wheel.Edge.String() + " touch"
	}
	differ := func(what string, got, want, tolerance float64) {
		d := math.Abs(got - want)
		w.note(kind+" "+what, d)
		if !(d <= tolerance) {
			t.Errorf("%s is %.4f, wanted %.4f: %s, %v", what, got, want, kind, s)
		}
	}
	differ("touch depth", g.Depth, k.depth, depthTolerance)
	middle := g.Middle()
	differ("contact", g.LengthFor(s.cone, s.wheel, g.Depth), s.contact(middle.Along, g.Depth), contactTolerance)
	n := len(g.Samples)
	tail := 0 // about halfway up the first tail
	for tail < n/2 && g.Samples[tail].Along < k.first/2 {
		tail++
	}
	far := s.wheel.Thick/2 + 8
	for _, i := range []int{tail, n / 4, n / 2, 3 * n / 4, n - 1 - tail} {
		at := g.Samples[i]
		if s.bend != 0 && (at.Along < k.first || at.Along > k.last) {
			continue // on a straight tail, beside the line
		}
		foot := s.track.at(at.Along)
		differ("left", at.Left, s.edge(s.body, k.places, foot, 1, far), widthTolerance)
		differ("right", at.Right, s.edge(s.body, k.places, foot, -1, far), widthTolerance)
		differ("depth", at.Depth, s.depthAt(k.places, foot), depthTolerance)
	}
}
