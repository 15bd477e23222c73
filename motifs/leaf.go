package motifs

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// Leaf is a stem with pairs of fronds, whose tips lie on the leaf's outline:
// an almond that touches the box's sides where it is fullest, and its top.
func Leaf() Kind {
	return Kind{
		Name:  "leaf",
		About: "a stem with pairs of fronds, long where the leaf is full and short towards its tip",
		Params: []Param{
			{Name: "fronds", About: "how many pairs of fronds: 7 is seven on the left and seven on the right",
				Sort: Count, Default: 7, Min: 1, Max: 40},
			{Name: "lean", About: "the angle in degrees between frond and stem, where the frond leaves it",
				Default: 62, Min: 10, Max: 90},
			{Name: "arch", About: "how far a frond bows: 0 straight, 1 its end runs up along the stem, -1 its end runs level",
				Default: 0.2, Min: -1, Max: 1, Bends: true},
			{Name: "fullest", About: "where the leaf is widest, as a share of the way from stalk to tip",
				Default: 0.48, Min: 0.2, Max: 0.8},
			{Name: "stalk", About: "the bare stem below the leaf, as a share of the height",
				Default: 0.1, Min: 0, Max: 0.6},
			{Name: "crown", About: "how much of the leaf stands above the top pair's roots, as a share of its length",
				Default: 0.22, Min: 0.05, Max: 0.6, Longer: 1},
			{Name: "terminal", About: "whether the stem runs on past the top pair to the tip",
				Sort: Switch, Default: 1, Min: 0, Max: 1},
			handParam(),
		},
		Parts: []string{"stem", "frond"},
		// A frond is touched down at the stem, swells and runs out to its tip. The glass is
		// rolled so that the flank away from the leaf's tip is the broad one.
		Hand: map[string]Gesture{
			"stem":  rolled(0, 0, 1, 0.95, 0.8, 0.4),
			"frond": rolled(0, 15, 0.4, 1, 0.8, 0.25),
		},
		Mirrored: true,
		Draw:     drawLeaf,
	}
}

func drawLeaf(v Values, aspect float64) []Cut {
	leaf := outline{half: aspect / 2, foot: v["stalk"]}
	leaf.fullest = leaf.foot + v["fullest"]*(1-leaf.foot)
	lean := v.Radians("lean")
	turn := frondTurn(lean, v["arch"])
	pairs := v.Count("fronds")
	top := 1 - v["crown"]*(1-leaf.foot)

	tip := geometry.Point{Y: top}
	if v.On("terminal") {
		tip.Y = 1
	}
	cuts := []Cut{{Part: "stem", Path: geometry.Line(geometry.Point{}, tip)}}
	for i := range pairs {
		// The lowest pair stands half a step above the leaf's foot, where it is
		// already wide enough to hold a frond.
		root := leaf.foot + (top-leaf.foot)*float64(2*i+1)/float64(2*pairs-1)
		right := boxed(leaf.frond(root, lean, turn), aspect)
		n := len(cuts)
		cuts = append(cuts, Cut{Part: "frond", Path: mirrored(right), Side: LeftHalf}, Cut{Part: "frond", Path: right})
		join(cuts, 0, n)
		join(cuts, 0, n+1)
		join(cuts, n, n+1)
	}
	return cuts
}

// frondTurn returns the angle a frond turns through, root to tip, positive away
// from the stem. Its end is kept between level and upright, so that it goes
// outward and upward all the way and can't leave the box.
func frondTurn(lean, arch float64) float64 {
	if arch > 0 {
		return -arch * lean
	}
	return -arch * (math.Pi/2 - lean)
}

// outline is the line the frond tips lie on, in heights of the box: half is its
// greatest half width, foot and fullest are heights.
type outline struct{ half, foot, fullest float64 }

// halfWidth returns half the leaf's width at a height: an arc of a parabola
// below the fullest and another above, both level there.
func (o outline) halfWidth(y float64) float64 {
	length := o.fullest - o.foot
	if y > o.fullest {
		length = 1 - o.fullest
	}
	u := (y - o.fullest) / length
	return o.half * (1 - u*u)
}

// reach returns the distance from the stem, at the height root, to the outline, in
// a direction at an angle to the stem. The leaf is convex, so the line outwards
// crosses the outline once.
func (o outline) reach(root, angle float64) float64 {
	sin, cos := math.Sincos(angle)
	inside, outside := 0.0, o.half+1
	for range 60 {
		middle := (inside + outside) / 2
		if middle*sin <= o.halfWidth(root+middle*cos) {
			inside = middle
		} else {
			outside = middle
		}
	}
	return inside
}

// frond returns the frond on the right of the stem in heights of the box. It is
// the arc of a circle, whose chord has half the turn.
func (o outline) frond(root, lean, turn float64) geometry.Bezier {
	chord := lean + turn/2
	length := o.reach(root, chord)
	from := geometry.Point{Y: root}
	return arc(from, r2.Add(from, r2.Scale(length, heading(chord))), turn)
}
