package strokes

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"roundlay/geometry"
)

// finisher turns marks into strokes that can be cut.
type finisher struct {
	smoother
	angle    float64
	size     float64 // the longer side of the box
	cut      []Stroke
	notes    []Note
	out      tally
	outlines int
	middles  int     // slivers taken as their middle lines
	broad    float64 // the broadest of them
	split    int     // strokes that were divided at corners
	pieces   int     // into how many
	slight   bool    // at a corner below Corner, between straight lines
}

// finish makes a drawing of its marks.
func finish(marks []mark, p page, notes []Note, options Options) (*Drawing, *Error) {
	box := p.box
	if !p.given {
		box = geometry.EmptyBox()
	}
	for _, m := range marks {
		if m.stroke || options.Centre {
			box = box.Union(m.trail.box())
		}
	}
	size := largest(box)
	if !(size > 0) || math.IsInf(size, 0) { // nothing has a length
		size = 1
	}
	f := finisher{smoother: smoother{Options: options.settled(size)}, notes: notes, size: size}
	f.angle = f.Corner.Radians()
	for _, m := range marks {
		if err := f.take(m); err != nil {
			return nil, err
		}
	}
	f.drop(1e-6 * f.size)
	if len(f.cut) == 0 {
		return nil, f.nothing()
	}
	d := &Drawing{Strokes: f.cut, Unit: p.unit}
	d.Box = f.box(p)
	f.tell(d.Box)
	var err *Error
	if d.Joins, err = joins(d.Strokes, f.Touch, DefaultTouch/20*f.size); err != nil {
		return nil, err
	}
	d.Notes = append(f.notes, f.out.notes()...)
	slices.SortStableFunc(d.Notes, func(a, b Note) int { return a.Line - b.Line })
	d.turnOver()
	inOrder(d.Joins)
	return d, nil
}

// box returns the box round a trail.
func (t *trail) box() geometry.Box {
	box := geometry.EmptyBox()
	for _, c := range t.curves {
		box = box.Union(bounds(c))
	}
	return box
}

// take adds the strokes of a mark. Curves of next to no length come from rounding.
func (f *finisher) take(m mark) *Error {
	t := whole(m.trail, 1e-9*f.size)
	if len(t.curves) == 0 {
		f.out.add(shortKind, m.line)
		return nil
	}
	if f.Centre && (!m.stroke || t.closed) {
		if f.outlines++; f.outlines > maxOutlines {
			return bounded(m.line, "outlines to take by the middle", maxOutlines)
		}
		if f.centre(t, m) {
			return nil
		}
	}
	if !m.stroke {
		f.out.add(fillKind, m.line)
		return nil
	}
	tidied, corners := f.tidy(t)
	if f.spent > maxPoints {
		return bounded(m.line, "points on lines that need smoothing", maxPoints)
	}
	f.bends(tidied, corners)
	pieces := split(tidied, corners, f.angle)
	if len(pieces) > 1 {
		f.split++
		f.pieces += len(pieces)
	}
	for _, piece := range pieces {
		f.cut = append(f.cut, Stroke{m.part, piece.closed, piece.curves, m.line})
	}
	return nil
}

// centre adds the middle line of a mark that is a sliver, and reports whether it is.
func (f *finisher) centre(t trail, m mark) bool {
	fine := math.Max(f.Tremor, DefaultTremor*f.size) / 8
	points, width, ok := middleLine(t, fine)
	if !ok {
		return false
	}
	if f.Tremor == 0 {
		f.Tremor = fine
		defer func() { f.Tremor = 0 }()
	}
	curves, off := f.between(points, roughRun{})
	f.middles++
	f.broad = math.Max(f.broad, width)
	f.worst = math.Max(f.worst, off)
	f.cut = append(f.cut, Stroke{m.part, false, curves, m.line})
	return true
}

// whole returns a trail without curves shorter than tiny, its neighbours drawn
// together, and closed if its ends meet.
func whole(t trail, tiny float64) trail {
	var all []geometry.Bezier
	for _, c := range t.curves {
		if extent(c) <= tiny {
			continue
		}
		if n := len(all); n > 0 {
			c[0] = all[n-1][3]
		}
		all = append(all, c)
	}
	t.curves = all
	if len(all) == 0 {
		return t
	}
	if gap := math.Hypot(t.end().X-t.start().X, t.end().Y-t.start().Y); gap <= 2*tiny && len(all) > 1 || t.closed {
		t.closed = true
		all[len(all)-1][3] = all[0][0]
	}
	return t
}

// extent returns the longer side of the box of a curve's control points.
func extent(c geometry.Bezier) float64 { return largest(geometry.BoxOf(c[:]...)) }

// drop leaves out strokes that lie exactly on others: a stroke drawn twice is cut once.
func (f *finisher) drop(grain float64) {
	seen := map[string]bool{}
	f.cut = slices.DeleteFunc(f.cut, func(s Stroke) bool {
		there, back := key(s.Curves, grain, false), key(s.Curves, grain, true)
		if seen[there] || seen[back] {
			f.out.add(twinKind, s.Line)
			return true
		}
		seen[there] = true
		return false
	})
}

// key returns a text that is the same for curves in the same places to a grain.
func key(curves []geometry.Bezier, grain float64, back bool) string {
	var b strings.Builder
	for i := range curves {
		c := curves[i]
		if back {
			c = curves[len(curves)-1-i]
			slices.Reverse(c[:])
		}
		for _, p := range c {
			for _, x := range []float64{p.X, p.Y} {
				b.WriteString(strconv.FormatFloat(math.Round(x/grain), 'f', 0, 64))
				b.WriteByte(' ')
			}
		}
	}
	return b.String()
}

// nothing says that nothing is left to cut, and what there was instead.
func (f *finisher) nothing() *Error {
	read := "a drawing without a stroke"
	var there []string
	for _, n := range append(f.notes, f.out.notes()...) {
		there = append(there, n.Text)
	}
	if len(there) > 0 {
		read += " (" + strings.Join(there[:min(4, len(there))], "; ") + ")"
	}
	return &Error{Read: read, Accepted: "one or more strokes: lines drawn with a stroke colour"}
}

// box returns the drawing's box, y down: the page's, or the one round the strokes.
func (f *finisher) box(p page) geometry.Box {
	all := geometry.EmptyBox()
	for _, s := range f.cut {
		all = all.Union((&trail{curves: s.Curves}).box())
	}
	if p.given {
		page := p.box
		all = all.Union(page)
		if near := page.Grow(1e-6 * largest(page)); !near.Contains(all.Min) || !near.Contains(all.Max) {
			f.notes = append(f.notes, Note{Text: fmt.Sprintf("strokes go beyond the viewBox: the box is made larger, from %s to %s", inWords(page), inWords(all))})
		}
	}
	width, height := all.Size()
	if thin := height / 100; width < thin {
		all.Min.X, all.Max.X = (all.Min.X+all.Max.X-thin)/2, (all.Min.X+all.Max.X+thin)/2
	}
	if thin := width / 100; height < thin {
		all.Min.Y, all.Max.Y = (all.Min.Y+all.Max.Y-thin)/2, (all.Min.Y+all.Max.Y+thin)/2
	}
	return all
}

// inWords returns a box's size as people read it.
func inWords(b geometry.Box) string {
	width, height := b.Size()
	return fmt.Sprintf("%.4g × %.4g", width, height)
}

// tell adds notes on what was changed, with lengths as shares of the longer side of a box.
func (f *finisher) tell(box geometry.Box) {
	side := largest(box)
	note := func(length float64, format string, values ...any) {
		f.notes = append(f.notes, Note{Text: fmt.Sprintf(format, values...), Share: length / side})
	}
	if f.middles > 0 {
		note(f.broad, "%s cut along the middle, the broadest %s wide", counted(f.middles, "filled outline"), share(f.broad/side))
	}
	if f.strokes > 0 {
		note(0, "%s smoothed: %d short pieces of line are now %d", counted(f.strokes, "rough stroke"), f.curves, f.left)
	}
	if f.worst > 1e-5*side {
		note(f.worst, "no line was moved by more than %s", share(f.worst/side))
	}
	if f.split > 0 {
		least := f.Corner.Degrees()
		if f.slight {
			least = slightCorner
		}
		note(0, "%s divided at corners sharper than %.3g°, into %d", counted(f.split, "stroke"), least, f.pieces)
	}
}

// share returns a share of the drawing's longer side in words, rounded up to two digits.
func share(x float64) string {
	percent := 100 * x
	step := math.Pow(10, math.Floor(math.Log10(percent))-1)
	const hair = 1e-9 // of rounding
	return fmt.Sprintf("%.2g %% of the drawing", math.Ceil(percent/step-hair)*step)
}

// turnOver turns the drawing from y down to y up.
func (d *Drawing) turnOver() {
	up := func(p geometry.Point) geometry.Point { return geometry.Point{X: p.X, Y: 0 - p.Y} }
	d.Box = geometry.BoxOf(up(d.Box.Min), up(d.Box.Max))
	for _, s := range d.Strokes {
		for i := range s.Curves {
			for j := range s.Curves[i] {
				s.Curves[i][j] = up(s.Curves[i][j])
			}
		}
	}
	for i := range d.Joins {
		d.Joins[i].At = up(d.Joins[i].At)
	}
}
