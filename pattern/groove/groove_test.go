package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// What the code may differ by from the search, in millimetres.
const (
	widthTolerance   = 0.02 // to each side
	contactTolerance = 0.1
	depthTolerance   = 0.005
	volumeTolerance  = 0.02 // of the volume
)

// between returns a random number in a range.
func between(rnd *rand.Rand, from, to float64) float64 { return from + (to-from)*rnd.Float64() }

func degrees(a float64) float64 { return a * math.Pi / 180 }

// outside returns a cone as the outside of a glass.
func outside(cone geometry.Cone) *geometry.Surface {
	surface := cone.Surface()
	return &surface
}

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
		s.cone = geometry.NewCone(geometry.Angle(half), geometry.Circle{Radius: between(rnd, 20, 60), Height: between(rnd, 0, 100)}, between(rnd, 0, 100))
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

// each runs a check on a number of random scenes of each edge, every one with its
// own seed, and logs the worst differences.
func each(t *testing.T, edges []groove.Edge, count int, draw func(*rand.Rand, groove.Edge) *scene, check func(*testing.T, *rand.Rand, *scene, *worst)) {
	w := &worst{of: map[string]float64{}, n: map[string]int{}}
	t.Run("scenes", func(t *testing.T) {
		for _, edge := range edges {
			// A few cases a run, so that the processors share them evenly.
			const batch = 50
			for from := 0; from < count; from += batch {
				t.Run(fmt.Sprint(edge, from), func(t *testing.T) {
					t.Parallel()
					for i := from; i < min(from+batch, count); i++ {
						rnd := rand.New(rand.NewPCG(uint64(edge), uint64(i)))
						check(t, rnd, draw(rnd, edge), w)
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

// TestGangCutAgainstSolids compares straight cuts of gang wheels, and each of
// their outlines with the one mitre that leaves it.
func TestGangCutAgainstSolids(t *testing.T) {
	t.Parallel()
	each(t, []groove.Edge{groove.Gang}, 300, randomGang, compare)
}

// randomGang returns a scene of a gang wheel on a mark so long that a mitre
// which bites is likely to leave more than one step of the search.
func randomGang(rnd *rand.Rand, edge groove.Edge) *scene {
	for {
		if s := randomScene(rnd, edge); s.length > 8 {
			return s
		}
	}
}

// TestCurvedCutAgainstSolids compares drawn cuts along arcs, a plain circle's on
// the flat map, with the search of both solids.
func TestCurvedCutAgainstSolids(t *testing.T) {
	t.Parallel()
	each(t, []groove.Edge{groove.Mitre, groove.Round, groove.Flat}, 100, randomArc, compareArc)
}

// randomArc returns a scene on an arc of 15 to 200 mm radius, to either side,
// long enough to draw the wheel along.
func randomArc(rnd *rand.Rand, edge groove.Edge) *scene {
	for {
		s := randomScene(rnd, edge)
		s.bend = math.Copysign(1/between(rnd, 15, 200), between(rnd, -1, 1))
		if s.length*math.Abs(s.bend) > math.Pi {
			continue
		}
		s.prepare()
		fits := true
		for i := range 9 {
			at := s.track.at(s.length * float64(i) / 8).at
			r := math.Hypot(at.X, at.Y)
			fits = fits && r >= 20 && r <= 60
		}
		if first, last := s.tails(); fits && first < last {
			return s
		}
	}
}

// compareArc checks the widths of a curved groove between its tails.
func compareArc(t *testing.T, rnd *rand.Rand, s *scene, w *worst) {
	g := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
	k := s.work()
	if g.Touch {
		t.Errorf("touch: %v", s)
		return
	}
	var inner []groove.Sample
	for _, at := range g.Samples {
		if at.Along > k.first && at.Along < k.last {
			inner = append(inner, at)
		}
	}
	for range min(len(inner), 4) {
		at := inner[rnd.IntN(len(inner))]
		foot := s.track.at(at.Along)
		for _, side := range []struct {
			name      string
			hand, got float64
		}{{"left", 1, at.Left}, {"right", -1, at.Right}} {
			want := s.edge(s.body, k.places, foot, side.hand, 25)
			d := math.Abs(side.got - want)
			w.note(s.wheel.Edge.String()+" curved "+side.name, d)
			if !(d <= widthTolerance) {
				t.Errorf("%s is %.4f, wanted %.4f at %.3f of %.3f to %.3f: %v", side.name, side.got, want, at.Along, k.first, k.last, s)
			}
		}
	}
}

// TestVolumeAgainstSolids compares the glass ground away with that of columns
// counted through both solids.
func TestVolumeAgainstSolids(t *testing.T) {
	t.Parallel()
	each(t, []groove.Edge{groove.Mitre, groove.Round, groove.Flat, groove.Gang}, 10, randomScene, func(t *testing.T, rnd *rand.Rand, s *scene, w *worst) {
		// Within this length the columns stand near square everywhere; and a gang
		// that hardly grazes the glass takes next to nothing.
		for s.length < 5 || s.length > 20 || s.wheel.Edge == groove.Gang && s.depth < 0.3 {
			s = randomScene(rnd, s.wheel.Edge)
		}
		g := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
		want := s.volume(s.work(), g.Width)
		d := math.Abs(g.Volume/want - 1)
		w.note(fmt.Sprint(s.wheel.Edge, " volume, touch ", g.Touch, ", share"), d)
		if !(d <= volumeTolerance) {
			t.Errorf("volume is %.4f mm³, wanted %.4f: touch %v, %v", g.Volume, want, g.Touch, s)
		}
	})
}

// compare checks a scene's groove against the search.
func compare(t *testing.T, rnd *rand.Rand, s *scene, w *worst) {
	g := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
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
	differ("contact", g.LengthFor(outside(s.cone), s.wheel, g.Depth), s.contact(middle.Along, g.Depth), contactTolerance)
	n := len(g.Samples)
	tail := 1 // about halfway up the first tail
	for tail < n/2 && g.Samples[tail].Along < k.first/2 {
		tail++
	}
	far := s.wheel.Thick/2 + 8
	for _, i := range []int{tail, max(n/4, 1), n / 2, min(3*n/4, n-2), n - 1 - tail} {
		at := g.Samples[i]
		foot, places := s.track.at(at.Along), s.near(k, at.Along)
		// Where a gang's mitres lie to one hand only the search finds none to the other.
		differ("left", max(at.Left, 0), s.edge(s.body, places, foot, 1, far), widthTolerance)
		differ("right", max(at.Right, 0), s.edge(s.body, places, foot, -1, far), widthTolerance)
		differ("depth", at.Depth, s.depthAt(places, foot), depthTolerance)
	}
	outlines := []body{s.body}
	if s.wheel.Edge == groove.Gang {
		outlines = s.biting(k)
	}
	if len(g.Outlines) != len(outlines) {
		t.Errorf("%d outlines, wanted %d: %v", len(g.Outlines), len(outlines), s)
		return
	}
	for i, b := range outlines {
		s.probe(t, rnd, g.Outlines[i], b, k)
	}
}

// biting returns those mitres of a gang that reach the glass.
func (s *scene) biting(k stroke) []body {
	return slices.DeleteFunc(gang(s.wheel), func(b body) bool {
		for i := range 9 {
			along := s.length * float64(i) / 8
			foot, places := s.track.at(along), s.near(k, along)
			if s.edge(b, places, foot, 1, 0) > 0 || s.edge(b, places, foot, -1, 0) > 0 {
				return false
			}
		}
		return true
	})
}

// probe steps off an outline, out and in, at the middle of some of its edges,
// where a straight edge strays most: the wheel's body has to end between.
func (s *scene) probe(t *testing.T, rnd *rand.Rand, o geometry.Outline, b body, k stroke) {
	const count = 12
	for range count {
		i := rnd.IntN(len(o.Points))
		from, to := o.Points[i], o.Points[(i+1)%len(o.Points)]
		if from == to { // a tip
			continue
		}
		off := r2.Rotate(r2.Scale(widthTolerance, r2.Unit(r2.Sub(to, from))), math.Pi/2, geometry.Point{})
		middle := r2.Scale(0.5, r2.Add(from, to))
		for _, q := range []geometry.Point{r2.Add(middle, off), r2.Sub(middle, off)} {
			// Near a sharp tip the other edge lies less than a step away; and a mitre's
			// point goes on beside the end of the line, where nothing is drawn.
			beyond, mitred := s.beyond(q), s.wheel.Angle > 0
			if outlineDistance(o, q) < 0.99*widthTolerance || mitred && beyond > 0 && beyond < point {
				continue
			}
			if in := b.inside(k.places, s.walk(q).at); in != o.Contains(q) {
				t.Errorf("%v, %.3f from the start of the outline: wheel there is %v: %v", q, r2.Norm(r2.Sub(q, o.Points[0])), in, s)
			}
		}
	}
}

// point is how far a mitre's point may go on beyond the ends of its line, hardly
// 0.02 mm wide to each side, in millimetres.
const point = 0.1

// beyond returns how far a place on the flat map lies beyond the nearer end of a
// straight line.
func (s *scene) beyond(q geometry.Point) float64 {
	sin, cos := math.Sincos(s.angle)
	along := r2.Dot(r2.Sub(q, geometry.Point{Y: s.cone.Along}), geometry.Point{X: sin, Y: cos})
	return max(-along, along-s.length)
}

// outlineDistance returns the distance from a place to the nearest edge of an outline.
func outlineDistance(o geometry.Outline, q geometry.Point) float64 {
	least := math.Inf(1)
	for i, a := range o.Points {
		along := r2.Sub(o.Points[(i+1)%len(o.Points)], a)
		t := r2.Dot(r2.Sub(q, a), along) / max(r2.Norm2(along), 1e-30)
		least = min(least, r2.Norm(r2.Sub(q, r2.Add(a, r2.Scale(min(max(t, 0), 1), along)))))
	}
	return least
}
