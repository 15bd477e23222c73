package geometry

import "math"

// Gore is a strip of a surface of revolution laid flat about the line that runs
// up its middle. Along that line, and round the surface at every height, lengths
// are true: a level line is the arc it is on the cone that touches the surface
// there. Cartographers call the map polyconic (Snyder, Map Projections, USGS
// 1395, 1987, chapter 18). On a cone it is the cone's own flat map. On any other
// surface, lines up the profile come out too long or too short: at an angle θ from
// the middle by (rθ)²K/2 of their length, where K = κ₁κ₂ is the surface's
// curvature. No flat paper can avoid that.
type Gore struct {
	Profile   *Profile
	Lift      float64 // how far outside the profile the paper lies, as a radius
	HalfWidth float64 // the angle θ of its edges, to either side of its middle
}

// Tangent returns the cone that touches the gore's surface at height z.
func (g Gore) Tangent(z float64) Cone {
	return NewCone(Angle(math.Atan(g.Profile.Slope(z))), Circle{g.RadiusAt(z), z}, g.Profile.Along(z))
}

// RadiusAt returns the radius of the gore's surface at height z.
func (g Gore) RadiusAt(z float64) float64 { return g.Profile.Radius(z) + g.Lift }

// Forward returns the place on the flat gore of the point at the angle θ from
// its middle line and at height z.
func (g Gore) Forward(theta, z float64) Point { return g.Tangent(z).Forward(theta, z) }

// Excess returns how much longer the gore's edges are when they lie flat than on
// the surface, between two heights: the most that any part of them gains, and
// the most that any part loses. Both are lengths above zero.
func (g Gore) Excess(from, to float64) (gain, loss float64) {
	const step = 0.25 // mm: where chords of the flat line are as good as its arcs
	n := int(math.Ceil((to-from)/step)) + 1
	// The sum so far, and the lowest and the highest it has been.
	sum, least, most := 0.0, 0.0, 0.0
	before, along := g.Forward(g.HalfWidth, from), g.Profile.Along(from)
	for i := 1; i <= n; i++ {
		z := from + (to-from)*float64(i)/float64(n)
		at, s := g.Forward(g.HalfWidth, z), g.Profile.Along(z)
		sum += math.Hypot(at.X-before.X, at.Y-before.Y) - (s - along)
		before, along = at, s
		gain, loss = max(gain, sum-least), max(loss, most-sum)
		least, most = min(least, sum), max(most, sum)
	}
	return gain, loss
}

// Lies returns how far the gore lies on the surface from one height towards
// another, up or down: on the way no part of its edges is longer or shorter than
// on the surface by more than the given length.
func (g Gore) Lies(from, to, within float64) (z float64) {
	const step = 0.25 // mm, as above
	n := max(1, int(math.Ceil(math.Abs(to-from)/step)))
	sum, least, greatest := 0.0, 0.0, 0.0
	before, along := g.Forward(g.HalfWidth, from), g.Profile.Along(from)
	z = from
	for i := 1; i <= n; i++ {
		next := from + (to-from)*float64(i)/float64(n)
		at, s := g.Forward(g.HalfWidth, next), g.Profile.Along(next)
		sum += math.Hypot(at.X-before.X, at.Y-before.Y) - math.Abs(s-along)
		before, along = at, s
		if least, greatest = min(least, sum), max(greatest, sum); greatest-least > within {
			break
		}
		z = next
	}
	return z
}

// Join returns the height at which such gores can be joined side by side along a
// level line, as on the cone that touches the surface there, without lying on
// each other anywhere between two heights. Of several it is the one where the
// surface is widest. ok is false on a surface that has none, such as a waisted
// one.
func (g Gore) Join(from, to float64) (z float64, ok bool) {
	const tries = 64
	widest := 0.0
	for i := range tries + 1 {
		at := from + (to-from)*float64(i)/tries
		if r := g.RadiusAt(at); r > widest && g.apart(at, from, to) {
			z, ok, widest = at, true, r
		}
	}
	return z, ok
}

// Gap returns how far the gore's right edge stays, at height z, from the line
// halfway to its neighbour, when they are joined on the given cone. Below zero
// they lie on each other.
func (g Gore) Gap(joined Cone, z float64) float64 {
	foot, head := joined.Forward(g.HalfWidth, z-1), joined.Forward(g.HalfWidth, z+1)
	edge := g.Forward(g.HalfWidth, z)
	return ((head.Y-foot.Y)*(foot.X-edge.X) - (head.X-foot.X)*(foot.Y-edge.Y)) / math.Hypot(head.X-foot.X, head.Y-foot.Y)
}

// apart reports whether gores joined at a height lie beside each other.
func (g Gore) apart(joint, from, to float64) bool {
	const touch = 0.005 // mm: less than the line they are cut along
	joined := g.Tangent(joint)
	const tries = 64
	for i := range tries + 1 {
		if g.Gap(joined, from+(to-from)*float64(i)/tries) < -touch {
			return false
		}
	}
	return true
}
