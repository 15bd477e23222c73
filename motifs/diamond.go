package motifs

import "roundlay/geometry"

// Diamond is a field of pointed diamonds between straight cuts of two slopes.
// In a box as wide as the pitch the cuts run on into the next repeat.
func Diamond() Kind {
	return Kind{
		Name:  "diamond",
		About: "a field of pointed diamonds, between mitres that cross",
		Params: []Param{
			{Name: "across", About: "how many diamonds stand side by side",
				Sort: Count, Default: 6, Least: 1, Most: 40},
			{Name: "up", About: "how many diamonds stand one on another",
				Sort: Count, Default: 6, Least: 1, Most: 40},
		},
		Mirrored: true,
		Draw:     drawDiamond,
	}
}

func drawDiamond(v Values, _ float64) []Cut {
	f := field{v.Count("across"), v.Count("up")}
	lines := f.across + f.up - 1
	cuts := make([]Cut, 0, 2*lines)
	for i := range lines {
		cuts = append(cuts, f.rising(i+1-f.up))
	}
	for i := range lines {
		cuts = append(cuts, f.falling(i+1))
	}
	for i := range lines {
		for j := range lines {
			if f.cross(i+1-f.up, j+1) {
				join(cuts, i, lines+j)
			}
		}
	}
	return cuts
}

// field counts the diamonds of a box. In diamonds from its lower left corner,
// X across and Y up, a cut of one slope lies on X - Y = k and one of the other
// on X + Y = m, for every whole k and m. So the cuts meet every edge of the box
// at whole places, the same on the left as on the right.
type field struct{ across, up int }

// rising returns the cut on X - Y = k.
func (f field) rising(k int) Cut {
	from, to := max(0, k), min(f.across, f.up+k)
	return f.mitre(from, from-k, to, to-k)
}

// falling returns the cut on X + Y = m.
func (f field) falling(m int) Cut {
	from, to := max(0, m-f.up), min(f.across, m)
	return f.mitre(from, m-from, to, m-to)
}

// mitre returns the cut between two places.
func (f field) mitre(x0, y0, x1, y1 int) Cut {
	return Cut{Part: "mitre", Path: geometry.Line(f.at(x0, y0), f.at(x1, y1))}
}

func (f field) at(x, y int) geometry.Point {
	return geometry.Point{X: float64(x)/float64(f.across) - 0.5, Y: float64(y) / float64(f.up)}
}

// cross reports whether X - Y = k and X + Y = m meet inside the box or on its edge.
func (f field) cross(k, m int) bool {
	x2, y2 := k+m, m-k
	return x2 >= 0 && x2 <= 2*f.across && y2 >= 0 && y2 <= 2*f.up
}
