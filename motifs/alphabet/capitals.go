package alphabet

import "roundlay/geometry"

// tight is the radius of the tightest arcs. The cubics that stand for them, and the
// round letters' sides, come a little below it, and never below MinRadius.
const tight = 0.42

// capital returns the strokes of a letter from A to Z, nil for anything else. Its
// leftmost place is near x = 0.
func capital(r rune) []geometry.Bezier {
	switch r {
	case 'A':
		return []geometry.Bezier{line(0.38, 1, 0, 0), line(0.38, 1, 0.76, 0), line(0.38*0.32, 0.32, 0.76-0.38*0.32, 0.32)}
	case 'B':
		return append([]geometry.Bezier{stem(0)}, append(bowl(0, 1, 0.52, 0.42, tight), bowl(0, 0.52, 0, 0.48, tight)...)...)
	case 'C':
		return append(sickle(), right(0.40, 1, 0.72, 0.83, 0.5), left(0.40, 0, 0.72, 0.17, 0.5))
	case 'D':
		return append([]geometry.Bezier{stem(0)}, bowl(0, 1, 0, 0.68, 0.62)...)
	case 'E':
		return []geometry.Bezier{stem(0), line(0, 1, 0.5, 1), line(0, 0.52, 0.43, 0.52), line(0, 0, 0.52, 0)}
	case 'F':
		return []geometry.Bezier{stem(0), line(0, 1, 0.5, 1), line(0, 0.5, 0.42, 0.5)}
	case 'G':
		return append(sickle(), right(0.40, 1, 0.72, 0.83, 0.5), left(0.40, 0, 0.75, 0.12, 0.5),
			line(0.75, 0.12, 0.75, 0.45), line(0.46, 0.45, 0.75, 0.45))
	case 'H':
		return []geometry.Bezier{stem(0), stem(0.72), line(0, 0.52, 0.72, 0.52)}
	case 'I':
		return []geometry.Bezier{stem(0)}
	case 'J':
		return []geometry.Bezier{line(0.4, 1, 0.4, 0.36), right(0.4, 0.36, 0.02, 0.01, tight)}
	case 'K':
		return []geometry.Bezier{stem(0), line(0.58, 1, 0, 0.38), line(0.2, 0.38+0.2*0.62/0.58, 0.62, 0)}
	case 'L':
		return []geometry.Bezier{stem(0), line(0, 0, 0.5, 0)}
	case 'M':
		return []geometry.Bezier{line(0.07, 1, 0, 0), line(0.07, 1, 0.46, 0.16), line(0.85, 1, 0.46, 0.16), line(0.85, 1, 0.92, 0)}
	}
	return laterCapital(r)
}

// laterCapital returns the strokes of a letter from N to Z.
func laterCapital(r rune) []geometry.Bezier {
	switch r {
	case 'N':
		return []geometry.Bezier{stem(0), line(0, 1, 0.74, 0), stem(0.74)}
	case 'O':
		return ring()
	case 'P':
		return append([]geometry.Bezier{stem(0)}, bowl(0, 1, 0.45, 0.5, tight)...)
	case 'Q':
		return append(ring(), line(0.47, 0.3, 0.8, 0))
	case 'R':
		round := bowl(0, 1, 0.46, 0.49, tight)
		root := round[1].At(0.68)
		return append([]geometry.Bezier{stem(0)}, append(round, line(root.X, root.Y, 0.6, 0))...)
	case 'S':
		return []geometry.Bezier{left(0.48, 0.985, 0.02, 0.755, tight), spine(0.02, 0.755, 0.5, 0.26, 2.3), right(0.5, 0.26, 0, 0.015, tight)}
	case 'T':
		return []geometry.Bezier{line(0, 1, 0.68, 1), stem(0.34)}
	case 'U':
		return []geometry.Bezier{line(0, 1, 0, 0.36), left(0, 0.36, 0.35, 0, tight), line(0.7, 1, 0.7, 0.36), right(0.7, 0.36, 0.35, 0, tight)}
	case 'V':
		return []geometry.Bezier{line(0, 1, 0.37, 0), line(0.74, 1, 0.37, 0)}
	case 'W':
		return []geometry.Bezier{line(0, 1, 0.27, 0), line(0.53, 0.84, 0.27, 0), line(0.53, 0.84, 0.79, 0), line(1.06, 1, 0.79, 0)}
	case 'X':
		return []geometry.Bezier{line(0.03, 1, 0.68, 0), line(0.65, 1, 0, 0)}
	case 'Y':
		return []geometry.Bezier{line(0, 1, 0.35, 0.47), line(0.7, 1, 0.35, 0.47), line(0.35, 0.47, 0.35, 0)}
	case 'Z':
		return []geometry.Bezier{line(0.02, 1, 0.6, 1), line(0.6, 1, 0, 0), line(0, 0, 0.62, 0)}
	}
	return nil
}

// stem returns an upright stroke as high as a capital.
func stem(x float64) geometry.Bezier { return line(x, 1, x, 0) }

// ring returns the O: two halves that meet in soft points.
func ring() []geometry.Bezier {
	return []geometry.Bezier{side(0.4, -0.4, 0.13), side(0.4, 0.4, 0.13)}
}

// sickle returns the left half of the O, which C and G share.
func sickle() []geometry.Bezier { return []geometry.Bezier{side(0.4, -0.4, 0.13)} }

// bowl returns a bowl to the right of a stem at x, between two heights: an arc out
// and an arc back, which meet in a soft point halfway up.
func bowl(x, top, foot, wide, radius float64) []geometry.Bezier {
	middle := (top + foot) / 2
	return []geometry.Bezier{right(x, top, x+wide, middle, radius), right(x+wide, middle, x, foot, radius)}
}
