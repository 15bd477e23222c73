package glass

import "math"

// Inner is the inside surface, as a curve in the half-plane of radius and height.
// It runs from the axis along the level floor to the corner where the floor meets
// the wall, and up the wall's inner curve to the rim. Walls are measured square to
// the outside. So opposite the outside at height z, where the outside has the
// radius r and the slope angle α, the inner curve is at (r − w cos α, z + w sin α).
//
// That curve can turn back on itself: where the wall is thicker than the profile's
// radius of curvature, or where it thins fast on a glass that flares. All of the
// curve then counts as the surface, so that the glass left is never overstated.
type Inner struct {
	curve square
	// floor is the height of the floor. It is 0 where that was not measured; the
	// curve then runs on down through the table.
	floor, rim float64

	spans  []span  // upwards along the glass
	pieces []piece // of spans, for Distance
	corner float64 // how far out the floor reaches
	folded bool    // some of it goes down
	kinks  []float64

	// For each of many even steps of height, the first piece that is not wholly below
	// it.
	steps  []int32
	perMM  float64 // steps in a millimetre
	bottom float64
}

// piece is a straight piece of the curve, prepared for Distance.
type piece struct {
	at, along spot
	scale     float64 // 1 / along²
	lean      float64 // radius by height
	// lowest holds for this piece and all after it, highest for it and all before.
	lowest, highest float64
}

// Stray is how far the straight pieces may deviate from the curve, in millimetres.
// On a straight outside they do not.
const Stray = 0.002

// newInner returns the inside surface of a curve between its stations' heights.
func newInner(curve square, heights []float64, thickest, floor float64) *Inner {
	n := &Inner{curve: curve, floor: max(floor, 0), rim: curve.outside.Top()}
	n.bottom = n.floor
	if !n.FloorKnown() {
		// For a place above the table, nothing lower is nearer than its own wall.
		n.bottom = -thickest - 1
	}
	var all []span
	from := heights[0]
	// Beyond its ends the curve runs straight, and rises as the outside does.
	if over := curve.under(from).height - n.bottom; over > 0 {
		all = curve.spans(all, from-over, from)
	}
	for _, z := range heights[1:] {
		all = curve.spans(all, from, z)
		from = z
	}
	if under := n.rim - curve.under(from).height; under > 0 {
		all = curve.spans(all, from, from+under)
	}
	for _, s := range all {
		if s, ok := s.clipped(n.bottom, n.rim); ok {
			n.spans = append(n.spans, s)
		}
	}
	n.piece()
	n.index()
	n.bend(heights)
	return n
}

// piece prepares the pieces, and finds how far out the floor reaches.
func (n *Inner) piece() {
	n.pieces = make([]piece, len(n.spans))
	highest, lowest := math.Inf(-1), math.Inf(1)
	for i, s := range n.spans {
		a, b := s.ends[0], s.ends[1]
		along := spot{b.radius - a.radius, b.height - a.height}
		highest = max(highest, a.height, b.height)
		p := piece{at: a, along: along, lean: along.radius / along.height, highest: highest}
		if square := along.radius*along.radius + along.height*along.height; square > 0 {
			p.scale = 1 / square
		}
		n.pieces[i] = p
		n.folded = n.folded || !(along.height > 0)
		for _, end := range s.ends {
			if end.height == n.floor && n.FloorKnown() {
				n.corner = max(n.corner, end.radius)
			}
		}
	}
	for i := len(n.pieces) - 1; i >= 0; i-- {
		lowest = min(lowest, n.spans[i].ends[0].height, n.spans[i].ends[1].height)
		n.pieces[i].lowest = lowest
	}
}

// index notes where to begin looking from each height.
func (n *Inner) index() {
	steps := min(max(4*len(n.pieces), 16), 4096)
	n.steps, n.perMM = make([]int32, steps), float64(steps)/(n.rim-n.bottom)
	first := 0
	for i := range n.steps {
		for first+1 < len(n.pieces) && n.pieces[first].highest < n.bottom+float64(i)/n.perMM {
			first++
		}
		n.steps[i] = int32(first)
	}
}

// near returns a piece that is not far from a height.
func (n *Inner) near(height float64) int {
	step := int((height - n.bottom) * n.perMM)
	if step < 0 {
		step = 0
	} else if step >= len(n.steps) {
		step = len(n.steps) - 1
	}
	return int(n.steps[step])
}

// FloorKnown reports whether the floor was measured. If it was not, the inside is
// taken to run on down through the table, so that only the wall counts.
func (n *Inner) FloorKnown() bool { return n.floor > 0 }

// Floor returns the height of the floor, 0 where it was not measured.
func (n *Inner) Floor() float64 { return n.floor }

// Rim returns the height of the rim, where the surface ends.
func (n *Inner) Rim() float64 { return n.rim }

// Distance returns how much glass lies between a place in it and the inside
// surface, to within Stray: the shortest distance to any part of the surface. It is
// below zero in the hollow. It is infinite where the floor is as thick as the glass
// is high, for then there is no inside.
func (n *Inner) Distance(radius, height float64) float64 {
	if len(n.pieces) == 0 {
		return math.Inf(1)
	}
	nearest := n.toFloor(radius, height) // distances are squared from here on
	start := n.near(height)
	for i := start; i < len(n.pieces); i++ {
		p := &n.pieces[i]
		if gap := p.lowest - height; gap > 0 && gap*gap >= nearest {
			break
		}
		if d := p.square(radius, height); d < nearest {
			nearest = d
		}
	}
	for i := start - 1; i >= 0; i-- {
		p := &n.pieces[i]
		if gap := height - p.highest; gap > 0 && gap*gap >= nearest {
			break
		}
		if d := p.square(radius, height); d < nearest {
			nearest = d
		}
	}
	if n.hollow(radius, height, start) {
		return -math.Sqrt(nearest)
	}
	return math.Sqrt(nearest)
}

// toFloor returns the square of a place's distance from the floor's disc.
func (n *Inner) toFloor(radius, height float64) float64 {
	if n.corner == 0 {
		return math.Inf(1)
	}
	over := height - n.floor
	if beyond := radius - n.corner; beyond > 0 {
		return over*over + beyond*beyond
	}
	return over * over
}

// square returns the square of a place's distance from the piece.
func (p *piece) square(radius, height float64) float64 {
	r, h := radius-p.at.radius, height-p.at.height
	share := (r*p.along.radius + h*p.along.height) * p.scale
	if share > 1 {
		share = 1
	} else if share < 0 {
		share = 0
	}
	r -= share * p.along.radius
	h -= share * p.along.height
	return r*r + h*h
}

// hollow reports whether a place lies in the hollow, or above it.
func (n *Inner) hollow(radius, height float64, near int) bool {
	if n.FloorKnown() && height <= n.floor {
		return false
	}
	if height > n.rim {
		height = n.rim
	}
	if n.folded {
		return n.within(radius, height)
	}
	if height < n.pieces[0].at.height {
		return false
	}
	for near+1 < len(n.pieces) && n.pieces[near].highest < height {
		near++
	}
	p := &n.pieces[near]
	return radius < p.at.radius+(height-p.at.height)*p.lean
}

// within reports whether the curve passes a height an odd number of times
// further out than the radius.
func (n *Inner) within(radius, height float64) bool {
	odd := false
	for i := range n.pieces {
		p := &n.pieces[i]
		up := height - p.at.height
		if (up > 0) == (up > p.along.height) {
			continue
		}
		if radius < p.at.radius+up*p.lean {
			odd = !odd
		}
	}
	return odd
}
