package motifs_test

import (
	"fmt"

	"roundlay/motifs"
)

// A kind is found by its name, given values, and drawn in the unit repeat. By
// hand: in a square box three rays from the middle of the foot, 30° to either side
// of upright and one unit long, end at sin 30° = 0.5 and cos 30° = 0.87.
func Example() {
	fan, ok := motifs.Find("fan")
	if !ok {
		fmt.Println("no fan")
		return
	}
	values := fan.Defaults()
	values["rays"], values["spread"], values["hub"] = 3, 60, 0
	for _, cut := range fan.Draw(values, 1) {
		end := cut.Path[3]
		fmt.Printf("%s to %.2f, %.2f\n", cut.Part, end.X, end.Y)
	}
	// Output:
	// ray to -0.50, 0.87
	// ray to 0.00, 1.00
	// ray to 0.50, 0.87
}
