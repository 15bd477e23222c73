package report_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// Six upright bars, 30 mm long, on a straight glass of 80 mm across.
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

// A plan is reported in words (Check, Plan) or to a program (CheckJSON, PlanJSON), with
// lengths in millimetres. By hand: six cuts of 30 mm are 180 mm of groove, and the
// chord of six parts is the radius.
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
	var b bytes.Buffer
	if err := report.PlanJSON(&b, plan); err != nil {
		fmt.Println(err)
		return
	}
	var told struct {
		Totals struct {
			Cuts   int
			Length float64
		}
		Chords []struct {
			Height, Chord float64
			Parts         int
		}
	}
	if err := json.Unmarshal(b.Bytes(), &told); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d cuts, %.0f mm of groove\n", told.Totals.Cuts, told.Totals.Length)
	foot := told.Chords[0]
	fmt.Printf("%d parts at a height of %g: chord %g mm\n", foot.Parts, foot.Height, foot.Chord)
	// Output:
	// 6 cuts, 180 mm of groove
	// 6 parts at a height of 0: chord 40 mm
}
