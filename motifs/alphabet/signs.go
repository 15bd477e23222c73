package alphabet

import "roundlay/geometry"

// sign returns the strokes of a sign that stands among letters, nil for anything else.
func sign(r rune) []geometry.Bezier {
	switch r {
	case '&':
		return []geometry.Bezier{
			right(0.12, 0.77, 0.29, 1, tight), right(0.29, 1, 0.46, 0.78, tight), line(0.46, 0.78, 0, 0.25),
			left(0, 0.25, 0.26, 0, tight), left(0.26, 0, 0.64, 0.43, 0.5), line(0.12, 0.77, 0.68, 0),
		}
	case '.':
		return []geometry.Bezier{line(0, 0.14, 0, 0)}
	case '-':
		return []geometry.Bezier{line(0, 0.46, 0.3, 0.46)}
	case '\'':
		return []geometry.Bezier{line(0.06, 1, 0, 0.78)}
	}
	return nil
}

// ligature returns the strokes of the letters beyond A to Z that are no letter with an
// accent, nil for anything else.
func ligature(r rune) []geometry.Bezier {
	switch r {
	case 'Æ':
		return append([]geometry.Bezier{line(0.5, 1, 0, 0), stem(0.5), line(0.5*0.32, 0.32, 0.5, 0.32)}, bars(0.5)...)
	case 'Œ':
		return append([]geometry.Bezier{side(0.44, -0.42, 0.13), stem(0.44)}, bars(0.44)...)
	case 'ẞ':
		return append([]geometry.Bezier{line(0, 0.66, 0, 0), right(0, 0.66, 0.3, 1, tight), line(0.3, 1, 0.56, 1),
			line(0.56, 1, 0.3, 0.59)}, right(0.3, 0.59, 0.62, 0.29, tight), right(0.62, 0.29, 0.2, 0.01, tight))
	case 'Þ':
		return append([]geometry.Bezier{stem(0)}, bowl(0, 0.78, 0.23, 0.5, tight)...)
	case 'Ŋ':
		return []geometry.Bezier{stem(0), line(0, 1, 0.74, 0.12), line(0.74, 1, 0.74, 0.12), right(0.74, 0.12, 0.46, -0.18, tight)}
	}
	return nil
}

// bars returns the three bars of an E to the right of a stem at x.
func bars(x float64) []geometry.Bezier {
	return []geometry.Bezier{line(x, 1, x+0.48, 1), line(x, 0.52, x+0.42, 0.52), line(x, 0, x+0.5, 0)}
}

// barred returns a letter with a stroke through it: the letter itself and the stroke,
// nil for anything else.
func barred(r rune) (letter, through []geometry.Bezier) {
	switch r {
	case 'Ø':
		return capital('O'), []geometry.Bezier{line(0.08, 0, 0.72, 1)}
	case 'Ð', 'Đ':
		return capital('D'), []geometry.Bezier{line(-0.14, 0.52, 0.28, 0.52)}
	case 'Ł':
		return capital('L'), []geometry.Bezier{line(-0.14, 0.4, 0.27, 0.66)}
	case 'Ħ':
		return capital('H'), []geometry.Bezier{line(-0.11, 0.77, 0.83, 0.77)}
	case 'Ŧ':
		return capital('T'), []geometry.Bezier{line(0.13, 0.54, 0.55, 0.54)}
	}
	return nil, nil
}
