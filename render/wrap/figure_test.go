package wrap

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// The guide's picture of the groove model: a wheel in the glass from the side,
// and the footprints of a mark pressed in and of one drawn along, both as the
// program computes them. Remade with ROUNDLAY_UPDATE=1.
func TestGrooveFigure(t *testing.T) {
	const path = "../../testdata/gallery/groove.svg"
	letters, err := lettering.Load()
	if err != nil {
		t.Fatal(err)
	}
	page := printing.Page{Width: 200, Height: 92, Drawing: grooveFigure()}
	var picture bytes.Buffer
	if err := printing.SVG(&picture, "How a wheel cuts", page, letters); err != nil {
		t.Fatal(err)
	}
	keptPicture(t, path, picture.Bytes())
}

// grooveFigure draws a mitre wheel 76 mm across, 0.8 mm deep, on a glass 80 mm
// across: from the side five times as large as it is, and its footprints four
// times.
func grooveFigure() drawing.Drawing {
	const radius, glass, depth, scale = 38.0, 40.0, 0.8, 5.0
	var d drawing.Drawing
	at := func(x, y float64) geometry.Point { return geometry.Point{X: 52 + scale*x, Y: 40 + scale*y} }
	arc := func(r, centre, from, to float64) []geometry.Point {
		var points []geometry.Point
		for _, q := range drawing.Arc(geometry.Point{Y: centre}, r, from, to) {
			points = append(points, at(q.X, q.Y))
		}
		return points
	}
	text := func(x, y float64, words string) {
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: x, Y: y}, Words: words, Size: 8})
	}
	// The glass below, the wheel above, its rim the depth under the surface; the
	// groove is what both hold.
	surface := arc(glass, -glass, math.Pi/2+0.23, math.Pi/2-0.23)
	rim := arc(radius, radius-depth, 3*math.Pi/2-0.24, 3*math.Pi/2+0.24)
	wheel := groove.Wheel{Edge: groove.Mitre, Radius: radius, Thick: 6, Angle: math.Pi / 2}
	round := groove.NewLine([]geometry.Point{{}, {X: 24}})
	outside := geometry.NewCone(0, geometry.Circle{Radius: glass}, 0).Surface()
	cut := groove.Cut(&outside, round, wheel, depth, 0)
	half := cut.LengthFor(&outside, wheel, depth) / 2
	angle := half / glass
	removed := arc(glass, -glass, math.Pi/2+angle, math.Pi/2-angle)
	turn := math.Asin(glass * math.Sin(angle) / radius)
	removed = append(removed, arc(radius, radius-depth, 3*math.Pi/2+turn, 3*math.Pi/2-turn)...)
	d.Add(drawing.Footprints, drawing.Fill{Points: removed, Ink: 190})
	d.Add(drawing.Cuts, drawing.Stroke{Points: surface, Pen: drawing.Pen{Width: 0.4}},
		drawing.Stroke{Points: rim, Pen: drawing.Pen{Width: 0.4, Dash: []float64{2, 1}}})
	text(6, 84, "From the side: the rim of the wheel (dashed) in the glass (whole line),")
	text(6, 80, fmt.Sprintf("a wheel %.0f mm across, %.1f mm deep on a glass %.0f mm across.", 2*radius, depth, 2*glass))
	text(6, 14, fmt.Sprintf("The contact is %.1f mm long: a mark shorter than that", 2*half))
	text(6, 10, "cannot reach the depth, and comes out shallower.")
	text(40, 62, "wheel")
	text(40, 22, "glass")

	// The footprints, from above.
	for i, length := range []float64{10, 21} {
		line := groove.NewLine([]geometry.Point{{}, {X: length}})
		g := groove.Cut(&outside, line, wheel, depth, 0)
		corner := geometry.Point{X: 108, Y: 58 - 26*float64(i)}
		place := func(points []geometry.Point) []geometry.Point {
			out := make([]geometry.Point, len(points))
			for k, q := range points {
				out[k] = r2.Add(corner, r2.Scale(4, q))
			}
			return out
		}
		d.Add(drawing.Footprints, drawing.Fill{Points: place(g.Outlines[0].Points), Ink: footprintInk})
		d.Add(drawing.Cuts, drawing.Stroke{Points: place([]geometry.Point{g.Samples[0].At, g.Samples[len(g.Samples)-1].At}), Pen: cutPen()})
		how := "drawn along"
		if g.Touch {
			how = "pressed in once"
		}
		text(108, corner.Y+6, fmt.Sprintf("A mark %.0f mm long, %s: %.2f mm deep, %.2f mm wide.", length, how, g.Depth, g.Width))
	}
	text(108, 84, "From above: line traced, and footprint at its true shape.")
	return d
}
