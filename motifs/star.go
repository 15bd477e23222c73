package motifs

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Star is straight rays from the middle of the box at even angles. A ray is half as
// long as the box, less the hub. In a small box the rays are short for the wheel and
// come out shallow.
func Star() Kind {
	return Kind{
		Name:  "star",
		About: "straight rays out from the middle, as a star has",
		Params: []Param{
			{Name: "points", About: "how many points the star has",
				Sort: Count, Default: 8, Min: 3, Max: 32},
			{Name: "hub", About: "how far from the middle the rays start, as a share of the star's radius: at 0 they all meet",
				Default: 0.12, Min: 0, Max: 0.7, Longer: -1},
			{Name: "double", About: "whether a short ray stands between every two points",
				Sort: Switch, Default: 1, Min: 0, Max: 1},
			{Name: "short", About: "the length of the short rays, as a share of the long ones",
				Default: 0.65, Min: 0.15, Max: 0.9, Longer: 1},
			{Name: "stretch", About: "how far the star stretches to fill its box: 0 stays round, 1 reaches all its sides",
				Default: 0, Min: 0, Max: 1},
		},
		Parts:    []string{"ray"},
		Mirrored: true,
		Draw:     drawStar,
	}
}

func drawStar(v Values, aspect float64) []Cut {
	rays, long := v.Count("points"), 1
	if v.On("double") {
		rays, long = 2*rays, 2
	}
	// Half the width and half the height of the star, in heights of the box.
	round := min(aspect, 1) / 2
	wide, high := round+v["stretch"]*(aspect/2-round), round+v["stretch"]*(0.5-round)
	hub := v["hub"] * round
	cuts := make([]Cut, rays)
	for i := range rays {
		way := heading(2 * math.Pi * float64(i) / float64(rays))
		end := 1 / math.Hypot(way.X/wide, way.Y/high)
		if i%long != 0 {
			end = hub + v["short"]*(end-hub)
		}
		middle := geometry.Point{Y: 0.5}
		path := geometry.Line(r2.Add(middle, r2.Scale(hub, way)), r2.Add(middle, r2.Scale(end, way)))
		cuts[i] = Cut{Part: "ray", Path: boxed(path, aspect)}
		// As in a fan, they crowd one another at the hub by design.
		for j := range i {
			join(cuts, j, i)
		}
	}
	return cuts
}
