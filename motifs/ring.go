package motifs

// Ring is level mitres from edge to edge of the box. They run round the whole glass
// when the box is as wide as the pitch. Half a step is left bare above the topmost
// ring and below the lowest.
func Ring() Kind {
	return Kind{
		Name:  "ring",
		About: "level mitres that run round the glass, single or in close company",
		Params: []Param{
			{Name: "rings", About: "how many rings lie one above another",
				Sort: Count, Default: 3, Min: 1, Max: 24},
			{Name: "lines", About: "how many mitres make one ring",
				Sort: Count, Default: 2, Min: 1, Max: 3},
			{Name: "gap", About: "how far apart the mitres of one ring are, as a share of the distance between rings where they are closest",
				Default: 0.25, Min: 0.05, Max: 0.4},
			{Name: "grade", About: "how the rings draw together: towards the rim above 0, towards the foot below 0, not at all at 0",
				Default: 0, Min: -0.8, Max: 0.8},
		},
		Parts:    []string{"ring"},
		Mirrored: true,
		Draw:     drawRing,
	}
}

func drawRing(v Values, _ float64) []Cut {
	rings, lines, grade := v.Count("rings"), v.Count("lines"), v["grade"]
	closest := (1 - max(grade, -grade)) / float64(rings)
	var cuts []Cut
	for i := range rings {
		up := share(i, rings)
		up += grade * up * (1 - up) // its slope runs evenly from 1+grade to 1-grade
		for j := range lines {
			y := up + abreast(j, lines, v["gap"]*closest)
			cuts = append(cuts, Cut{Part: "ring", Path: level(y, 0.5)})
		}
	}
	return cuts
}
