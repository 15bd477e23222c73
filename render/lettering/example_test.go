package lettering_test

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// Words are measured before they are set, so that they stand where there is room.
// By hand: figures of one font are all as wide, and at twice the size twice that;
// words set about a place reach half their width to either side of it.
func Example() {
	letters, err := lettering.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	one, two := letters.Width("1", 10, false), letters.Width("12", 20, false)
	fmt.Printf("12 at 20 points is %.0f times as wide as 1 at 10\n", two/one)
	box := letters.Box(drawing.Text{At: geometry.Point{X: 50}, Words: "12", Size: 20, Align: drawing.Centre})
	fmt.Printf("set about 50 mm its middle is at %.0f mm\n", (box.Min.X+box.Max.X)/2)
	// Output:
	// 12 at 20 points is 4 times as wide as 1 at 10
	// set about 50 mm its middle is at 50 mm
}
