package printtest

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"testing"

	"roundlay/geometry"
)

// TracedPage is a page of a PDF file as MuPDF traces it, in millimetres from its
// lower left corner, with every matrix applied.
type TracedPage struct {
	Width, Height float64
	Strokes       []TracedPath
	Fills         []TracedPath
}

// TracedPath is one path that is stroked or filled: straight pieces only.
type TracedPath struct {
	Points []geometry.Point
	Closed bool
	Width  float64 // of a stroke's line, in millimetres
	starts []int   // the points at which a part begins
}

// Parts returns the parts of a path, such as the dashes of a line.
func (p TracedPath) Parts() [][]geometry.Point {
	var all [][]geometry.Point
	for i, from := range p.starts {
		to := len(p.Points)
		if i+1 < len(p.starts) {
			to = p.starts[i+1]
		}
		all = append(all, p.Points[from:to])
	}
	return all
}

// Length returns how far apart the ends of a path are.
func (p TracedPath) Length() float64 {
	a, b := p.Points[0], p.Points[len(p.Points)-1]
	return math.Hypot(b.X-a.X, b.Y-a.Y)
}

const millimetresPerPoint = geometry.MillimetresPerInch / 72

// Trace returns the pages of a PDF file.
func Trace(t testing.TB, pdf []byte) []TracedPage {
	t.Helper()
	var pages []TracedPage
	err := through(t, func(trace io.Reader) (err error) {
		pages, err = readTrace(trace)
		return err
	}, Program(t, "mutool"), "trace", File(t, "traced.pdf", pdf))
	if err != nil {
		t.Fatal("mutool's trace: ", err)
	}
	return pages
}

// tracing is a trace that is being read: the pages so far, and the path that is open.
type tracing struct {
	pages  []TracedPage
	path   TracedPath
	matrix [6]float64
}

// readTrace reads a trace, which has a line for each tag. It is read as it comes, and not
// as XML: that would take most of the time of a test.
func readTrace(trace io.Reader) ([]TracedPage, error) {
	var all tracing
	lines := bufio.NewScanner(trace)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		line := bytes.TrimSpace(lines.Bytes())
		if inner, ok := bytes.CutPrefix(line, []byte("</")); ok {
			all.end(string(bytes.TrimSuffix(inner, []byte(">"))))
			continue
		}
		if len(line) == 0 || line[0] != '<' {
			continue
		}
		name := line[1:]
		if i := bytes.IndexAny(name, " />"); i >= 0 {
			name = name[:i]
		}
		if err := all.start(string(name), line); err != nil {
			return nil, err
		}
		if bytes.HasSuffix(line, []byte("/>")) {
			all.end(string(name))
		}
	}
	return all.pages, lines.Err()
}

// start reads a tag that begins something.
func (r *tracing) start(name string, tag []byte) error {
	switch name {
	case "page":
		var box [4]float64
		if err := numbers(tag, "mediabox", box[:]); err != nil {
			return err
		}
		r.pages = append(r.pages, TracedPage{Width: (box[2] - box[0]) * millimetresPerPoint, Height: (box[3] - box[1]) * millimetresPerPoint})
	case "stroke_path", "fill_path":
		r.path = TracedPath{}
		if err := numbers(tag, "transform", r.matrix[:]); err != nil {
			return err
		}
		if name == "stroke_path" {
			var width [1]float64
			if err := numbers(tag, "linewidth", width[:]); err != nil {
				return err
			}
			m := r.matrix
			r.path.Width = width[0] * math.Sqrt(math.Abs(m[0]*m[3]-m[1]*m[2])) * millimetresPerPoint
		}
	case "moveto", "lineto":
		var p [2]float64
		if err := errors.Join(numbers(tag, "x", p[:1]), numbers(tag, "y", p[1:])); err != nil {
			return err
		}
		if name == "moveto" {
			r.path.starts = append(r.path.starts, len(r.path.Points))
		}
		r.path.Points = append(r.path.Points, r.pages[len(r.pages)-1].place(r.matrix, p))
	case "closepath":
		r.path.Closed = true
	}
	return nil
}

// end reads the end of something.
func (r *tracing) end(name string) {
	switch name {
	case "stroke_path":
		page := &r.pages[len(r.pages)-1]
		page.Strokes = append(page.Strokes, r.path)
	case "fill_path":
		page := &r.pages[len(r.pages)-1]
		page.Fills = append(page.Fills, r.path)
	}
}

// place applies a matrix that ends in points from the upper left corner.
func (p TracedPage) place(m [6]float64, at [2]float64) geometry.Point {
	return geometry.Point{
		X: (m[0]*at[0] + m[2]*at[1] + m[4]) * millimetresPerPoint,
		Y: p.Height - (m[1]*at[0]+m[3]*at[1]+m[5])*millimetresPerPoint,
	}
}

// numbers reads a tag's attribute as numbers with spaces between.
func numbers(tag []byte, name string, into []float64) error {
	_, value, found := bytes.Cut(tag, []byte(" "+name+`="`))
	value, _, closed := bytes.Cut(value, []byte(`"`))
	if !found || !closed {
		return fmt.Errorf("%s has no %s", tag, name)
	}
	fields := bytes.Fields(value)
	if len(fields) != len(into) {
		return fmt.Errorf("%s=%q has %d numbers, not %d", name, value, len(fields), len(into))
	}
	for i, field := range fields {
		var err error
		if into[i], err = strconv.ParseFloat(string(field), 64); err != nil {
			return fmt.Errorf("%s=%q: %w", name, value, err)
		}
	}
	return nil
}
