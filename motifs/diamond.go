package motifs

import "roundlay/geometry"

// Diamond is a field of diamonds between straight cuts of two slopes. In a box
// as wide as the pitch the cuts run on into the next repeat.
//
// Single mitres leave points where they are deep enough for their footprints to
// meet. Several side by side leave flat tops, whatever their depth. Hatching goes on
// the tops. Its lines are far shorter than the mitres, so the same wheel cuts them
// shallow. A second diamond in the same place, of hatching alone, gives them a wheel
// and a depth of their own.
func Diamond() Kind {
	return Kind{
		Name:  "diamond",
		About: "a field of diamonds between mitres that cross, their tops pointed, flat or hatched",
		Params: []Param{
			{Name: "across", About: "how many diamonds stand side by side",
				Sort: Count, Default: 6, Min: 1, Max: 40},
			{Name: "up", About: "how many diamonds stand one on another",
				Sort: Count, Default: 6, Min: 1, Max: 40},
			{Name: "mitres", About: "how many mitres run side by side between diamonds: 1 for points, 2 or 3 for flat tops",
				Sort: Count, Default: 1, Min: 1, Max: 3},
			{Name: "flat", About: "the size of the flat tops, as a share of the whole diamond: what 2 or 3 mitres leave and hatching fills",
				Default: 0.65, Min: 0.3, Max: 0.9},
			{Name: "hatch", About: "how many fine lines cross each top in either direction: 0 for none",
				Sort: Count, Default: 0, Min: 0, Max: 4},
			{Name: "alone", About: "whether the hatching is drawn without the mitres, for a second motif with a finer wheel",
				Sort: Switch, Default: 0, Min: 0, Max: 1},
		},
		Parts:    []string{"mitre", "hatch"},
		Mirrored: true,
		Draw:     drawDiamond,
	}
}

func drawDiamond(v Values, _ float64) []Cut {
	f := field{float64(v.Count("across")), float64(v.Count("up"))}
	hatch := v.Count("hatch")
	var cuts []Cut
	if hatch == 0 || !v.On("alone") {
		cuts = f.mitres(v.Count("mitres"), v["flat"])
	}
	const fill = 0.9 // of the flat top, so that hatching ends short of the mitres
	return f.hatched(cuts, hatch, fill*v["flat"]/2)
}

// field is how many diamonds a box has. Its places are counted in diamonds from
// the lower left corner, X across and Y up. A cut of one slope lies on X - Y = k
// and one of the other on X + Y = m. Single mitres lie on every whole k and m, so
// they meet each edge of the box at whole places, the same on the left as on the
// right.
type field struct{ across, up float64 }

// slack is the rounding error of a place in a field.
const slack = 1e-9

// mitres returns the mitres of both slopes, count of them side by side, with flat
// tops of the given size between them. Mitres that would cut off less than half a
// diamond in a corner of the box are too short to cut and are left out.
func (f field) mitres(count int, flat float64) []Cut {
	const corner = 0.5
	gap := (1 - flat) / float64(max(count-1, 1))
	var rising, falling []float64
	var cuts []Cut
	for k := -f.up; k <= f.across; k++ {
		for i := range count {
			if at := k + abreast(i, count, gap); at > corner-f.up && at < f.across-corner {
				rising = append(rising, at)
				from, to := max(0, at), min(f.across, f.up+at)
				cuts = append(cuts, f.cut("mitre", from, from-at, to, to-at))
			}
		}
	}
	for m := 0.0; m <= f.across+f.up; m++ {
		for i := range count {
			if at := m + abreast(i, count, gap); at > corner && at < f.across+f.up-corner {
				falling = append(falling, at)
				from, to := max(0, at-f.up), min(f.across, at)
				cuts = append(cuts, f.cut("mitre", from, at-from, to, at-to))
			}
		}
	}
	for i, k := range rising {
		for j, m := range falling {
			if f.holds((k+m)/2, (m-k)/2) {
				join(cuts, i, len(rising)+j)
			}
		}
	}
	return cuts
}

// hatched adds the hatching of every diamond, a number of lines in either direction.
// It goes on the part of the diamond that is no further than reach from its middle
// in X - Y and in X + Y.
func (f field) hatched(cuts []Cut, lines int, reach float64) []Cut {
	for y := range int(2*f.up) + 1 {
		for x := (y + 1) % 2; x <= int(2*f.across); x += 2 {
			cuts = diamond{f, float64(x) / 2, float64(y) / 2, reach}.hatched(cuts, lines)
		}
	}
	return cuts
}

// diamond is one diamond of a field, by its middle, which may lie on an edge of
// the box. Places in it are counted from there, k in X - Y and m in X + Y.
type diamond struct {
	field
	x, y, reach float64
}

// hatched adds the hatching of the one diamond.
func (d diamond) hatched(cuts []Cut, lines int) []Cut {
	gap := 2 * d.reach / float64(lines)
	first := len(cuts)
	for i := range lines {
		if c, ok := d.rising(abreast(i, lines, gap)); ok {
			cuts = append(cuts, c)
		}
	}
	middle := len(cuts)
	for i := range lines {
		if c, ok := d.falling(abreast(i, lines, gap)); ok {
			cuts = append(cuts, c)
		}
	}
	for i := first; i < middle; i++ {
		for j := middle; j < len(cuts); j++ {
			join(cuts, i, j)
		}
	}
	return cuts
}

// rising returns the line of the hatching at a place k, and whether to draw it.
// Where an edge of the box cuts a diamond in two, each half gets the lines of which
// it holds at least half: the missing part would be too short a mark to see. They
// still cross all lines of the other slope.
func (d diamond) rising(k float64) (Cut, bool) {
	from := max(-d.reach, -2*d.x-k, k-2*d.y)
	to := min(d.reach, 2*(d.across-d.x)-k, 2*(d.up-d.y)+k)
	c := d.cut("hatch", d.x+(k+from)/2, d.y+(from-k)/2, d.x+(k+to)/2, d.y+(to-k)/2)
	return c, to-from >= d.reach-slack
}

// falling returns the line at a place m: the mirror image of a rising one.
func (d diamond) falling(m float64) (Cut, bool) {
	image := d
	image.x = d.across - d.x
	c, ok := image.rising(-m)
	c.Path, c.Side = mirrored(c.Path), LeftHalf
	return c, ok
}

// cut returns the straight cut between two places.
func (f field) cut(part string, x0, y0, x1, y1 float64) Cut {
	return Cut{Part: part, Path: geometry.Line(f.at(x0, y0), f.at(x1, y1))}
}

func (f field) at(x, y float64) geometry.Point {
	return geometry.Point{X: x/f.across - 0.5, Y: y / f.up}
}

// holds reports whether a place lies inside the box or on its edge.
func (f field) holds(x, y float64) bool {
	return min(x, f.across-x, y, f.up-y) >= -slack
}
