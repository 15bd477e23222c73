package motifs

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Fan is rays that spread evenly from a hub at the middle of the box's foot.
func Fan() Kind {
	return Kind{
		Name:  "fan",
		About: "rays spread evenly from a hub at the middle of the foot",
		Params: []Param{
			{Name: "rays", About: "how many rays, odd or even",
				Sort: Count, Default: 9, Min: 1, Max: 40},
			{Name: "spread", About: "the angle in degrees from the first ray to the last",
				Default: 80, Min: 10, Max: 180},
			{Name: "hub", About: "how far from the hub the rays start, as a share of the shortest full ray: at 0 they all meet",
				Default: 0.2, Min: 0, Max: 0.8, Longer: -1},
			{Name: "scallop", About: "the line of the tips: 1 a round arch, 0 the top and sides of the box",
				Default: 1, Min: 0, Max: 1},
			{Name: "short", About: "the length of every second ray out from the middle, as a share of a full one",
				Default: 1, Min: 0.1, Max: 1, Longer: 1},
			handParam(),
		},
		Parts: []string{"ray"},
		// A ray comes fine out of the hub and swells to its end.
		Hand:     map[string]Gesture{"ray": rolled(0, 14, 0.25, 0.6, 1, 0.75)},
		Mirrored: true,
		Draw:     drawFan,
	}
}

func drawFan(v Values, aspect float64) []Cut {
	rays := v.Count("rays")
	half := v.Radians("spread") / 2
	line := tips{half: aspect / 2, outer: half, scallop: v["scallop"]}
	angles, reaches := make([]float64, rays), make([]float64, rays)
	for i := range rays {
		angles[i] = half * (float64(steps(i, rays)) / float64(max(rays-1, 1))) // the outer ones at half itself
		reaches[i] = line.reach(angles[i])
	}
	start := v["hub"] * slices.Min(reaches)

	cuts := make([]Cut, rays)
	for i, angle := range angles {
		end := reaches[i]
		if second(i, rays) {
			end = start + v["short"]*(end-start)
		}
		cuts[i] = Cut{Part: "ray", Path: ray(angle, start, end, aspect)}
		if rays > 1 {
			cuts[i].Side = sideOf(steps(i, rays))
		}
		// Rays crowd one another at the hub by design, whether they meet or not.
		for j := range i {
			join(cuts, j, i)
		}
	}
	return cuts
}

// steps returns how many half steps a ray is out from the middle, negative to the left.
func steps(i, rays int) int { return 2*i - (rays - 1) }

// sideOf returns the half in which a ray is that is so many steps out from the middle.
func sideOf(out int) Side {
	switch {
	case out < 0:
		return LeftHalf
	case out == 0:
		return MiddleLine
	}
	return RightHalf
}

// second reports whether a ray is a second one, counted out from the middle so
// that left and right agree: of an even count, the middle two are both first.
func second(i, rays int) bool {
	out := steps(i, rays)
	return max(out, -out)/2%2 == 1
}

// ray returns the ray at an angle from upright, between two distances from the
// hub in heights of the box.
func ray(angle, start, end, aspect float64) geometry.Bezier {
	sin, cos := math.Sincos(angle)
	along := geometry.Point{X: sin / aspect, Y: cos}
	return geometry.Line(r2.Scale(start, along), r2.Scale(end, along))
}

// tips is the line the tips lie on, about the hub. Half is half the box's width
// in heights of the box, outer the angle from upright of the outer rays.
type tips struct{ half, outer, scallop float64 }

// reach returns how far from the hub a ray at an angle may go.
func (t tips) reach(angle float64) float64 {
	// A level ray never meets the top, on whichever side of level rounding puts it.
	box := 1 / math.Abs(math.Cos(angle))
	if side := t.half / math.Abs(math.Sin(angle)); side < box {
		box = side
	}
	return box + t.scallop*(t.round(angle)-box)
}

// round returns the distance of the arch from the hub: of the ellipse that
// touches the top of the box, and its sides with the outer rays' tips; of a
// circle where that stays within the sides.
func (t tips) round(angle float64) float64 {
	sin, cos := math.Sincos(angle)
	steep := 1.0 // the square of the ellipse's height over half its width
	if side := math.Sin(t.outer); t.half < side {
		steep = 1/(t.half*t.half) - 1/(side*side) + 1
	}
	return 1 / math.Sqrt(cos*cos+steep*sin*sin)
}
