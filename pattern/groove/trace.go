package groove

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
)

// trace measures the groove along the whole of the stroke and draws its footprint.
func (k *stroke) trace(g *Groove, polish float64) {
	feet := k.feet(k.stations())
	g.Samples = make([]Sample, len(feet))
	edges := make([]span, len(feet))
	for i, b := range k.wheel.blades() {
		for j, f := range feet {
			edges[j] = k.widen(f, b)
			if i == 0 {
				g.Samples[j] = k.sample(f)
			}
			grow(&g.Samples[j], f.own, edges[j], polish)
		}
		g.Volume += volume(feet, edges)
		g.Outlines = append(g.Outlines, k.outline(b, feet, edges, polish))
	}
	for _, s := range g.Samples {
		g.Width = math.Max(g.Width, s.Left+s.Right)
	}
}

// foot is a place along the stroke: on the line, or on the straight tail that
// the wheel leaves where it is set down and lifted. own is the wheel as it
// stands nearest.
type foot struct {
	along float64
	own   *placing
	q     geometry.Point
}

// feet returns the places at distances along the stroke.
func (k *stroke) feet(along []float64) []foot {
	feet := make([]foot, len(along))
	for i, s := range along {
		stand := min(max(s, k.first), k.last)
		if i > 0 && stand == min(max(along[i-1], k.first), k.last) {
			feet[i].own = feet[i-1].own // all of a tail is cut from one stand
		} else {
			feet[i].own = k.at(stand)
		}
		feet[i].along = s
		feet[i].q = r2.Add(feet[i].own.at, r2.Scale(s-stand, feet[i].own.ahead))
	}
	return feet
}

// sample measures the depth at a place; the edges are added blade by blade.
func (k *stroke) sample(f foot) Sample {
	theta, z := k.cone.Reverse(f.q)
	return Sample{
		At: f.q, Theta: theta, Height: z, Along: f.along, Depth: f.own.depthAt(k.wheel.middle(), f.q, theta),
		Left: math.Inf(-1), Right: math.Inf(-1),
	}
}

// grow widens a sample to hold a cross-section as it is after polishing.
func grow(s *Sample, own *placing, e span, polish float64) {
	s.Left, s.Right = max(s.Left, e.left+polish), max(s.Right, polish-e.right)
	s.LeftEdge = r2.Add(s.At, r2.Scale(s.Left, own.left))
	s.RightEdge = r2.Sub(s.At, r2.Scale(s.Right, own.left))
}

// stations returns the distances along the stroke at which the groove is
// measured: at most 1 mm apart, and so close in the tails that the straight
// edges between them stay within 0.003 mm of the footprint's true curve.
func (k *stroke) stations() []float64 {
	const (
		apart = 1.0
		hair  = 0.001 // the tips themselves have no width to measure
		stray = 0.003
	)
	length := k.line.Length()
	wide := k.wheel.blades()[0].halfWidth(k.depth, 0)
	// A tail's edge is a parabola of height wide: n chords leave wide/n² /4.
	bow := math.Ceil(math.Sqrt(wide / (4 * stray)))
	divide := func(to []float64, from, end, parts float64) []float64 {
		n := int(max(parts, math.Ceil((end-from)/apart), 1))
		for i := range n {
			to = append(to, from+(end-from)*float64(i)/float64(n))
		}
		return to
	}
	tip := min(hair, length/1000)
	from, to := tip, length-tip
	var s []float64
	if k.line.on[0] {
		from = 0
	} else {
		s = divide(s, from, k.first, bow)
		from = k.first
	}
	if k.line.on[1] {
		to = length
	}
	if k.last > from {
		s = divide(s, from, k.last, k.turns())
	}
	if !k.line.on[1] {
		s = divide(s, k.last, to, bow)
	}
	return append(s, to)
}

// turns returns into how many parts a curved line is cut for its straight
// pieces to stay within 0.003 mm of it.
func (k *stroke) turns() float64 {
	if k.line.Straight() {
		return 1
	}
	bend := 0.0
	for s := k.first; s < k.last; s++ {
		bend = max(bend, math.Abs(k.line.Bend(s)))
	}
	return (k.last - k.first) * math.Sqrt(bend/(8*0.003))
}

// span is the groove's cross-section on the surface: its edges to the left and
// right of the centre line, both measured to the left, and the glass taken out.
type span struct{ left, right, area float64 }

// section returns the cross-section that the wheel, where it stands, cuts
// through a place on the map along the direction to the cut's left there; where
// it does not bite, that is no more than the line of its ridge.
func (p *placing) section(b blade, q, left geometry.Point) (e span, bites bool) {
	f := func(offset float64) float64 { return p.bite(b, r2.Add(q, r2.Scale(offset, left))) }
	ridge := p.ridge(b, q)
	h := f(ridge)
	if h <= 0 {
		return span{ridge, ridge, 0}, false
	}
	toLeft, toRight, good := p.secondOrder(b, h, r2.Dot(r2.Sub(q, p.at), p.ahead))
	if !good {
		slope := b.steepness(max(toLeft, toRight), p.curve.across)
		toLeft = root(func(x float64) float64 { return f(ridge + x) }, toLeft, slope)
		toRight = root(func(x float64) float64 { return f(ridge - x) }, toRight, slope)
	}
	area := b.area(h, p.curve.across, toLeft) + b.area(h, p.curve.across, toRight)
	return span{ridge + toLeft, ridge - toRight, area}, true
}

// secondOrder returns the half widths to second order where the blade's ridge
// is h below the surface, some way ahead of the wheel's own place, and whether
// they are good enough to stand: what the next orders could change is less than
// a few thousandths of a millimetre. The ridge of a broad edge lies where the
// surface's twist takes it; a mitre's stays on its point, and the twist makes
// one of its sides steeper: h − κ_across b²/2 ∓ τ s b = b/T.
func (p *placing) secondOrder(b blade, h, ahead float64) (toLeft, toRight float64, good bool) {
	half := b.halfWidth(h, p.curve.across)
	if !b.pointed() || b.offset != 0 {
		return half, half, false
	}
	slope := 1 / math.Tan(b.wheel.Angle/2)
	side := func(g float64) float64 { return 2 * h / (g + math.Sqrt(g*g+2*p.curve.across*h)) }
	twist := p.curve.twist * ahead
	toLeft, toRight = side(slope+twist), side(slope-twist)
	// The surface's circle leaves its parabola by κ³u⁴/8, u being how far round
	// it a place is; on a taper κ itself changes along the slant.
	curvature := p.curve.along + p.curve.across
	widest := max(toLeft, toRight)
	near, far := curvature*math.Abs(ahead), curvature*(math.Abs(ahead)+widest)
	missed := (far*far*far*far-near*near*near*near)/(8*curvature) +
		curvature*curvature*math.Abs(math.Tan(p.cone.HalfAngle))*math.Abs(ahead)*widest*(widest+math.Abs(ahead))/2
	return toLeft, toRight, missed/slope < 0.004 && widest < 0.95*b.bound
}

// ridge returns, to the left of a place, where the blade is deepest in the
// glass: on its point, or else where the twist of the surface takes it.
func (p *placing) ridge(b blade, q geometry.Point) float64 {
	line := b.offset - p.aside(q)
	if b.pointed() || p.curve.twist == 0 {
		return line
	}
	ahead, most := r2.Dot(r2.Sub(q, p.at), p.ahead), 0.999*b.breadth()
	return line + min(max(-p.curve.twist*ahead/(p.curve.across+b.hollow()), -most), most)
}

// depthAt returns how deep the blade is at a place, square to the surface.
func (p *placing) depthAt(b blade, q geometry.Point, theta float64) float64 {
	at, inward := p.space(q), r3.Scale(-1, p.cone.Normal(theta))
	v := r3.Sub(at, p.centre)
	along := r3.Dot(v, inward)
	// Where the inward normal leaves the wheel's circle; what the edge falls
	// short of it there is taken off, a few times over.
	depth := -along + math.Sqrt(max(along*along+p.radius*p.radius-r3.Dot(v, v), 0))
	for range 3 {
		if short := p.biteAt(b, r3.Add(at, r3.Scale(depth, inward))); !math.IsInf(short, 0) {
			depth += short
		}
	}
	return max(depth, 0)
}

// area returns the area of one half of a cross-section, h deep at its ridge and
// so wide, under a surface of the given curvature: Simpson's rule, on either
// side of where a dressed tip ends.
func (b blade) area(h, across, width float64) float64 {
	if b.pointed() {
		return max(h*width-across*width*width*width/6-width*width/2/math.Tan(b.wheel.Angle/2), 0)
	}
	depth := func(x float64) float64 { return h - across*x*x/2 - b.wheel.Drop(min(x, 0.9999*b.face())) }
	simpson := func(from, to float64) float64 {
		return (to - from) / 6 * (depth(from) + 4*depth((from+to)/2) + depth(to))
	}
	end := min(width, b.breadth())
	half := end / 2
	return max(simpson(0, half)+simpson(half, end)+simpson(end, width), 0)
}

// volume sums the cross-sections along the stroke.
func volume(feet []foot, edges []span) float64 {
	v := 0.0
	for i := 1; i < len(feet); i++ {
		v += (feet[i].along - feet[i-1].along) * (edges[i].area + edges[i-1].area) / 2
	}
	return v
}

// outline runs up the left edge of the footprint and back down the right.
func (k *stroke) outline(b blade, feet []foot, edges []span, polish float64) geometry.Outline {
	for _, end := range []float64{0, k.line.Length()} {
		lobe := k.feet(k.lobe(b, end))
		cut := make([]span, len(lobe))
		for i, f := range lobe {
			cut[i], _ = f.own.section(b, f.q, f.own.left)
		}
		if end == 0 {
			feet, edges = slices.Concat(lobe, feet), slices.Concat(cut, edges)
		} else {
			feet, edges = slices.Concat(feet, lobe), slices.Concat(edges, cut)
		}
	}
	n := len(feet)
	points := make([]geometry.Point, 2*n)
	for i, f := range feet {
		q := f.q
		switch i { // polishing wears the tips outward too
		case 0:
			q = r2.Sub(q, r2.Scale(polish, f.own.ahead))
		case n - 1:
			q = r2.Add(q, r2.Scale(polish, f.own.ahead))
		}
		points[i] = r2.Add(q, r2.Scale(edges[i].left+polish, f.own.left))
		points[2*n-1-i] = r2.Add(q, r2.Scale(edges[i].right-polish, f.own.left))
	}
	return geometry.NewOutline(points)
}

// lobe returns further stations beyond an end of the line: a broad edge set
// askew to the glass's axis bites, to one side, beyond where its middle leaves
// the glass.
func (k *stroke) lobe(b blade, end float64) []float64 {
	at := k.feet([]float64{end})[0]
	if b.pointed() || at.own.curve.twist == 0 || k.line.on[0] && end == 0 || k.line.on[1] && end > 0 {
		return nil
	}
	side := 1.0
	if end == 0 {
		side = -1
	}
	extra := root(func(x float64) float64 {
		q := r2.Add(at.q, r2.Scale(side*x, at.own.ahead))
		return at.own.bite(b, r2.Add(q, r2.Scale(at.own.ridge(b, q), at.own.left)))
	}, 0.1, 0)
	if extra < 0.01 {
		return nil
	}
	const parts = 5
	lobe := make([]float64, parts)
	for i := range lobe {
		lobe[i] = end + side*extra*0.999*float64(i+1)/parts
	}
	if side < 0 {
		slices.Reverse(lobe)
	}
	return lobe
}
