package picture_test

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/picture"
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

// A plan's glass is drawn as it is seen from the side, true to size, and written as
// SVG, PNG or PDF. By hand: the glass of 80 mm has 20 mm of paper at either side.
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
	view, err := picture.New(context.Background(), plan, picture.Options{Tilt: picture.DefaultTilt})
	if err != nil {
		fmt.Println(err)
		return
	}
	var b bytes.Buffer
	if err := view.SVG(&b); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(view.Title)
	fmt.Println("120 mm across:", strings.Contains(b.String(), ` width="120mm" `))
	// Output:
	// Bars, picture of blank
	// 120 mm across: true
}
