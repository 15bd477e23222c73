package geometry

import "math"

// Meridian is a profile by the distance s along it. Radius, height, lean and
// curvature are looked up in a table, which is fast. The table's joints are at
// most half a millimetre apart. Between two of them the meridian is the cubic
// through their places and directions, within 1e-6 mm of a profile that bends with
// a radius of 5 mm or more. A straight profile is one piece and exact. Beyond both
// ends the meridian runs on straight.
type Meridian struct {
	from, step float64
	joints     []joint
}

// joint is a place of the meridian: the sine and cosine are those of its lean,
// dr/ds and dz/ds.
type joint struct{ radius, height, sin, cos, curvature float64 }

// NewMeridian returns the meridian of a profile.
func NewMeridian(p *Profile) Meridian {
	const fine = 0.5 // mm
	length := p.Along(p.Top())
	parts := 1
	if !p.Straight() {
		parts = max(int(math.Ceil(length/fine)), 2)
	}
	m := Meridian{step: length / float64(parts), joints: make([]joint, parts+1)}
	for i := range m.joints {
		z := p.Top()
		if i < parts {
			z = p.HeightAt(float64(i) * m.step)
		}
		slope := p.Slope(z)
		cos := 1 / math.Hypot(1, slope)
		m.joints[i] = joint{p.Radius(z), z, slope * cos, cos, p.Curvature(z)}
	}
	return m
}

// meridian returns the meridian of a cone.
func (c Cone) meridian() Meridian {
	at := joint{c.Radius, c.Height, c.sin, c.cos, 0}
	on := at
	on.radius, on.height = c.Radius+c.sin, c.Height+c.cos
	return Meridian{from: c.Along, step: 1, joints: []joint{at, on}}
}

// Straight reports whether the meridian has no bend.
func (m *Meridian) Straight() bool { return len(m.joints) == 2 }

// Length returns the distance from one end to the other.
func (m *Meridian) Length() float64 { return m.step * float64(len(m.joints)-1) }

// joint returns the joint below a distance and how far beyond it the distance is.
// Off either end it counts from that end; straight is then true.
func (m *Meridian) joint(s float64) (i int, beyond float64, straight bool) {
	s -= m.from
	last := len(m.joints) - 1
	switch {
	case last == 1 || !(s > 0): // NaN too
		return 0, s, true
	case s >= m.step*float64(last):
		return last, s - m.step*float64(last), true
	}
	i = min(int(s/m.step), last-1)
	return i, s - float64(i)*m.step, false
}

// At returns the radius and the height at a distance along the meridian.
func (m *Meridian) At(s float64) (radius, height float64) {
	i, beyond, straight := m.joint(s)
	a := &m.joints[i]
	if straight {
		return a.radius + beyond*a.sin, a.height + beyond*a.cos
	}
	b := &m.joints[i+1]
	t := beyond / m.step
	u := 1 - t
	// Hermite's cubic, by what it adds to the straight line from a to b.
	lead, trail := t*u*u*m.step, t*t*u*m.step
	rise := t * t * (3 - 2*t)
	return a.radius + rise*(b.radius-a.radius) + lead*a.sin - trail*b.sin,
		a.height + rise*(b.height-a.height) + lead*a.cos - trail*b.cos
}

// Lean returns the sine and the cosine of the half-angle of the cone that touches
// the surface there, and the profile's curvature κ₂: positive where it bulges.
func (m *Meridian) Lean(s float64) (sin, cos, curvature float64) {
	i, beyond, straight := m.joint(s)
	a := &m.joints[i]
	if straight {
		return a.sin, a.cos, 0
	}
	b := &m.joints[i+1]
	t := beyond / m.step
	u := 1 - t
	// The slopes of Hermite's cubics.
	chord, lead, trail := 6*t*u/m.step, u*(1-3*t), t*(3*t-2)
	sin = chord*(b.radius-a.radius) + lead*a.sin + trail*b.sin
	cos = chord*(b.height-a.height) + lead*a.cos + trail*b.cos
	unit := 1 / math.Sqrt(sin*sin+cos*cos)
	return sin * unit, cos * unit, u*a.curvature + t*b.curvature
}

// Bearing returns the radius at a distance along the meridian and the sine of its
// lean. From these two follows how a geodesic turns.
func (m *Meridian) Bearing(s float64) (radius, sin float64) {
	i, beyond, straight := m.joint(s)
	a := &m.joints[i]
	if straight {
		return a.radius + beyond*a.sin, a.sin
	}
	b := &m.joints[i+1]
	t := beyond / m.step
	u := 1 - t
	rise := b.radius - a.radius
	radius = a.radius + t*t*(3-2*t)*rise + m.step*t*u*(u*a.sin-t*b.sin)
	return radius, 6*t*u/m.step*rise + u*(1-3*t)*a.sin + t*(3*t-2)*b.sin
}

// Hollowest returns the lowest curvature between two distances along the meridian:
// below zero where the profile is hollow, 0 where it is nowhere hollow.
func (m *Meridian) Hollowest(from, to float64) float64 {
	if m.Straight() {
		return 0
	}
	least := 0.0
	i, _, _ := m.joint(from)
	j, _, _ := m.joint(to)
	for ; i <= min(j+1, len(m.joints)-1); i++ {
		least = min(least, m.joints[i].curvature)
	}
	return least
}
