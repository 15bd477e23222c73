package slips

import (
	"math"
	"slices"

	"roundlay/pattern/glass"
)

// reading is one reading of a blank.
type reading struct {
	of      Quantity
	station int
	at      float64 // where, as a share of the blank's height
	value   float64
}

// middleHeight returns the median of the blanks' heights.
func middleHeight(blanks []*glass.Blank) float64 {
	heights := make([]float64, len(blanks))
	for i, b := range blanks {
		heights[i] = b.Height()
	}
	return median(heights)
}

// readings returns a blank's readings, with their places as shares of the given
// height.
func readings(b *glass.Blank, of Quantity, height float64) []reading {
	last := len(b.Stations) - 1
	switch of {
	case OfHeight:
		return []reading{{of, last, 1, b.Height()}}
	case OfFloor:
		if b.Floor > 0 {
			return []reading{{of, -1, 0, b.Floor}}
		}
		return nil
	}
	all := make([]reading, 0, len(b.Stations))
	for i, s := range b.Stations {
		at := min(s.Height/height, 1)
		if i == last {
			at = 1
		}
		all = append(all, reading{of, i, at, value(b, of, i)})
	}
	return all
}

// value returns the width or the wall that was read at a station.
func value(b *glass.Blank, of Quantity, station int) float64 {
	s := b.Stations[station]
	if of == OfWidth {
		return 2 * s.Radius
	}
	return s.Wall // as measured: the scale's factor is not in it
}

// there is the value that a blank has at a share of its height: on a straight line
// between the stations below and above. Where neither of them is near, it can be
// anything from least to most. known is false where both are far.
type there struct {
	value, low, high float64
	known            bool
}

func at(b *glass.Blank, of Quantity, share float64) (there, bool) {
	switch of {
	case OfHeight:
		return there{b.Height(), b.Height(), b.Height(), true}, true
	case OfFloor:
		return there{b.Floor, b.Floor, b.Floor, true}, b.Floor > 0
	}
	const near, far = 0.04, 0.1 // of the height
	z := share * b.Height()
	i := 0
	for i+2 < len(b.Stations) && b.Stations[i+1].Height < z {
		i++
	}
	lower, upper := value(b, of, i), value(b, of, i+1)
	way := (z - b.Stations[i].Height) / (b.Stations[i+1].Height - b.Stations[i].Height)
	t := there{value: lower + way*(upper-lower)}
	one, off := lower, z-b.Stations[i].Height
	if rest := b.Stations[i+1].Height - z; rest < off {
		one, off = upper, rest
	}
	if off > near*b.Height() {
		t.low, t.high = min(lower, upper), max(lower, upper)
	} else {
		t.low, t.high = min(one, t.value), max(one, t.value)
	}
	t.known = off <= far*b.Height()
	return t, true
}

// ask returns the values that blanks have at a share of their heights. If enough of
// them were measured near it, it returns those alone, and known is true.
func ask(of Quantity, share float64, blanks []*glass.Blank) (all []there, known bool) {
	var near []there
	for _, b := range blanks {
		if t, ok := at(b, of, share); ok {
			all = append(all, t)
			if t.known {
				near = append(near, t)
			}
		}
	}
	if len(near) >= min(minSisters, len(blanks)) {
		return near, true
	}
	return all, false
}

// between returns the smallest and the greatest value that blanks have at a share of
// their heights, leaving out those far from their median.
func between(of Quantity, share float64, blanks []*glass.Blank) (least, most float64) {
	all, _ := ask(of, share, blanks)
	middle := median(valuesOf(all, func(t there) float64 { return t.value }))
	least, most = middle, middle
	for _, t := range all {
		if math.Abs(math.Log(t.value/middle)) <= 2*honest(of) {
			least, most = min(least, t.value), max(most, t.value)
		}
	}
	return least, most
}

// off returns how far a reading is from the values that blanks have there. Where
// too few were measured near it, the reading has to be very far off to count. ok is
// false where there is nothing to compare.
func off(r reading, blanks []*glass.Blank) (by float64, ok bool) {
	all, known := ask(r.of, r.at, blanks)
	if len(all) == 0 {
		return 0, false
	}
	least := math.Log(median(valuesOf(all, func(t there) float64 { return t.low })))
	most := math.Log(median(valuesOf(all, func(t there) float64 { return t.high })))
	if !known {
		const unknown = 4
		least, most = least-unknown*honest(r.of), most+unknown*honest(r.of)
	}
	switch value := math.Log(r.value); {
	case value > most:
		return value - most, true
	case value < least:
		return value - least, true
	}
	return 0, true
}

// median returns the middle one of some numbers, or the mean of the middle two.
func median(of []float64) float64 {
	sorted := slices.Sorted(slices.Values(of))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

func valuesOf(all []there, of func(there) float64) []float64 {
	out := make([]float64, len(all))
	for i, t := range all {
		out[i] = of(t)
	}
	return out
}
