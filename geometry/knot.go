package geometry

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// knot is a station as the profile passes it: height, radius, and the slope r′
// and bend r″ it has there.
type knot struct{ z, r, slope, bend float64 }

// onALine is how far from a line a station may lie and still count as on it, in
// millimetres: the rounding of a length that was read in inches.
const onALine = 1e-9

// knotsOf returns the knots of the profile through stations.
//
// Slope and bend are those of the circle through a station and its neighbours,
// so that stations of a true arc give that arc back. Then they are made small
// enough that the quintic between two knots only rises or only falls. The rate of
// a quintic is a sum of Bernstein polynomials, which are all positive. For a rise
// of 1 over a height of 1, with slopes α, β and bends γ, δ at the ends, its five
// coefficients are
//
//	α,  α + γ/4,  5 − (2α + γ/4) − (2β − δ/4),  β − δ/4,  β
//
// If none of them is negative, the rate is nowhere negative. (The sharp conditions
// are Ulrich and Watson's, SIAM J. Sci. Comput. 15, 1994; ACM Algorithm 1031
// searches by them.) All but the middle one depend on one knot only. confine
// takes care of those, and ease of the middle one.
func knotsOf(stations []Circle) []knot {
	bare := make([]knot, len(stations))
	for i, s := range stations {
		bare[i] = knot{z: s.Height, r: s.Radius}
	}
	knots := estimate(bare)
	for i := range knots {
		confine(knots, i)
	}
	ease(knots)
	return knots
}

// estimate returns the knots with a slope and a bend.
func estimate(bare []knot) []knot {
	last := len(bare) - 1
	if last == 1 {
		rate := secant(bare[0], bare[1])
		return []knot{{bare[0].z, bare[0].r, rate, 0}, {bare[1].z, bare[1].r, rate, 0}}
	}
	arcs := make([]arc, len(bare))
	for i := 1; i < last; i++ {
		arcs[i] = newArc([3]knot(bare[i-1 : i+2]))
	}
	arcs[0], arcs[last] = arcs[1], arcs[last-1]
	knots := make([]knot, len(bare))
	for i, k := range bare {
		knots[i] = arcs[i+aside(arcs, i)].at(k)
	}
	return refined(knots, arcs)
}

// aside says whose circle a knot takes: 0 for its own, through it and its
// neighbours; 1 or -1 for that of the next knot above or below. The latter is so at
// the end of a corner, where the two stations beyond are far straighter.
func aside(arcs []arc, i int) int {
	const far = 4 // smooth curves don't change that fast from one station to the next
	last := len(arcs) - 1
	straighter := func(step int) bool {
		two := i + 2*step
		return i > 0 && i < last && two > 0 && two < last && arcs[i].bent() > far*max(arcs[i+step].bent(), arcs[two].bent())
	}
	switch above, below := straighter(1), straighter(-1); {
	case above && !below:
		return 1
	case below && !above:
		return -1
	}
	return 0
}

// refined returns the knots with their slopes corrected for how the bend changes
// from knot to knot. The correction is that of a cubic spline whose bend differs
// from the circle's by as much at both neighbours. On a true arc it is zero.
func refined(knots []knot, arcs []arc) []knot {
	fine := slices.Clone(knots)
	for i := 1; i < len(knots)-1; i++ {
		onLine := arcs[i].turn == 0 && (arcs[i-1].turn == 0 || arcs[i+1].turn == 0)
		if onLine || aside(arcs, i) != 0 {
			continue
		}
		const most = 0.1 // of the slope: a smooth curve needs no more
		before, k, after := knots[i-1], knots[i], knots[i+1]
		below, above := k.z-before.z, after.z-k.z
		change := (after.bend - arcs[i].at(after).bend) - (before.bend - arcs[i].at(before).bend)
		off := below * above / (6 * (below + above)) * change
		limit := most * math.Abs(k.slope)
		fine[i].slope -= min(max(off, -limit), limit)
	}
	return fine
}

// secant returns the rate of the straight line between two knots.
func secant(a, b knot) float64 { return (b.r - a.r) / (b.z - a.z) }

// arc is the circle through three knots, or the line they lie on.
type arc struct {
	on   [3]knot
	turn float64 // its curvature, positive where the profile is hollow
}

// newArc returns the arc through three knots. Its curvature is four times the
// area of their triangle by the product of the sides.
func newArc(on [3]knot) arc {
	a, b, c := on[0], on[1], on[2]
	off := (b.z-a.z)*(c.r-b.r) - (b.r-a.r)*(c.z-b.z)
	long := math.Hypot(c.z-a.z, c.r-a.r)
	if math.Abs(off) <= onALine*long {
		return arc{on: on}
	}
	return arc{on, 2 * off / (math.Hypot(b.z-a.z, b.r-a.r) * math.Hypot(c.z-b.z, c.r-b.r) * long)}
}

func (a arc) bent() float64 { return math.Abs(a.turn) }

// at returns one of the arc's three knots with the slope and the bend of the arc
// there. Where the circle has turned back before it comes to the knot, the knot
// gets the slope of the chord and no bend.
func (a arc) at(k knot) knot {
	k.slope, k.bend = secant(a.on[0], a.on[2]), 0
	if a.turn == 0 {
		return k
	}
	// Inverted about the knot, the circle is a line along its tangent there.
	var inverted []Point
	for _, o := range a.on {
		if o.z != k.z {
			to := Point{X: o.z - k.z, Y: o.r - k.r}
			inverted = append(inverted, r2.Scale(1/r2.Norm2(to), to))
		}
	}
	tangent := r2.Sub(inverted[1], inverted[0])
	if k.z != a.on[1].z {
		tangent = r2.Scale(-1, tangent) // both lie on one side of it
	}
	if slope := tangent.Y / tangent.X; tangent.X > 0 && !math.IsInf(slope, 0) {
		lean := 1 + slope*slope
		k.slope, k.bend = slope, a.turn*lean*math.Sqrt(lean)
	}
	return k
}

// confine corrects what depends on one knot alone. At a reading above or below
// both its neighbours the profile is made level, and it neither leaves a knot nor
// comes to it by turning back.
func confine(knots []knot, i int) {
	k := &knots[i]
	for _, side := range []int{-1, 1} {
		if j := i + side; j >= 0 && j < len(knots) && secant(*k, knots[j])*k.slope <= 0 {
			k.slope = 0
		}
	}
	for _, side := range []int{-1, 1} {
		j := i + side
		if j < 0 || j >= len(knots) {
			continue
		}
		// The next coefficient, as a slope: it has the sign of the rise, or is 0.
		apart := knots[j].z - k.z // negative below
		rise := float64(side) * (knots[j].r - k.r)
		turn := -4 * k.slope / apart // the bend at which it is 0
		switch {
		case rise == 0:
			k.bend = 0
		case (rise > 0) == (side > 0):
			k.bend = max(k.bend, turn)
		default:
			k.bend = min(k.bend, turn)
		}
	}
	if math.IsNaN(k.bend) || math.IsInf(k.bend, 0) {
		k.bend = 0
	}
}

// ease makes slopes and bends smaller, by one factor, where two knots together
// need more than the rise between them. Each knot can have half of the rise, and
// whatever the other does not use.
func ease(knots []knot) {
	const all = 5.0
	share := make([]float64, len(knots))
	for i := range share {
		share[i] = 1
	}
	for i := 1; i < len(knots); i++ {
		a, b := knots[i-1], knots[i]
		h, rise := b.z-a.z, b.r-a.r
		if rise == 0 {
			continue // both are level already
		}
		from, to := (2*a.slope+a.bend*h/4)*h/rise, (2*b.slope-b.bend*h/4)*h/rise
		if from+to <= all {
			continue
		}
		if from > all/2 {
			share[i-1] = min(share[i-1], max(all/2, all-to)/from)
		}
		if to > all/2 {
			share[i] = min(share[i], max(all/2, all-from)/to)
		}
	}
	for i := range knots {
		knots[i].slope *= share[i]
		knots[i].bend *= share[i]
	}
}
