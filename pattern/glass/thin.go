package glass

// Span is a range of heights.
type Span struct{ From, To float64 }

// Thinner returns the heights at which the wall is thinner than a thickness,
// from the foot up.
func (b *Blank) Thinner(thickness float64) []Span {
	var thin []Span
	below := b.Stations[0]
	open := below.Wall < thickness
	if open {
		thin = append(thin, Span{From: below.Height})
	}
	for _, s := range b.Stations[1:] {
		if now := s.Wall < thickness; now != open {
			// On the straight line between the two stations.
			z := below.Height + (s.Height-below.Height)*(below.Wall-thickness)/(below.Wall-s.Wall)
			if now {
				thin = append(thin, Span{From: z})
			} else {
				thin[len(thin)-1].To = z
			}
			open = now
		}
		below = s
	}
	if open {
		thin[len(thin)-1].To = below.Height
	}
	return thin
}
