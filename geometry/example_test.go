package geometry_test

import (
	"fmt"

	"roundlay/geometry"
)

// A length is read as people write it, a circle of it is stepped with dividers,
// and a taper is laid flat. By hand: the side of a hexagon is its circle's radius,
// half of 3 1/8; a radius that grows by 1 mm every 10 is 34 mm after 40; and a
// hundredth of a radian there is an arc of 0.34 mm, which the flat map keeps.
func Example() {
	across, err := geometry.Inch.Parse("3 1/8")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("six parts:", geometry.Inch.Format(geometry.Division{Radius: across / 2, Parts: 6}.Chord()))

	taper, err := geometry.NewProfile([]geometry.Circle{{Radius: 30, Height: 0}, {Radius: 40, Height: 100}})
	if err != nil {
		fmt.Println(err)
		return
	}
	cone, worst := taper.FitCone(0, 100)
	left, right := cone.Forward(-0.005, 40), cone.Forward(0.005, 40)
	fmt.Printf("radius at 40 mm: %.1f mm, %.1f mm off its cone\n", taper.Radius(40), worst)
	fmt.Printf("a hundredth of a radian round it is %.2f mm on the flat map\n", right.X-left.X)
	// Output:
	// six parts: 1 9/16 in
	// radius at 40 mm: 34.0 mm, 0.0 mm off its cone
	// a hundredth of a radian round it is 0.34 mm on the flat map
}
