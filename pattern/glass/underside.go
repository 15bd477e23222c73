package glass

import (
	"math"
	"slices"
)

// Hollow is the hollow that a punty mark left in the middle of the underside, where it was
// ground out: how far across it is and how deep. The zero Hollow is none.
type Hollow struct{ Across, Depth float64 }

// volume returns the glass that a hollow takes: a cap of a ball.
func (h Hollow) volume() float64 {
	half := h.Across / 2
	return math.Pi / 6 * h.Depth * (3*half*half + h.Depth*h.Depth)
}

// BaseRadius returns the radius of the flat underside: half of BaseAcross or, where that was
// not measured, the foot's.
func (b *Blank) BaseRadius() float64 {
	if b.BaseAcross > 0 {
		return b.BaseAcross / 2
	}
	return b.profile.Radius(0)
}

// Underside is what the glass over its flat underside ends at: the inside and, where the
// glass stands on a spread foot, the top of that foot.
type Underside struct {
	inside *Inner
	flare  flare
	hollow Hollow
	kinks  []float64
}

// Underside returns what glass left under cuts in the underside is measured to.
func (b *Blank) Underside() Underside {
	u := Underside{inside: b.thin, flare: b.flare(), hollow: b.Hollow}
	u.kinks = u.flare.kinks
	if u.hollow != (Hollow{}) {
		u.kinks = append(u.kinks, u.hollow.Across/2)
	}
	slices.Sort(u.kinks)
	return u
}

// Distance returns how much glass is left over the bottom of a cut in the underside, which
// lies at a radius and so far up from the table. Where the punty mark was ground out that
// much is gone already, and how the hollow is rounded isn't known. So all of its depth is
// taken off all over its width: that is never too little.
func (u Underside) Distance(radius, height float64) float64 {
	left := min(u.inside.Distance(radius, height), u.flare.distance(radius, height))
	if u.hollow == (Hollow{}) {
		return left
	}
	over := u.inside.floor - u.hollow.Depth - height
	beyond := max(0, radius-u.hollow.Across/2)
	if beyond == 0 {
		left = min(left, u.flare.distance(radius, height+u.hollow.Depth))
	}
	if over < 0 && beyond == 0 {
		return min(left, over)
	}
	return min(left, math.Hypot(max(over, 0), beyond))
}

// Kinks returns the radii at which the glass left changes suddenly, in rising order.
func (u Underside) Kinks() []float64 { return u.kinks }
