package page_test

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/page"
)

// A page is laid out as it is to come out of the printer, and corrected for one
// that is not true. By hand: one that makes 100 mm into 99 mm along the short side of its paper makes 210 mm
// into 207.9; and what is to be 99 mm long has to be 100 mm in the file.
func Example() {
	o := page.DefaultOptions(geometry.Millimetre) // A4
	across, err := page.ParsePrinted(geometry.Millimetre, "99 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	o.Printed.Short = across

	upright := o.Portrait()
	var d drawing.Drawing
	d.Add(drawing.Marks, drawing.Stroke{
		Points: []geometry.Point{{X: 20, Y: 50}, {X: 119, Y: 50}},
		Pen:    drawing.Pen{Width: 0.3},
	})
	file := upright.Correct(d, "")
	box := file.Drawing.Box()
	fmt.Printf("printed %.1f mm across, in the file %.1f\n", upright.Width, file.Width)
	fmt.Printf("the line is %.1f mm in the file\n", box.Max.X-box.Min.X)
	// Output:
	// printed 207.9 mm across, in the file 210.0
	// the line is 100.0 mm in the file
}
