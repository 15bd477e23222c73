package geometry

import "math"

// Chord returns the straight distance between neighbouring marks when a circle
// of the given radius is stepped into equal parts: c = 2 r sin(π/N).
func Chord(radius float64, parts int) float64 {
	return 2 * radius * math.Sin(math.Pi/float64(parts))
}

// ClosingGap returns what is left, measured along the arc, when a setting is
// stepped round the circle parts times. It is positive when the steps stop
// short of the start, negative when they pass it, and NaN when the setting is
// longer than the circle is across.
func ClosingGap(radius, setting float64, parts int) float64 {
	return 2 * radius * (math.Pi - float64(parts)*math.Asin(setting/(2*radius)))
}

// Mend returns the setting that closes the circle, from one that left a gap
// when stepped parts times: c” = 2 r sin(asin(c'/2r) + g/(2 r N)).
func Mend(radius, setting float64, parts int, gap float64) float64 {
	return 2 * radius * math.Sin(math.Asin(setting/(2*radius))+gap/(2*radius*float64(parts)))
}
