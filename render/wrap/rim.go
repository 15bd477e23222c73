package wrap

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
)

// arrow is an arrow to the rim: on which strip, how far in from its right edge,
// and how long.
type arrow struct {
	on          *pane
	inset, long float64
}

const (
	arrowWide = 1.3 // to each side
	arrowDrop = 2.0 // from the paper's upper edge to its tip
)

// at returns the place some way beside the arrow and down from its tip.
func (a arrow) at(aside, down float64) geometry.Point {
	return a.on.beside(a.on.to, a.on.high-arrowDrop-down, aside-a.inset)
}

func (a arrow) outline() geometry.Outline {
	return geometry.NewOutline([]geometry.Point{
		a.at(-arrowWide, a.long), a.at(arrowWide, a.long), a.at(arrowWide, 0), a.at(-arrowWide, 0),
	})
}

// rim draws an arrow to the rim, as near to the right edge as it finds room, if
// need be a short one; best where its word has room beside it.
func (l *labels) rim() {
	var bare *arrow
	for _, long := range []float64{6.5, 4.5} {
		for i := range l.panes {
			on := &l.panes[len(l.panes)-1-i]
			for _, inset := range insets((on.to - on.from) * on.on.RadiusAt(on.high-arrowDrop)) {
				a := arrow{on, inset, long}
				if l.rank(a.outline()) == taken {
					continue
				}
				if w, s, ok := l.beside(a, "rim"); ok {
					l.drawArrow(a)
					l.set(w, s, l.rank(l.outline(w, s)).onLines())
					return
				}
				if bare == nil {
					bare = &a
				}
			}
		}
	}
	if bare != nil {
		l.drawArrow(*bare)
	}
}

func (l *labels) drawArrow(a arrow) {
	const point = 3.0
	l.d.Add(drawing.Marks,
		drawing.Stroke{Points: []geometry.Point{a.at(0, a.long), a.at(0, point-1)}, Pen: drawing.Pen{Width: 0.6}},
		drawing.Fill{Points: []geometry.Point{a.at(-arrowWide, point), a.at(arrowWide, point), a.at(0, 0)}},
	)
	l.add(a.outline(), otherInk)
}

// beside finds room for a word beside an arrow.
func (l *labels) beside(a arrow, word string) (wording, spot, bool) {
	const aside = arrowWide + 0.6
	for _, size := range []float64{9, 7, 6} {
		w := wording{[]string{word}, size, true}
		for down := a.long - 1; down > 1; down-- {
			turn := a.on.tilt(a.on.to, a.on.high-arrowDrop-down)
			for _, s := range []spot{
				{at: a.at(-aside, down), turn: turn, align: drawing.Right}, {at: a.at(aside, down), turn: turn},
			} {
				outline := l.outline(w, s)
				if a.on.outline.Contains(middle(outline)) && l.rank(outline) < taken {
					return w, s, true
				}
			}
		}
	}
	return wording{}, spot{}, false
}

// insets returns how far in from a strip's right edge its arrow may stand.
func insets(width float64) []float64 {
	const first, least = 5.0, 2 * arrowWide
	var all []float64
	for inset := first; inset < width-least; inset += tryAlong {
		all = append(all, inset)
	}
	if width > 2*least {
		all = append(all, least)
	}
	return all
}
