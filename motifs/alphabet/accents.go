package alphabet

import "roundlay/geometry"

// above returns the strokes of an accent that stands over a letter, about x = 0, nil
// for anything else. Accents are named by Unicode's combining marks.
func above(mark rune) []geometry.Bezier {
	const foot, top = 1 + Overshoot + AccentGap, 1 + Overshoot + AccentGap + 0.18
	switch mark {
	case '\u0300': // grave
		return []geometry.Bezier{line(-0.1, top, 0.08, foot)}
	case '\u0301': // acute
		return []geometry.Bezier{line(0.1, top, -0.08, foot)}
	case '\u0302': // circumflex
		return []geometry.Bezier{line(0, top, -0.15, foot), line(0, top, 0.15, foot)}
	case '\u0303': // tilde
		return []geometry.Bezier{line(-0.2, foot+0.02, -0.09, foot+0.12), line(-0.09, foot+0.12, 0.09, foot+0.02), line(0.09, foot+0.02, 0.2, foot+0.12)}
	case '\u0304': // macron
		return []geometry.Bezier{line(-0.17, foot+0.07, 0.17, foot+0.07)}
	case '\u0306': // breve
		return []geometry.Bezier{left(-0.19, foot+0.11, 0.19, foot+0.11, tight)}
	case '\u0307': // dot
		return []geometry.Bezier{line(0, foot+0.14, 0, foot)}
	case '\u0308': // diaeresis
		return []geometry.Bezier{line(-0.12, foot+0.14, -0.12, foot), line(0.12, foot+0.14, 0.12, foot)}
	case '\u030a': // ring: four strokes, for no wheel turns so tightly
		const half, middle = 0.1, foot + 0.1
		return []geometry.Bezier{line(0, middle+half, -half, middle), line(0, middle+half, half, middle),
			line(-half, middle, 0, middle-half), line(half, middle, 0, middle-half)}
	case '\u030b': // double acute
		return []geometry.Bezier{line(0.01, top, -0.14, foot), line(0.2, top, 0.05, foot)}
	case '\u030c': // caron
		return []geometry.Bezier{line(-0.15, top, 0, foot), line(0.15, top, 0, foot)}
	}
	return nil
}

// below returns the strokes of an accent that hangs under a letter, about x = 0, nil
// for anything else. All stand off the letter, so that no short stroke runs into a stem.
func below(mark rune) []geometry.Bezier {
	const top, foot = -Overshoot - AccentGap, -Overshoot - AccentGap - 0.19
	switch mark {
	case '\u0327': // cedilla
		return []geometry.Bezier{line(0.03, top, 0.05, top-0.125), line(0.05, top-0.125, -0.11, foot)}
	case '\u0328': // ogonek
		return []geometry.Bezier{line(-0.03, top, -0.05, top-0.125), line(-0.05, top-0.125, 0.11, foot)}
	case '\u0326': // comma
		return []geometry.Bezier{line(0.04, top, -0.05, foot)}
	}
	return nil
}

// comma is the mark below that some letters have in place of a cedilla, though Unicode
// spells it as one: those of Latvian.
func comma(base rune) bool {
	switch base {
	case 'G', 'K', 'L', 'N', 'R':
		return true
	}
	return false
}

// over returns where on a letter an accent above has its middle, as a share of the
// letter's width. Letters that lean on a stem carry it nearer to that.
func over(base rune) float64 {
	switch base {
	case 'L':
		return 0.2
	case 'D', 'K':
		return 0.45
	case 'J':
		return 0.9
	}
	return 0.5
}

// under returns the same for an accent below. An ogonek hangs from the right foot.
func under(base, mark rune) float64 {
	switch {
	case mark == '\u0328' && base == 'A':
		return 0.95
	case mark == '\u0328' && base == 'E':
		return 0.8
	case base == 'J':
		return 0.6
	}
	return 0.5
}
