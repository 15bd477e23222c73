package strokes_test

import (
	"fmt"

	"roundlay/motifs/strokes"
)

// A blade with a stem and two veins. Its outline is divided at its two ends, and the
// veins meet the stem. By hand: the page is 40 by 60, and y grows upwards, so the stem
// stands from −58 to −6.
func Example() {
	const blade = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 60" width="40mm">
  <style>path { fill: none; stroke: black }</style>
  <g id="edge"><path d="M20 2C40 20 32 40 20 50C8 40 0 20 20 2z"/></g>
  <g id="stem"><path d="M20 58V6"/></g>
  <g id="vein"><path d="M20 40l6-8M20 40l-6-8"/></g>
  <text x="1" y="59">blade</text>
</svg>`
	d, err := strokes.Read([]byte(blade), strokes.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, s := range d.Strokes {
		first, last := s.Curves[0][0], s.Curves[len(s.Curves)-1][3]
		fmt.Printf("%d %s from %g, %g to %g, %g\n", i, s.Part, first.X, first.Y, last.X, last.Y)
	}
	for _, j := range d.Joins {
		fmt.Printf("%d meets %d at %.3g, %.3g\n", j.A, j.B, j.At.X, j.At.Y)
	}
	for _, n := range d.Notes {
		fmt.Println(n)
	}
	// Output:
	// 0 edge from 20, -2 to 20, -50
	// 1 edge from 20, -50 to 20, -2
	// 2 stem from 20, -58 to 20, -6
	// 3 vein from 20, -40 to 26, -32
	// 4 vein from 20, -40 to 14, -32
	// 0 meets 1 at 20, -50
	// 0 meets 1 at 20, -2
	// 0 meets 2 at 20, -50
	// 1 meets 2 at 20, -50
	// 2 meets 3 at 20, -40
	// 2 meets 4 at 20, -40
	// 3 meets 4 at 20, -40
	// 1 stroke divided at corners sharper than 20°, into 2
	// line 6: 1 text left out: only strokes are cut
}
