package groove_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// grain is a point of the skin of a wheel by hand: where it stands, the angle about its axle and
// how far it is rolled, from all to the right (0) to all to the left (1).
type grain struct {
	ring                ring
	along, angle, share float64
}

// grainAt returns the place of a grain in space.
func (s *handed) grainAt(k handwork, p grain) r3.Vec {
	depth := k.at[0].depth
	if !k.touch {
		depth = s.depthTo(p.along)
	}
	return s.grainOn(s.upright(p.along, depth), p)
}

// upright is grip without the angles in between.
func (s *handed) upright(along, depth float64) gripped {
	w := s.line.at(along)
	n := s.vessel.normal(w.at)
	share := s.share(along)
	return gripped{
		along: along, pivot: r3.Sub(w.at, r3.Scale(depth, n)), ahead: w.ahead, left: s.vessel.left(w), up: n, depth: depth,
		low: -s.hand.Rock[1] * share, high: s.hand.Rock[0] * share,
	}
}

// grainOn returns the place of a grain of a wheel.
func (s *handed) grainOn(g gripped, p grain) r3.Vec {
	turnedBy, angle := math.Sincos(p.angle)
	sin, cos := math.Sincos(g.low + p.share*(g.high-g.low))
	x, y, z := p.ring.radius*turnedBy, p.ring.axial, s.wheel.Radius-p.ring.radius*angle
	return r3.Add(g.pivot, r3.Add(r3.Scale(x, g.ahead), r3.Add(r3.Scale(y*cos+z*sin, g.left), r3.Scale(z*cos-y*sin, g.up))))
}

// bites looks over the skin of the wheel at all its places and rolls for how deep it goes and
// the least glass it leaves.
func (s *handed) bites(k handwork) (depth, left float64) {
	const apart, rolls = 20, 5 // tenths of a millimetre
	left = math.Inf(1)
	for _, r := range s.rings() {
		for roll := range rolls {
			p := grain{ring: r, share: float64(roll) / (rolls - 1)}
			deep, thin, most, least := p, p, 0.0, math.Inf(1)
			for i := 0; i < len(k.at); i += apart {
				g := k.at[min(i, len(k.at)-1)]
				p.along = g.along
				for far := -1.5*k.reach - s.wheel.Thick; far <= 1.5*k.reach+s.wheel.Thick; far += max(k.reach/12, 0.2) {
					p.angle = far / r.radius
					if math.Abs(p.angle) > math.Pi/2 {
						continue
					}
					d, l, ok := s.measure(s.grainOn(g, p))
					if !ok {
						continue
					}
					if d > most {
						most, deep = d, p
					}
					if l < least {
						least, thin = l, p
					}
				}
			}
			if most > depth-0.1 && most > 0 {
				depth = max(depth, s.climbs(k, deep, func(d, _ float64) float64 { return d }))
			}
			if least < left+0.1 {
				left = min(left, -s.climbs(k, thin, func(_, l float64) float64 { return -l }))
			}
		}
	}
	return depth, left
}

// climbs moves a grain in smaller and smaller steps to where it is worth most, and returns
// what that is.
func (s *handed) climbs(k handwork, p grain, worth func(depth, left float64) float64) float64 {
	value := func(p grain) float64 {
		if d, l, ok := s.measure(s.grainAt(k, p)); ok {
			return worth(d, l)
		}
		return math.Inf(-1)
	}
	best := value(p)
	for step := 1.0; step > 0.01; step /= 2 {
		for moved := true; moved; {
			moved = false
			for _, by := range [][3]float64{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 0.2}, {0, 0, -0.2}, {1, -1, 0}, {-1, 1, 0}} {
				q := p
				q.along = min(max(p.along+step*by[0], k.first), k.last)
				q.angle += step * by[1] / p.ring.radius
				q.share = min(max(p.share+step*by[2], 0), 1)
				if x := value(q); x > best+1e-7 {
					p, best, moved = q, x, true
				}
			}
		}
	}
	return best
}
