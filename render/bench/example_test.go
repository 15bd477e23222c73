package bench_test

import (
	"bytes"
	"context"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/bench"
	"roundlay/render/page"
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

// The sheet of one or more blanks is drawn for a printer and written as a PDF. By
// hand: each page is a sheet of A4, and the last holds for all blanks: one each.
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
	sheet, err := bench.New(context.Background(), []*pattern.Plan{plan}, page.DefaultOptions(j.Length), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	var b bytes.Buffer
	if err := sheet.PDF(&b); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sheet.Title)
	for _, p := range sheet.Pages {
		fmt.Printf("a page of %.0f by %.0f mm\n", p.Width, p.Height)
	}
	// Output:
	// Bars, bench sheet
	// a page of 210 by 297 mm
	// a page of 210 by 297 mm
}
