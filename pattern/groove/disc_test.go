package groove

import (
	"math"
	"testing"

	"roundlay/geometry"
)

// level is the inside over a disc: a floor of 8 mm.
type level struct{}

func (level) Distance(_, height float64) float64 { return 8 - height }
func (level) Kinks() []float64                   { return nil }

// On a flat plane a groove is known by hand wherever it lies, also over the middle of the
// disc: 0.8 mm deep a mitre of 90° is 1.6 mm wide, a wheel of 40 mm radius marks a chord of
// 2√(2·40·0.8 − 0.8²), and a round edge of 6 mm radius leaves 2√(2·6·0.8 − 0.8²).
func TestDiscByHand(t *testing.T) {
	disc := geometry.Disc(30)
	cutter := NewCutter(&disc, level{})
	mitre := Wheel{Edge: Mitre, Radius: 40, Thick: 12, Angle: math.Pi / 2}
	round := Wheel{Edge: Round, Radius: 40, Thick: 12, Convex: 6}
	chord := 2 * math.Sqrt(2*40*0.8-0.8*0.8)
	for _, c := range []struct{ from, to geometry.Point }{
		{geometry.Point{X: -20}, geometry.Point{X: 20}},                 // over the middle
		{geometry.Point{Y: 22}, geometry.Point{Y: -18}},                 // likewise, along the ray of θ = 0
		{geometry.Point{}, geometry.Point{X: 15, Y: 20}},                // from the middle
		{geometry.Point{X: -20, Y: 1e-7}, geometry.Point{X: 20}},        // all but over it
		{geometry.Point{X: -10, Y: -20}, geometry.Point{X: 15, Y: -20}}, // across θ = 180°
		{geometry.Point{X: 25, Y: -10}, geometry.Point{X: 12, Y: 18}},
	} {
		line := NewLine([]geometry.Point{c.from, c.to})
		g := cutter.Cut(line, mitre, 0.8, 0)
		if g.Touch || math.Abs(g.Depth-0.8) > 1e-9 || math.Abs(g.Width-1.6) > 1e-6 || math.Abs(g.Length-line.Length()) > 1e-9 {
			t.Errorf("%v to %v: touch %v, %.6f deep, %.6f wide, %.6f long", c.from, c.to, g.Touch, g.Depth, g.Width, g.Length)
		}
		if math.Abs(g.Remains.Min-7.2) > 1e-6 {
			t.Errorf("%v to %v: %.6f left, by hand 7.2", c.from, c.to, g.Remains.Min)
		}
		for i, s := range g.Samples {
			if off := math.Abs(math.Hypot(s.At.X, s.At.Y) - s.Height); off > 1e-9 {
				t.Errorf("a sample %g from the middle is at %v", s.Height, s.At)
			}
			if far := disc.Forward(s.Theta, s.Height); math.Hypot(far.X-s.At.X, far.Y-s.At.Y) > 1e-9 {
				t.Errorf("θ = %g, %g from the middle is not %v", s.Theta, s.Height, s.At)
			}
			if i > 0 && math.Abs(s.Theta-g.Samples[i-1].Theta) > math.Pi+1e-9 {
				t.Errorf("θ jumps from %g to %g", g.Samples[i-1].Theta, s.Theta)
			}
		}
		if g = cutter.Cut(line, round, 0.8, 0); math.Abs(g.Width-2*math.Sqrt(2*6*0.8-0.8*0.8)) > 1e-6 {
			t.Errorf("%v to %v: round %.6f wide", c.from, c.to, g.Width)
		}
		// A mark as long as the chord is one touch of that depth.
		share := chord / line.Length()
		end := geometry.Point{X: c.from.X + share*(c.to.X-c.from.X), Y: c.from.Y + share*(c.to.Y-c.from.Y)}
		g = cutter.Cut(NewLine([]geometry.Point{c.from, end}), mitre, 1.5, 0)
		if !g.Touch || math.Abs(g.Depth-0.8) > 1e-6 {
			t.Errorf("a touch of %.4f mm: %v, %.6f deep", chord, g.Touch, g.Depth)
		}
	}
}

// A circle round the middle runs on without a jump of θ, as wide as a straight cut or, as the
// wheel is straight and the line is not, a little wider.
func TestDiscCircle(t *testing.T) {
	disc := geometry.Disc(30)
	points := make([]geometry.Point, 721)
	for i := range points {
		points[i] = disc.Forward(math.Pi*(float64(i)/360-1), 20)
	}
	mitre := Wheel{Edge: Mitre, Radius: 12, Thick: 12, Angle: math.Pi / 2}
	g := NewCutter(&disc, level{}).Cut(NewLine(points).RunningOn(true, true), mitre, 0.5, 0)
	if all := math.Abs(g.Samples[len(g.Samples)-1].Theta - g.Samples[0].Theta); math.Abs(all-2*math.Pi) > 0.01 {
		t.Errorf("it runs round %g", all)
	}
	if g.Width < 1-1e-9 || g.Width > 1.2 || math.Abs(g.Remains.Min-7.5) > 1e-6 {
		t.Errorf("%g wide, %g left", g.Width, g.Remains.Min)
	}
}
