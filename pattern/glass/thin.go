package glass

import "math"

// Span is a range of heights.
type Span struct{ From, To float64 }

// LeftUnder returns how much glass is left under a place of the outside, at a
// height, that is cut to a depth square to it.
func (b *Blank) LeftUnder(z, depth float64) float64 {
	radius, slope, _ := b.profile.At(z)
	in := depth / math.Sqrt(1+slope*slope)
	return b.thin.Distance(radius-in, z+in*slope)
}

// Thinner returns the heights at which a cut of a depth leaves less than there is
// to be left, from the foot up.
func (b *Blank) Thinner(leave, depth float64) []Span {
	const fine = 0.5 // mm
	var thin []Span
	at, open := b.Stations[0].Height, false
	look := func(z float64) {
		if now := b.LeftUnder(z, depth) < leave; now != open {
			edge := b.crosses(at, z, leave, depth, open)
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
	for _, s := range b.Stations[1:] {
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

// crosses returns where between two heights what a cut leaves passes a limit: it
// is thin at the first, or at the second.
func (b *Blank) crosses(from, to, leave, depth float64, thin bool) float64 {
	for to-from > 1e-9 {
		half := (from + to) / 2
		if (b.LeftUnder(half, depth) < leave) == thin {
			from = half
		} else {
			to = half
		}
	}
	return to
}
