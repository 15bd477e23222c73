package wrap

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// repeatNumbers writes the repeats' numbers beside the ticks at the base.
func (l *labels) repeatNumbers() {
	if !l.piece.lowest {
		return
	}
	for i := range l.panes {
		on := &l.panes[i]
		for theta := range l.steps(on.from, on.to, 0) {
			number := fmt.Sprint(modulo(int(math.Round(theta/l.plan.PitchAngle())), l.plan.Repeats) + 1)
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

// bandNear is how far from a limit of the band its words may stand, in millimetres.
const bandNear = 6.0

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
		height := l.plan.Job.Length.Format(b.height) // on the outside, as it is measured
		b.height = l.face.Height(b.height)
		if b.height < l.piece.low || b.height > l.piece.high {
			continue
		}
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
			l.put(upright, whole...) || l.put(l.near(b.height, bandNear), sizes([]float64{6, 5, 4}, b.name, height)...) ||
			l.put(level, sizes([]float64{6, 5}, b.name)...)
	}
}

// thinWords says on the hatching what it is.
func (l *labels) thinWords() {
	for _, thin := range l.facePaper.thin {
		if thin.To <= l.piece.low || thin.From >= l.piece.high {
			continue
		}
		spots := func(yield func(spot) bool) {
			for z := max(thin.From, l.piece.low) + 1.2; z < min(thin.To, l.piece.high)-1; z += tryUp {
				for i := range l.panes {
					for s := range l.row(&l.panes[i], z) {
						if !yield(s) {
							return
						}
					}
				}
			}
		}
		words := "too thin for any cut"
		if thin.Cut {
			words = "too thin for the cuts here"
		}
		for _, words := range []string{words, "too thin to cut", "too thin"} {
			if l.put(spots, sizes([]float64{6}, words)...) {
				break
			}
		}
	}
}
