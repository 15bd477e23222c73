package wrap_test

import (
	"bytes"
	"context"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/wrap"
)

// Six upright bars on a straight glass, 100 mm high and 80 mm across.
const bars = `title = "Bars"
length = "mm"
blank.station = [ {height = 0, across = 80, wall = 5}, {height = 100, across = 80, wall = 5} ]
wheel = [ {name = "mitre", edge = "mitre", across = 100, thick = 12, angle = 90} ]
layout = {repeats = 6, band = [20, 80]}

[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.5
height = 0.5
rays = 1
hub = 0
`

// A plan's paper is drawn for a printer, with every groove at its true size, and
// written as a PDF in pages or an SVG in one piece. By hand: paper 0.1 mm thick
// round the outside lies on a radius of 40.05 mm, which is 251.6 mm round; with a
// tab of 8 mm that goes on a landscape page of A4, 297 mm across.
func Example() {
	j, err := job.Read("bars.toml", []byte(bars))
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := pattern.New(context.Background(), j, j.Blanks[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	o := wrap.DefaultOptions(j.Length)
	o.Thickness = 0.1
	paper, err := wrap.New(context.Background(), plan, o)
	if err != nil {
		fmt.Println(err)
		return
	}
	var b bytes.Buffer
	if err := paper.PDF(&b); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(paper.Title)
	for _, p := range paper.Pages {
		fmt.Printf("a page of %.0f by %.0f mm\n", p.Width, p.Height)
	}
	// Output:
	// Bars, wrap for blank
	// a page of 297 by 210 mm
}
