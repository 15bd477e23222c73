package pattern

import (
	"math"

	"roundlay/geometry"
)

// overlapRow is how far apart, in millimetres up the glass, the heights are at which
// copies of a motif are compared.
const overlapRow = 0.1

// Overlap returns how far a motif reaches into its own next copy, measured round the
// glass, and at which height that is most; 0 or less where it nowhere does.
func (p *Plan) Overlap(motif int) (by, height float64) {
	by = math.Inf(-1)
	apart := p.apart(motif)
	for row, e := range p.extents(motif) {
		z := float64(row) * overlapRow
		if over := (e.to - e.from - apart) * p.Surface.RadiusAt(z); over > by || over == by && z < height {
			by, height = over, z
		}
	}
	return by, height
}

// apart returns the angle between the nearest two copies of a motif.
func (p *Plan) apart(motif int) float64 {
	return p.layout().Stride(p.sized[motif]) * p.PitchAngle()
}

// extent is from where to where something reaches round the glass, as angles.
type extent struct{ from, to float64 }

// extents returns how far the grooves of a motif's first copy reach at each height, by
// the number of the row.
func (p *Plan) extents(motif int) map[int]extent {
	all := map[int]extent{}
	add := func(row int, theta float64) {
		e, known := all[row]
		if !known {
			e = extent{theta, theta}
		}
		all[row] = extent{min(e.from, theta), max(e.to, theta)}
	}
	first := 0 // the repeat of that copy: cuts are listed repeat by repeat
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.Motif == motif && first == 0 {
			first = c.Repeat
		}
		if c.Motif != motif || c.Repeat != first {
			continue
		}
		for _, o := range c.Outlines {
			p.rows(o, add)
		}
	}
	return all
}

// rows calls add for each point of an outline with the row it is nearest to, and for
// each row that one of its edges crosses.
func (p *Plan) rows(o geometry.Outline, add func(row int, theta float64)) {
	for k, from := range o.Points {
		theta, low := p.Surface.Reverse(from)
		add(int(math.Round(low/overlapRow)), theta)
		next, high := p.Surface.Reverse(o.Points[(k+1)%len(o.Points)])
		if high < low {
			theta, next, low, high = next, theta, high, low
		}
		for row := int(math.Ceil(low / overlapRow)); float64(row)*overlapRow < high; row++ {
			add(row, theta+(next-theta)*(float64(row)*overlapRow-low)/(high-low))
		}
	}
}
