package pattern

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

func inside(n int) func(*job.Motif) { return func(m *job.Motif) { m.Inside = n } }

// TestInside places bars in the box of another motif by hand. The glass is
// straight, 80 mm across, with three repeats and a band of 60 mm: the box of the
// outer motif, half a pitch wide and half the band high, is 41.888 × 30 mm about
// a point 50 mm above the table.
//
//	+---------------+
//	|       |       |  the bar in the middle is half the box high; the other
//	|       |    |  |  stands a quarter of the box to the right, and a sixth of
//	|            |  |  its height below the middle
//	+---------------+
func TestInside(t *testing.T) {
	const width = 2 * math.Pi * 40 / 3 / 2
	for _, c := range []struct {
		name     string
		outer    func(*job.Motif)
		from, to geometry.Point // of the bar's line, about the box's middle
	}{
		{"upright", turn(0), geometry.Point{X: width / 4, Y: -12.5}, geometry.Point{X: width / 4, Y: 2.5}},
		{"turned", turn(90), geometry.Point{X: 12.5, Y: width / 4}, geometry.Point{X: -2.5, Y: width / 4}},
		{"mirrored", mirrored, geometry.Point{X: -width / 4, Y: -12.5}, geometry.Point{X: -width / 4, Y: 2.5}},
		{"of its own shape", trueShape, geometry.Point{X: width / 4, Y: -12.5}, geometry.Point{X: width / 4, Y: 2.5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			outer := motif(t, "diamond", nil, size(0.5, 0.5), at(0.1, 0.5), c.outer)
			inner := motif(t, "fan", map[string]float64{"rays": 1, "hub": 0}, size(1, 0.5), at(0.25, 1.0/3), inside(1))
			inner.Shape = outer.Shape
			p := laid(t, jobOn(straight(t), 3, outer, inner))
			cut := p.Cuts[len(p.Cuts)-1]
			middle := geometry.Point{X: 0.1 * 2 * width, Y: 50}
			for i, want := range []geometry.Point{c.from, c.to} {
				if got := r2.Sub(cut.Ends()[i], middle); r2.Norm(r2.Sub(got, want)) > 1e-9 {
					t.Errorf("end %d is at %v about the box's middle, by hand %v", i, got, want)
				}
			}
		})
	}
}

// TestInsideInside nests a motif in one that is nested: each halves the box.
func TestInsideInside(t *testing.T) {
	outer := motif(t, "diamond", nil, size(0.5, 1))
	middle := motif(t, "diamond", nil, size(0.5, 0.5), at(0, 0.75), inside(1))
	inner := motif(t, "fan", map[string]float64{"rays": 1, "hub": 0}, size(0.5, 0.5), at(0, 0.75), inside(2))
	p := laid(t, jobOn(straight(t), 3, outer, middle, inner))
	ends := p.Cuts[len(p.Cuts)-1].Ends()
	// The band is from 20 to 80; the middle box from 50 to 80; the inner 15 mm high
	// about 50 + 0.75 × 30 = 72.5.
	for i, want := range []float64{65, 80} {
		if math.Abs(ends[i].Y-want) > 1e-9 || math.Abs(ends[i].X) > 1e-9 {
			t.Errorf("end %d is at %v, by hand %g up", i, ends[i], want)
		}
	}
	if !NewEvaluator().ClearsMotif(t.Context(), p.Job, 2) != involves(t, p.Job, 2) {
		t.Error("the evaluator and a check are at odds")
	}
}

// TestInsideTaper sets a bar to the edge of a box on a glass that widens: it
// keeps to the box's edge all the way up, at one angle round the glass.
func TestInsideTaper(t *testing.T) {
	outer := motif(t, "diamond", nil, size(0.5, 0.8))
	inner := motif(t, "fan", map[string]float64{"rays": 1, "hub": 0}, at(0.5, 0.5), inside(1))
	p := laid(t, jobOn(blankOf(t, 30, 45), 3, outer, inner))
	for _, end := range p.Cuts[len(p.Cuts)-1].Ends() {
		if theta, _ := p.Surface.Reverse(end); math.Abs(theta-p.PitchAngle()/4) > 1e-9 {
			t.Errorf("an end is at θ = %g, the box's edge at %g", theta, p.PitchAngle()/4)
		}
	}
}

// TestInsideSet lays a nest out on a set: the inner motif keeps its share of the
// outer one, which is of one size on all blanks.
func TestInsideSet(t *testing.T) {
	outer := motif(t, "diamond", nil, size(0.5, 0.5))
	inner := motif(t, "fan", map[string]float64{"rays": 1, "hub": 0}, size(0.5, 0.5), inside(1))
	j := jobOn(blankOf(t, 40, 40), 3, outer, inner)
	wide := blankOf(t, 44, 44)
	wide.Name = "wide"
	j.Blanks = append(j.Blanks, wide)
	var lengths []float64
	for _, b := range j.Blanks {
		p, err := lay(context.Background(), j, b)
		if err != nil {
			t.Fatal(err)
		}
		if s := p.set(p.sized[1]); math.Abs(s.width-2*math.Pi*40/3/4) > 1e-9 {
			t.Errorf("%q: the inner box is %g mm wide, by hand %g", b.Name, s.width, 2*math.Pi*40/3/4)
		}
		lengths = append(lengths, p.Cuts[len(p.Cuts)-1].Length)
	}
	if math.Abs(lengths[0]-15) > 1e-6 || math.Abs(lengths[1]-15) > 1e-6 {
		t.Errorf("the inner bars are %v mm long, by hand 15", lengths)
	}
}

// TestMovesToAnotherGlass changes the blank alone: without a stated band, and
// with heights as fractions of it, the design goes up as far as the wall of
// either glass carries the deepest cut.
//
// 0.8 mm deep, with 1.6 mm to be left square to the hollow, which lies at a slant of
// g to the outside, the wall must be 0.8 + 1.6 √(1 + g²) mm. From 6 mm at the foot it
// goes to 1.2 mm at a rim 96 mm up, so that g is 0.05: that is at 71.96 mm. Of the
// other to 1 mm, 120 mm up and 120.4 mm along the slant: at 86.37 mm.
func TestMovesToAnotherGlass(t *testing.T) {
	low := blank(t, glass.Station{Height: 0, Radius: 40, Wall: 6}, glass.Station{Height: 96, Radius: 40, Wall: 1.2})
	high := blank(t, glass.Station{Height: 0, Radius: 35, Wall: 6}, glass.Station{Height: 120, Radius: 45, Wall: 1})
	j := jobOn(low, 4, motif(t, "fan", map[string]float64{"rays": 1, "hub": 0}, depth(0.8), size(1, 0.5), at(0, 0.75)))
	j.Layout.Band = nil
	for _, c := range []struct {
		blank *glass.Blank
		top   float64
	}{
		{low, 96 * (1 - (0.8+1.6*math.Hypot(1, 4.8/96)-1.2)/4.8)},
		{high, 120 * (1 - (0.8+1.6*math.Hypot(1, 5/math.Hypot(120, 10))-1)/5)},
	} {
		j.Blanks[0] = c.blank
		p := planned(t, j)
		if len(p.Findings) > 0 || math.Abs(p.Band.Top-c.top) > 1e-6 || p.Band.Foot != j.Limits.Foot {
			t.Errorf("the band is %v, by hand up to %g; found %+v", p.Band, c.top, p.Findings)
		}
		// The bar fills the upper half of the band.
		_, foot := p.Surface.Reverse(p.Cuts[0].Ends()[0])
		_, top := p.Surface.Reverse(p.Cuts[0].Ends()[1])
		if math.Abs(top-c.top) > 1e-6 || math.Abs(foot-(c.top+p.Band.Foot)/2) > 1e-6 {
			t.Errorf("the bar goes from %g to %g, by hand from %g to %g", foot, top, (c.top+p.Band.Foot)/2, c.top)
		}
	}
}
