package wrap

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/printtest"
)

// The two ends of a wrap meet: rolled up, it is as long round as the glass is,
// paper and all. The girth is worked out here from the stations alone.
func TestEndsMeet(t *testing.T) {
	t.Parallel()
	straight := func(low, high float64) func(share float64) float64 {
		return func(share float64) float64 { return low + share*(high-low) }
	}
	for _, test := range []struct {
		name      string
		stations  string
		side      Side
		thickness float64
		radius    func(share float64) float64 // from the paper's lower edge to its upper
	}{
		{"straight", straightGlass, Outside, 0.1, straight(42, 42)},
		{"tapered", taperedGlass, Outside, 0.1, straight(35, 45)},
		{"tapered, card", taperedGlass, Outside, 0.4, straight(35, 45)},
		{"tall", tallGlass, Outside, 0.1, straight(45, 60)},
		{"narrowing", `{height=0, across=90, wall=7}, {height=120, across=70, wall=2}`, Outside, 0.1, straight(45, 35)},
		// The wall of 8 to 2 mm over 120 mm is 7.2 mm at the floor, 16 mm up.
		{"inside, wall tapering", straightGlass, Inside, 0.1, straight(42-7.2, 42-2)},
		{"inside, tapered", taperedGlass, Inside, 0.1, straight(taperedInside(16), taperedInside(120))},
	} {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			o := on(t, test.side, huge)
			o.Thickness = test.thickness
			r := roll(t, printtest.Trace(t, pdfOf(t, wrapOf(t, planOf(t, leafJob(test.stations, 5)), o)))[0])
			half := test.thickness / 2
			if test.side == Inside {
				half = -half
			}
			for _, share := range []float64{0, 0.5, 1} {
				want := 2 * math.Pi * (test.radius(share) + half)
				if got := r.girth(share); math.Abs(got-want) > 0.02 {
					t.Errorf("at %g of the height it is %.4f mm round, the glass with its paper %.4f", share, got, want)
				} else {
					t.Logf("at %g of the height: %.4f mm off", share, got-want)
				}
			}
		})
	}
}

// The tapered glass's outside rises by 1 in 12, so that its wall goes by sin α =
// 1/√145 up and by cos α = 12/√145 in. It thins in a straight line, and so the inside
// runs straight from the place opposite the foot to the one opposite the rim.
const taperedSin, taperedCos = 0.08304548, 0.99654576

// taperedInside returns the inside radius at a height.
func taperedInside(height float64) float64 {
	const low, high = 35 - 7*taperedCos, 45 - 2*taperedCos
	return low + (height-7*taperedSin)*(high-low)/(120-5*taperedSin)
}

// taperedOutside returns the height of the outside that the inside at a height is
// square to: h = z + (7 − 5z/120) sin α.
func taperedOutside(height float64) float64 { return (height - 7*taperedSin) / (1 - taperedSin/24) }

// An inside wrap carries every cut square through the wall: rolled up by its own
// edges, its lines lie at the angle and opposite the height of the cuts outside.
func TestInsideCarriesTheCuts(t *testing.T) {
	t.Parallel()
	for _, glass := range []struct {
		name, stations string
		outside        func(height float64) float64
	}{
		{"straight, wall tapering", straightGlass, func(height float64) float64 { return height }},
		{"tapered", taperedGlass, taperedOutside},
		// Flared by 20° a side under an even wall of 5 mm, which goes 5 sin 20° up.
		{"flared", `{height=0, across=60, wall=5}, {height=120, across=147.352855, wall=5}`, func(height float64) float64 {
			return height - 5*math.Sin(20*math.Pi/180)
		}},
		// A dish, flared by 27°, whose wall of 9 mm goes 4.09 mm up.
		{"dish", `{height=0, across=80, wall=9}, {height=100, across=181.905090, wall=9}`, func(height float64) float64 {
			return height - 4.085914
		}},
	} {
		t.Run(glass.name, func(t *testing.T) {
			t.Parallel()
			p := planOf(t, leafJob(glass.stations, 5))
			const floor = 16.0
			page := printtest.Trace(t, pdfOf(t, wrapOf(t, p, on(t, Inside, huge))))[0]
			r := roll(t, page)
			seam := findSeam(p, 1, 1)
			var worst float64
			lines := withPen(page, cutPen().Width)
			if len(lines) < len(p.Cuts)*p.Periods() {
				t.Fatalf("%d lines for %d cuts", len(lines), len(p.Cuts)*p.Periods())
			}
			for _, line := range lines {
				for _, q := range line.Points {
					turn, up := r.place(q)
					theta, z := seam+turn*2*math.Pi, floor+up*(p.Blank.Height()-floor)
					off := offCuts(p, theta, glass.outside(z))
					if worst = max(worst, off); off > 0.02 {
						t.Fatalf("the line at %.2f° and %.2f mm is %.3f mm from any cut", theta*180/math.Pi, z, off)
					}
				}
			}
			t.Logf("worst %.4f mm", worst)
		})
	}
}

// offCuts returns how far a place of the glass is from the nearest cut's line.
func offCuts(p *pattern.Plan, theta, z float64) float64 {
	best := math.Inf(1)
	radius := p.Blank.Profile().Radius(z)
	at := geometry.Point{X: radius * theta, Y: z}
	for turns := -1; turns <= p.Periods(); turns++ {
		for _, c := range p.Shifted(turns) {
			for i := 1; i < len(c.Samples); i++ {
				a, b := c.Samples[i-1], c.Samples[i]
				best = min(best, distance(at, geometry.Point{X: radius * a.Theta, Y: a.Height}, geometry.Point{X: radius * b.Theta, Y: b.Height}))
			}
		}
	}
	return best
}

// distance returns the distance from a place to the segment from a to b.
func distance(p, a, b geometry.Point) float64 {
	along := r2.Sub(b, a)
	length2 := r2.Norm2(along)
	if length2 == 0 {
		return r2.Norm(r2.Sub(p, a))
	}
	t := min(max(r2.Dot(r2.Sub(p, a), along)/length2, 0), 1)
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(t, along))))
}

// Why an inside wrap is not mirrored. Three places of the printed page, one to
// the right of another and one above it, are rolled up inside the glass, and
// someone outside looks at them through the wall. Right on the page has to be
// right in their eyes and up has to be up; and the side of the paper on which
// right, up and towards-the-reader go together as they do on a page is its
// printed one, which must be the side that lies on the glass, not the one that
// looks into it.
func TestInsideReadsThroughTheWall(t *testing.T) {
	t.Parallel()
	p := planOf(t, leafJob(taperedGlass, 5))
	for _, test := range []struct {
		name    string
		mirror  bool
		outward float64 // 1 if the printed face is to lie on the glass
	}{{"as it is", false, 1}, {"mirrored", true, -1}} {
		o := on(t, Inside, huge)
		o.Mirror, o.Seam = test.mirror, Butt
		page := printtest.Trace(t, pdfOf(t, wrapOf(t, p, o)))[0]
		r := roll(t, page)
		// In space: x to the right of someone who stands at negative y and looks
		// along y. The wrap is turned so that the place lies nearest to them.
		middle := r2.Scale(0.25, r2.Add(r2.Add(r.left[0], r.left[1]), r2.Add(r.right[0], r.right[1])))
		// A mirrored page is rolled the other way round.
		way := 1.0
		if test.mirror {
			way = -1
		}
		space := func(q geometry.Point) r3.Vec {
			turn, up := r.place(q)
			theta, z := way*(turn-0.5)*2*math.Pi-math.Pi/2, 16+up*104
			radius := taperedInside(z)
			sin, cos := math.Sincos(theta)
			return r3.Vec{X: radius * cos, Y: radius * sin, Z: z}
		}
		at := space(middle)
		right := r3.Sub(space(r2.Add(middle, geometry.Point{X: 1})), at)
		above := r3.Sub(space(r2.Add(middle, geometry.Point{Y: 1})), at)
		if !test.mirror && !(right.X > 0.9) || above.Z < 0.9 {
			t.Errorf("%s: right on the page is %.2f in the eyes of someone outside, up is %.2f", test.name, right, above)
		}
		reader := r3.Cross(right, above) // out of the printed face
		outward := r3.Vec{X: at.X, Y: at.Y}
		if r3.Dot(r3.Unit(reader), r3.Unit(outward))*test.outward < 0.9 {
			t.Errorf("%s: the printed face points %.2f, the glass lies %.2f", test.name, reader, outward)
		}
	}
}
