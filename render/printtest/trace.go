package printtest

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
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
	out, _ := Run(t, Program(t, "mutool"), "draw", "-F", "trace", File(t, "traced.pdf", pdf))
	pages, err := readTrace(out)
	if err != nil {
		t.Fatal("mutool's trace: ", err)
	}
	return pages
}

func readTrace(trace []byte) ([]TracedPage, error) {
	var pages []TracedPage
	var path TracedPath
	var matrix [6]float64
	decoder := xml.NewDecoder(bytes.NewReader(trace))
	decoder.Strict = false
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return pages, nil
		}
		if err != nil {
			return nil, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			switch token.Name.Local {
			case "page":
				var box [4]float64
				if err := numbers(token, "mediabox", box[:]); err != nil {
					return nil, err
				}
				pages = append(pages, TracedPage{Width: (box[2] - box[0]) * millimetresPerPoint, Height: (box[3] - box[1]) * millimetresPerPoint})
			case "stroke_path", "fill_path":
				path = TracedPath{}
				if err := numbers(token, "transform", matrix[:]); err != nil {
					return nil, err
				}
				if token.Name.Local == "stroke_path" {
					var width [1]float64
					if err := numbers(token, "linewidth", width[:]); err != nil {
						return nil, err
					}
					path.Width = width[0] * math.Sqrt(math.Abs(matrix[0]*matrix[3]-matrix[1]*matrix[2])) * millimetresPerPoint
				}
			case "moveto", "lineto":
				var p [2]float64
				if err := errors.Join(numbers(token, "x", p[:1]), numbers(token, "y", p[1:])); err != nil {
					return nil, err
				}
				if token.Name.Local == "moveto" {
					path.starts = append(path.starts, len(path.Points))
				}
				path.Points = append(path.Points, pages[len(pages)-1].place(matrix, p))
			case "closepath":
				path.Closed = true
			}
		case xml.EndElement:
			page := &pages[max(len(pages)-1, 0)]
			switch token.Name.Local {
			case "stroke_path":
				page.Strokes = append(page.Strokes, path)
			case "fill_path":
				page.Fills = append(page.Fills, path)
			}
		}
	}
}

// place applies a matrix that ends in points from the upper left corner.
func (p TracedPage) place(m [6]float64, at [2]float64) geometry.Point {
	return geometry.Point{
		X: (m[0]*at[0] + m[2]*at[1] + m[4]) * millimetresPerPoint,
		Y: p.Height - (m[1]*at[0]+m[3]*at[1]+m[5])*millimetresPerPoint,
	}
}

// numbers reads an element's attribute as numbers with spaces between.
func numbers(element xml.StartElement, name string, into []float64) error {
	for _, a := range element.Attr {
		if a.Name.Local != name {
			continue
		}
		fields := strings.Fields(a.Value)
		if len(fields) != len(into) {
			return fmt.Errorf("%s=%q has %d numbers, not %d", name, a.Value, len(fields), len(into))
		}
		for i, field := range fields {
			if _, err := fmt.Sscan(field, &into[i]); err != nil {
				return fmt.Errorf("%s=%q: %w", name, a.Value, err)
			}
		}
		return nil
	}
	return fmt.Errorf("%s has no %s", element.Name.Local, name)
}
