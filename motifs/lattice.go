package motifs

// Lattice is level and upright bars that cross, each of one mitre or of a few side
// by side. The bars stand evenly within the box and from one box to the next; the
// level ones run round the glass when the box is as wide as the pitch.
func Lattice() Kind {
	return Kind{
		Name:  "lattice",
		About: "level and upright bars that cross, single or double, with panes between",
		Params: []Param{
			{Name: "across", About: "how many upright bars stand side by side",
				Sort: Count, Default: 3, Min: 1, Max: 24},
			{Name: "up", About: "how many level bars lie one above another",
				Sort: Count, Default: 4, Min: 1, Max: 24},
			{Name: "lines", About: "how many mitres side by side make a bar",
				Sort: Count, Default: 2, Min: 1, Max: 3},
			{Name: "gap", About: "how far apart the mitres of one bar are, as a share of the distance between bars where they are closer",
				Default: 0.26, Min: 0.05, Max: 0.4},
		},
		Parts:    []string{"level", "upright"},
		Mirrored: true,
		Draw:     drawLattice,
	}
}

func drawLattice(v Values, aspect float64) []Cut {
	across, up, lines := v.Count("across"), v.Count("up"), v.Count("lines")
	gap := v["gap"] * min(aspect/float64(across), 1/float64(up)) // in heights of the box
	var cuts []Cut
	for i := range up {
		for j := range lines {
			cuts = append(cuts, Cut{Part: "level", Path: level(share(i, up)+abreast(j, lines, gap), 0.5)})
		}
	}
	levels := len(cuts)
	for i := range across {
		for j := range lines {
			x := share(i, across) - 0.5 + abreast(j, lines, gap)/aspect
			cuts = append(cuts, Cut{Part: "upright", Path: upright(x, 0, 1)})
			for k := range levels {
				join(cuts, k, len(cuts)-1)
			}
		}
	}
	return cuts
}
