package motifs

// Flute is upright panels, evenly spaced within the box and, at a gap of 0, from
// one box to the next when boxes are as wide as the pitch. A flat wheel leaves
// flat panels, a round one hollow ones. Their depth, and how many go round the
// glass, decide whether they just meet or leave a land.
func Flute() Kind {
	return Kind{
		Name:  "flute",
		About: "upright panels side by side, flat or hollow as the wheel's edge is",
		Params: []Param{
			{Name: "panels", About: "how many panels stand side by side",
				Sort: Count, Default: 3, Min: 1, Max: 40},
			{Name: "gap", About: "the bare glass beside the panels, half on the left and half on the right, as a share of the width",
				Default: 0, Min: 0, Max: 0.8},
			{Name: "arch", About: "how much lower the tops end at the sides than in the middle, as a share of the height: at 0 all are level",
				Default: 0.15, Min: 0, Max: 0.8, Longer: -1},
		},
		Parts:    []string{"panel"},
		Mirrored: true,
		Draw:     drawFlute,
	}
}

func drawFlute(v Values, _ float64) []Cut {
	panels := v.Count("panels")
	cuts := make([]Cut, panels)
	for i := range panels {
		across := 2*share(i, panels) - 1 // from -1 to 1 over the panels
		x := across * (1 - v["gap"]) / 2
		// A parabola, which is level in the middle and lowest at the sides.
		cuts[i] = Cut{Part: "panel", Path: upright(x, 0, 1-v["arch"]*across*across)}
	}
	return cuts
}
