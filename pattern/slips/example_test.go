package slips_test

import (
	"fmt"

	"roundlay/pattern/glass"
	"roundlay/pattern/slips"
)

// Of a set that was measured blank by blank, the readings that the others speak
// against: here a rim of 94.8 mm across, where its sisters have 84.6 to 85.1.
func Example() {
	var set []*glass.Blank
	for _, rim := range []float64{84.8, 85.1, 94.8, 84.6, 85.0} {
		blank, err := glass.NewBlank(fmt.Sprintf("no. %d", len(set)+1), 12, []glass.Station{
			{Height: 0, Radius: 35, Wall: 6},
			{Height: 60, Radius: 39, Wall: 4},
			{Height: 110, Radius: rim / 2, Wall: 2.4},
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		set = append(set, blank)
	}
	for _, d := range slips.Doubts(set) {
		fmt.Printf("%s, station %d: read %.1f mm across, its sisters from %.1f to %.1f\n",
			d.Blank.Name, d.Station+1, d.Read, d.Min, d.Max)
	}
	// Output:
	// no. 3, station 3: read 94.8 mm across, its sisters from 84.6 to 85.1
}
