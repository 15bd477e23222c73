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
	along := k.stations()
	g.Samples = make([]Sample, len(along))
	for i, b := range k.wheel.blades() {
		edges := make([]span, len(along))
		for j, s := range along {
			own, q := k.under(s)
			edges[j] = k.widen(own, q, s, b, own.section(b, q))
			if i == 0 {
				g.Samples[j] = k.sample(own, q, s)
			}
			grow(&g.Samples[j], own, edges[j], polish)
		}
		g.Volume += volume(along, edges)
		g.Outlines = append(g.Outlines, k.outline(b, along, edges, polish))
	}
	for _, s := range g.Samples {
		g.Width = math.Max(g.Width, s.Left+s.Right)
	}
}

// under returns the wheel as it stands nearest to a distance along the stroke,
// and the place on the map there: on the line, or on the straight tail that the
// wheel leaves where it is set down and lifted.
func (k *stroke) under(s float64) (own placing, q geometry.Point) {
	stand := min(max(s, k.first), k.last)
	own = k.at(stand)
	return own, r2.Add(own.at, r2.Scale(s-stand, own.ahead))
}

// sample measures the depth at a place; the edges are added blade by blade.
func (k *stroke) sample(own placing, q geometry.Point, s float64) Sample {
	theta, z := k.cone.Reverse(q)
	return Sample{
		At: q, Theta: theta, Height: z, Along: s, Depth: own.depthAt(q, theta),
		Left: math.Inf(-1), Right: math.Inf(-1),
	}
}

// grow widens a sample to hold a cross-section as it is after polishing.
func grow(s *Sample, own placing, e span, polish float64) {
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
	hair2 := min(hair, length/1000)
	s := divide(nil, hair2, k.first, bow)
	if k.last > k.first {
		s = divide(s, k.first, k.last, k.turns())
	}
	return append(divide(s, k.last, length-hair2, bow), length-hair2)
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
// through a place on the map.
func (p placing) section(b blade, q geometry.Point) span {
	ridge := p.ridge(b, r2.Dot(r2.Sub(q, p.at), p.ahead))
	f := func(offset float64) float64 { return p.bite(b, r2.Add(q, r2.Scale(offset, p.left))) }
	h := f(ridge)
	if h <= 0 {
		return span{ridge, ridge, 0}
	}
	guess := b.halfWidth(h, p.curve.across)
	left := root(func(x float64) float64 { return f(ridge + x) }, guess, math.Inf(1))
	right := root(func(x float64) float64 { return f(ridge - x) }, guess, math.Inf(1))
	area := b.area(h, p.curve.across, left) + b.area(h, p.curve.across, right)
	return span{ridge + left, ridge - right, area}
}

// ridge returns, to the left of the cut's line, where the blade is deepest in
// the glass at a distance ahead of the wheel's own place: on a point, that
// point; else where the twist of the surface takes it.
func (p placing) ridge(b blade, ahead float64) float64 {
	if b.pointed() || p.curve.twist == 0 {
		return b.offset
	}
	most := 0.999 * b.face()
	return min(max(-p.curve.twist*ahead/(p.curve.across+b.hollow()), -most), most)
}

// depthAt returns how deep the wheel is at a place, square to the surface.
func (p placing) depthAt(q geometry.Point, theta float64) float64 {
	v := r3.Sub(p.space(q), p.centre)
	n := p.cone.Normal(theta)
	vn := r3.Dot(v, n)
	return max(vn+math.Sqrt(max(vn*vn+p.radius*p.radius-r3.Dot(v, v), 0)), 0)
}

// area returns the area of one half of a cross-section, h deep at its ridge and
// b wide, under a surface of the given curvature.
func (b blade) area(h, across, width float64) float64 {
	filled := 0.0
	switch {
	case b.pointed():
		filled = width * width / 2 / math.Tan(b.wheel.Angle/2)
	case b.wheel.Edge == Round:
		q := b.wheel.Convex
		w := min(width, q)
		filled = q*w - (w*math.Sqrt(q*q-w*w)+q*q*math.Asin(w/q))/2
	}
	return max(h*width-across*width*width*width/6-filled, 0)
}

// volume sums the cross-sections along the stroke.
func volume(along []float64, edges []span) float64 {
	v := 0.0
	for i := 1; i < len(along); i++ {
		v += (along[i] - along[i-1]) * (edges[i].area + edges[i-1].area) / 2
	}
	return v
}

// outline runs up the left edge of the footprint and back down the right.
func (k *stroke) outline(b blade, along []float64, edges []span, polish float64) geometry.Outline {
	lead, tail := k.lobe(b, 0), k.lobe(b, k.line.Length())
	all := slices.Concat(lead, along, tail)
	left, right := make([]geometry.Point, 0, 2*len(all)), make([]geometry.Point, 0, len(all))
	for i, s := range all {
		own, q := k.under(s)
		var e span
		if j := i - len(lead); j >= 0 && j < len(along) {
			e = edges[j]
		} else {
			e = own.section(b, q)
		}
		switch i { // polishing wears the tips outward too
		case 0:
			q = r2.Sub(q, r2.Scale(polish, own.ahead))
		case len(all) - 1:
			q = r2.Add(q, r2.Scale(polish, own.ahead))
		}
		left = append(left, r2.Add(q, r2.Scale(e.left+polish, own.left)))
		right = append(right, r2.Add(q, r2.Scale(e.right-polish, own.left)))
	}
	slices.Reverse(right)
	return geometry.NewOutline(append(left, right...))
}

// lobe returns further stations beyond an end of the line: a broad edge set
// askew to the glass's axis bites, to one side, beyond where its middle leaves
// the glass.
func (k *stroke) lobe(b blade, end float64) []float64 {
	own, _ := k.under(end)
	if b.pointed() || own.curve.twist == 0 {
		return nil
	}
	side := 1.0
	if end == 0 {
		side = -1
	}
	extra := root(func(x float64) float64 {
		_, q := k.under(end + side*x)
		return own.bite(b, r2.Add(q, r2.Scale(own.ridge(b, r2.Dot(r2.Sub(q, own.at), own.ahead)), own.left)))
	}, 0.1, math.Inf(1))
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
