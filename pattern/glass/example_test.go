package glass_test

import (
	"fmt"

	"roundlay/pattern/glass"
)

// A blank is made of what was measured: here a straight glass 80 mm across and
// 100 mm high, with 4 mm of wall and 10 mm of glass under the inside. By hand: the
// room inside is π · 36² · 90 mm³, or 366 ml, and the glass π · 40² · 100 mm³
// less that, 136 ml of 2.5 g each; a cut of 1.5 mm leaves 2.5.
func Example() {
	blank, err := glass.NewBlank("tumbler", 10, []glass.Station{
		{Height: 0, Radius: 40, Wall: 4},
		{Height: 100, Radius: 40, Wall: 4},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("holds %.0f ml, weighs %.0f g\n", blank.Capacity(blank.Height())/1000, blank.Weight())
	fmt.Printf("a cut of 1.5 mm at a height of 50 leaves %.1f mm\n", blank.CutTo(1.5).Left(50))
	// Output:
	// holds 366 ml, weighs 341 g
	// a cut of 1.5 mm at a height of 50 leaves 2.5 mm
}
