package render

import (
	"fmt"
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// labels writes the words on a piece of paper whose lines are all drawn. Each
// has several places, and stands where it hides no cut and meets no other words;
// the most important comes first, and what finds no room is left out.
type labels struct {
	*sheet
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
func (s *sheet) write(d *drawing.Drawing, p piece, strips []strip) {
	l := labels{sheet: s, obstacles: obstacles{fonts: s.letters}, d: d, piece: p}
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
	l.numbers(d, lines)
}

// sizes returns one line of words in several sizes.
func sizes(points []float64, lines ...string) []wording {
	all := make([]wording, len(points))
	for i, size := range points {
		all[i] = wording{lines: lines, size: size}
	}
	return all
}

// rank is how well a place suits words, the best first. On the last of each pair
// they stand on faint lines or hatching, and want a white ground.
type rank int

const (
	alone rank = iota // apart from other ink, and out of the way of the cuts' numbers
	aloneOnLines
	close
	closeOnLines
	taken
)

func (r rank) onLines() bool { return r == aloneOnLines || r == closeOnLines }

// rank returns how well an outline stands among what is there.
func (l *labels) rank(outline geometry.Outline) rank {
	const far, cuts, beside, ink, faint = 3, 0.35, 1.4, 0.2, 0.05
	best, lines := alone, false
	box := outline.Box().Grow(far)
	l.taken.Search([2]float64{box.Min.X, box.Min.Y}, [2]float64{box.Max.X, box.Max.Y}, func(_, _ [2]float64, there obstacle) bool {
		switch there.owner {
		case otherInk:
			if off, _, _ := outline.Distance(there.Outline, beside); off < ink {
				best = taken
			} else if off < beside {
				best = close
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
				best = close
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
		up := float64(len(w.lines)-1-i) * leading * w.size * lettering.MillimetresPerPoint
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
	up := float64(len(w.lines)-1) * leading * w.size * lettering.MillimetresPerPoint
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

// Steps in which places are tried, in millimetres, and how far words stand off
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

// anywhere returns places all over a piece, from its top down: for words level,
// and then for words that run upwards.
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

// repeatNumbers writes the repeats' numbers beside the ticks at the base.
func (l *labels) repeatNumbers() {
	if !l.piece.lowest {
		return
	}
	for i := range l.panes {
		on := &l.panes[i]
		for theta := range l.steps(on.from, on.to, 0) {
			number := fmt.Sprint(modulo(int(math.Round(theta/l.plan.Pitch())), l.plan.Repeats) + 1)
			first := spot{at: on.beside(theta, on.low+1.2, 2), turn: on.tilt(theta, on.low)}
			spots := func(yield func(spot) bool) {
				for _, up := range []float64{1.2, 2.6, 4} {
					for _, aside := range []float64{2, -2} {
						s := first
						s.at = on.beside(theta, on.low+up, aside)
						if aside < 0 {
							s.align = drawing.Right
						}
						if !yield(s) {
							return
						}
					}
				}
			}
			if !l.put(spots, wording{[]string{number}, 9, true}, wording{[]string{number}, 7, true}) {
				l.set(wording{[]string{number}, 7, true}, first, false)
			}
		}
	}
}

// rim draws an arrow to the rim, as near to the right edge as it finds room, if
// need be a short one; best where its word has room beside it.
func (l *labels) rim() {
	const wide = 1.3
	arrow := func(on *pane, inset, long float64) geometry.Outline {
		z := on.high - 2
		corner := func(aside, down float64) geometry.Point { return on.beside(on.to, z-down, aside-inset) }
		return geometry.NewOutline([]geometry.Point{corner(-wide, long), corner(wide, long), corner(wide, 0), corner(-wide, 0)})
	}
	draw := func(on *pane, inset, long float64) {
		aside := func(mm, down float64) geometry.Point { return on.beside(on.to, on.high-2-down, mm-inset) }
		marks := []drawing.Mark{
			drawing.Stroke{Points: []geometry.Point{aside(0, long), aside(0, 2)}, Pen: drawing.Pen{Width: 0.6}},
			drawing.Fill{Points: []geometry.Point{aside(-wide, 3), aside(wide, 3), aside(0, 0)}},
		}
		l.d.Add(drawing.Marks, marks...)
		l.add(arrow(on, inset, long), otherInk)
	}
	word := func(on *pane, inset, long float64) (wording, spot, bool) {
		for _, size := range []float64{9, 7, 6} {
			w := wording{[]string{"rim"}, size, true}
			for down := long - 1; down > 1; down-- {
				for _, aside := range []float64{-1.9, 1.9} {
					s := spot{at: on.beside(on.to, on.high-2-down, aside-inset), turn: on.tilt(on.to, on.high-2-down), on: on}
					if aside < 0 {
						s.align = drawing.Right
					}
					outline := l.outline(w, s)
					if on.outline.Contains(middle(outline)) && l.rank(outline) < taken {
						return w, s, true
					}
				}
			}
		}
		return wording{}, spot{}, false
	}
	var bare func()
	for _, long := range []float64{6.5, 4.5} {
		for i := range l.panes {
			on := &l.panes[len(l.panes)-1-i]
			width := (on.to - on.from) * on.on.RadiusAt(on.high-2)
			for _, inset := range insets(width) {
				if l.rank(arrow(on, inset, long)) == taken {
					continue
				}
				if bare == nil {
					bare = func() { draw(on, inset, long) }
				}
				if w, s, ok := word(on, inset, long); ok {
					draw(on, inset, long)
					l.set(w, s, l.rank(l.outline(w, s)).onLines())
					return
				}
			}
		}
	}
	if bare != nil {
		bare()
	}
}

// insets returns how far in from a strip's right edge its arrow may stand.
func insets(width float64) []float64 {
	const first, least = 5.0, 2.6
	var all []float64
	for inset := first; inset < width-least; inset += tryAlong {
		all = append(all, inset)
	}
	if width > 2*least {
		all = append(all, least)
	}
	return all
}

// meetings writes at each match line which pieces meet there.
func (l *labels) meetings() {
	for _, m := range l.matchLines(l.piece) {
		n := len(m.points) - 1
		spots := func(yield func(spot) bool) {
			sides := []float64{aboveLine, -belowLine}
			if !m.ownLeft {
				slices.Reverse(sides)
			}
			for _, side := range sides {
				for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
					i := min(int(share*float64(n)), n-1)
					way := r2.Unit(r2.Sub(m.points[i+1], m.points[i]))
					at := r2.Add(m.points[i], r2.Scale(side, geometry.Point{X: -way.Y, Y: way.X}))
					if !yield(spot{at: at, turn: math.Atan2(way.Y, way.X), align: drawing.Centre}) {
						return
					}
				}
			}
		}
		l.put(spots, slices.Concat(sizes([]float64{6}, m.words+" here"), sizes([]float64{6, 5, 4.5}, m.words))...)
	}
}

// tabWords says what the tab is for, at a place along it where no cut of the
// other end passes.
func (l *labels) tabWords() {
	const words = "tape under the other end"
	st := l.panes[len(l.panes)-1]
	slope := tabSlope(st.strip)
	long := st.high - st.low - 2*slope
	at := func(z, aside float64) spot {
		theta := st.to + aside/st.on.RadiusAt(z)
		return spot{at: st.at(theta, z), turn: math.Pi/2 + st.tilt(theta, z), align: drawing.Centre}
	}
	centre := (st.low + st.high) / 2
	const across, outer, inner = tabWidth/2 + 0.8, tabWidth - 0.8, 2.9 // from its edge to the line words stand on
	spots := func(yield func(spot) bool) {
		for _, aside := range []float64{across, outer, inner} {
			for off := 0.0; off < long/2; off += tryUp {
				if !yield(at(centre+off, aside)) || off > 0 && !yield(at(centre-off, aside)) {
					return
				}
			}
		}
	}
	full := wording{[]string{words}, 7, false}
	if l.put(spots, append([]wording{full}, append(sizes([]float64{6}, words), sizes([]float64{7, 6, 5}, "tape under")...)...)...) {
		return
	}
	if l.letters.Width(words, full.size, false) < long {
		l.set(full, at(centre, across), true)
	}
}

// blankName writes whose paper it is, which its outline holds when it is cut
// out: the blank, and the side where it is not the outside; together if they
// find room, else each by itself.
func (l *labels) blankName() {
	name := l.plan.Blank.Name
	if l.side != Inside {
		l.put(l.anywhere(), l.folded(name)...)
		return
	}
	if !l.put(l.anywhere(), l.folded(name, "inside")...) {
		l.put(l.anywhere(), l.folded("inside")...)
		l.put(l.anywhere(), l.folded(name)...)
	}
}

// folded returns words in several sizes, each in one line and, on narrow paper,
// in several.
func (l *labels) folded(words ...string) []wording {
	const oneLine, narrow, fewLines = 60.0, 9.0, 4
	var wordings []wording
	for _, size := range []float64{6, 5, 4} {
		for _, width := range []float64{oneLine, narrow} {
			var lines []string
			for _, w := range words {
				lines = append(lines, l.letters.Lines(w, size, false, width)...)
			}
			if len(lines) <= fewLines {
				wordings = append(wordings, wording{lines: lines, size: size})
			}
		}
	}
	return wordings
}

// bandWords says at the limits of the band which they are, and how high.
func (l *labels) bandWords() {
	for _, b := range []struct {
		name   string
		height float64
		first  float64 // the side that faces away from the band
		second float64
	}{
		{"band top", l.plan.Band.Top, aboveLine, -belowLine},
		{"band foot", l.plan.Band.Foot, -belowLine, aboveLine},
	} {
		if b.height < l.piece.low || b.height > l.piece.high {
			continue
		}
		height := l.plan.Job.Length.Text(b.height)
		level := func(yield func(spot) bool) {
			for _, up := range []float64{b.first, b.second} {
				for i := range l.panes {
					for s := range l.row(&l.panes[i], b.height+up) {
						if !yield(s) {
							return
						}
					}
				}
			}
		}
		upright := func(yield func(spot) bool) {
			for i := range l.panes {
				for s := range l.row(&l.panes[i], b.height+aboveLine) {
					s.turn += math.Pi / 2
					if !yield(s) {
						return
					}
				}
			}
		}
		whole := sizes([]float64{6, 5}, b.name+" "+height)
		_ = l.put(level, append(whole, sizes([]float64{6, 5}, b.name, height)...)...) ||
			l.put(upright, whole...) || l.put(level, sizes([]float64{6, 5}, b.name)...)
	}
}

// thinWords says on the hatching what it is.
func (l *labels) thinWords() {
	thin, any := l.plan.TooThin()
	if !any || thin >= l.piece.high {
		return
	}
	spots := func(yield func(spot) bool) {
		for z := max(thin, l.piece.low) + 1.2; z < l.piece.high-1; z += tryUp {
			for i := range l.panes {
				for s := range l.row(&l.panes[i], z) {
					if !yield(s) {
						return
					}
				}
			}
		}
	}
	for _, words := range []string{"too thin for the deepest cut", "too thin to cut", "too thin"} {
		if l.put(spots, sizes([]float64{6}, words)...) {
			return
		}
	}
}
