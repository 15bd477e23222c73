package printing_test

import (
	"bytes"
	"fmt"
	"image/png"
	"strings"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/printing"
)

// A page is written true to size. By hand: two inches by one, 50.8 by 25.4 mm,
// are 600 by 300 dots at 300 to the inch; in the SVG a unit is a millimetre.
func Example() {
	letters, err := lettering.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	page := printing.Page{Width: 50.8, Height: 25.4}
	page.Drawing.Add(drawing.Marks, drawing.Stroke{
		Points: []geometry.Point{{X: 5, Y: 5}, {X: 45, Y: 5}},
		Pen:    drawing.Pen{Width: 0.3},
	})

	var dots, vectors bytes.Buffer
	if err := printing.PNG(&dots, page, 300, letters); err != nil {
		fmt.Println(err)
		return
	}
	picture, err := png.DecodeConfig(&dots)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(picture.Width, "by", picture.Height, "dots")

	if err := printing.SVG(&vectors, "A line", page, letters); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("in millimetres:", strings.Contains(vectors.String(), `width="50.8mm" height="25.4mm" viewBox="0 0 50.8 25.4"`))
	// Output:
	// 600 by 300 dots
	// in millimetres: true
}
