package desk

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
	"roundlay/pattern/job"
)

// shortest is how many times its tremor a stroke is at least.
const shortest = 8

// finished makes the stroke fit to cut, and returns it as path data. points are in the
// drawing's units, y up, of which a millimetre has so many.
func (s sketch) finished(points []geometry.Point, perMillimetre float64) (string, error) {
	box := geometry.BoxOf(points...)
	width, height := box.Size()
	size := math.Max(width, height)
	step := math.Max(s.Step*perMillimetre, strokes.DefaultStep*size)
	tremor := math.Max(0.6*step, strokes.DefaultTremor*size)
	if !(size > shortest*tremor) {
		return "", &job.RevisionError{Path: "motif", Words: "that stroke is too short to cut"}
	}
	points = evenly(points, 0.9*step) // what is shorter than a step is smoothed
	var text strings.Builder
	for i, at := range points {
		fmt.Fprintf(&text, "%c%s %s", " ML"[min(i+1, 2)], decimal(at.X, 4), decimal(-at.Y, 4))
	}
	if ends := r2.Norm(r2.Sub(points[0], points[len(points)-1])); ends <= 4*step && size > 20*step {
		text.WriteByte('Z')
	}
	d, err := strokes.ReadPaths([]string{text.String()}, strokes.Options{
		Tremor: tremor / size, Step: step / size, Corner: meant(),
	})
	if err != nil {
		return "", &job.RevisionError{Path: "motif", Words: err.Error()}
	}
	return pathOf(d), nil
}

// evenly returns a line of points with more or fewer on it, so far apart along it.
func evenly(points []geometry.Point, apart float64) []geometry.Point {
	all := points[:1:1]
	left := apart // to the next
	for i := 1; i < len(points); i++ {
		way := r2.Sub(points[i], points[i-1])
		length, at := r2.Norm(way), 0.0
		for ; length-at >= left; left = apart {
			at += left
			all = append(all, r2.Add(points[i-1], r2.Scale(at/length, way)))
		}
		left -= length - at
	}
	return append(all, points[len(points)-1])
}

// meant is the sharpest turn of a hand that is a bend. Over the few pixels in which it is
// looked for a small ring turns by more than the sharpest that a wheel is carried through.
func meant() geometry.Angle { return geometry.Degrees(40) }

// pathOf writes a drawing's strokes as path data, y down, so finely that no rounding turns a
// curve against the next.
func pathOf(d *strokes.Drawing) string {
	width, height := d.Box.Size()
	digits := 2
	for digits < 6 && math.Pow10(-digits) > math.Max(width, height)/20000 {
		digits++
	}
	var b strings.Builder
	point := func(lead string, at geometry.Point) {
		b.WriteString(lead + decimal(at.X, digits) + " " + decimal(-at.Y, digits))
	}
	for i, s := range d.Strokes {
		if i == 0 || s.Curves[0][0] != d.Strokes[i-1].Curves[len(d.Strokes[i-1].Curves)-1][3] {
			if i > 0 {
				b.WriteByte(' ')
			}
			point("M ", s.Curves[0][0])
		}
		for _, c := range s.Curves {
			point(" C ", c[1])
			point(" ", c[2])
			point(" ", c[3])
		}
		if s.Closed {
			b.WriteString(" Z")
		}
	}
	return b.String()
}
