package geometry

import "math"

// Division is a circle that dividers step into equal parts.
type Division struct {
	Radius float64
	Parts  int
}

// Round is what stepping once round a circle came to: what the dividers were
// set to, and the gap that the last step left. The gap is measured along the
// arc. It is positive when the steps stop short of the start and negative when
// they pass it.
type Round struct{ Setting, Gap float64 }

// Chord returns the straight distance between neighbouring marks:
// c = 2 r sin(π/N).
func (d Division) Chord() float64 {
	return 2 * d.Radius * math.Sin(math.Pi/float64(d.Parts))
}

// ClosingGap returns the gap that a setting leaves when it is stepped once
// round. It is NaN when the setting is longer than the circle is across.
func (d Division) ClosingGap(setting float64) float64 {
	return 2 * d.Radius * (math.Pi - float64(d.Parts)*math.Asin(setting/(2*d.Radius)))
}

// SettingFor returns the setting that leaves a gap. It is NaN where none does:
// no step is longer than half way round.
func (d Division) SettingFor(gap float64) float64 {
	half := (math.Pi - gap/(2*d.Radius)) / float64(d.Parts)
	if half < 0 || half > math.Pi/2 {
		return math.NaN()
	}
	return 2 * d.Radius * math.Sin(half)
}

// Mend returns the setting that closes the circle after a round that left a
// gap: c” = 2 r sin(asin(c'/2r) + g/(2 r N)).
func (d Division) Mend(r Round) float64 {
	return 2 * d.Radius * math.Sin(math.Asin(r.Setting/(2*d.Radius))+r.Gap/(2*d.Radius*float64(d.Parts)))
}

// Radius returns the radius of the circle on which a round leaves its gap when
// it is stepped in a number of parts: what the gap says about a circle whose
// setting is known. It is NaN where no circle leaves it.
func (r Round) Radius(parts int) float64 {
	gapOn := func(radius float64) float64 { return Division{radius, parts}.ClosingGap(r.Setting) }
	// The gap grows with the circle, from the smallest the setting fits in.
	lo, hi := r.Setting/2, r.Setting
	if r.Gap < gapOn(lo) {
		return math.NaN()
	}
	for gapOn(hi) < r.Gap {
		hi *= 2
	}
	const halvings = 100 // past the last digit
	for range halvings {
		if mid := (lo + hi) / 2; gapOn(mid) < r.Gap {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
