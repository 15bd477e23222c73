package motifs

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Chevron is rows of straight arms that rise to points and fall again. At a gap of
// 0 they run in one zigzag across the box, and round the glass when the box is as
// wide as the pitch. An arm is half as wide as a point, so many points make short
// marks.
func Chevron() Kind {
	return Kind{
		Name:  "chevron",
		About: "rows of straight arms that rise to points, one above another",
		Params: []Param{
			{Name: "points", About: "how many points stand side by side",
				Sort: Count, Default: 1, Min: 1, Max: 24},
			{Name: "rows", About: "how many rows lie one above another",
				Sort: Count, Default: 5, Min: 1, Max: 24},
			{Name: "rise", About: "the angle in degrees between an arm and level, as far as the box is high enough",
				Default: 32, Min: 5, Max: 75},
			{Name: "gap", About: "what an arm leaves free at either end, as a share of its length: at 0 the arms meet",
				Default: 0, Min: 0, Max: 0.3, Longer: -1},
		},
		Parts:    []string{"arm"},
		Mirrored: true,
		Draw:     drawChevron,
	}
}

func drawChevron(v Values, aspect float64) []Cut {
	points, rows := v.Count("points"), v.Count("rows")
	step := 0.5 / float64(points)
	rise := min(step*aspect*math.Tan(v.Radians("rise")), 0.8)
	var cuts []Cut
	for row := range rows {
		foot := (1 - rise) * share(row, rows)
		for i := range 2 * points {
			from := geometry.Point{X: -0.5 + float64(i)*step, Y: foot}
			to := geometry.Point{X: -0.5 + float64(i+1)*step, Y: foot + rise}
			if i%2 == 1 {
				from.Y, to.Y = to.Y, from.Y
			}
			free := r2.Scale(v["gap"], r2.Sub(to, from))
			cuts = append(cuts, Cut{Part: "arm", Path: geometry.Line(r2.Add(from, free), r2.Sub(to, free))})
			if i > 0 && v["gap"] == 0 {
				join(cuts, len(cuts)-2, len(cuts)-1)
			}
		}
	}
	return cuts
}
