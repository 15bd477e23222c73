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

// RadiusFor returns the radius of the circle on which stepping a setting parts
// times leaves the given gap: what a closing gap tells of a circle whose setting
// is known. It is NaN where no circle leaves it.
func RadiusFor(setting float64, parts int, gap float64) float64 {
	// The gap grows with the circle, from the smallest the setting fits in.
	lo, hi := setting/2, setting
	if gap < ClosingGap(lo, setting, parts) {
		return math.NaN()
	}
	for ClosingGap(hi, setting, parts) < gap {
		hi *= 2
	}
	const halvings = 100 // past the last digit
	for range halvings {
		if mid := (lo + hi) / 2; ClosingGap(mid, setting, parts) < gap {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// SettingFor returns the setting that, stepped parts times, leaves the given
// gap. It is NaN where none does: no step is longer than half way round.
func SettingFor(radius float64, parts int, gap float64) float64 {
	half := (math.Pi - gap/(2*radius)) / float64(parts)
	if half < 0 || half > math.Pi/2 {
		return math.NaN()
	}
	return 2 * radius * math.Sin(half)
}

// Mend returns the setting that closes the circle, from one that left a gap
// when stepped parts times: c” = 2 r sin(asin(c'/2r) + g/(2 r N)).
func Mend(radius, setting float64, parts int, gap float64) float64 {
	return 2 * radius * math.Sin(math.Asin(setting/(2*radius))+gap/(2*radius*float64(parts)))
}
