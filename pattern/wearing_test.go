package pattern

import (
	"math"
	"math/rand/v2"
	"testing"

	"roundlay/pattern/groove"
)

// Upright on a straight glass the wheel meets a straight line: a wheel of radius R pressed in
// by d makes a mark of 2√(2Rd − d²), the chord of a circle. With R = 50 and d = 0.5 that is
// 14.1067 mm. A tenth less is 14.0067, for which R = (7.00337² + 0.25) / 1 = 49.2971 mm: the
// wheel has lost 1.4057 mm of its diameter. At 1 mm in 10 m that takes 14.057 m of groove;
// a piece has four bars of 40 mm, 0.16 m, so it is 87.9 pieces.
func TestWearingUpright(t *testing.T) {
	j := jobOn(straight(t), 4, bar(t, 0, 30, 40, depth(0.5), with(mitre)))
	j.Rack[mitre].Wear = groove.Wear{Lost: 1, Groove: 10000}
	p := laid(t, j)
	w, ok := p.Wearing(p.Order()[0], 0.1)
	if !ok || w.Cut == nil {
		t.Fatalf("%+v, %t", w, ok)
	}
	// The figures above are rounded to a ten-thousandth of a millimetre.
	if !near(w.PerPiece, 0.016, 1e-9) || !near(w.Across, 2*49.2971, 0.001) || !near(w.Groove, 14057, 10) || w.Pieces != 87 || !near(w.Shorter, 0.1, 1e-5) || w.Deeper != 0 {
		t.Errorf("%+v", w)
	}

	// Twice as fast, in half as many pieces; ten thousand times as fast, within one.
	j.Rack[mitre].Wear = groove.Wear{Lost: 2, Groove: 10000}
	if w, _ := p.Wearing(p.Order()[0], 0.1); w.Pieces != 43 {
		t.Errorf("twice as fast: %+v", w)
	}
	j.Rack[mitre].Wear = groove.Wear{Lost: 20, Groove: 100}
	if w, _ := p.Wearing(p.Order()[0], 0.1); w.Pieces != 0 || !near(w.Groove, 7.0285, 0.01) {
		t.Errorf("in one piece: %+v", w)
	}
	// Half the wheel takes 14.1067 − 2√(25 − 0.25) = 4.157 mm off the mark.
	if w, _ := p.Wearing(p.Order()[0], 4.2); w.Cut != nil || !near(w.Across, 50, 1e-9) {
		t.Errorf("half worn away: %+v", w)
	}
	if w, _ := p.Wearing(p.Order()[0], 4.1); w.Cut == nil {
		t.Errorf("before it is half worn away: %+v", w)
	}
	j.Rack[mitre].Wear = groove.Wear{}
	if w, ok := p.Wearing(p.Order()[0], 0.1); ok {
		t.Errorf("without its wear: %+v", w)
	}
}

// chordOfCircles is what two circles have in common (MathWorld, Circle-Circle Intersection):
// R and r are their radii and d the distance of their centres.
func chordOfCircles(R, r, d float64) float64 {
	return math.Sqrt(4*d*d*R*R-math.Pow(d*d-r*r+R*R, 2)) / d
}

// Level marks of a straight glass are the arc of its circle between the two places in which
// it meets the wheel's. The wheel and the depth are drawn at random, touches among them.
func TestWearingLevel(t *testing.T) {
	const glass, tolerance = 40.0, 0.1 // mm
	random := rand.New(rand.NewPCG(3, 5))
	touches := 0
	for range 40 {
		radius, deep, long := 20+60*random.Float64(), 0.2+random.Float64(), 4+10*random.Float64()
		j := jobOn(straight(t), 4, bar(t, 0, 30, long, depth(deep), turn(90), with(mitre)))
		j.Rack[mitre].Radius = radius
		j.Rack[mitre].Wear = groove.Wear{Lost: 1, Groove: 1000}
		p := laid(t, j)
		w, ok := p.Wearing(p.Order()[0], tolerance)
		if !ok {
			t.Fatalf("%+v", w)
		}
		mark := func(R, deep float64) float64 {
			return 2 * glass * math.Asin(chordOfCircles(R, glass, glass+R-deep)/(2*glass))
		}
		cut := p.Cuts[0]
		change := mark(radius, cut.Depth) - mark(w.Across/2, cut.Depth)
		// The kernel's contact is exact to a hundredth of a millimetre at most, and so is
		// the difference of two to far less.
		switch {
		case w.Cut == nil && change > tolerance:
			t.Errorf("R = %g, %g deep: a change of %g at half the wheel wasn't seen", radius, deep, change)
		case w.Cut != nil && !near(change, tolerance, 1e-4):
			t.Errorf("R = %g, %g deep: at %g across the mark is shorter by %g", radius, deep, w.Across, change)
		}
		if w.Cut == nil || !cut.Touch {
			continue
		}
		touches++
		// Made as long as before, the worn wheel goes in until its mark is as long.
		if length := mark(w.Across/2, cut.Depth+w.Deeper); w.Deeper <= 0 || !near(length, mark(radius, cut.Depth), 1e-3) {
			t.Errorf("R = %g, %g deep, %g deeper: %g long, and was %g", radius, cut.Depth, w.Deeper, length, mark(radius, cut.Depth))
		}
	}
	if touches < 10 {
		t.Errorf("only %d touches", touches)
	}
}

// A ring has no ends, and comes out as long with any wheel.
func TestWearingRing(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "ring", nil, with(mitre)))
	j.Rack[mitre].Wear = groove.Wear{Lost: 1, Groove: 1000}
	p := laid(t, j)
	if w, ok := p.Wearing(p.Order()[0], 0.001); !ok || w.Cut != nil || !near(w.Across, 50, 1e-9) {
		t.Errorf("%+v, %t", w, ok)
	}
}

// On every kind of glass and with every edge: at the wheel's size that is given no cut of
// the pass has changed by more than the tolerance, and a little later one has.
func TestWearingFirst(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 2))
	const tolerance = 0.1
	told := 0
	for range 25 {
		j := scattered(t, random)
		for i := range j.Rack {
			j.Rack[i].Wear = groove.Wear{Lost: 0.5, Groove: 30000}
		}
		p := laid(t, j)
		for _, pass := range p.Order() {
			w, ok := p.Wearing(pass, tolerance)
			if !ok {
				t.Fatalf("%+v", pass)
			}
			wheel := j.Rack[pass.Wheel]
			worst, first := 0.0, 0.0
			for _, c := range p.ended(pass) {
				if c.Bridges() {
					continue
				}
				at := func(radius float64) float64 { return c.LengthFor(&p.Surface, wheel.Worn(radius), c.Depth) }
				worst = max(worst, at(wheel.Radius)-at(w.Across/2))
				first = max(first, at(wheel.Radius)-at(w.Across/2-0.01))
			}
			if worst > tolerance+1e-6 || w.Cut != nil && first <= tolerance {
				t.Errorf("wheel %s at %g: worst %g, then %g", wheel.Name, w.Across, worst, first)
			}
			if w.Cut != nil {
				told++
			}
			if float64(w.Pieces)*p.Length(pass) > w.Groove+1e-6 {
				t.Errorf("%d pieces are more than %g mm of groove", w.Pieces, w.Groove)
			}
		}
	}
	if told < 20 {
		t.Errorf("only %d wheels", told)
	}
}
