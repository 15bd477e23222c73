package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// rounding is what arithmetic alone may change a place by, and settled what a
// search that has come to within its own step may, in millimetres.
const (
	rounding = 1e-9
	settled  = 0.002
)

// everyEdge runs a check on random scenes of each edge, straight ones and arcs.
func everyEdge(t *testing.T, count int, check func(*testing.T, *rand.Rand, *scene)) {
	for _, edge := range []groove.Edge{groove.Mitre, groove.Round, groove.Flat, groove.Gang} {
		t.Run(edge.String(), func(t *testing.T) {
			rnd := rand.New(rand.NewPCG(uint64(edge), 7))
			for i := range count {
				s := randomScene(rnd, edge)
				if i%4 == 0 && edge != groove.Gang {
					s = randomArc(rnd, edge)
				}
				check(t, rnd, s)
			}
		})
	}
}

// Samples run on without a gap, and the outlines hold all their edges.
func TestOutlinesHoldSamples(t *testing.T) {
	t.Parallel()
	everyEdge(t, 200, func(t *testing.T, rnd *rand.Rand, s *scene) {
		g := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, between(rnd, 0, 0.3))
		if first := g.Samples[0].Along; first > 0.001+rounding {
			t.Errorf("the first sample is %g mm along: %v", first, s)
		}
		if last := g.Samples[len(g.Samples)-1].Along; last < g.Length-0.001-rounding {
			t.Errorf("the last sample is %g mm along, of %g: %v", last, g.Length, s)
		}
		for i, at := range g.Samples {
			if i > 0 {
				step := at.Along - g.Samples[i-1].Along
				if apart := r2.Norm(r2.Sub(at.At, g.Samples[i-1].At)); !(step > 0 && step <= 1+rounding && apart <= 1+rounding) {
					t.Errorf("samples %d and %d are %g apart, %g along the line: %v", i-1, i, apart, step, s)
				}
			}
			// Polishing wears a tip onward, and an outline's edges are straight.
			const stray = 0.003
			if at.Left+at.Right == 0 {
				continue // a gang none of whose mitres lies along its middle, at the tip
			}
			for _, edge := range []geometry.Point{at.LeftEdge, at.RightEdge} {
				off := math.Inf(1)
				for _, o := range g.Outlines {
					off = min(off, o.DistanceTo(edge, 1), outlineDistance(o, edge))
				}
				if off > stray {
					t.Errorf("an edge at %g mm is %g outside the outline: %v", at.Along, off, s)
				}
			}
		}
	})
}

// Turning a groove round the glass keeps its shape, and gives the groove of the
// turned line.
func TestTurnedKeepsShape(t *testing.T) {
	t.Parallel()
	everyEdge(t, 100, func(t *testing.T, rnd *rand.Rand, s *scene) {
		theta := between(rnd, -math.Pi, math.Pi)
		m := s.cone.Turned(theta)
		start := geometry.Point{Y: s.cone.Along}
		sin, cos := math.Sincos(s.angle)
		end := r2.Add(start, r2.Scale(s.length, geometry.Point{X: sin, Y: cos}))
		cut := func(a, b geometry.Point) groove.Groove {
			return groove.Cut(outside(s.cone), groove.NewLine([]geometry.Point{a, b}), s.wheel, s.depth, 0.1)
		}
		g := cut(start, end)
		turned, fresh := g.Turned(outside(s.cone), theta), cut(m.Apply(start), m.Apply(end))
		near := func(what string, got, want, within float64) {
			if !(math.Abs(got-want) <= within) {
				t.Errorf("%s is %g, wanted %g: turned by %g, %v", what, got, want, theta, s)
			}
		}
		for i, at := range turned.Samples {
			was := g.Samples[i]
			near("θ", at.Theta, was.Theta+theta, rounding)
			near("left", r2.Norm(r2.Sub(at.LeftEdge, at.At)), math.Abs(was.Left), rounding)
			near("right", r2.Norm(r2.Sub(at.RightEdge, at.At)), math.Abs(was.Right), rounding)
			// The place on the map and the angle and height tell the same place.
			where, height := s.cone.Reverse(at.At)
			near("reversed θ", where, at.Theta, rounding)
			near("height", height, was.Height, rounding)
		}
		for i, o := range turned.Outlines {
			for j, p := range o.Points {
				near("outline", r2.Norm(r2.Sub(p, m.Apply(g.Outlines[i].Points[j]))), 0, rounding)
			}
		}
		if turned.Touch != fresh.Touch {
			t.Errorf("turned, touch is %v: %v", fresh.Touch, s)
		}
		near("depth", turned.Depth, fresh.Depth, settled)
		near("width", turned.Width, fresh.Width, 10*settled) // where a broad panel runs out gently
		near("volume", turned.Volume, fresh.Volume, settled*(1+fresh.Volume))
	})
}

// A groove cut deeper is never narrower, and a longer touch never shallower.
func TestDeeperIsWider(t *testing.T) {
	t.Parallel()
	everyEdge(t, 150, func(t *testing.T, rnd *rand.Rand, s *scene) {
		if s.bend != 0 {
			return // a bend sweeps a deeper wheel's longer contact farther, or presses it
		}
		deeper := s.depth * between(rnd, 1, 2)
		g, h := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0), groove.Cut(outside(s.cone), s.line(), s.wheel, deeper, 0)
		// Drawn askew, a wheel takes a little more than its own width; pressed in at
		// one place it does not.
		if h.Touch == g.Touch && h.Width < g.Width-settled || h.Depth < g.Depth {
			t.Errorf("%g mm deep %g wide, %g mm deep %g wide: %v", g.Depth, g.Width, h.Depth, h.Width, s)
		}
		if g.Depth > g.Asked || g.Short() && !g.Touch {
			t.Errorf("asked for %g, it is %g deep: %v", g.Asked, g.Depth, s)
		}
		short := *s
		short.length *= between(rnd, 0.5, 1)
		if k := groove.Cut(outside(s.cone), short.line(), s.wheel, s.depth, 0); g.Touch && !(k.Touch && k.Depth < g.Depth) {
			t.Errorf("%g mm long %g deep, %g mm long %g deep: %v", g.Length, g.Depth, k.Length, k.Depth, s)
		}
	})
}

// Polishing widens each side of every sample by just what it takes.
func TestPolishWidens(t *testing.T) {
	t.Parallel()
	everyEdge(t, 50, func(t *testing.T, rnd *rand.Rand, s *scene) {
		polish := between(rnd, 0, 0.5)
		plain, polished := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0), groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, polish)
		for i, at := range polished.Samples {
			was := plain.Samples[i]
			if was.Left+was.Right == 0 {
				continue
			}
			if math.Abs(at.Left-was.Left-polish) > rounding || math.Abs(at.Right-was.Right-polish) > rounding {
				t.Errorf("polishing by %g widens %g, %g to %g, %g: %v", polish, was.Left, was.Right, at.Left, at.Right, s)
			}
		}
		if polished.Depth != plain.Depth || polished.Volume != plain.Volume {
			t.Errorf("polishing changes the depth from %g to %g, the volume from %g to %g", plain.Depth, polished.Depth, plain.Volume, polished.Volume)
		}
	})
}

// Whatever a job may ask, the answer is made of numbers, and of lengths that can be.
func TestExtremes(t *testing.T) {
	t.Parallel()
	wheels := []groove.Wheel{
		{Edge: groove.Mitre, Angle: degrees(60)},
		{Edge: groove.Mitre, Angle: degrees(140)},
		{Edge: groove.Mitre, Angle: degrees(20), Tip: 0.5},
		{Edge: groove.Mitre, Angle: degrees(90), TipRadius: 0.5},
		{Edge: groove.Round, Convex: 1},
		{Edge: groove.Round, Convex: 50},
		{Edge: groove.Flat},
		{Edge: groove.Gang, Angle: degrees(90), Mitres: 4, Spacing: 1},
	}
	for _, wheel := range wheels {
		for _, radius := range []float64{5, 40, 200} {
			for _, thick := range []float64{0.5, 12} {
				for _, glass := range []float64{12, 60} {
					for _, half := range []float64{-20, 0, 1e-10, 20} {
						for _, psi := range []float64{0, 1e-6, 40, 90, 130, 270} {
							for _, length := range []float64{0.5, 8, 40} {
								for _, depth := range []float64{1e-3, 0.5, 5} {
									w := wheel
									w.Radius, w.Thick = radius, thick
									extreme(t, w, glass, degrees(half), degrees(psi), length, depth)
								}
							}
						}
					}
				}
			}
		}
	}
}

func extreme(t *testing.T, w groove.Wheel, glass, half, psi, length, depth float64) {
	cone := geometry.NewCone(geometry.Angle(half), geometry.Circle{Radius: glass, Height: 50}, 50)
	sin, cos := math.Sincos(psi)
	off := r2.Scale(length/2, geometry.Point{X: sin, Y: cos})
	middle := geometry.Point{Y: 50}
	if apex := cone.ApexRadius(50); math.Abs(apex) < length {
		return // the mark would run over the apex
	}
	g := groove.Cut(outside(cone), groove.NewLine([]geometry.Point{r2.Sub(middle, off), r2.Add(middle, off)}), w, depth, 0)
	numbers := []float64{g.Length, g.Depth, g.Width, g.Volume, g.WheelFit.Buried}
	for _, s := range g.Samples {
		numbers = append(numbers, s.Theta, s.Height, s.Along, s.Depth, s.Left, s.Right, s.LeftEdge.X, s.LeftEdge.Y)
	}
	for _, o := range g.Outlines {
		for _, p := range o.Points {
			numbers = append(numbers, p.X, p.Y)
		}
	}
	what := fmt.Sprintf("%+v on a glass of radius %g, half-angle %g, %g mm at %g rad, %g deep", w, glass, half, length, psi, depth)
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%v in a groove: %s", x, what)
			return
		}
	}
	// No wheel cuts wider than itself, but for what its ends sweep askew.
	if g.Depth <= 0 || g.Depth > depth || g.Volume < 0 || g.Width < 0 || g.Width > 2*w.Thick+1 {
		t.Errorf("%g deep, %g wide, %g mm³: %s", g.Depth, g.Width, g.Volume, what)
	}
}

// A long cut laid in two pieces that run on into one another is as deep and wide
// where they meet as in one piece.
func TestRunningOn(t *testing.T) {
	t.Parallel()
	everyEdge(t, 100, func(t *testing.T, _ *rand.Rand, s *scene) {
		// The wheel that comes or goes on is taken to do so for as far as it bites.
		if tail, last := s.tails(); s.bend != 0 || last-tail < 5*tail {
			return
		}
		whole := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
		n := len(whole.Samples)
		first, meet, last := whole.Samples[0].At, whole.Middle(), whole.Samples[n-1].At
		before := groove.NewLine([]geometry.Point{first, meet.At}).RunningOn(false, true)
		after := groove.NewLine([]geometry.Point{meet.At, last}).RunningOn(true, false)
		g, h := groove.Cut(outside(s.cone), before, s.wheel, s.depth, 0), groove.Cut(outside(s.cone), after, s.wheel, s.depth, 0)
		for _, at := range []groove.Sample{g.Samples[len(g.Samples)-1], h.Samples[0]} {
			if off := r2.Norm(r2.Sub(at.At, meet.At)); off > rounding {
				t.Errorf("a piece ends %g from where it meets the other: %v", off, s)
			}
			if math.Abs(at.Depth-meet.Depth) > settled || math.Abs(at.Left-meet.Left) > 2*settled || math.Abs(at.Right-meet.Right) > 2*settled {
				t.Errorf("where pieces meet: %g deep, %g and %g wide; in one piece %g, %g and %g: %v",
					at.Depth, at.Left, at.Right, meet.Depth, meet.Left, meet.Right, s)
			}
		}
		if v := g.Volume + h.Volume; math.Abs(v/whole.Volume-1) > 0.01 {
			t.Errorf("in two pieces %g mm³, in one %g: %v", v, whole.Volume, s)
		}
	})
}
