package groove_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// The depth goes through the shares at even distances, never leaves the range of its two
// neighbours, and has no kink.
func TestSwellGoesThroughItsShares(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 14))
	for range 300 {
		h := groove.Hand{Swell: make([]float64, groove.MinShares+rnd.IntN(groove.MaxShares-groove.MinShares+1))}
		for i := range h.Swell {
			h.Swell[i] = chance(rnd, 0.01, 1)
		}
		if err := h.Valid(); err != nil {
			t.Fatal(err)
		}
		parts := float64(len(h.Swell) - 1)
		for i, s := range h.Swell {
			if got := h.ShareAt(float64(i) / parts); math.Abs(got-s) > 1e-12 {
				t.Fatalf("share %d of %v is %g", i, h.Swell, got)
			}
			if i == 0 {
				continue
			}
			low, high := min(s, h.Swell[i-1]), max(s, h.Swell[i-1])
			for j := range 20 {
				at := (float64(i-1) + float64(j)/20) / parts
				if got := h.ShareAt(at); got < low-1e-12 || got > high+1e-12 {
					t.Fatalf("%g at %g of %v leaves %g to %g", got, at, h.Swell, low, high)
				}
			}
			if i < len(h.Swell)-1 {
				const by = 1e-6
				at := float64(i) / parts
				before, after := (h.ShareAt(at)-h.ShareAt(at-by))/by, (h.ShareAt(at+by)-h.ShareAt(at))/by
				if math.Abs(before-after) > 1e-2 {
					t.Fatalf("a kink at %g of %v: slopes %g and %g", at, h.Swell, before, after)
				}
			}
		}
	}
}

// What no hand can do is refused.
func TestHandRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, h := range []groove.Hand{
		{Swell: []float64{1}}, {Swell: make([]float64, groove.MaxShares+1)}, {Swell: []float64{0, 0}}, {Swell: []float64{1, 0, 1}},
		{Swell: []float64{1, -0.1}}, {Swell: []float64{1.01, 1}}, {Swell: []float64{nan, 1}}, {Swell: []float64{inf, 1}},
		{Rock: [2]float64{-0.1, 0}}, {Rock: [2]float64{0, nan}}, {Rock: [2]float64{inf, 0}}, {Rock: [2]float64{0, 1.001 * groove.MaxRock}},
	} {
		line := groove.NewLine([]geometry.Point{{}, {Y: 10}})
		if _, err := line.ByHand(h); err == nil || h.Valid() == nil {
			t.Errorf("%v is taken", h)
		}
	}
	for _, h := range []groove.Hand{{}, {Swell: []float64{0, 1}}, {Swell: []float64{1, 1}}, {Rock: [2]float64{0.5, 0.52}}} {
		if err := h.Valid(); err != nil {
			t.Errorf("%v: %v", h, err)
		}
	}
}

// handedLine returns a scene's line as one cut by hand.
func handedLine(t *testing.T, s *scene, h groove.Hand) groove.Line {
	t.Helper()
	line, err := s.line().ByHand(h)
	if err != nil {
		t.Fatal(err)
	}
	return line
}

// A hand that does nothing changes nothing; one that is even but shallower is that of the
// shallower cut.
func TestEvenHand(t *testing.T) {
	t.Parallel()
	everyEdge(t, 20, func(t *testing.T, _ *rand.Rand, s *scene) {
		g := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
		h := groove.Cut(outside(s.cone), handedLine(t, s, groove.Hand{Swell: []float64{1, 1, 1}}), s.wheel, s.depth, 0)
		k := groove.Cut(outside(s.cone), handedLine(t, s, groove.Hand{Swell: []float64{0.5, 0.5}}), s.wheel, 2*s.depth, 0)
		for _, o := range []groove.Groove{h, k} {
			if o.Volume != g.Volume || o.Depth != g.Depth || o.Width != g.Width || o.Asked != g.Asked || len(o.Samples) != len(g.Samples) {
				t.Errorf("%g deep, %g wide, %g mm³; even %g, %g and %g: %v", o.Depth, o.Width, o.Volume, g.Depth, g.Width, g.Volume, s)
			}
		}
	})
}

// reversed returns the hand of the same groove along the line from its end to its start.
func reversed(h groove.Hand) groove.Hand {
	h = h.Mirrored()
	h.Swell = slices.Clone(h.Swell)
	slices.Reverse(h.Swell)
	return h
}

// Cut from its other end the groove is the same, and mirrored it is mirrored: on an upright
// line of a straight glass, and on one round it.
func TestHandTurnedRound(t *testing.T) {
	t.Parallel()
	glass := geometry.NewCone(0, geometry.Circle{Radius: 40}, 0)
	rnd := rand.New(rand.NewPCG(3, 14))
	for _, edge := range []groove.Edge{groove.Mitre, groove.Round, groove.Flat, groove.Gang} {
		for i := range 8 {
			w, h := randomWheel(rnd, edge), randomHand(rnd)
			ends := [2]geometry.Point{{Y: 20}, {Y: 20 + between(rnd, 5, 50)}}
			if i%2 == 0 {
				ends[1] = geometry.Point{X: ends[1].Y, Y: 20}
			}
			cut := func(h groove.Hand, from, to geometry.Point) groove.Groove {
				line, err := groove.NewLine([]geometry.Point{from, to}).ByHand(h)
				if err != nil {
					t.Fatal(err)
				}
				return groove.Cut(outside(glass), line, w, 0.8, 0)
			}
			g := cut(h, ends[0], ends[1])
			back, over := cut(reversed(h), ends[1], ends[0]), cut(h.Mirrored(), ends[0], ends[1])
			middle, behind, mirrored := g.Middle(), back.Nearest(g.Length-g.Middle().Along), over.Nearest(g.Middle().Along)
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > 2*settled*(1+math.Abs(want)) {
					t.Errorf("%s is %g, wanted %g: %v, %v", what, got, want, h, w)
				}
			}
			near("depth from behind", back.Depth, g.Depth)
			for _, v := range [...]float64{back.Volume, over.Volume} {
				// Where a gang's mitres overlap each of the two is known to handShare.
				if edge != groove.Gang || math.Abs(v-g.Volume) > 2*handShare*g.Volume {
					near("volume", v, g.Volume)
				}
			}
			near("mirrored left", mirrored.Left, middle.Right)
			near("mirrored right", mirrored.Right, middle.Left)
			if math.Abs(behind.Along+middle.Along-g.Length) < 1e-9 {
				near("left from behind", behind.Left, middle.Right)
				near("right from behind", behind.Right, middle.Left)
			}
		}
	}
}

// A wider roll never takes less, nor a greater share: every half width, and the volume.
func TestMoreHandTakesMore(t *testing.T) {
	t.Parallel()
	everyEdge(t, 12, func(t *testing.T, rnd *rand.Rand, s *scene) {
		if s.bend != 0 {
			return
		}
		h := groove.Hand{Rock: [2]float64{between(rnd, 0, 0.3), between(rnd, 0, 0.3)}}
		even := groove.Cut(outside(s.cone), s.line(), s.wheel, s.depth, 0)
		g := groove.Cut(outside(s.cone), handedLine(t, s, h), s.wheel, s.depth, 0)
		more := groove.Cut(outside(s.cone), handedLine(t, s, groove.Hand{Rock: [2]float64{h.Rock[0] + 0.2, h.Rock[1]}}), s.wheel, s.depth, 0)
		swelled := groove.Cut(outside(s.cone), handedLine(t, s, groove.Hand{Swell: []float64{0.5, 1, 0.7}}), s.wheel, s.depth, 0)
		if len(g.Samples) != len(even.Samples) || len(more.Samples) != len(even.Samples) {
			t.Fatalf("%d, %d and %d samples: %v", len(even.Samples), len(g.Samples), len(more.Samples), s)
		}
		for i, a := range even.Samples {
			if b, c := g.Samples[i], more.Samples[i]; b.Left < a.Left-5*settled || b.Right < a.Right-5*settled || c.Left < b.Left-5*settled || c.Right < b.Right-5*settled {
				t.Errorf("at %g: %g and %g, rolled %g and %g, more %g and %g: %v %v", a.Along, a.Left, a.Right, b.Left, b.Right, c.Left, c.Right, h, s)
				break
			}
		}
		const share = 0.01 // the even one's volume is by second-order rules
		if g.Volume < even.Volume*(1-2*share) || more.Volume < g.Volume*(1-share) || !even.Touch && swelled.Volume > even.Volume*(1+2*share) {
			t.Errorf("%g mm³, rolled %g, more %g, swelled %g: %v %v", even.Volume, g.Volume, more.Volume, swelled.Volume, h, s)
		}
		// A roll never brings shoulders out of the glass.
		if g.WheelFit.Buried < even.WheelFit.Buried-settled {
			t.Errorf("buried by %g, rolled by %g: %v %v", even.WheelFit.Buried, g.WheelFit.Buried, h, s)
		}
		if off := r2.Norm(r2.Sub(g.Samples[0].At, even.Samples[0].At)); off > rounding {
			t.Errorf("rolled, the mark begins %g elsewhere: %v", off, s)
		}
	})
}

// A shoulder of a mitre of 90° and 4 mm is 2 mm over its point; on a straight glass of 45 mm,
// 1 mm deep, it stands 1 mm out of the tangent plane and 2 mm to the side, where the glass is
// 45 − √(45² − 2²) = 0.0445 mm below that plane. Rolled to the right by 30° the right shoulder,
// at 45° and 2.8284 mm from the point, comes to 75°: 2.7320 mm to the right and 0.7321 mm over
// the point, 0.2679 mm below the plane, where the glass is 0.0830 mm below it: 0.1849 mm.
func TestBuriedShoulderByHand(t *testing.T) {
	glass := geometry.NewCone(0, geometry.Circle{Radius: 45}, 0)
	w := groove.Wheel{Edge: groove.Mitre, Radius: 50, Thick: 4, Angle: degrees(90)}
	for _, c := range []struct {
		hand groove.Hand
		want float64
	}{{groove.Hand{Rock: [2]float64{0, degrees(30)}}, 0.1849}, {groove.Hand{Rock: [2]float64{degrees(30), 0}}, 0.1849}, {groove.Hand{}, -1.0445}} {
		line, err := groove.NewLine([]geometry.Point{{Y: 20}, {Y: 80}}).ByHand(c.hand)
		if err != nil {
			t.Fatal(err)
		}
		if g := groove.Cut(outside(glass), line, w, 1, 0); math.Abs(g.WheelFit.Buried-c.want) > 0.002 {
			t.Errorf("%v: buried by %.4f, wanted %.4f", c.hand, g.WheelFit.Buried, c.want)
		}
	}
}
