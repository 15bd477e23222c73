package motifs

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Sprig is a stem that starts upright and bends over, with leaves to the left and
// the right of it in turn, each a single straight mark. The stem's radius is its
// height over the sine of its bend: 90 mm for one of 60 mm that bends 42°.
func Sprig() Kind {
	return Kind{
		Name:  "sprig",
		About: "a stem that bends over, with leaves left and right in turn",
		Params: []Param{
			{Name: "leaves", About: "how many leaves, both sides together",
				Sort: Count, Default: 7, Min: 1, Max: 30},
			{Name: "bend", About: "how far in degrees the stem bends over to the right, as far as the box is wide enough: below 0 to the left",
				Default: 36, Min: -70, Max: 70, Bends: true},
			{Name: "lean", About: "the angle in degrees between leaf and stem",
				Default: 44, Min: 25, Max: 80},
			{Name: "long", About: "the length of the lowest leaf, as a share of the height, as far as there is room",
				Default: 0.3, Min: 0.08, Max: 0.4},
			{Name: "stalk", About: "the bare stem below the leaves, as a share of the height",
				Default: 0.16, Min: 0, Max: 0.6},
			handParam(),
		},
		Parts: []string{"stem", "leaf"},
		Hand: map[string]Gesture{
			"stem": rolled(0, 0, 1, 0.95, 0.75, 0.35),
			"leaf": rolled(0, 14, 0.4, 1, 0.8, 0.25),
		},
		Draw: drawSprig,
	}
}

func drawSprig(v Values, aspect float64) []Cut {
	const (
		crown = 0.16 // of the stem, above the last leaf
		dwarf = 0.6  // the length of a leaf at the tip, as a share of the lowest
	)
	// An arc that starts upright and turns by t ends tan(t/2) aside for each 1
	// it rises. Half the width is left for the leaves.
	widest := 2 * math.Atan(aspect/2)
	bend := min(max(v.Radians("bend"), -widest), widest)
	aside := math.Tan(bend / 2)
	stem := arc(geometry.Point{X: -aside / 2}, geometry.Point{X: aside / 2, Y: 1}, bend)
	cuts := []Cut{{Part: "stem", Path: boxed(stem, aspect)}}

	leaves, lean := v.Count("leaves"), v.Radians("lean")
	// Leaves on the inner side of the bend draw together. They would meet at a
	// distance from their roots of the bend's radius times the sine of the lean. For
	// a bend of 70° and a lean of 25° that is 0.45 of the height, and no leaf may be
	// so long.
	for i := range leaves {
		up := v["stalk"] + (1-crown-v["stalk"])*float64(i)/float64(max(leaves-1, 1))
		way, side := heading(bend*up+lean), RightHalf
		if i%2 == 0 {
			way, side = heading(bend*up-lean), LeftHalf
		}
		root := stem.At(up)
		length := min(v["long"]*(1-(1-dwarf)*up), 0.96*toEdge(root, way, aspect))
		leaf := geometry.Line(root, r2.Add(root, r2.Scale(length, way)))
		cuts = append(cuts, Cut{Part: "leaf", Path: boxed(leaf, aspect), Side: side})
		join(cuts, 0, i+1)
	}
	return cuts
}

// toEdge returns how far it is from a point inside the box to its edge, in heights
// of the box.
func toEdge(from, way geometry.Point, aspect float64) float64 {
	across := (aspect/2 - math.Copysign(from.X, from.X*way.X)) / math.Abs(way.X)
	up := (1 - from.Y) / way.Y
	if way.Y < 0 {
		up = -from.Y / way.Y
	}
	return min(across, up)
}
