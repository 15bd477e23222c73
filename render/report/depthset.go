package report

import (
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// DepthToSet returns how deep the wheel is set for a cut: its depth or, where a roll takes a
// broad edge deeper at one side, less than that.
func DepthToSet(c pattern.Cut) float64 {
	if c.Hand.Rock == [2]float64{} || c.Bridges() {
		return c.Depth
	}
	return min(c.Plunge, c.Depth)
}

// Deep writes how deep some cuts come, "0.80 mm" or "0.50 to 0.80 mm", and how deep the wheel
// is set for them: "" where that is the same of each.
func Deep(unit geometry.Unit, cuts []pattern.Cut) (deep, set string) {
	deep = span(unit, cuts, func(c pattern.Cut) float64 { return c.Depth })
	if slices.ContainsFunc(cuts, func(c pattern.Cut) bool { return setsLess(unit, c) }) {
		set = span(unit, cuts, DepthToSet)
	}
	return deep, set
}

// setsLess reports whether the wheel is set to less than a cut's depth, as the unit is read.
func setsLess(unit geometry.Unit, c pattern.Cut) bool {
	return unit.FormatDecimal(DepthToSet(c)) != unit.FormatDecimal(c.Depth)
}

// span writes what some lengths lie between, or one where they read the same.
func span(unit geometry.Unit, cuts []pattern.Cut, of func(pattern.Cut) float64) string {
	least, most := math.Inf(1), 0.0
	for _, c := range cuts {
		least, most = min(least, of(c)), max(most, of(c))
	}
	from, to := unit.FormatDecimal(least), unit.FormatDecimal(most)
	if from == to {
		return to
	}
	return strings.TrimSuffix(from, " "+unit.String()) + " to " + to
}
