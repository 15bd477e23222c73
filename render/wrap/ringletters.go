package wrap

import (
	"iter"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// ringLetters writes the letters of the rings, each beside its own and clear of
// the others; where there is no room so near, some way off at the end of a line.
func (l *labels) ringLetters() {
	type place struct {
		ring
		theta float64
		on    *pane
	}
	var places []place
	var centres []geometry.Point
	for i := range l.panes {
		on := &l.panes[i]
		for _, r := range l.rings {
			if r.height < on.low || r.height > on.high {
				continue
			}
			for theta := range l.around(r, on.from, on.to) {
				places, centres = append(places, place{r, theta, on}), append(centres, on.at(theta, r.height))
			}
		}
	}
	for i, p := range places {
		// To the left of a repeat's middle on the left, so that the rings of a pair
		// leave each other room.
		left := math.Remainder(p.theta, l.plan.PitchAngle()) < -1e-9
		l.ringLetter(letterPlace{p.letters, centres[i], p.on.tilt(p.theta, p.height), left, p.on, centres})
	}
}

// letterPlace is a ring whose letters are to be written.
type letterPlace struct {
	letters []string
	centre  geometry.Point
	tilt    float64
	left    bool // whether they stand rather on its left
	on      *pane
	centres []geometry.Point // of all rings
}

// letterSpot is where a ring's letters may stand.
type letterSpot struct {
	wording
	spot
	far     float64 // how far off the ring, at the end of a line
	outline geometry.Outline
}

// apart reports whether an outline keeps off the other rings.
func (p letterPlace) apart(o geometry.Outline) bool {
	return !slices.ContainsFunc(p.centres, func(c geometry.Point) bool {
		return c != p.centre && o.DistanceTo(c, ringOuter+0.2) < ringOuter+0.2
	})
}

// holds reports whether an outline lies on a pane with all its corners.
func (on *pane) holds(o geometry.Outline) bool {
	return !slices.ContainsFunc(o.Points, func(q geometry.Point) bool { return !on.outline.Contains(q) })
}

// letterTry is how large letters are tried, how far off their ring, and whether
// in one column.
type letterTry struct {
	off, size float64
	column    bool
}

// letterTries returns the ways letters are tried, the best first.
func letterTries() []letterTry {
	var all []letterTry
	for _, column := range []bool{false, true} {
		all = append(all, letterTry{0, 9, column}, letterTry{0, 7.5, column}, letterTry{0, 6, column}, letterTry{2, 9, column},
			letterTry{2, 7, column}, letterTry{5, 7, column}, letterTry{9, 7, column})
	}
	return append(all, letterTry{2, 5, true}, letterTry{5, 5, true}, letterTry{9, 5, true}, letterTry{0, 5, true})
}

// ringLetter writes a ring's letters: where all is full of lines, on those that
// hide the least, but on the ring's own strip.
func (l *labels) ringLetter(p letterPlace) {
	at, ok := l.clearLetters(p)
	if !ok {
		at, ok = l.crowdedLetters(p)
	}
	if !ok { // the strip is narrower than a letter
		const beside = 0.6
		at.wording = wording{[]string{strings.Join(p.letters, letterBreak)}, 6, true}
		at.spot = spot{at: r2.Add(p.centre, r2.Rotate(geometry.Point{X: ringOuter + beside}, p.tilt, geometry.Point{})), turn: p.tilt}
	}
	texts := at.texts(at.spot)
	if at.far > 0 {
		way := r2.Unit(r2.Sub(middle(at.outline), p.centre))
		l.d.Add(drawing.Findings, ringMark().LeadTo(p.centre, r2.Add(p.centre, r2.Scale(ringOuter+at.far, way)))...)
	}
	for _, text := range texts {
		l.d.Add(drawing.Findings, text)
		l.text(text)
	}
}

// clearLetters finds letters a place that meets nothing else.
func (l *labels) clearLetters(p letterPlace) (at letterSpot, ok bool) {
	for _, try := range letterTries() {
		best := taken
		for s := range l.letterSpots(p, try) {
			if !p.on.outline.Contains(middle(s.outline)) || !p.apart(s.outline) {
				continue
			}
			r := l.rank(s.outline)
			if r == aloneOnLines || r == nearOthersOnLines {
				r-- // a letter is legible on faint lines
			}
			if r < best {
				best, at = r, s
			}
		}
		if best < taken {
			return at, true
		}
	}
	return at, false
}

// crowdedLetters finds letters the place on their strip that meets the least of
// what is there.
func (l *labels) crowdedLetters(p letterPlace) (at letterSpot, ok bool) {
	least := math.MaxInt
	for _, try := range letterTries() {
		if try.size > 6 && try.off == 0 {
			continue
		}
		for s := range l.letterSpots(p, try) {
			if !p.on.holds(s.outline) {
				continue
			}
			if n := l.met(s.outline); n < least {
				least, at, ok = n, s, true
			}
		}
	}
	return at, ok
}

// met counts what an outline lies on. Words and rings weigh more than the lines of
// cuts, as a letter on a letter can't be read.
func (l *labels) met(outline geometry.Outline) int {
	const touch, words = 0.1, 20
	box, n := outline.Box().Grow(touch), 0
	l.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, there obstacle) bool {
		if there.owner == outlines || there.owner == faintInk || there.owner == hatching {
			return true
		}
		if off, _, _ := outline.Distance(there.Outline, touch); off < touch {
			n++
			if there.owner == otherInk {
				n += words
			}
		}
		return true
	})
	return n
}

// letterSpots returns the places round a ring for its letters.
func (l *labels) letterSpots(p letterPlace, try letterTry) iter.Seq[letterSpot] {
	const beside = 0.6
	w := wording{[]string{strings.Join(p.letters, letterBreak)}, try.size, true}
	if try.column {
		w.lines = p.letters
	}
	first := w.texts(spot{})[0]
	width, tall := l.size(first)
	tall += first.At.Y // of a column, with the letters below
	for _, line := range w.lines {
		width = max(width, l.letters.Width(line, w.size, true))
	}
	return func(yield func(letterSpot) bool) {
		for _, degrees := range []float64{30, 150, -30, -150, 0, 180, 60, 120, -60, -120, 90, -90} {
			if p.left {
				degrees = 180 - degrees
			}
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			reach := ringOuter + beside + try.off + math.Min(width/2/max(math.Abs(cos), 1e-9), tall/2/max(math.Abs(sin), 1e-9))
			off := geometry.Point{X: reach * cos, Y: reach*sin - tall/2}
			s := letterSpot{wording: w, far: try.off}
			s.spot = spot{at: r2.Add(p.centre, r2.Rotate(off, p.tilt, geometry.Point{})), turn: p.tilt, align: drawing.Centre, on: p.on}
			s.outline = l.outline(w, s.spot)
			if !yield(s) {
				return
			}
		}
	}
}
