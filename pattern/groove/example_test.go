package groove_test

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// A wheel is drawn along a line on the outside of a glass, or pressed in and lifted
// where the line is too short for the depth asked. By hand: up a straight glass a
// mark of 12 mm under a wheel of 75 mm in radius is 75 - √(75² - 6²) = 0.240 mm
// deep; one of 60 mm comes to the half millimetre that is asked for.
func Example() {
	profile, err := geometry.NewProfile([]geometry.Circle{{Radius: 40, Height: 0}, {Radius: 40, Height: 100}})
	if err != nil {
		fmt.Println(err)
		return
	}
	chart, _ := profile.FitCone(0, 100)
	outside := geometry.NewSurface(profile, chart)
	wheel := groove.Wheel{Name: "mitre", Edge: groove.Mitre, Radius: 75, Thick: 12, Angle: math.Pi / 2}
	for _, length := range []float64{12, 60} {
		up := groove.NewLine([]geometry.Point{outside.Forward(0, 20), outside.Forward(0, 20+length)})
		g := groove.Cut(&outside, up, wheel, 0.5, 0)
		fmt.Printf("%.0f mm long: %.3f mm deep, pressed in at one place: %v\n", g.Length, g.Depth, g.Touch)
	}
	// Output:
	// 12 mm long: 0.240 mm deep, pressed in at one place: true
	// 60 mm long: 0.500 mm deep, pressed in at one place: false
}
