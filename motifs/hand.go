package motifs

import "roundlay/geometry"

// Gesture is what the hand does along a cut, beyond carrying it evenly over the wheel.
type Gesture struct {
	// Swell is the depth from the cut's root to its tip, at places evenly along it, as
	// shares of the depth asked for. Empty is even.
	Swell []float64
	// Rock is how far the glass is rolled to the left and to the right about the cut's line,
	// seen from outside and along the cut. The flank on that side becomes broader.
	Rock [2]geometry.Angle
}

// Even reports whether the cut is as a machine makes it.
func (g Gesture) Even() bool {
	for _, share := range g.Swell {
		if share != 1 {
			return false
		}
	}
	return g.Rock == [2]geometry.Angle{}
}

// Mirrored returns the gesture as it is seen from the other side: left and right change
// places.
func (g Gesture) Mirrored() Gesture {
	g.Rock[0], g.Rock[1] = g.Rock[1], g.Rock[0]
	return g
}

// Side says in which half of a motif a cut is, where one half is the mirror image of the
// other and both are cut from root to tip. A part's gesture is that of the right half: in
// the left one rock's sides change places, and a cut in the middle, between such cuts, has
// half of both to either side. So the motif stays the same seen from left and right.
type Side uint8

// A cut without a mirror image has its gesture as it is given, like one on the right.
const (
	RightHalf Side = iota
	LeftHalf
	MiddleLine
)

// On returns a part's gesture as a cut on a side of the motif has it.
func (g Gesture) On(side Side) Gesture {
	switch side {
	case LeftHalf:
		return g.Mirrored()
	case MiddleLine:
		half := (g.Rock[0] + g.Rock[1]) / 2
		g.Rock = [2]geometry.Angle{half, half}
	}
	return g
}

// HandParam is the name of the parameter of kinds that can be cut as by hand.
const HandParam = "hand"

// handParam is that parameter: 0 is machine-even, 1 the kind's full gesture.
func handParam() Param {
	return Param{
		Name: HandParam, About: "how much of a hand is seen in it: 0 machine-even, 1 a full gesture, with the swell and rock of its parts",
		Default: 0, Min: 0, Max: 1,
	}
}

// Gesture returns what the hand does along a part's cuts for some values: between even and
// the kind's full gesture.
func (k Kind) Gesture(v Values, part string) Gesture {
	hand, full := v[HandParam], k.Hand[part]
	if hand == 0 {
		return Gesture{}
	}
	g := Gesture{Swell: make([]float64, len(full.Swell))}
	for i, share := range full.Swell {
		g.Swell[i] = share + (1-hand)*(1-share)
	}
	for i, roll := range full.Rock {
		g.Rock[i] = geometry.Angle(hand) * roll
	}
	return g
}

// rolled returns a gesture of shares from root to tip, and rolls to left and right in degrees.
func rolled(left, right float64, swell ...float64) Gesture {
	return Gesture{Swell: swell, Rock: [2]geometry.Angle{geometry.Degrees(left), geometry.Degrees(right)}}
}
