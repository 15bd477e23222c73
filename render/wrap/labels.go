package wrap

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/page"
)

// labels writes the words on a piece of paper whose lines are all drawn. Each
// has several places, and stands where it hides no cut and meets no other words;
// the most important comes first, and what finds no room is left out.
type labels struct {
	*facePaper
	obstacles
	d     *drawing.Drawing
	piece piece
	panes []pane
}

// pane is a strip with its outline.
type pane struct {
	strip
	outline geometry.Outline
}

// wording is one way to put a label: its lines, and how large they are.
type wording struct {
	lines []string
	size  float64 // in points
	bold  bool
}

// spot is a place for words: where they stand, or the last line of them.
type spot struct {
	at    geometry.Point
	turn  float64
	align drawing.Align
	on    *pane // which they are not to leave, if there is one
}

// write adds all the words of a piece.
func (s *facePaper) write(d *drawing.Drawing, p piece, strips []strip) {
	l := labels{facePaper: s, obstacles: obstacles{fonts: s.letters}, d: d, piece: p}
	l.avoid(*d)
	var lines []numbered
	for _, st := range strips {
		own := s.numbered(st)
		for _, line := range own {
			l.line(line.whole, owner(line.number))
		}
		region := st.region(st.from, st.to, st.low, st.high)
		l.line(append(region, region[0]), otherInk)
		paper := geometry.NewOutline(drawing.Thinned(region, 0.02))
		for i := range own {
			own[i].paper = paper
		}
		lines = append(lines, own...)
		l.panes = append(l.panes, pane{strip: st, outline: paper})
	}
	l.repeatNumbers()
	l.edgeWords()
	l.ringLetters()
	if p.highest {
		l.rim()
	}
	if s.apart() {
		l.put(l.anywhere(), sizes([]float64{6, 5}, fmt.Sprintf("%s %d", s.paperName(), p.paper))...)
	}
	l.meetings()
	if p.last && s.tab {
		l.tabWords()
	}
	l.blankName()
	l.bandWords()
	l.thinWords()
	s.numbering[p] = l.numbers(d, lines)
}

// sizes returns one line of words in several sizes.
func sizes(points []float64, lines ...string) []wording {
	all := make([]wording, len(points))
	for i, size := range points {
		all[i] = wording{lines: lines, size: size}
	}
	return all
}

// rank is how well a place suits words, the best first. In the second of each pair
// words lie on faint lines or hatching and need a white ground.
type rank int

const (
	alone rank = iota // apart from other ink, and out of the way of the cuts' numbers
	aloneOnLines
	nearOthers
	nearOthersOnLines
	taken
)

func (r rank) onLines() bool { return r == aloneOnLines || r == nearOthersOnLines }

// rank returns how well an outline stands among what is there.
func (l *labels) rank(outline geometry.Outline) rank {
	const far, cuts, beside, ink, faint = 3, 0.35, 1.4, 0.2, 0.05
	best, lines := alone, false
	box := outline.Box().Grow(far)
	l.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, there obstacle) bool {
		switch there.owner {
		case outlines: // words that keep off a cut keep off most of its footprint
		case otherInk:
			if off, _, _ := outline.Distance(there.Outline, beside); off < ink {
				best = taken
			} else if off < beside {
				best = nearOthers
			}
		case faintInk, hatching:
			if !lines {
				off, _, _ := outline.Distance(there.Outline, faint)
				lines = off < faint
			}
		default:
			if off, _, _ := outline.Distance(there.Outline, far); off < cuts {
				best = taken
			} else if off < far {
				best = nearOthers
			}
		}
		return best != taken
	})
	if lines && best != taken {
		best++
	}
	return best
}

// put writes a label in the first wording that finds room, at the best of its
// places, and reports whether one did.
func (l *labels) put(spots iter.Seq[spot], wordings ...wording) bool {
	for _, w := range wordings {
		best, at := taken, spot{}
		for s := range spots {
			outline := l.outline(w, s)
			if s.on != nil && !s.on.outline.Contains(middle(outline)) {
				continue
			}
			if r := l.rank(outline); r < best {
				best, at = r, s
			}
			if best == alone {
				break
			}
		}
		if best < taken {
			l.set(w, at, best.onLines())
			return true
		}
	}
	return false
}

func middle(o geometry.Outline) geometry.Point {
	return r2.Scale(0.5, r2.Add(o.Points[0], o.Points[2]))
}

// texts returns the lines of a label at a place.
func (w wording) texts(s spot) []drawing.Text {
	all := make([]drawing.Text, len(w.lines))
	for i, line := range w.lines {
		up := float64(len(w.lines)-1-i) * page.Leading * w.size * lettering.MillimetresPerPoint
		at := r2.Add(s.at, r2.Rotate(geometry.Point{Y: up}, s.turn, geometry.Point{}))
		all[i] = drawing.Text{At: at, Words: line, Size: w.size, Bold: w.bold, Align: s.align, Turn: s.turn}
	}
	return all
}

// outline returns the paper a label takes up, with a little air.
func (l *labels) outline(w wording, s spot) geometry.Outline {
	texts := w.texts(s)
	longest := slices.MaxFunc(texts, func(a, b drawing.Text) int {
		return int(math.Copysign(1, l.letters.Width(a.Words, a.Size, a.Bold)-l.letters.Width(b.Words, b.Size, b.Bold)))
	})
	longest.At = s.at // on the last line
	up := float64(len(w.lines)-1) * page.Leading * w.size * lettering.MillimetresPerPoint
	return l.ground(longest, up)
}

// set writes a label at a place.
func (l *labels) set(w wording, s spot, onLines bool) {
	if onLines {
		l.d.Add(drawing.Notes, drawing.Fill{Points: l.outline(w, s).Points, Ink: drawing.White})
	}
	for _, text := range w.texts(s) {
		l.d.Add(drawing.Notes, text)
		l.text(text)
	}
}

// The steps in which places are tried, in millimetres, and the distance from words to
// a line below or above them.
const (
	tryAlong, tryUp = 4.0, 2.4
	indent          = 2.0
	aboveLine       = 1.1
	belowLine       = 2.7 // for words no larger than 6 points
)

// row returns the places along a strip at a height, from its left.
func (l *labels) row(on *pane, z float64) iter.Seq[spot] {
	return func(yield func(spot) bool) {
		r := on.on.RadiusAt(z)
		for along := indent; along < (on.to-on.from)*r-1; along += tryAlong {
			theta := on.from + along/r
			if !yield(spot{at: on.at(theta, z), turn: on.tilt(theta, z), on: on}) {
				return
			}
		}
	}
}

// anywhere returns places all over a piece, from its top down: first for level
// words, then for words that run upwards.
func (l *labels) anywhere() iter.Seq[spot] {
	return func(yield func(spot) bool) {
		for _, up := range []bool{false, true} {
			for z := l.piece.high - 2.8; z > l.piece.low; z -= tryUp {
				for i := range l.panes {
					for s := range l.row(&l.panes[i], z) {
						if up {
							s.turn += math.Pi / 2
						}
						if !yield(s) {
							return
						}
					}
				}
			}
		}
	}
}
