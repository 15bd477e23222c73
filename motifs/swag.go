package motifs

import (
	"math"

	"roundlay/geometry"
)

// Swag is arcs that hang end to end across the box, and so round the glass when
// the box is as wide as the pitch. An arc that sags a share s of its width w has
// the radius w (1 + 4s²) / 8s. The deeper it hangs, the smaller the wheel that can
// follow it. At a sag of 0.14 the radius is about the arc's width.
func Swag() Kind {
	return Kind{
		Name:  "swag",
		About: "arcs that hang end to end, as a garland does",
		Params: []Param{
			{Name: "swags", About: "how many arcs hang side by side",
				Sort: Count, Default: 1, Min: 1, Max: 24},
			{Name: "rows", About: "how many rows of them lie one above another",
				Sort: Count, Default: 4, Min: 1, Max: 16},
			{Name: "sag", About: "how far an arc of the lowest row sags, as a share of its own width, as far as the box is high enough",
				Default: 0.14, Min: 0.02, Max: 0.5, Bends: true},
			{Name: "ease", About: "how far the topmost row sags, as a share of the lowest: 1 alike",
				Default: 0.5, Min: 0.1, Max: 1},
		},
		Parts:    []string{"swag"},
		Mirrored: true,
		Draw:     drawSwag,
	}
}

func drawSwag(v Values, aspect float64) []Cut {
	swags, rows := v.Count("swags"), v.Count("rows")
	span := aspect / float64(swags) // in heights of the box
	lowest := min(v["sag"]*span, 0.8)
	var cuts []Cut
	for row := range rows {
		sag := lowest
		if rows > 1 {
			sag *= 1 - (1-v["ease"])*float64(row)/float64(rows-1)
		}
		hang := lowest + (1-lowest)*share(row, rows)
		// The angle between a chord and its arc's end is half the turn, and
		// twice the angle under which it sees the lowest point.
		turn := -4 * math.Atan(2*sag/span)
		for i := range swags {
			from := geometry.Point{X: -aspect/2 + float64(i)*span, Y: hang}
			to := geometry.Point{X: -aspect/2 + float64(i+1)*span, Y: hang}
			cuts = append(cuts, Cut{Part: "swag", Path: boxed(arc(from, to, turn), aspect)})
			if i > 0 {
				join(cuts, len(cuts)-2, len(cuts)-1)
			}
		}
	}
	return cuts
}
