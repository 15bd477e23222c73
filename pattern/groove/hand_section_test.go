package groove_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// drawnUp cuts an upright mark of 60 mm on a straight glass of 45 mm radius, 1 mm deep, and
// returns the sample in its middle.
func drawnUp(t *testing.T, w groove.Wheel, h groove.Hand) groove.Sample {
	t.Helper()
	glass := geometry.NewCone(0, geometry.Circle{Radius: 45}, 0)
	line, err := groove.NewLine([]geometry.Point{{Y: 20}, {Y: 80}}).ByHand(h)
	if err != nil {
		t.Fatal(err)
	}
	g := groove.Cut(outside(glass), line, w, 1, 0)
	return g.Middle()
}

// Sections worked by hand. The glass is a circle of 45 mm about (0, -45); the wheel's deepest
// place is P = (0, -1), 44 mm from the circle's centre. A flank is a ray from P, at an angle
// from the outward normal. By the law of cosines it meets the circle after t with
// t² + 88·cos(angle)·t + 44² = 45², so t = √(1936·cos² + 89) − 44·cos, at the turn
// θ = asin(t·sin(angle) / 45) round the glass, which is 45·θ along it.
func TestRolledSectionsByHand(t *testing.T) {
	mitre := groove.Wheel{Edge: groove.Mitre, Radius: 50, Thick: 12, Angle: degrees(90)}
	flat := groove.Wheel{Edge: groove.Flat, Radius: 50, Thick: 4}
	round := groove.Wheel{Edge: groove.Round, Radius: 50, Thick: 8, Convex: 4}
	for _, c := range []struct {
		name        string
		wheel       groove.Wheel
		hand        groove.Hand
		left, right float64
	}{
		// Both flanks at 45°: t = √(968 + 89) − 31.112698 = 32.511536 − 31.112698 = 1.398838;
		// t·sin 45° = 0.989128; asin(0.989128/45) = 0.02198240; × 45 = 0.989208.
		{"even", mitre, groove.Hand{}, 0.989208, 0.989208},
		// The right flank at 60°: t = √(484 + 89) − 22 = 23.937418 − 22 = 1.937418;
		// t·sin 60° = 1.677854; asin(1.677854/45) = 0.03729432; × 45 = 1.678244.
		{"15° to the right", mitre, groove.Hand{Rock: [2]float64{0, degrees(15)}}, 0.989208, 1.678244},
		{"15° to the left", mitre, groove.Hand{Rock: [2]float64{degrees(15), 0}}, 1.678244, 0.989208},
		// The left flank at 75°: cos 75° = 0.258819, t = √(129.687 + 89) − 11.388036 =
		// 14.788070 − 11.388036 = 3.400034; t·sin 75° = 3.284180; asin(0.07298178) =
		// 0.07304671; × 45 = 3.287102.
		{"30° to the left, 15° to the right", mitre, groove.Hand{Rock: [2]float64{degrees(30), degrees(15)}}, 3.287102, 1.678244},
		// Half as deep all along: P is 44.5 mm from the centre and the flank at 60°:
		// t = √(22.25² + 45² − 44.5²) − 22.25 = √(495.0625 + 44.75) − 22.25 = 0.983861;
		// t·sin 60° = 0.852049; asin(0.852049/45) × 45 = 0.852100. At 45°: t =
		// √(990.125 + 44.75) − 31.466252 = 32.169473 − 31.466252 = 0.703221; × sin 45° =
		// 0.497252, along the glass 0.497262.
		{"half as deep, 15° to the right", mitre, groove.Hand{Swell: []float64{0.5, 0.5}, Rock: [2]float64{0, degrees(15)}}, 0.497262, 0.852100},
		// A flat edge 4 mm wide, rolled by 20° to the right: its right corner is 2 mm from P,
		// at 110° from the normal, and its face rises from there at 20° to it, leaning to the
		// right: it is at (2·cos 20°, -1 − 2·sin 20°) = (1.879385, -1.684040), 43.316 from the
		// centre's height. Along (sin 20°, cos 20°) by u: (1.879385 + 0.342020u)² +
		// (43.315960 + 0.939693u)² = 45²; u² + 82.692535u − 145.195521 = 0, u = 1.719956...
		{"flat, 20° to the right", flat, groove.Hand{Rock: [2]float64{0, degrees(20)}}, 2.000659, flatRight()},
		// A round edge is an arc about C, 4 mm over P; rolled by 25° to the left C is at
		// (-4·sin 25°, -1 + 4·cos 25°) = (-1.690473, 2.625231).
		{"round, 25° to the left", round, groove.Hand{Rock: [2]float64{degrees(25), 0}}, circlesMeet(-1.690473, 2.625231, 4), circlesMeet(0, 3, 4)},
	} {
		at := drawnUp(t, c.wheel, c.hand)
		const near = 0.002 // mm
		if math.Abs(at.Left-c.left) > near || math.Abs(at.Right-c.right) > near {
			t.Errorf("%s: %.5f to the left and %.5f to the right, wanted %.5f and %.5f", c.name, at.Left, at.Right, c.left, c.right)
		}
	}
}

// flatRight returns where the face of the flat wheel above leaves the glass: the place of the
// face is found by steps of a micrometre.
func flatRight() float64 {
	sin, cos := math.Sincos(degrees(20))
	for u := 0.0; ; u += 1e-6 {
		x, y := 2*cos+u*sin, -1-2*sin+u*cos
		if math.Hypot(x, y+45) >= 45 {
			return 45 * math.Atan2(x, y+45)
		}
	}
}

// circlesMeet returns how far along the glass, on the side of its middle away from 0, a circle
// about a place with a radius leaves it: by steps of a micrometre.
func circlesMeet(x, y, radius float64) float64 {
	side := 1.0
	if x < 0 {
		side = -1
	}
	for far := 0.0; ; far += 1e-6 {
		sin, cos := math.Sincos(far / 45)
		if math.Hypot(side*45*sin-x, 45*cos-45-y) > radius {
			return far
		}
	}
}
