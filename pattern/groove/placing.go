package groove

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// placing is a wheel set on the glass at one place: it lies in the plane of the
// surface's normal and of the cut's direction, its rim a depth below the surface.
type placing struct {
	cone         geometry.Cone
	radius       float64 // the wheel's
	at           geometry.Point
	ahead, left  geometry.Point // on the flat map
	centre, axle r3.Vec         // the axle points to the left
	curve        bending
}

// bending is how the surface curves at a place, seen along a direction on it:
// Euler's theorem with κ₂ = 0, and the twist that goes with it.
type bending struct{ along, across, twist float64 }

// place sets a wheel on the cone.
func place(cone geometry.Cone, radius, depth float64, at, ahead geometry.Point) placing {
	theta, z := cone.Reverse(at)
	p := placing{
		cone: cone, radius: radius, at: at, ahead: ahead,
		left: geometry.Point{X: -ahead.Y, Y: ahead.X},
	}
	normal := cone.Normal(theta)
	p.centre = r3.Add(cone.Space(theta, z), r3.Scale(radius-depth, normal))
	// The directions up the slant and round to the right, on the map and in space.
	sin, cos := math.Sincos(theta * math.Sin(cone.HalfAngle))
	up, right := geometry.Point{X: sin, Y: cos}, geometry.Point{X: cos, Y: -sin}
	slant := cone.Slant(theta)
	round := r3.Cross(slant, normal)
	p.axle = r3.Add(r3.Scale(r2.Dot(p.left, up), slant), r3.Scale(r2.Dot(p.left, right), round))
	curvature := cone.Curvature(z)
	cosine, sine := r2.Dot(ahead, up), r2.Dot(ahead, right)
	p.curve = bending{
		along:  curvature * sine * sine,
		across: curvature * cosine * cosine,
		twist:  -curvature * sine * cosine,
	}
	return p
}

// space returns the point of the surface at a place on the flat map.
func (p placing) space(q geometry.Point) r3.Vec {
	return p.cone.Space(p.cone.Reverse(q))
}

// bite returns how far the edge of a blade reaches past a point of the surface,
// measured along the wheel's radius: positive inside the blade.
func (p placing) bite(b blade, q geometry.Point) float64 {
	v := r3.Sub(p.space(q), p.centre)
	beta := r3.Dot(v, p.axle)
	return p.radius - b.drop(beta) - math.Sqrt(r3.Dot(v, v)-beta*beta)
}

// reach is bite in the wheel's own middle plane: how far the rim, drop aside,
// passes a point of the surface.
func (p placing) reach(q geometry.Point) float64 {
	v := r3.Sub(p.space(q), p.centre)
	beta := r3.Dot(v, p.axle)
	return p.radius - math.Sqrt(r3.Dot(v, v)-beta*beta)
}

// contact returns how far from the place the rim stays in the glass along the
// cut, ahead of it (side 1) or behind it (side -1).
func (p placing) contact(depth, side float64) float64 {
	guess := math.Sqrt(2 * depth / (1/p.radius + p.curve.along))
	return root(func(s float64) float64 {
		return p.reach(r2.Add(p.at, r2.Scale(side*s, p.ahead)))
	}, guess, math.Inf(1))
}

// root returns where f, positive at 0 and falling, crosses zero, to 0.0001 mm;
// it returns limit where f is still positive there. The guess speeds the search.
func root(f func(float64) float64, guess, limit float64) float64 {
	lo, hi := 0.0, min(max(guess, 1e-6), limit)
	flo := f(0)
	if !(flo > 0) {
		return 0
	}
	fhi := f(hi)
	for fhi > 0 {
		if hi >= limit {
			return limit
		}
		// Aim a little past where the line through both points crosses.
		step := 1.2 * fhi * (hi - lo) / max(flo-fhi, 1e-12)
		lo, flo = hi, fhi
		hi = min(hi+min(max(step, 1e-4), hi), limit)
		fhi = f(hi)
	}
	// Regula falsi, halving the weight of an end that stays (Illinois), or the
	// interval where f is infinite.
	kept := 0
	for range 60 {
		if hi-lo < 1e-4 {
			break
		}
		mid := (lo + hi) / 2
		if !math.IsInf(fhi, 0) {
			mid = lo + (hi-lo)*flo/(flo-fhi)
		}
		fmid := f(mid)
		switch {
		case math.Abs(fmid) < 1e-7:
			return mid
		case fmid > 0:
			lo, flo = mid, fmid
			if kept == 1 {
				fhi /= 2
			}
			kept = 1
		default:
			hi, fhi = mid, fmid
			if kept == -1 {
				flo /= 2
			}
			kept = -1
		}
	}
	return (lo + hi) / 2
}
