package groove_test

import (
	"fmt"
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// This file and its neighbours named revolution_… are the search of both solids
// again, for glass that curves along its profile: places on the surface are
// reached by walking there, a wheel is a body that holds a point or doesn't, and
// what is asked of the package is found by trying.

// vessel is the solid r ≤ radius(z), for a radius that is a plain function of
// the height between two ends, with its slope dr/dz.
type vessel struct {
	name        string
	bottom, top float64
	at          func(z float64) (radius, slope float64)
}

// String names the vessel.
func (v *vessel) String() string { return fmt.Sprintf("%s from %.1f to %.1f", v.name, v.bottom, v.top) }

// radius returns the radius at a height.
func (v *vessel) radius(z float64) float64 {
	r, _ := v.at(z)
	return r
}

// holds reports whether a point lies in the glass.
func (v *vessel) holds(p r3.Vec) bool { return v.under(p) >= 0 }

// under returns how far a point lies inside the glass, measured level; it is below zero
// outside.
func (v *vessel) under(p r3.Vec) float64 {
	if p.Z < v.bottom || p.Z > v.top {
		return -1
	}
	return v.radius(p.Z) - math.Sqrt(p.X*p.X+p.Y*p.Y)
}

// place returns the point of the surface at an angle and a height.
func (v *vessel) place(theta, z float64) r3.Vec {
	sin, cos := math.Sincos(theta)
	r := v.radius(z)
	return r3.Vec{X: r * cos, Y: r * sin, Z: z}
}

// normal returns the outward unit normal beside a point.
func (v *vessel) normal(p r3.Vec) r3.Vec {
	_, slope := v.at(p.Z)
	away := math.Sqrt(p.X*p.X + p.Y*p.Y)
	return unit(r3.Vec{X: p.X / away, Y: p.Y / away, Z: -slope})
}

// onto returns the point of the surface near p, along the gradient there.
func (v *vessel) onto(p r3.Vec) r3.Vec {
	for range 4 {
		radius, slope := v.at(p.Z)
		away := math.Sqrt(p.X*p.X + p.Y*p.Y)
		off := (away - radius) / (1 + slope*slope)
		p = r3.Sub(p, r3.Scale(off, r3.Vec{X: p.X / away, Y: p.Y / away, Z: -slope}))
		if math.Abs(off) < 1e-7 { // the next is below 1e-14
			break
		}
	}
	return p
}

// left returns the direction on a walker's left hand.
func (v *vessel) left(w walker) r3.Vec { return r3.Cross(v.normal(w.at), w.ahead) }

// pace is the length of one step of a straight walk. A step along the tangent,
// drawn back square to the surface, errs by less than κ²·pace³ ≈ 5e-6 mm where
// the surface curves as on a ball of 15 mm.
const pace = 0.1

// step takes a walker straight ahead: the direction is carried along by the
// least turn that takes the normal here to the normal there.
func (v *vessel) step(w walker, length float64) walker {
	at := v.onto(r3.Add(w.at, r3.Scale(length, w.ahead)))
	n, next := v.normal(w.at), v.normal(at)
	ahead := r3.Sub(w.ahead, r3.Scale(r3.Dot(w.ahead, next)/(1+r3.Dot(n, next)), r3.Add(n, next)))
	return walker{at, unit(ahead)}
}

// trail is a straight walk from a place, known every pace.
type trail struct {
	vessel *vessel
	feet   []walker
}

// trail sets out to one hand of a walker (1 left, -1 right).
func (v *vessel) trail(w walker, hand, length float64) trail {
	return v.along(walker{w.at, r3.Scale(hand, v.left(w))}, length)
}

// at returns the place at a distance along the trail.
func (t trail) at(s float64) r3.Vec {
	i := min(max(int(s/pace), 0), len(t.feet)-1)
	return t.vessel.step(t.feet[i], s-float64(i)*pace).at
}

// profile returns the vessel's profile as it would be measured: where it is widest
// and narrowest, and every half millimetre between. A profile goes nowhere beyond its
// readings: without those at the turns a crest of 15 mm is planed off by 0.002 mm, and
// the glass beside it leans half a degree out of true, which a light touch there shows
// by a tenth of a millimetre.
func (v *vessel) profile() *geometry.Profile {
	const apart = 0.5
	var heights []float64
	turns := v.turns(apart)
	for i, to := range turns[1:] {
		n := int(math.Ceil((to - turns[i]) / apart))
		for j := range n {
			heights = append(heights, turns[i]+(to-turns[i])*float64(j)/float64(n))
		}
	}
	heights = append(heights, v.top)
	stations := make([]geometry.Circle, len(heights))
	for i, z := range heights {
		stations[i] = geometry.Circle{Radius: v.radius(z), Height: z}
	}
	p, err := geometry.NewProfile(stations)
	if err != nil {
		panic(err)
	}
	return p
}

// turns returns the vessel's ends and, between them, the heights at which it is widest
// or narrowest, in rising order.
func (v *vessel) turns(apart float64) []float64 {
	rises := func(z float64) bool { _, slope := v.at(z); return slope > 0 }
	all := []float64{v.bottom}
	for z := v.bottom; z+2*apart < v.top; z += apart {
		if first := rises(z + apart); rises(z) != first && z > v.bottom+apart {
			all = append(all, bisect(z, z+apart, func(z float64) bool { return rises(z) != first }))
		}
	}
	return append(all, v.top)
}

// chart is the flat map that lines are drawn on: polar about a cone's apex, with
// the distance along the vessel's own profile in place of the cone's.
type chart struct {
	vessel  *vessel
	cone    geometry.Cone
	heights []float64
	along   []float64 // the profile's length from the bottom to each height
}

// chart returns the vessel's chart on a cone. The profile's length is summed over
// chords of a twentieth of a millimetre: each is short by κ²·0.05³/24 at most,
// 0.0001 mm over the tightest curve here.
func (v *vessel) chart(cone geometry.Cone) *chart {
	const chord = 0.05
	n := int(math.Ceil((v.top - v.bottom) / chord))
	c := &chart{vessel: v, cone: cone, heights: make([]float64, n+1), along: make([]float64, n+1)}
	radius := 0.0
	for i := range c.heights {
		c.heights[i] = v.bottom + (v.top-v.bottom)*float64(i)/float64(n)
		was := radius
		radius = v.radius(c.heights[i])
		if i > 0 {
			c.along[i] = c.along[i-1] + math.Hypot(c.heights[i]-c.heights[i-1], radius-was)
		}
	}
	return c
}

// height returns the height at a distance along the profile. Beyond its ends the
// profile runs on straight.
func (c *chart) height(s float64) float64 { return interpolate(c.along, c.heights, s) }

// distance returns the distance along the profile at a height.
func (c *chart) distance(z float64) float64 { return interpolate(c.heights, c.along, z) }

// interpolate reads y at x from a table whose x rise.
func interpolate(xs, ys []float64, x float64) float64 {
	i := min(max(sort.SearchFloat64s(xs, x), 1), len(xs)-1)
	return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
}

// flat is the half-angle below which a cone is taken for a cylinder.
const flat = 1e-6

// forward returns the chart's point for an angle and a height.
func (c *chart) forward(theta, z float64) geometry.Point {
	s, sin := c.distance(z), math.Sin(c.cone.HalfAngle.Radians())
	if math.Abs(sin) < flat {
		return geometry.Point{X: theta * c.cone.Radius, Y: s}
	}
	rho, apex := c.cone.Radius/sin+s-c.cone.Along, c.cone.Along-c.cone.Radius/sin
	return geometry.Point{X: rho * math.Sin(theta*sin), Y: apex + rho*math.Cos(theta*sin)}
}

// reverse returns the angle and the height of a point of the chart.
func (c *chart) reverse(p geometry.Point) (theta, z float64) {
	sin := math.Sin(c.cone.HalfAngle.Radians())
	if math.Abs(sin) < flat {
		return p.X / c.cone.Radius, c.height(p.Y)
	}
	apex := c.cone.Along - c.cone.Radius/sin
	side := math.Copysign(1, sin) // the apex lies below, or above
	rho := side * math.Hypot(p.X, p.Y-apex)
	return math.Atan2(side*p.X, side*(p.Y-apex)) / sin, c.height(c.cone.Along + rho - c.cone.Radius/sin)
}

// space returns the point of the surface that a point of the chart stands for.
func (c *chart) space(p geometry.Point) r3.Vec { return c.vessel.place(c.reverse(p)) }
