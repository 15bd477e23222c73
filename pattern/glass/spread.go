package glass

import (
	"math"
	"slices"
	"sort"
)

// spread is the foot of a glass that spreads flatly: its upper face, and the flat underside
// beneath. A cut on that face comes nearer to the underside than to any inside.
type spread struct {
	face, rest [][2]spot // the outside low down: what faces up, and the remainder
	edge       float64   // how far out the underside is taken to reach
	hollow     Hollow
	kinks      []float64
}

// flattest is how much the outside may narrow by height, at least, to count as the upper face
// of a foot: it lies within 60° of level. What is steeper is the side of the glass, whose cuts
// may well run out over the foot's edge, and below it lies no thickness that a cut takes from.
const flattest = 0.577 // the tangent of 30°

// spreads returns the foot of an outside without its underside, nil where no part of the
// outside lies so flat.
func (b *Blank) spreads() *spread {
	f, facing := new(spread), false
	for _, p := range b.pieces() {
		from, to := p[0], p[1]
		up := from.radius-to.radius >= flattest*(to.height-from.height)
		if up != facing {
			f.kinks = append(f.kinks, from.height)
		}
		if facing = up; up {
			f.face = append(f.face, p)
		} else {
			f.rest = append(f.rest, p)
		}
	}
	if f.face == nil {
		return nil
	}
	return f
}

// spread returns the blank's foot, nil where nothing of it spreads. What lies higher than the
// thickest wall is nearer to the inside.
func (b *Blank) spread() *spread {
	if b.flat == nil {
		return nil
	}
	thickest := 0.0
	for _, s := range b.Stations {
		thickest = max(thickest, s.Wall)
	}
	f := &spread{edge: max(b.BaseRadius(), b.profile.Radius(0)), hollow: b.Hollow}
	top := thickest + b.Hollow.Depth
	f.face, f.rest = below(b.flat.face, top), below(b.flat.rest, top)
	if len(f.face) == 0 {
		return nil
	}
	f.kinks = slices.Clone(b.flat.kinks)
	for _, p := range f.face {
		if half := b.Hollow.Across / 2; half > p[1].radius && half < p[0].radius {
			f.kinks = append(f.kinks, p[1].height)
		}
	}
	return f
}

// below returns those of some pieces that begin below a height.
func below(pieces [][2]spot, height float64) [][2]spot {
	n := sort.Search(len(pieces), func(i int) bool { return pieces[i][0].height >= height })
	return pieces[:n]
}

// distance returns how much glass lies between a place and the underside, +Inf where the
// outside that is nearest to the place isn't the foot's face. The hollow of a punty mark is
// taken to be as deep all over its width as it is anywhere.
func (f *spread) distance(at spot, least float64) float64 {
	over := math.Hypot(max(at.height, 0), max(at.radius-f.edge, 0))
	if at.height < 0 {
		over = at.height
	}
	if f.hollow != (Hollow{}) {
		above, beyond := at.height-f.hollow.Depth, max(at.radius-f.hollow.Across/2, 0)
		if above < 0 && beyond == 0 {
			over = min(over, above)
		} else {
			over = min(over, math.Hypot(max(above, 0), beyond))
		}
	}
	if over >= least || nearestOf(f.face, at) > nearestOf(f.rest, at) {
		return math.Inf(1)
	}
	return over
}

// nearestOf returns the least distance of a place from some pieces.
func nearestOf(pieces [][2]spot, at spot) float64 {
	nearest := math.Inf(1)
	for _, p := range pieces {
		nearest = min(nearest, apart(p, at))
	}
	return nearest
}

// Beneath is what the glass under the outside ends at: the inside and, under the upper face of
// a spread foot, the underside.
type Beneath interface {
	// Distance returns how much glass lies between a place in it and the nearest of what it
	// ends at. It is below zero outside the glass.
	Distance(radius, height float64) float64
	// Kinks returns the heights of the outside at which the glass left may change suddenly, in
	// rising order. The slice must not be changed.
	Kinks() []float64
}

// Beneath returns what glass left under cuts in the outside is measured to.
func (b *Blank) Beneath() Beneath {
	foot := b.spread()
	if foot == nil {
		return b.thin
	}
	foot.kinks = append(foot.kinks, b.thin.Kinks()...)
	slices.Sort(foot.kinks)
	return footed{b.thin, foot}
}

// footed is the inside of a glass with the underside of its spread foot.
type footed struct {
	inside *Inner
	foot   *spread
}

func (f footed) Distance(radius, height float64) float64 {
	left := f.inside.Distance(radius, height)
	return min(left, f.foot.distance(spot{radius, height}, left))
}

func (f footed) Kinks() []float64 { return f.foot.kinks }
