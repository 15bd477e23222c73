package geometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Outline is a closed outline on a flat map or chart that does not cross itself.
// Boxes round runs of its edges make distances fast. On a chart that does not keep
// lengths it also has its points in space, and distances are taken there. Whether
// outlines cross, or one holds the other, can be seen on any chart.
type Outline struct {
	Points []Point  // in order round the outline; the last joins the first
	space  []r3.Vec // where they are, nil on a flat map
	// The greatest factor by which the chart lengthens anything, squared.
	stretch2 float64
	runs     []Box
	box      Box
}

// edgesPerRun is how many edges share a box: few enough that a near run is quick
// to search, and enough that far runs are skipped together.
const edgesPerRun = 4

// NewOutline returns the outline through the given points. It keeps the slice.
func NewOutline(points []Point) Outline {
	o := Outline{Points: points, stretch2: 1, box: EmptyBox()}
	o.runs = make([]Box, 0, (len(points)+edgesPerRun-1)/edgesPerRun)
	for i := 0; i < len(points); i += edgesPerRun {
		run := EmptyBox()
		for j := i; j <= min(i+edgesPerRun, len(points)); j++ {
			run = run.Add(points[j%len(points)])
		}
		o.runs = append(o.runs, run)
		o.box = o.box.Union(run)
	}
	return o
}

// InSpace returns the outline with its points in space, for a chart that lengthens
// nothing by more than the factor stretch.
func (o Outline) InSpace(points []r3.Vec, stretch float64) Outline {
	o.space, o.stretch2 = points, stretch*stretch
	return o
}

// Box returns the smallest box round the outline.
func (o Outline) Box() Box { return o.box }

// Turned returns the outline carried round a surface by an angle.
func (o Outline) Turned(s *Surface, theta float64) Outline {
	moved := o.Moved(s.Turned(theta))
	if o.space == nil {
		return moved
	}
	sin, cos := math.Sincos(theta)
	space := make([]r3.Vec, len(o.space))
	for i, v := range o.space {
		space[i] = r3.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y, Z: v.Z}
	}
	moved.space, moved.stretch2 = space, o.stretch2
	return moved
}

// Moved returns the outline on a flat map carried along by a motion.
func (o Outline) Moved(m Motion) Outline {
	points := make([]Point, len(o.Points))
	for i, p := range o.Points {
		points[i] = m.Apply(p)
	}
	return NewOutline(points)
}

// Distance returns the shortest distance between two outlines and a place on each
// where it is measured. If it is not below within, it returns within and no places.
// Outlines that overlap are at distance zero.
func (o Outline) Distance(p Outline, within float64) (distance float64, on, off Point) {
	best := within * within
	if o.box.Distance2(p.box) >= best*o.stretch2 {
		return within, on, off
	}
	for i, run := range o.runs {
		if run.Distance2(p.box) >= best*o.stretch2 {
			continue
		}
		for j, other := range p.runs {
			if run.Distance2(other) >= best*o.stretch2 {
				continue
			}
			for a := i * edgesPerRun; a < min((i+1)*edgesPerRun, len(o.Points)); a++ {
				a0, a1 := o.edge(a)
				for b := j * edgesPerRun; b < min((j+1)*edgesPerRun, len(p.Points)); b++ {
					b0, b1 := p.edge(b)
					d2, x, y := segmentDistance2(a0, a1, b0, b1)
					if o.space != nil && d2 > 0 {
						d2, x, y = o.edgeDistance2(a, p, b)
					}
					if d2 < best {
						best, on, off = d2, x, y
						if d2 == 0 {
							return 0, on, off
						}
					}
				}
			}
		}
	}
	// No edges cross: one may still lie wholly inside the other.
	if p.Contains(o.Points[0]) {
		return 0, o.Points[0], o.Points[0]
	}
	if o.Contains(p.Points[0]) {
		return 0, p.Points[0], p.Points[0]
	}
	return math.Sqrt(best), on, off
}

// DistanceTo returns the distance from a point to the outline on a flat map, zero
// inside it, if it is below within; otherwise it returns within.
func (o Outline) DistanceTo(q Point, within float64) float64 {
	return o.DistanceToPlace(q, r3.Vec{}, within)
}

// DistanceToPlace is DistanceTo on any chart. at is where the point lies in space;
// a flat map does not need it.
func (o Outline) DistanceToPlace(q Point, at r3.Vec, within float64) float64 {
	best := within * within
	if (Box{q, q}).Distance2(o.box) >= best*o.stretch2 {
		return within
	}
	if o.Contains(q) {
		return 0
	}
	for i, run := range o.runs {
		if (Box{q, q}).Distance2(run) >= best*o.stretch2 {
			continue
		}
		for a := i * edgesPerRun; a < min((i+1)*edgesPerRun, len(o.Points)); a++ {
			if o.space != nil {
				a0, a1 := o.edgeInSpace(a)
				d2, _ := nearestInSpace(at, a0, a1)
				best = min(best, d2)
				continue
			}
			a0, a1 := o.edge(a)
			best = min(best, r2.Norm2(r2.Sub(q, nearest(q, a0, a1))))
		}
	}
	return math.Sqrt(best)
}

// Contains reports whether a point lies inside the outline, by counting the
// edges to its right.
func (o Outline) Contains(q Point) bool {
	if !o.box.Contains(q) {
		return false
	}
	inside := false
	for i, run := range o.runs {
		if q.Y < run.Min.Y || q.Y > run.Max.Y || q.X > run.Max.X {
			continue // none of its edges lies to the right
		}
		for k := i * edgesPerRun; k < min((i+1)*edgesPerRun, len(o.Points)); k++ {
			a, b := o.edge(k)
			if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) {
				inside = !inside
			}
		}
	}
	return inside
}

func (o Outline) edge(i int) (a, b Point) {
	if i+1 == len(o.Points) {
		return o.Points[i], o.Points[0]
	}
	return o.Points[i], o.Points[i+1]
}

// segmentDistance2 returns the square of the distance between two segments,
// and the place on each where it is measured.
func segmentDistance2(a0, a1, b0, b1 Point) (d2 float64, on, off Point) {
	u, v, w := r2.Sub(a1, a0), r2.Sub(b1, b0), r2.Sub(b0, a0)
	if cross := r2.Cross(u, v); cross != 0 {
		s, t := r2.Cross(w, v)/cross, r2.Cross(w, u)/cross
		if s >= 0 && s <= 1 && t >= 0 && t <= 1 {
			p := r2.Add(a0, r2.Scale(s, u))
			return 0, p, p
		}
	}
	// Segments that do not cross are nearest at an end of one of them.
	d2 = math.Inf(1)
	try := func(p, q Point) {
		if e := r2.Norm2(r2.Sub(p, q)); e < d2 {
			d2, on, off = e, p, q
		}
	}
	try(a0, nearest(a0, b0, b1))
	try(a1, nearest(a1, b0, b1))
	try(nearest(b0, a0, a1), b0)
	try(nearest(b1, a0, a1), b1)
	return d2, on, off
}

// nearest returns the point of the segment ab nearest to q.
func nearest(q, a, b Point) Point {
	u := r2.Sub(b, a)
	length2 := r2.Norm2(u)
	if length2 == 0 {
		return a
	}
	t := r2.Dot(r2.Sub(q, a), u) / length2
	return r2.Add(a, r2.Scale(min(max(t, 0), 1), u))
}
