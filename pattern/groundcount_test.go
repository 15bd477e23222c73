package pattern

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// swept is the body that a wheel leaves behind as it is carried along one cut, found from
// the plan's centre lines alone: where the wheel stands, each place with its axle.
type swept struct {
	wheel  groove.Wheel
	stands []wheelStand
	// The cut's box, with room for its width.
	theta, height [2]float64
}

type wheelStand struct{ centre, axle r3.Vec }

// outsideAt returns a place on a surface of revolution of the given profile, and its normal.
func outsideAt(profile *geometry.Profile, theta, z float64) (at, normal r3.Vec) {
	const h = 1e-4 // mm
	sin, cos := math.Sincos(theta)
	r, rate := profile.Radius(z), (profile.Radius(z+h)-profile.Radius(z-h))/(2*h)
	at = r3.Vec{X: r * cos, Y: r * sin, Z: z}
	return at, r3.Unit(r3.Vec{X: cos, Y: sin, Z: -rate})
}

// sweep returns the body of a cut, carried round the glass by an angle.
func sweep(p *Plan, c *Cut, turned float64) swept {
	s := swept{wheel: p.Job.Rack[c.Wheel], theta: [2]float64{math.Inf(1), math.Inf(-1)}, height: [2]float64{math.Inf(1), math.Inf(-1)}}
	profile := p.Blank.Profile()
	stand := func(along, depth float64) wheelStand {
		at := func(along float64) (theta, z float64) {
			i := 1
			for i < len(c.Samples)-1 && c.Samples[i].Along < along {
				i++
			}
			a, b := c.Samples[i-1], c.Samples[i]
			t := (along - a.Along) / (b.Along - a.Along)
			return a.Theta + t*(b.Theta-a.Theta) + turned, a.Height + t*(b.Height-a.Height)
		}
		place, normal := outsideAt(profile, angleOf(at(along)), heightOf(at(along)))
		before, _ := outsideAt(profile, angleOf(at(along-0.3)), heightOf(at(along-0.3)))
		after, _ := outsideAt(profile, angleOf(at(along+0.3)), heightOf(at(along+0.3)))
		return wheelStand{r3.Add(place, r3.Scale(s.wheel.Radius-depth, normal)), r3.Unit(r3.Cross(normal, r3.Sub(after, before)))}
	}
	last := c.Samples[len(c.Samples)-1]
	ends := [2]r3.Vec{}
	ends[0], _ = outsideAt(profile, c.Samples[0].Theta+turned, c.Samples[0].Height)
	ends[1], _ = outsideAt(profile, last.Theta+turned, last.Height)
	reaches := func(along float64, end r3.Vec) float64 { return r3.Norm(r3.Sub(end, stand(along, c.Depth).centre)) }
	from, to := 0.0, c.Length
	if c.Touch {
		for range 50 {
			if half := (from + to) / 2; reaches(half, ends[0]) < reaches(half, ends[1]) {
				from = half
			} else {
				to = half
			}
		}
		s.stands = []wheelStand{stand(from, c.Depth)}
	} else {
		// A cut that ends at its full depth goes on in another one.
		deep := 0.9 * c.Depth
		if c.Samples[0].Depth < deep {
			from = leavesEnd(0, c.Length, func(along float64) bool { return reaches(along, ends[0]) < s.wheel.Radius })
		}
		if last.Depth < deep {
			to = leavesEnd(c.Length, 0, func(along float64) bool { return reaches(along, ends[1]) < s.wheel.Radius })
		}
		const apart = 0.1 // mm
		n := max(int(math.Ceil((to-from)/apart)), 1)
		for i := range n + 1 {
			s.stands = append(s.stands, stand(from+(to-from)*float64(i)/float64(n), c.Depth))
		}
	}
	for _, o := range c.Outlines {
		for _, q := range o.Points {
			theta, z := p.Surface.Reverse(q)
			theta += turned
			s.theta = [2]float64{min(s.theta[0], theta), max(s.theta[1], theta)}
			s.height = [2]float64{min(s.height[0], z), max(s.height[1], z)}
		}
	}
	return s
}

func angleOf(a, _ float64) float64  { return a }
func heightOf(_, b float64) float64 { return b }

// leavesEnd returns where, on the way from an end to the other, the wheel leaves that end.
func leavesEnd(near, far float64, reaches func(float64) bool) float64 {
	for range 50 {
		if half := (near + far) / 2; reaches(half) {
			near = half
		} else {
			far = half
		}
	}
	return near
}

// holds reports whether a place is in the body of any of the wheel's stands.
func (s *swept) holds(theta, z float64, at r3.Vec) bool {
	const room = 1 // mm
	if z < s.height[0]-room || z > s.height[1]+room || theta < s.theta[0]-room/20.0 || theta > s.theta[1]+room/20.0 {
		return false
	}
	for i := 0; i < len(s.stands); {
		v := r3.Sub(at, s.stands[i].centre)
		axial := r3.Dot(v, s.stands[i].axle)
		radial := math.Sqrt(max(r3.Dot(v, v)-axial*axial, 0))
		if radial <= rimOf(s.wheel, axial) {
			return true
		}
		// The next place that can reach it is no nearer than this.
		i += 1 + int(max(math.Sqrt(r3.Dot(v, v))-s.wheel.Radius-1, 0)/0.1)
	}
	return false
}

// rimOf returns the radius of a wheel, sharp or with a flat on its points, at a distance from its middle plane.
func rimOf(w groove.Wheel, axial float64) float64 {
	b := math.Abs(axial)
	if b > w.Thick/2 {
		return 0
	}
	switch w.Edge {
	case groove.Round:
		return w.Radius - w.Convex + math.Sqrt(max(w.Convex*w.Convex-b*b, 0))
	case groove.Flat:
		return w.Radius
	case groove.Gang:
		best := math.Inf(1)
		for i := range w.Mitres {
			best = min(best, math.Abs(axial-(float64(i)-float64(w.Mitres-1)/2)*w.Spacing))
		}
		b = best
	}
	return w.Radius - max(b-w.Tip/2, 0)/math.Tan(w.Angle/2)
}

// countedGround returns the glass that a plan's cuts take together, counted at places drawn at
// random, evenly strewn, in a shell of the glass as deep as the deepest cut.
func countedGround(p *Plan, random *rand.Rand) float64 {
	period := p.PitchAngle() * float64(p.Period)
	profile := p.Blank.Profile()
	low, high, deep := math.Inf(1), math.Inf(-1), 0.0
	var bodies []swept
	for i := range p.Cuts {
		for k := -3; k <= 3; k++ {
			s := sweep(p, &p.Cuts[i], float64(k)*period)
			low, high, deep = min(low, s.height[0]-0.2), max(high, s.height[1]+0.2), max(deep, p.Cuts[i].Depth)
			if s.theta[1] > -0.1 && s.theta[0] < period+0.1 {
				bodies = append(bodies, s)
			}
		}
	}
	deep *= 1.3 // level, on a taper
	const round, up, in = 80, 100, 20
	sum := 0.0
	for i := range round {
		for j := range up {
			for k := range in {
				theta := period * (float64(i) + random.Float64()) / round
				z := low + (high-low)*(float64(j)+random.Float64())/up
				r := profile.Radius(z) - deep*(float64(k)+random.Float64())/in
				sin, cos := math.Sincos(theta)
				at := r3.Vec{X: r * cos, Y: r * sin, Z: z}
				for n := range bodies {
					if bodies[n].holds(theta, z, at) {
						sum += r
						break
					}
				}
			}
		}
	}
	return sum * period / round * (high - low) / up * deep / in * float64(p.Periods())
}
