package motifs

import "roundlay/geometry"

// Basket is a weave of squares with a few mitres in each, level and upright in
// turn. Squares are counted in pairs, one of each, so that the weave goes on from
// one box to the next. A mark is as long as its square. Where that is less than
// about 9 mm, the mark comes out shallow.
func Basket() Kind {
	return Kind{
		Name:  "basket",
		About: "a weave of mitres: squares of level ones and squares of upright ones in turn",
		Params: []Param{
			{Name: "across", About: "how many pairs of squares lie side by side, one of level and one of upright mitres",
				Sort: Count, Default: 2, Min: 1, Max: 16},
			{Name: "up", About: "how many squares stand one on another",
				Sort: Count, Default: 4, Min: 1, Max: 32},
			{Name: "lines", About: "how many mitres are in a square",
				Sort: Count, Default: 2, Min: 1, Max: 4},
			{Name: "fill", About: "the length of a mitre, as a share of its square",
				Default: 0.94, Min: 0.5, Max: 0.98, Longer: 1},
		},
		Parts: []string{"upright", "level"},
		Draw:  drawBasket,
	}
}

func drawBasket(v Values, _ float64) []Cut {
	across, up, lines := 2*v.Count("across"), v.Count("up"), v.Count("lines")
	wide, high := 1/float64(across), 1/float64(up)
	half := v["fill"] / 2
	var cuts []Cut
	for row := range up {
		for column := range across {
			x, y := share(column, across)-0.5, share(row, up)
			for i := range lines {
				off := share(i, lines) - 0.5
				c := Cut{Part: "upright", Path: upright(x+off*wide, y-half*high, y+half*high)}
				if (row+column)%2 == 0 {
					c.Part = "level"
					c.Path = geometry.Line(
						geometry.Point{X: x - half*wide, Y: y + off*high}, geometry.Point{X: x + half*wide, Y: y + off*high})
				}
				cuts = append(cuts, c)
			}
		}
	}
	return cuts
}
