package pattern_test

import (
	"context"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Six upright bars, 30 mm long and half a millimetre deep, on a straight glass of
// 80 mm across whose wall is 5 mm.
const bars = `length = "mm"
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

// A job is read, laid out on one of its blanks and checked. By hand: six cuts of
// half the band of 60 mm are 180 mm of groove; a wall of 5 mm less 0.5 leaves 4.5;
// the chord of six parts is the radius.
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
	all := plan.Totals()
	fmt.Printf("%d cuts, %.0f mm of groove\n", all.Cuts, all.Length)
	fmt.Printf("glass left: %.1f mm\n", plan.Cuts[0].Left)
	fmt.Printf("dividers at the %s: %.1f mm\n", plan.Chords[0].Name, plan.Chords[0].Chord)
	fmt.Println("findings:", len(plan.Findings))
	// Output:
	// 6 cuts, 180 mm of groove
	// glass left: 4.5 mm
	// dividers at the foot: 40.0 mm
	// findings: 0
}
