package glass

import "math"

// Span is a range of heights.
type Span struct{ From, To float64 }

// Cutting is a blank that is cut to one depth, square to its outside, at any
// height.
type Cutting struct {
	blank   *Blank
	beneath Beneath
	depth   float64
}

// CutTo returns the blank cut to a depth.
func (b *Blank) CutTo(depth float64) Cutting { return Cutting{b, b.Beneath(), depth} }

// To returns the same blank cut to another depth.
func (c Cutting) To(depth float64) Cutting { c.depth = depth; return c }

// Left returns how much glass is left under the cut at height z.
func (c Cutting) Left(z float64) float64 {
	radius, slope, _ := c.blank.profile.At(z)
	in := c.depth / math.Sqrt(1+slope*slope)
	return c.beneath.Distance(radius-in, z+in*slope)
}

// Thinner returns the heights, from the foot up, at which less glass is left
// than the given limit.
func (c Cutting) Thinner(limit float64) []Span {
	const fine = 0.5 // mm
	var thin []Span
	stations := c.blank.Stations
	at, open := stations[0].Height, false
	look := func(z float64) {
		if now := c.Left(z) < limit; now != open {
			edge := c.passes(limit, Span{at, z}, open)
			if now {
				thin = append(thin, Span{From: edge})
			} else {
				thin[len(thin)-1].To = edge
			}
			open = now
		}
		at = z
	}
	look(at)
	for _, s := range stations[1:] {
		from := at
		n := int(math.Ceil((s.Height - from) / fine))
		for i := 1; i <= n; i++ {
			look(from + (s.Height-from)*float64(i)/float64(n))
		}
	}
	if open {
		thin[len(thin)-1].To = at
	}
	return thin
}

// passes returns the height at which the glass left passes a limit within a
// span. thin says that it is below the limit at the span's lower end; at the
// upper end it is on the other side.
func (c Cutting) passes(limit float64, within Span, thin bool) float64 {
	from, to := within.From, within.To
	for to-from > 1e-9 {
		half := (from + to) / 2
		if (c.Left(half) < limit) == thin {
			from = half
		} else {
			to = half
		}
	}
	return to
}
