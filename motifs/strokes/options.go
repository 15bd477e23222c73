package strokes

import "roundlay/geometry"

// Options says how strokes are made fit to cut. Lengths are shares of the longer side
// of the drawing's box. Zero stands for the default named beside each; below zero,
// what it is for isn't done.
type Options struct {
	// Centre takes a filled sliver, the doubled outline of one stroke of a pen, as
	// its middle line.
	Centre bool
	// Corner is the sharpest turn that stays inside a stroke; DefaultCorner.
	Corner geometry.Angle
	// Step is how near points may lie before some are left out; DefaultStep.
	Step float64
	// Tremor is how far a line may be moved to smooth it; DefaultTremor.
	Tremor float64
	// Touch is how near strokes come where they meet; DefaultTouch.
	Touch float64
}

// The defaults. On a motif 60 mm high each is 0.1 mm, the step of a caliper: less than
// a hand holds.
const (
	DefaultStep   = 1.0 / 600
	DefaultTremor = 1.0 / 600
	DefaultTouch  = 1.0 / 600
)

// DefaultCorner is the sharpest turn that a wheel is carried through. Its contact
// with the glass is some millimetres long. At a turn of 20° the ends of a contact of
// 4 mm swing out by 2 mm × sin 20° = 0.7 mm, about the width of a fine groove: beyond
// it the corner is ground away, and the wheel has to be lifted and set anew.
func DefaultCorner() geometry.Angle { return geometry.Degrees(20) }

// settled returns the options with defaults filled in, and lengths in the drawing's
// own units.
func (o Options) settled(size float64) Options {
	set := func(x *float64, by float64) {
		if *x == 0 {
			*x = by
		}
		*x = max(0, *x) * size
	}
	set(&o.Step, DefaultStep)
	set(&o.Tremor, DefaultTremor)
	set(&o.Touch, DefaultTouch)
	if o.Corner == 0 {
		o.Corner = DefaultCorner()
	}
	if o.Corner < 0 {
		o.Corner = geometry.Degrees(180)
	}
	return o
}
