package screen

import (
	"cmp"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// fine is how far a line may be from the true one, in millimetres: no screen shows less.
const fine = 0.02

// A plan with many cuts is drawn less finely, so that a page can still turn it under a
// finger: so many cuts leave no room to see more.
const (
	many            = 2000 // cuts in a period
	fineOfManyFlat  = 0.1
	fineOfManyRound = 0.3
)

// path is a shape in the words of SVG, in hundredths of a millimetre.
type path []byte

// line adds a polyline, closed if asked.
func (p path) line(points []geometry.Point, closed bool) path {
	for i, q := range points {
		if i == 0 {
			p = append(p, 'M')
		} else {
			p = append(p, ' ')
		}
		p = appendNumber(append(appendNumber(p, q.X), ' '), q.Y)
	}
	if closed && len(points) > 0 {
		p = append(p, 'z')
	}
	return p
}

// appendNumber writes a length or an angle to the hundredth, and as little of it as says so.
func appendNumber(b []byte, x float64) []byte {
	n := int64(math.Round(x * 100))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	switch rest := n % 100; {
	case rest == 0:
	case rest%10 == 0:
		b = append(b, '.', byte('0'+rest/10))
	default:
		b = append(b, '.', byte('0'+rest/10), byte('0'+rest%10))
	}
	return b
}

// thinner leaves out the points of polylines that lie within a distance of what remains
// (Ramer, Douglas and Peucker): fine, unless told otherwise. It keeps its memory from line to
// line.
type thinner struct {
	within float64
	keep   []bool
	open   [][2]int
	out    []geometry.Point
}

// thin returns a polyline with the points it needs. They are valid until the next call.
func (t *thinner) thin(points []geometry.Point) []geometry.Point {
	t.out = t.out[:0]
	for _, i := range t.which(points) {
		t.out = append(t.out, points[i])
	}
	return t.out
}

// which returns the numbers of the points that a polyline needs.
func (t *thinner) which(points []geometry.Point) []int {
	n := len(points)
	if n == 0 {
		return nil
	}
	if cap(t.keep) < n {
		t.keep = make([]bool, n)
	}
	keep := t.keep[:n]
	clear(keep)
	keep[0], keep[n-1] = true, true
	t.open = append(t.open[:0], [2]int{0, n - 1})
	for len(t.open) > 0 {
		from, to := t.open[len(t.open)-1][0], t.open[len(t.open)-1][1]
		t.open = t.open[:len(t.open)-1]
		if at := farthest(points, from, to, cmp.Or(t.within, fine)); at > 0 {
			keep[at] = true
			t.open = append(t.open, [2]int{from, at}, [2]int{at, to})
		}
	}
	var kept []int
	for i, k := range keep {
		if k {
			kept = append(kept, i)
		}
	}
	return kept
}

// farthest returns the point between two that is farthest from the straight line joining
// them, 0 if none is farther than a distance.
func farthest(points []geometry.Point, from, to int, within float64) int {
	a := points[from]
	u := r2.Sub(points[to], a)
	length2 := r2.Norm2(u)
	most, at := within*within, 0
	for i := from + 1; i < to; i++ {
		w := r2.Sub(points[i], a)
		if length2 > 0 {
			w = r2.Sub(w, r2.Scale(min(max(r2.Dot(w, u)/length2, 0), 1), u))
		}
		if d := r2.Norm2(w); d > most {
			most, at = d, i
		}
	}
	return at
}
