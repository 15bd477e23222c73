package job

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// blanks reads [blank], or every [[blank]].
func (s section) blanks() []*glass.Blank {
	tables := s.required("blank").tables("one table [blank], or several [[blank]]", maxBlanks)
	var blanks []*glass.Blank
	names := make(map[string]bool)
	for _, table := range tables {
		b := table.blank(len(tables) > 1, names)
		if b != nil {
			blanks = append(blanks, b)
		}
	}
	if len(blanks) < len(tables) {
		return nil // later checks need all of them
	}
	return blanks
}

// unnamedBlank is the name of a job's only blank where it has none.
const unnamedBlank = "blank"

// blank reads one blank. Of several, each needs a name of its own.
func (s section) blank(several bool, names map[string]bool) *glass.Blank {
	s.only(keysOf("blank"))
	name, field := unnamedBlank, s.optional("name")
	if several {
		field = s.required("name")
	}
	if given, ok := field.text(maxName); ok {
		name = given
		if names[name] {
			field.refuse("a name no other blank has", "")
		}
		names[name] = true
	}
	stations := s.stations()
	floor := s.floor(stations)
	if stations == nil {
		return nil
	}
	b, err := glass.NewBlank(name, floor, stations)
	if err != nil {
		s.required("station").refuse("stations of a glass", oneLine(err.Error(), 120))
		return nil
	}
	b = s.straightened(b)
	s.material(b)
	s.fill(b)
	s.foot(b)
	b = s.weighed(b)
	s.paper(b)
	return b
}

// straightened takes a blank as straight, where the job asks for that.
func (s section) straightened(b *glass.Blank) *glass.Blank {
	field := s.optional("straight")
	if asked, ok := field.truth(); !ok || !asked {
		return b
	}
	straight, err := b.Straightened()
	var wrong *glass.OffError
	switch {
	case errors.As(err, &wrong):
		field.refuse(fmt.Sprintf("true, for a glass whose stations all lie within %s across of one straight line", s.unit.FormatDown(2*glass.MaxOff)),
			fmt.Sprintf("at %s above the table it was read %s across, where %s would be straight: measure there again, or leave straight out",
				s.unit.FormatChosen(wrong.Station.Height), s.unit.FormatChosen(2*wrong.Station.Radius), s.unit.FormatDecimal(2*wrong.Line)))
	case err != nil:
		field.refuse("true, for a glass that is straight", oneLine(err.Error(), 120))
	default:
		return straight
	}
	return b
}

// floor reads the thickness of the glass under the inside, 0 if it isn't given.
// What a glass holds and weighs depends on it.
func (s section) floor(stations []glass.Station) float64 {
	field := s.optional("floor")
	field.needed = s.has("fill") || s.has("weighs") || s.has("hollow") || s.cutBelow
	thick := span{0.1, maxAcross, 12}
	if field.value == nil && s.cutBelow {
		s.missing("floor", thick.lengths(field.unit())+"; it is the wall under the cuts of the base")
		return 0
	}
	floor, ok := field.length(thick)
	if !ok || stations == nil {
		return floor
	}
	if top := stations[len(stations)-1].Height; floor >= top {
		field.refuse(fmt.Sprintf("a thickness below the height of the glass, %s", s.unit.FormatDown(top)),
			field.otherUnit(func(mm float64) bool { return mm < top }))
	}
	return floor
}

// stations reads the measured heights of a blank; nil if one of them is wrong.
func (s section) stations() []glass.Station {
	const accepted = "a list of stations, such as [ {height=0, across=…, wall=…}, {height=…, across=…, wall=…} ]"
	field := s.required("station")
	tables := field.list(accepted, maxStations)
	if len(tables) == 1 {
		field.refuse("two stations or more, the first at the foot and the last at the rim", "")
		return nil
	}
	var stations []glass.Station
	for _, table := range tables {
		if station, ok := table.station(stations); ok {
			stations = append(stations, station)
		}
	}
	if len(stations) < len(tables) {
		return nil
	}
	for i := range stations {
		if tables[i].leaps(stations, i) {
			return nil
		}
	}
	return stations
}

// A diameter is a slip if it is both more than maxWider times the widest of the
// others and reached by a profile steeper than maxSteep. A foot's disc and a flared
// rim are as steep but not as wide; the bowl of a goblet is as wide but not as
// steep.
const (
	maxWider = 3.0
	maxSteep = 65.0 // degrees from upright
)

// leaps refuses the diameter of a station that can't belong to the others, and
// reports whether it did.
func (s section) leaps(all []glass.Station, i int) bool {
	widest, beside := 0.0, 0.0
	for k, other := range all {
		if k == i {
			continue
		}
		widest = max(widest, other.Radius)
		if k == i-1 || k == i+1 {
			beside = max(beside, math.Abs(all[i].Radius-other.Radius)/math.Abs(all[i].Height-other.Height))
		}
	}
	if all[i].Radius <= maxWider*widest || beside <= math.Tan(geometry.Degrees(maxSteep).Radians()) {
		return false
	}
	field, accepted, perAcross := s.optional("across"), "a diameter ", 1.0
	if field.value == nil {
		field, accepted, perAcross = s.optional("around"), "the girth of a diameter ", math.Pi
	}
	alike := func(mm float64) bool { return mm/perAcross >= widest && mm/perAcross <= 2*maxWider*widest }
	hint := field.otherUnit(alike)
	if hint == "" {
		hint = "one of the two was misread"
	}
	field.refuse(accepted+fmt.Sprintf("up to %g times what the glass is across elsewhere, %s", maxWider, s.unit.FormatDown(2*widest)), hint)
	return true
}

// station reads one station, given those below it.
func (s section) station(below []glass.Station) (glass.Station, bool) {
	s.only(keysOf("station"))
	height, rises := s.height(below)
	station, round := s.round()
	field := s.required("wall")
	wall, walled := field.length(span{minWall, maxAcross / 2, 3})
	if round && walled && wall >= station.Radius {
		hint := s.fractionOfMillimetres()
		if hint == "" {
			hint = field.otherUnit(func(mm float64) bool { return mm < station.Radius })
		}
		if hint == "" {
			hint = s.solid(station.Radius)
		}
		field.refuse(fmt.Sprintf("a wall thinner than half of the glass, %s", s.unit.FormatDown(station.Radius)), hint)
		walled = false
	}
	station.Height, station.Wall = height, wall
	return station, rises && round && walled
}

// fractionOfMillimetres is the hint for a glass narrower than its wall whose size is a
// fraction written with mm: rules in millimetres have no eighths.
func (s section) fractionOfMillimetres() string {
	for _, key := range []string{"across", "around"} {
		text := strings.TrimSpace(s.table.says(key))
		number, metric := strings.CutSuffix(text, geometry.Millimetre.String())
		if metric && geometry.IsInchFraction(number) {
			return fmt.Sprintf("%s is %s there: is it inches? write %s", key, quoted(text), quoted(strings.TrimSpace(number)+" in"))
		}
	}
	return ""
}

// solid is the hint for a wall that is too thick. It says what the glass is across
// there, for that may have been misread, and how to write a solid stem.
func (s section) solid(radius float64) string {
	across := "it is " + s.unit.Format(2*radius) + " across there"
	step := s.unit.Step()
	wall := (math.Ceil(radius/step-1e-9) - 1) * step
	if wall < minWall {
		return across
	}
	return fmt.Sprintf("%s; for a solid stem, write a little less than half of it, such as %q", across, s.unit.Format(wall))
}

// height reads the height of a station above those below it.
func (s section) height(below []glass.Station) (float64, bool) {
	field := s.required("height")
	height, ok := field.length(span{0, maxAcross, 90})
	if !ok {
		return 0, false
	}
	if len(below) == 0 {
		// The foot is what every other height is measured from. When it was
		// refused already, this refusal comes later in the file.
		if height != 0 {
			field.refuse("0", "the first station is the foot: height = 0")
		}
		return height, height == 0
	}
	if last := below[len(below)-1].Height; height < last+minRise {
		field.refuse("a height above the station before it, "+s.unit.FormatUp(last), "stations run from the foot up")
		return 0, false
	}
	return height, true
}
