package groove_test

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// path is a line as it lies on the surface, measured there.
type path interface {
	length() float64
	at(along float64) walker // looking along it
}

// curved is a line of the chart as it lies on the surface.
type curved struct {
	chart *chart
	drawn func(share float64) geometry.Point
	along []float64 // the true length from the start, at even steps on the chart
	share []float64 // of the line on the chart
}

// path lays out a line so long on the chart. Its true length is summed over
// chords of a twentieth of a millimetre there.
func (c *chart) path(drawn func(share float64) geometry.Point, length float64) path {
	const chord = 0.05
	n := int(math.Ceil(length / chord))
	p := curved{c, drawn, make([]float64, n+1), make([]float64, n+1)}
	was := p.place(0)
	for i := 1; i <= n; i++ {
		p.share[i] = float64(i) / float64(n)
		at := p.place(p.share[i])
		p.along[i] = p.along[i-1] + r3.Norm(r3.Sub(at, was))
		was = at
	}
	return p
}

// place returns the point of the surface at a share of the line.
func (p curved) place(share float64) r3.Vec { return p.chart.space(p.drawn(share)) }

func (p curved) length() float64 { return p.along[len(p.along)-1] }

func (p curved) at(along float64) walker {
	share := interpolate(p.along, p.share, along)
	near := 0.02 / p.length()
	at := p.place(share)
	return p.chart.vessel.looking(at, r3.Sub(p.place(share+near), p.place(share-near)))
}

// looking returns the walker at a place who looks the way of a vector, as near as
// the surface there allows.
func (v *vessel) looking(at, ahead r3.Vec) walker {
	n := v.normal(at)
	return walker{at, unit(r3.Sub(ahead, r3.Scale(r3.Dot(ahead, n), n)))}
}

// straight is a walk straight on.
type straight struct {
	trail trail
	far   float64
}

func (p straight) length() float64 { return p.far }

func (p straight) at(along float64) walker {
	i := min(max(int(along/pace), 0), len(p.trail.feet)-1)
	return p.trail.vessel.step(p.trail.feet[i], along-float64(i)*pace)
}

// straight returns the shortest way between two places: the straight walk from
// the one that comes to the other, as it is found by aiming again at every miss,
// by as much as the last correction did. Where that does not settle it is the
// line of the chart.
func (c *chart) straight(to geometry.Point, on path) path {
	const rounds, near = 60, 1e-6
	target := c.space(to)
	aim, far := on.at(0), on.length()
	rate, turned, was := 1/far, 0.0, 0.0 // how much to turn for a miss to the left; the last turn, and the miss before it
	for range rounds {
		walk := straight{c.vessel.along(aim, far), far}
		end := walk.at(far)
		miss := r3.Sub(target, end.at)
		beyond, aside := r3.Dot(miss, end.ahead), r3.Dot(miss, c.vessel.left(end))
		if math.Abs(beyond) < near && math.Abs(aside) < near {
			return walk
		}
		far += beyond
		if far < near || far > 3*on.length() {
			break
		}
		if did := was - aside; turned != 0 && did*turned > 0 {
			rate = min(turned/did, 4/far)
		}
		turned, was = rate*aside, aside
		aim = c.vessel.looking(aim.at, r3.Add(aim.ahead, r3.Scale(math.Tan(turned), c.vessel.left(aim))))
	}
	return on
}

// along returns the trail straight ahead of a walker.
func (v *vessel) along(w walker, length float64) trail {
	t := trail{v, []walker{w}}
	for s := 0.0; s < length; s += pace {
		t.feet = append(t.feet, v.step(t.feet[len(t.feet)-1], pace))
	}
	return t
}
