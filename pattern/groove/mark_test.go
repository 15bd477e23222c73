package groove_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

const up, level = 0, math.Pi / 2

func straightSite(t *testing.T, radius, lean float64) *groove.Site {
	t.Helper()
	s, err := groove.NewStraightSite(radius, lean)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A level mark on a straight glass ends where the wheel's circle meets the glass's, on
// their common chord (Wolfram MathWorld, "Circle-circle intersection"); an upright one is
// the chord of the wheel alone. From length to depth and back.
func TestMarkIsACommonChord(t *testing.T) {
	for _, c := range []struct{ glass, wheel, depth float64 }{
		{40, 38, 0.8}, {40, 75, 1.6}, {30, 20, 2.5}, {55, 100, 0.2}, {32, 10, 0.05},
	} {
		r, R, D := c.glass, c.wheel, c.glass+c.wheel-c.depth
		chord := math.Sqrt(4*D*D*R*R-math.Pow(D*D-r*r+R*R, 2)) / D
		lengths := map[float64]float64{
			level: 2 * r * math.Asin(chord/(2*r)), // along the glass
			up:    2 * math.Sqrt(2*R*c.depth-c.depth*c.depth),
		}
		for lean, want := range lengths {
			s := straightSite(t, r, lean)
			w := groove.Wheel{Edge: groove.Mitre, Radius: R, Thick: 12, Angle: math.Pi / 2}
			if got, ok := s.LengthOfDepth(w, c.depth); !ok || math.Abs(got-want) > 1e-3 {
				t.Errorf("wheel %g on glass %g, %g deep, leaning %.2f: %.4f mm long, by its chord %.4f", R, r, c.depth, lean, got, want)
			}
			if got, ok := s.Mark(w, want); !ok || math.Abs(got.Depth-c.depth) > 1e-4 {
				t.Errorf("wheel %g on glass %g, %.4f mm long, leaning %.2f: %.5f deep, want %g", R, r, want, lean, got.Depth, c.depth)
			}
		}
	}
}

// vWidth is by hand how wide a sharp V of half angle's tangent T is along a straight glass
// of radius r in the middle of a mark: an upright one is cut off by the circle, a level one by
// the straight line up the glass.
func vWidth(r, depth, T, lean float64) float64 {
	if lean == level {
		return 2 * depth * T
	}
	a, b, c := 1+1/(T*T), 2*(r-depth)/T, (r-depth)*(r-depth)-r*r
	return 2 * r * math.Asin((-b+math.Sqrt(b*b-4*a*c))/(2*a)/r)
}

func TestMarkIsAsWideAsItsSection(t *testing.T) {
	for _, depth := range []float64{0.1, 0.7, 2} {
		for _, angle := range []float64{60, 90, 120} {
			for _, lean := range []float64{up, level} {
				s, T := straightSite(t, 40, lean), math.Tan(degrees(angle)/2)
				w := groove.Wheel{Edge: groove.Mitre, Radius: 60, Thick: 20, Angle: degrees(angle)}
				length, _ := s.LengthOfDepth(w, depth)
				g, _ := s.Mark(w, length)
				want := vWidth(40, depth, T, lean)
				if math.Abs(g.Width-want) > 2e-3 {
					t.Errorf("%g deep at %g°, leaning %.2f: %.4f wide, by hand %.4f", depth, angle, lean, g.Width, want)
				}
				if back, ok := s.LengthOfWidth(w, g.Width); !ok || math.Abs(back-length) > 1e-2 {
					t.Errorf("%g deep at %g°, leaning %.2f: %.4f long, from its width %.4f", depth, angle, lean, length, back)
				}
			}
		}
	}
}

// The size of wheel that readings allow is worked out by hand for sharp Vs: the width
// gives the depth, and depth and length the circle through the mark's ends.
func TestSizesOfAVByHand(t *testing.T) {
	radius := func(r, T, length, width, lean float64) float64 {
		a, h := length/2, width/2/T
		if lean == level {
			a = r * math.Sin(length/(2*r))
			h -= r - math.Sqrt(r*r-a*a)
		} else {
			b := r * math.Sin(width/(2*r))
			h = b/T + r - math.Sqrt(r*r-b*b)
		}
		return (a*a + h*h) / (2 * h)
	}
	length, width := groove.Rounded(14, geometry.MillimetresPerInch/64), groove.Rounded(2.4, geometry.MillimetresPerInch/64)
	for _, lean := range []float64{up, level} {
		s := straightSite(t, 42, lean)
		w := groove.Wheel{Edge: groove.Mitre, Thick: 20, Angle: degrees(80)}
		got := s.LikeOfAny(w, length, width, groove.Range{Low: 3, High: 500})
		T := math.Tan(degrees(40))
		low, high := radius(42, T, length.Low, width.High, lean), radius(42, T, length.High, width.Low, lean)
		if !got.Fits || got.Smallest || got.Largest || math.Abs(got.Radius.Low/low-1) > 2e-3 || math.Abs(got.Radius.High/high-1) > 2e-3 {
			t.Errorf("leaning %.2f: radii %+v, by hand %.3f to %.3f", lean, got, low, high)
		}
	}
}

// randomMark returns a wheel such as glass is cut with, and a mark of it.
func randomMark(t *testing.T, rnd *rand.Rand, s *groove.Site) (groove.Wheel, groove.Groove) {
	t.Helper()
	for range 100 {
		w := randomWheel(rnd, groove.Edge(rnd.IntN(4)))
		most := min(s.Longest(w), 0.8*w.Radius)
		if most < 4 {
			continue
		}
		if g, ok := s.Mark(w, between(rnd, 3, most)); ok && g.Width > 0.5 {
			return w, g
		}
	}
	t.Fatal("no mark could be drawn")
	return groove.Wheel{}, groove.Groove{}
}

// Of 200 marks read to a 64th of an inch, the wheel and the depth that made each are within
// what is said of them, and no wheel that is a little beyond that agrees with the readings.
func TestLikeFindsTheWheel(t *testing.T) {
	const step = geometry.MillimetresPerInch / 64
	rnd := rand.New(rand.NewPCG(14, 5))
	read := func(mm float64) groove.Range { return groove.Rounded(math.Round(mm/step)*step, step) }
	within := func(r groove.Range, x, slack float64) bool {
		return r.Low-slack <= x && x <= r.High+slack
	}
	radii := groove.Range{Low: 2.5, High: 500}
	told, ended := 0, 0
	for i := range 200 {
		lean := between(rnd, 0, level)
		switch i % 3 {
		case 0:
			lean = up
		case 1:
			lean = level
		}
		s := straightSite(t, between(rnd, 25, 60), lean)
		w, g := randomMark(t, rnd, s)
		length, width := read(g.Length), read(g.Width)
		if like := s.Like(w, length, width); !like.Fits || !within(like.Depth, g.Depth, 1e-4) {
			t.Errorf("%d: %v of %g mm, %.3f long, %.3f deep, %.3f wide: %+v", i, w.Edge, w.Radius, g.Length, g.Depth, g.Width, like)
		}
		sizes := s.LikeOfAny(w, length, width, radii)
		if !sizes.Fits || !within(sizes.Radius, w.Radius, 1e-3*w.Radius) || !within(sizes.Depth, g.Depth, 1e-3) {
			t.Errorf("%d: %v of %g mm, %.3f long, %.3f deep, %.3f wide: %+v", i, w.Edge, w.Radius, g.Length, g.Depth, g.Width, sizes)
		}
		if !sizes.Largest && sizes.Radius.High < 1.3*sizes.Radius.Low {
			told++
		}
		const beyond = 1.02
		for _, r := range []float64{sizes.Radius.Low / beyond, sizes.Radius.High * beyond} {
			if i%4 > 0 || r < radii.Low || r > radii.High {
				continue
			}
			ended++
			if w.Radius = r; s.Like(w, length, width).Fits {
				t.Errorf("%d: %v of %.2f mm agrees, and lies beyond %+v", i, w.Edge, r, sizes)
			}
		}
	}
	if told < 10 || ended < 60 {
		t.Errorf("only %d marks tell their wheel, only %d ends were looked at", told, ended)
	}
	t.Logf("%d of 200 marks tell their wheel's size within 30 %%; %d ends of ranges looked beyond", told, ended)
}

// On a waist, a wheel rounder than the hollow is told by its marks; one that is flatter rests
// on two places and makes none of a length.
func TestMarksInAHollow(t *testing.T) {
	profile, err := geometry.NewProfile([]geometry.Circle{
		{Radius: 46}, {Radius: 33, Height: 60}, {Radius: 46, Height: 120},
	})
	if err != nil {
		t.Fatal(err)
	}
	chart, _ := profile.FitCone(0, 120)
	waist := geometry.NewSurface(profile, chart)
	s := groove.NewSite(&waist, nil, 60, up)
	small := groove.Wheel{Edge: groove.Mitre, Radius: 25, Thick: 8, Angle: math.Pi / 2}
	g, ok := s.Mark(small, 15)
	if !ok {
		t.Fatal("a small wheel bridges")
	}
	_, hollow := waist.Curvatures(60)
	if want := 15.0 * 15 / 8 * (1/small.Radius + hollow); hollow > -0.005 || math.Abs(g.Depth/want-1) > 0.03 {
		t.Errorf("in a hollow of curvature %.4f a mark is %.3f deep, to second order %.3f", hollow, g.Depth, want)
	}
	if length, ok := s.LengthOfDepth(small, g.Depth); !ok || math.Abs(length-15) > 1e-2 {
		t.Errorf("a mark of 15 mm is as deep as one of %.3f", length)
	}
	large := groove.Wheel{Edge: groove.Mitre, Radius: 250, Thick: 8, Angle: math.Pi / 2}
	if g, ok := s.Mark(large, 15); ok {
		t.Errorf("a wheel flatter than the hollow makes a mark %.3f deep", g.Depth)
	}
}

// A mark that is wider than a wheel's face was made by none of that face, whatever its size.
func TestNoWheelIsLikeAMarkWiderThanItsFace(t *testing.T) {
	s := straightSite(t, 40, up)
	radii := groove.Range{Low: 2.5, High: 500}
	for _, w := range []groove.Wheel{
		{Edge: groove.Flat, Thick: 2}, {Edge: groove.Mitre, Thick: 2, Angle: math.Pi / 2}, {Edge: groove.Round, Thick: 2, Convex: 5},
	} {
		for width, want := range map[float64]bool{1.98: true, 5: false} {
			if got := s.LikeOfAny(w, groove.Rounded(12, 0.1), groove.Rounded(width, 0.1), radii); got.Fits != want {
				t.Errorf("a mark %g mm wide, %v edge 2 mm wide: %+v", width, w.Edge, got)
			}
		}
	}
}
