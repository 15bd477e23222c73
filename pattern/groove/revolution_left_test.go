package groove_test

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// curve is a profile as a row of dense points, at rising heights.
type curve struct{ radii, heights []float64 }

// distance returns how far a point of the half-plane lies from the curve.
func (c curve) distance(radius, height float64) float64 {
	start := sort.SearchFloat64s(c.heights, height)
	least := math.Inf(1) // squared, like all distances here
	for i := start; i < len(c.heights); i++ {
		if up := c.heights[max(i-1, 0)] - height; i > start && up > 0 && up*up >= least {
			break
		}
		least = min(least, c.segment(i, radius, height))
	}
	for i := start - 1; i >= 0; i-- {
		if i < start-1 {
			if down := height - c.heights[i+1]; down > 0 && down*down >= least {
				break
			}
		}
		least = min(least, c.segment(i, radius, height))
	}
	return math.Sqrt(least)
}

// segment returns the square of the distance to the piece of the curve that ends at
// point i.
func (c curve) segment(i int, radius, height float64) float64 {
	j := max(i-1, 0)
	r, z := c.radii[i]-c.radii[j], c.heights[i]-c.heights[j]
	u, v := radius-c.radii[j], height-c.heights[j]
	along, length := u*r+v*z, r*r+z*z
	switch {
	case along <= 0:
		return u*u + v*v
	case along >= length:
		return (u-r)*(u-r) + (v-z)*(v-z)
	}
	t := along / length
	return (u-t*r)*(u-t*r) + (v-t*z)*(v-t*z)
}

// outside returns the vessel's own profile as points a fifth of a millimetre apart:
// a chord of it leaves the tightest curve by 0.0004 mm.
func (v *vessel) outside() curve {
	const apart = 0.2
	n := int(math.Ceil((v.top - v.bottom) / apart))
	c := curve{make([]float64, n+1), make([]float64, n+1)}
	for i := range c.heights {
		c.heights[i] = v.bottom + (v.top-v.bottom)*float64(i)/float64(n)
		c.radii[i] = v.radius(c.heights[i])
	}
	return c
}

// lining is the inside of a vessel: a wall that changes with the height, and a
// floor.
type lining struct {
	wall    curve
	floor   float64
	corner  float64 // the inside radius at the floor
	outside curve
	kinks   []float64 // once they were asked for
}

// newLining hollows a vessel out down to a floor, leaving a wall so thick,
// measured level.
func newLining(v *vessel, floor float64, wall func(z float64) float64) *lining {
	l := &lining{floor: floor, outside: v.outside()}
	for i, z := range l.outside.heights {
		l.wall.heights = append(l.wall.heights, z)
		l.wall.radii = append(l.wall.radii, max(l.outside.radii[i]-wall(z), 0.5))
	}
	l.corner = interpolate(l.wall.heights, l.wall.radii, floor)
	from := sort.SearchFloat64s(l.wall.heights, floor)
	l.wall.heights = append([]float64{floor}, l.wall.heights[from:]...)
	l.wall.radii = append([]float64{l.corner}, l.wall.radii[from:]...)
	return l
}

// Distance returns the glass between a point and the inside: below zero where the
// point lies in the hollow.
func (l *lining) Distance(radius, height float64) float64 {
	out, up := max(radius-l.corner, 0), height-l.floor
	d := math.Sqrt(out*out + up*up)
	d = min(d, l.wall.distance(radius, height))
	if height > l.floor && radius < interpolate(l.wall.heights, l.wall.radii, height) {
		return -d
	}
	return d
}

// Kinks returns the height of the place of the outside nearest to the floor's
// corner.
func (l *lining) Kinks() []float64 {
	if l.kinks == nil {
		best, least := 0.0, math.Inf(1)
		for i, z := range l.outside.heights {
			if d := math.Hypot(l.outside.radii[i]-l.corner, z-l.floor); d < least {
				best, least = z, d
			}
		}
		l.kinks = []float64{best}
	}
	return l.kinks
}

// bite is the worst that a wheel does: how deep it goes square to the surface,
// the least glass it leaves, and where that is.
type bite struct {
	depth, left float64
	at          r3.Vec
}

// ring is a circle of the wheel's skin: how far from its middle plane, and its radius.
type ring struct{ axial, radius float64 }

// rings returns circles all across the wheel's edge, with its corners and the
// lines of its mitres.
func (s *turning) rings() []ring {
	w := s.wheel
	half := w.Thick / 2 * (1 - 1e-9)
	if w.Edge == groove.Round {
		half = min(half, w.Convex*(1-1e-9))
	}
	axials := []float64{0, w.Tip / 2, -w.Tip / 2}
	for i := range 11 {
		axials = append(axials, half*(float64(i)/5-1))
	}
	for i := range w.Mitres {
		axials = append(axials, (float64(i)-float64(w.Mitres-1)/2)*w.Spacing)
	}
	var rings []ring
	for _, axial := range axials {
		if math.Abs(axial) <= half {
			rings = append(rings, ring{axial, bisect(0, w.Radius+1e-9, func(x float64) bool { return s.body.holds(axial, x) })})
		}
	}
	return rings
}

// spot is a point of the wheel's skin: where the wheel stands along the line,
// and the angle about its axle.
type spot struct {
	ring         ring
	along, angle float64
}

// point returns the place of a spot in space.
func (s *turning) point(p spot, depth float64) r3.Vec {
	w := s.line.at(p.along)
	return s.skin(w, s.vessel.normal(w.at), s.vessel.left(w), p.ring, p.angle, depth)
}

// skin returns a point of the wheel's skin where it is set down by a walker.
func (s *turning) skin(w walker, n, left r3.Vec, r ring, angle, depth float64) r3.Vec {
	sin, cos := math.Sincos(angle)
	at := r3.Add(w.at, r3.Scale(s.wheel.Radius-depth-r.radius*cos, n))
	return r3.Add(at, r3.Add(r3.Scale(r.radius*sin, w.ahead), r3.Scale(r.axial, left)))
}

// measure returns what a point of the wheel does: false where it is not in the glass.
func (s *turning) measure(p r3.Vec) (depth, left float64, bites bool) {
	if !s.vessel.holds(p) {
		return 0, math.Inf(1), false
	}
	radius := math.Sqrt(p.X*p.X + p.Y*p.Y)
	return s.lining.outside.distance(radius, p.Z), s.lining.Distance(radius, p.Z), true
}

// bite looks over all of the wheel's skin, wherever it stands, for its worst:
// every two millimetres, and then closer about the best of each ring.
func (s *turning) bite(k work) bite {
	deepest := bite{left: math.Inf(1)}
	const step = 2
	n := int(math.Ceil((k.last - k.first) / step))
	rings, ways := s.rings(), s.ways(k)
	deep, thin := make([]spot, len(rings)), make([]spot, len(rings))
	most, least := make([]float64, len(rings)), make([]float64, len(rings))
	for i := range n + 1 {
		along := k.first + (k.last-k.first)*float64(i)/float64(max(n, 1))
		w := s.line.at(along)
		normal, left := s.vessel.normal(w.at), s.vessel.left(w)
		for j, r := range rings {
			for _, far := range ways {
				a := far / r.radius
				if math.Abs(a) > math.Pi/2 {
					continue
				}
				d, l, ok := s.measure(s.skin(w, normal, left, r, a, k.depth))
				if !ok {
					continue
				}
				if d > most[j] {
					most[j], deep[j] = d, spot{r, along, a}
				}
				if l < least[j] || least[j] == 0 {
					least[j], thin[j] = l, spot{r, along, a}
				}
			}
		}
	}
	for j := range rings {
		if most[j] > 0 && most[j] > deepest.depth-0.1 {
			_, d := s.settle(k, deep[j], func(d, _ float64) float64 { return d })
			deepest.depth = max(deepest.depth, d)
		}
		if most[j] > 0 && least[j] < deepest.left+0.1 {
			at, l := s.settle(k, thin[j], func(_, l float64) float64 { return -l })
			if -l < deepest.left {
				deepest.left, deepest.at = -l, at
			}
		}
	}
	return deepest
}

// ways returns how far round the wheel it is looked at: closely as far as it
// bites about where it stands, and less so a quarter of a turn to either side, as
// it may bite elsewhere.
func (s *turning) ways(k work) []float64 {
	near := 1.3*k.reach + 2
	ways := []float64{0}
	for far := 0.0; far < s.wheel.Radius*math.Pi/2; {
		if far += 3; far < near+3 {
			far -= 3 - max(min(1.5, k.reach/2), near/40)
		}
		ways = append(ways, far, -far)
	}
	return ways
}

// settle moves a spot, with smaller and smaller steps along the line and round
// the wheel, to where it is worth the most.
func (s *turning) settle(k work, p spot, worth func(depth, left float64) float64) (r3.Vec, float64) {
	value := func(p spot) float64 {
		p.along = min(max(p.along, k.first), k.last)
		d, l, ok := s.measure(s.point(p, k.depth))
		if !ok {
			return math.Inf(-1)
		}
		return worth(d, l)
	}
	best := value(p)
	for step := 1.0; step > 0.005; step /= 2 {
		for moved := true; moved; {
			moved = false
			for _, q := range []spot{
				{p.ring, min(p.along+step, k.last), p.angle}, {p.ring, max(p.along-step, k.first), p.angle},
				{p.ring, p.along, p.angle + step/p.ring.radius}, {p.ring, p.along, p.angle - step/p.ring.radius},
			} {
				if x := value(q); x > best+1e-7 {
					p, best, moved = q, x, true
				}
			}
		}
	}
	return s.point(p, k.depth), best
}
