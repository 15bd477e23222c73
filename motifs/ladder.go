package motifs

import "roundlay/geometry"

// Ladder is level rungs stacked one above another, with rails beside them or
// without. On a tapered glass the rungs stay level, as the rings do.
func Ladder() Kind {
	return Kind{
		Name:  "ladder",
		About: "level rungs stacked one above another, with or without rails",
		Params: []Param{
			{Name: "rungs", About: "how many rungs",
				Sort: Count, Default: 8, Min: 1, Max: 40},
			{Name: "taper", About: "how long the ladder's top is, as a share of its foot: 1 goes straight up",
				Default: 0.5, Min: 0.1, Max: 1},
			{Name: "short", About: "the length of every second rung, as a share of a full one",
				Default: 1, Min: 0.2, Max: 1, Longer: 1},
			{Name: "rails", About: "whether a rail runs up either side, through the ends of the full rungs",
				Sort: Switch, Default: 0, Min: 0, Max: 1},
		},
		Parts:    []string{"rung", "rail"},
		Mirrored: true,
		Draw:     drawLadder,
	}
}

func drawLadder(v Values, _ float64) []Cut {
	rungs := v.Count("rungs")
	half := func(y float64) float64 { return (1 - (1-v["taper"])*y) / 2 }
	var cuts []Cut
	for i := range rungs {
		y := share(i, rungs)
		length := half(y)
		if i%2 == 1 {
			length *= v["short"]
		}
		cuts = append(cuts, Cut{Part: "rung", Path: level(y, length)})
	}
	if !v.On("rails") {
		return cuts
	}
	rail := geometry.Line(geometry.Point{X: half(0)}, geometry.Point{X: half(1), Y: 1})
	cuts = append(cuts, Cut{Part: "rail", Path: mirrored(rail), Side: LeftHalf}, Cut{Part: "rail", Path: rail})
	for i := range rungs {
		if i%2 == 0 || v["short"] == 1 {
			join(cuts, i, rungs)
			join(cuts, i, rungs+1)
		}
	}
	return cuts
}
