package motifs

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Wheat is a stem with pairs of grains, each one touch of the wheel, and one more
// at its tip. Unlike a leaf's fronds they are all alike, and they start beside the
// stem unless apart is 0. A grain's length decides how deep the wheel goes: in an
// ear of less than about 35 mm, grains of the default length stay shallow.
func Wheat() Kind {
	return Kind{
		Name:  "wheat",
		About: "an ear of wheat: pairs of touch cuts up a stem, and one at the tip",
		Params: []Param{
			{Name: "grains", About: "how many pairs of grains",
				Sort: Count, Default: 5, Min: 1, Max: 20},
			{Name: "lean", About: "the angle in degrees between grain and stem",
				Default: 32, Min: 12, Max: 70},
			{Name: "long", About: "the length of a grain, as a share of the ear's, as far as the box is wide enough",
				Default: 0.32, Min: 0.08, Max: 0.4, Longer: 1},
			{Name: "apart", About: "how far from the stem a grain starts, as a share of its length: at 0 they meet",
				Default: 0.12, Min: 0, Max: 0.4},
			{Name: "stalk", About: "the bare stem below the ear, as a share of the height",
				Default: 0.22, Min: 0, Max: 0.7, Longer: -1},
			handParam(),
		},
		Parts: []string{"stem", "tip", "grain"},
		Hand: map[string]Gesture{
			"stem":  rolled(0, 0, 1, 0.9, 0.5),
			"tip":   rolled(7, 7, 0.6, 1, 0.6, 0.2),
			"grain": rolled(0, 14, 0.6, 1, 0.6, 0.2),
		},
		Mirrored: true,
		Draw:     drawWheat,
	}
}

func drawWheat(v Values, aspect float64) []Cut {
	const below = 1.5 // the top pair's roots, below the tip in grains
	pairs, stalk := v.Count("grains"), v["stalk"]
	way := heading(v.Radians("lean"))
	long := min(v["long"]*(1-stalk), aspect/2/(v["apart"]+way.X))
	apart := v["apart"] * long
	top := 1 - below*long

	cuts := []Cut{
		{Part: "stem", Path: upright(0, 0, top)},
		{Part: "tip", Path: upright(0, 1-long, 1)},
	}
	for i := range pairs {
		root := geometry.Point{X: apart, Y: top}
		if pairs > 1 {
			root.Y = stalk + (top-stalk)*float64(i)/float64(pairs-1)
		}
		right := boxed(geometry.Line(root, r2.Add(root, r2.Scale(long, way))), aspect)
		n := len(cuts)
		cuts = append(cuts, Cut{Part: "grain", Path: mirrored(right), Side: LeftHalf}, Cut{Part: "grain", Path: right})
		if apart == 0 {
			join(cuts, 0, n)
			join(cuts, 0, n+1)
			join(cuts, n, n+1)
		}
	}
	return cuts
}
