package job

import (
	"fmt"
	"math"
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// How far readings of one height can differ. If they differ more, one was misread.
const (
	maxReadings = 12
	maxApart    = 0.1  // of one reading from another
	maxAstray   = 0.05 // of a girth from the readings across
)

// round reads how wide the glass is at a station: across it, once or several times,
// or around it, or both. If there is a girth, the radius follows from it, for it
// depends on all diameters. The readings across show how far the glass is out of
// round.
func (s section) round() (glass.Station, bool) {
	if !s.has("across") && !s.has("around") {
		s.missing("across", "across, the diameter, or around, the girth")
		return glass.Station{}, false
	}
	field := s.optional("across")
	readings, read := field.lengths(span{1, maxAcross, geometry.MillimetresPerInch * 3.125}, maxReadings)
	girth, taped := s.optional("around").length(span{1, maxGirth, geometry.MillimetresPerInch * 10})
	if s.has("across") != read || s.has("around") != taped {
		return glass.Station{}, false
	}
	if !read {
		return glass.Station{Radius: girth / (2 * math.Pi)}, true
	}
	least, most, mean := slices.Min(readings), slices.Max(readings), 0.0
	for _, r := range readings {
		mean += r / float64(len(readings))
	}
	if most > least*(1+maxApart) {
		field.read = fmt.Sprintf("readings from %s to %s", s.unit.Format(least), s.unit.Format(most))
		field.refuse("readings across one height, no more than a tenth apart", "")
		return glass.Station{}, false
	}
	if !taped {
		st := glass.Station{Radius: mean / 2}
		if len(readings) > 1 {
			st.Min, st.Max = least, most
		}
		return st, true
	}
	if math.Abs(girth/math.Pi-mean) > maxAstray*mean {
		return glass.Station{}, s.astray(girth, mean)
	}
	if len(readings) == 1 {
		// The girth gives the mean diameter, to second order. So another diameter is as
		// far above the mean as this reading is below it, or the other way round.
		other := 2*girth/math.Pi - least
		least, most = min(least, other), max(least, other)
	}
	return glass.Station{Radius: girth / (2 * math.Pi), Min: least, Max: most}, true
}

// astray refuses a girth that doesn't belong to the readings across.
func (s section) astray(girth, across float64) (ok bool) {
	field := s.optional("around")
	field.read = fmt.Sprintf("a girth of %s, which is %s across", s.unit.Format(girth), s.unit.Format(girth/math.Pi))
	field.refuse(fmt.Sprintf("a girth near that of %s across, which is %s", s.unit.Format(across), s.unit.Format(across*math.Pi)), "")
	return false
}

// lengths reads a length, or a list of lengths.
func (f field) lengths(s span, most int) ([]float64, bool) {
	if f.value == nil || f.value.kind != unstable.Array {
		mm, ok := f.length(s)
		return []float64{mm}, ok
	}
	if n := len(f.value.items); n == 0 || n > most {
		f.refuse(fmt.Sprintf("%s, or a list of 1 to %d", s.lengths(f.in.unit), most), "")
		return nil, false
	}
	all := make([]float64, len(f.value.items))
	for i := range all {
		mm, ok := f.item(i).length(s)
		if !ok {
			return nil, false
		}
		all[i] = mm
	}
	return all, true
}
