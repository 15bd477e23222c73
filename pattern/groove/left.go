package groove

import (
	"math"
	"sort"

	"roundlay/geometry"
)

// Remains is the least glass that a groove leaves: 0 where it breaks through, +Inf where
// the inside is not known or the whole groove is off the glass. Theta and Height are the
// place on the outside above it.
type Remains struct{ Min, Theta, Height float64 }

// remains is the least glass found so far, and the place on the wheel that leaves it.
type remains struct {
	Remains
	*stroke
	blade       blade
	own         *pose
	ahead, left float64
	lowest      *lowest // of a wheel drawn by hand
	deepest     float64 // beside the cut's own line, on glass that is hollow across it
}

// footprint measures the glass left under a blade's footprint.
func (r *remains) footprint(b *blade, f footprint) {
	// Sections closer together than this can be skipped: refine finds what is between.
	const near = 0.3 // mm
	r.blade = *b
	last := math.Inf(-1)
	for i := range f {
		x := &f[i]
		if x.own.flat || x.along > last+near || i == len(f)-1 {
			r.section(x)
			last = x.along
		}
		if i > 0 {
			r.kinks(&f[i-1], x)
			r.end(&f[i-1], x)
		}
	}
}

// end measures the glass left where the blade leaves the glass between two sections.
func (r *remains) end(a, b *section) {
	if (a.deep > 0) == (b.deep > 0) {
		return
	}
	share := a.deep / (a.deep - b.deep)
	tip := r.under(a.along+share*(b.along-a.along), nil).section(&r.blade)
	r.section(&tip)
}

// kinks measures the glass left at each kink of the inside between two sections, and a
// little to each side: the place nearest to a kink is not exactly square above it.
func (r *remains) kinks(a, b *section) {
	if r.inside == nil {
		return
	}
	low, high := a.own.counted(a.above()), b.own.counted(b.above())
	from, to := a.along, b.along
	if low > high {
		from, to, low, high = to, from, high, low
	}
	kinks := r.inside.Kinks()
	for i := sort.SearchFloat64s(kinks, low); i < len(kinks) && kinks[i] < high; i++ {
		at := (kinks[i] - low) / (high - low)
		for j := -2; j <= 2; j++ {
			share := min(max(at+float64(j)/10, 0), 1)
			between := r.under(from+share*(to-from), nil).section(&r.blade)
			r.section(&between)
		}
	}
}

// section measures the glass left under a section: under the blade's line if it is sharp,
// else all across.
func (r *remains) section(x *section) {
	if r.lowest != nil {
		r.lowest.section(&r.blade, x)
		return
	}
	if r.blade.sharp() {
		r.line(x)
		return
	}
	const fine = 0.5 // mm
	n := max(int(math.Ceil((x.left-x.right)/fine)), 2)
	apart := (x.left - x.right) / float64(n)
	way := x.way.straightOn(x.rate, r.surface, x.aside+x.right)
	for i := range n + 1 {
		ahead, left := x.ahead, x.aside+x.right+apart*float64(i)
		if !x.own.flat {
			ahead, left = x.own.sees(way.spot(r.surface))
			way = way.straight(r.surface, apart)
		}
		r.beside(x, ahead, left)
	}
}

// sees returns how far ahead of the wheel and to its left a place is, measured in the
// wheel's coordinates and not along the glass.
func (p *pose) sees(s spot) (ahead, left float64) {
	v := p.seen(p.space(s))
	return v.X, v.Y
}

// line measures a section under the blade's own line.
func (r *remains) line(x *section) {
	ahead := x.ahead
	if !x.own.flat {
		ahead, _ = x.own.sees(x.above())
	}
	r.beside(x, ahead, r.blade.offset)
}

// beside measures a section at a distance ahead of the wheel and to its left.
func (r *remains) beside(x *section, ahead, left float64) {
	r.edge(x.own, ahead, left)
	if left != 0 && r.last > r.first && !r.bridges {
		// A wheel askew is deepest there a little before or after its place.
		off := x.own.curve.twist * left / x.own.stiff()
		r.edge(x.own, ahead+off, left)
		r.edge(x.own, ahead-off, left)
	}
}

// edge measures the glass left under one place of the blade's edge, at a distance ahead of
// the wheel and to the left of its middle. It reports whether that is the least so far.
func (r *remains) edge(own *pose, ahead, left float64) bool {
	radius, height := own.rim(&r.blade, ahead, left)
	if left != 0 && !own.flat {
		// Whether it cuts there takes longer to find out than how deep.
		depth, _ := under(own.surface, own.along, radius, height)
		if !(depth <= r.deepest) && own.cuts(&r.blade, ahead, left) {
			r.deepest = max(r.deepest, depth)
		}
	}
	if r.inside == nil {
		return false
	}
	least := r.inside.Distance(radius, height)
	if !(least < r.Min) || height > r.rim || height < r.foot || !own.cuts(&r.blade, ahead, left) {
		return false
	}
	r.Min, r.own, r.ahead, r.left = least, own, ahead, left
	return true
}

// newRemains returns the remains before anything is measured.
func newRemains(k *stroke) remains {
	r := remains{Remains: Remains{Min: math.Inf(1)}, stroke: k}
	if k.byHand() {
		r.lowest = newLowest(k)
	}
	return r
}

// refine searches round the place that leaves least, on the same wheel, for one that leaves
// less. It returns that place on the glass.
func (r *remains) refine() Remains {
	if r.lowest != nil {
		r.Remains, r.deepest = r.lowest.refine()
		return r.Remains
	}
	if r.own == nil {
		return r.Remains
	}
	const far = 1.0 // mm: the distance between sections
	own, ahead, left := r.own, r.ahead, r.left
	try := func(onward, aside float64) bool {
		a, l := r.ahead+onward, r.left+aside
		return math.Abs(a-ahead) <= far && math.Abs(l-left) <= far && r.edge(own, a, l)
	}
	for step := 0.3; step > 0.02; {
		if !try(step, 0) && !try(-step, 0) && !try(0, step) && !try(0, -step) {
			step /= 2
		}
	}
	at := own.spot(r.ahead, r.left)
	return Remains{max(r.Min, 0), at.theta, own.counted(at)}
}

// rim returns the radius and the height of a place on a blade's edge.
func (p *pose) rim(b *blade, ahead, left float64) (radius, height float64) {
	out := p.above(p.wheelRadius-b.drop(left-b.offset), ahead)
	right, up := ahead*p.sine-left*p.cosine, ahead*p.cosine+left*p.sine
	away := p.radius + up*p.sin + out*p.cos
	return math.Sqrt(away*away + right*right), p.height + up*p.cos - out*p.sin
}

// under returns the depth of a place under the outside of the glass, measured square to it,
// and the distance along the profile where that is. It starts looking at the distance s.
func under(surface *geometry.Surface, s, radius, height float64) (depth, along float64) {
	var r, z, sin, cos float64
	for range 20 {
		var bulge float64
		r, z = surface.At(s)
		sin, cos, bulge = surface.Lean(s)
		// How far along the profile from s the place is, and how far inside.
		on, in := (radius-r)*sin+(height-z)*cos, (r-radius)*cos+(z-height)*-sin
		step := on / max(1-bulge*in, 0.2)
		s += step
		if math.Abs(step) < 1e-6 {
			break
		}
	}
	return (r-radius)*cos - (z-height)*sin, s
}

// cuts reports whether a place of a blade's edge is in the glass: within the wheel's faces
// and under the surface.
func (p *pose) cuts(b *blade, ahead, left float64) bool {
	const hair = 1e-3 // mm
	if math.Abs(left) > b.face+hair {
		return false
	}
	deep, _, _ := p.bite(b, p.spot(ahead, left))
	return deep > -hair
}
