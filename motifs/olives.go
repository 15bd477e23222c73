package motifs

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Olives is rows of short marks, each a touch of a round wheel. They stand evenly
// within the box and from one box to the next. An olive's length is a multiple of
// the distance between them, so that olives look the same in a box of any shape.
// The length decides how deep the wheel goes.
func Olives() Kind {
	return Kind{
		Name:  "olives",
		About: "rows of short marks, each one touch of a round wheel",
		Params: []Param{
			{Name: "olives", About: "how many olives stand side by side in a row",
				Sort: Count, Default: 5, Min: 1, Max: 24},
			{Name: "rows", About: "how many rows lie one above another",
				Sort: Count, Default: 3, Min: 1, Max: 16},
			{Name: "long", About: "an olive's length, as a multiple of the distance to the next in its row, as far as there is room",
				Default: 1.5, Min: 0.4, Max: 4, Longer: 1},
			{Name: "lean", About: "how far in degrees an olive leans to the right: 0 upright, 90 level",
				Default: 0, Min: 0, Max: 90},
			{Name: "stagger", About: "whether the olives of one row stand between those of the next",
				Sort: Switch, Default: 1, Min: 0, Max: 1},
			handParam(),
		},
		Parts: []string{"olive"},
		Hand:  map[string]Gesture{"olive": rolled(0, 10, 0.5, 1, 0.7, 0.25)},
		Draw:  drawOlives,
	}
}

func drawOlives(v Values, aspect float64) []Cut {
	olives, rows := v.Count("olives"), v.Count("rows")
	step, high := aspect/float64(olives), 1/float64(rows)
	// Rows that stagger are shifted a quarter of a step, one to the left and the next
	// to the right. So both are even from box to box, and no olive crosses the edge.
	aside, room := 0.0, step
	if v.On("stagger") {
		aside, room = step/4, step/2
	}
	const free = 0.9 // of the room, so that no two meet end to end
	way := heading(v.Radians("lean"))
	long := min(v["long"]*step, free*high/way.Y, free*room/way.X)
	half := r2.Scale(long/2, way)
	cuts := make([]Cut, 0, olives*rows)
	for row := range rows {
		for i := range olives {
			at := geometry.Point{X: (share(i, olives)-0.5)*aspect + aside, Y: share(row, rows)}
			path := geometry.Line(r2.Sub(at, half), r2.Add(at, half))
			cuts = append(cuts, Cut{Part: "olive", Path: boxed(path, aspect)})
		}
		aside = -aside
	}
	return cuts
}
