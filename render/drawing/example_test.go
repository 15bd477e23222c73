package drawing_test

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

// Marks are added to layers, and a picture is moved or cut as a whole. By hand: of
// a line from 0 to 10 mm a window that ends at 4 leaves 0 to 4, which a stretch by
// a half across makes 0 to 2.
func Example() {
	var d drawing.Drawing
	d.Add(drawing.Cuts, drawing.Stroke{
		Points: []geometry.Point{{X: 0, Y: 1}, {X: 10, Y: 1}},
		Pen:    drawing.Pen{Width: 0.3},
	})
	window := drawing.BoxWindow(geometry.BoxOf(geometry.Point{X: -1, Y: -1}, geometry.Point{X: 4, Y: 3}))
	for _, d := range []drawing.Drawing{d, d.Clipped(window), d.Clipped(window).Stretched(0.5, 1)} {
		box := d.Box()
		fmt.Printf("%d mark on %s, from %g to %g mm\n", len(d.On(drawing.Cuts)), drawing.Cuts, box.Min.X, box.Max.X)
	}
	// Output:
	// 1 mark on cuts, from 0 to 10 mm
	// 1 mark on cuts, from 0 to 4 mm
	// 1 mark on cuts, from 0 to 2 mm
}
