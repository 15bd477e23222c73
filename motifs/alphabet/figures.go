package alphabet

import "roundlay/geometry"

// figure returns the strokes of a figure from 0 to 9, nil for anything else.
func figure(r rune) []geometry.Bezier {
	switch r {
	case '0':
		return []geometry.Bezier{side(0.3, -0.3, 0.38), side(0.3, 0.3, 0.38)}
	case '1':
		return []geometry.Bezier{line(0, 0.8, 0.24, 1), stem(0.24)}
	case '2':
		return []geometry.Bezier{right(0.01, 0.79, 0.28, 1, tight), right(0.28, 1, 0.53, 0.72, tight),
			right(0.53, 0.72, 0, 0, 1.5), line(0, 0, 0.55, 0)}
	case '3':
		return append([]geometry.Bezier{line(0.02, 1, 0.5, 1), line(0.5, 1, 0.22, 0.59)}, tailed(0.22, 0.59, 0.54)...)
	case '4':
		return []geometry.Bezier{line(0.42, 1, 0, 0.29), line(0, 0.29, 0.6, 0.29), stem(0.42)}
	case '5':
		return append([]geometry.Bezier{line(0.07, 1, 0.49, 1), line(0.07, 1, 0.04, 0.565)}, tailed(0.04, 0.565, 0.54)...)
	case '6':
		return six()
	case '7':
		return []geometry.Bezier{line(0, 1, 0.54, 1), left(0.54, 1, 0.15, 0, 2)}
	case '8':
		return []geometry.Bezier{
			left(0.27, 1, 0.04, 0.765, tight), right(0.27, 1, 0.5, 0.765, tight),
			spine(0.04, 0.765, 0.54, 0.265, 2.3), spine(0.5, 0.765, 0, 0.265, 2.3),
			left(0, 0.265, 0.27, 0, tight), right(0.54, 0.265, 0.27, 0, tight),
		}
	case '9':
		return turned(six(), 0.275, 0.5)
	}
	return nil
}

// tailed returns the open bowl under a 3 or a 5, from a place to the left of it.
func tailed(x, top, wide float64) []geometry.Bezier {
	return []geometry.Bezier{right(x, top, wide, 0.29, tight), right(wide, 0.29, 0, 0.035, 0.45)}
}

// six returns the 6: a long back that turns at a soft corner into the foot, and a bowl
// that comes back to it in the middle.
func six() []geometry.Bezier {
	back := left(0.47, 1, 0, 0.3, 1)
	meet := back.At(0.72)
	return []geometry.Bezier{back, left(0, 0.3, 0.28, 0, tight), left(0.28, 0, 0.55, 0.3, tight), left(0.55, 0.3, meet.X, meet.Y, tight)}
}
