package job

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// weightUnits are the units a scale shows, with the grams in each. The
// avoirdupois ones are exact (NIST Handbook 44, appendix C).
var weightUnits = []scale{{"kg", 1000}, {"g", 1}, {"oz", 28.349523125}, {"lb", 453.59237}}

// The lightest and the heaviest that is read, in grams.
const (
	minWeight = 1
	maxWeight = 50_000
)

// scale is a unit in which a weight was read.
type scale struct {
	unit  string
	grams float64
}

// weight reads what a scale says, in grams, and its unit: a number as lengths
// are written, and the unit.
func (f field) weight() (float64, scale, bool) {
	const accepted = `a weight with its unit in quotes, from 1 g to 50 kg, such as "412 g" or "14 1/2 oz"`
	if f.absent(accepted) {
		return 0, scale{}, false
	}
	if f.value.kind != unstable.String || len(f.value.text) > 60 {
		hint := ""
		if f.value.isNumber() {
			hint = "say the unit too: g, kg, oz or lb"
		}
		f.refuse(accepted, hint)
		return 0, scale{}, false
	}
	text := strings.TrimSpace(f.value.text)
	for _, u := range weightUnits {
		number, found := strings.CutSuffix(text, u.unit)
		if !found {
			continue
		}
		// The rest is read like a length in millimetres, so it must have no unit of
		// its own.
		x, err := geometry.Millimetre.Parse(number)
		var wrong *geometry.LengthError
		switch grams := x * u.grams; {
		case errors.As(err, &wrong):
			f.refuse(accepted, oneLine(wrong.Reason, 120))
			return 0, scale{}, false
		case strings.ContainsAny(number, "mciMCI\"″”'") || !(grams >= minWeight && grams <= maxWeight):
			f.refuse(accepted, "")
			return 0, scale{}, false
		default:
			return grams, u, true
		}
	}
	f.refuse(accepted, "say the unit too: g, kg, oz or lb")
	return 0, scale{}, false
}

// weighed corrects a blank's walls by what it weighs, where that is given.
func (s section) weighed(b *glass.Blank) *glass.Blank {
	field := s.optional("weighs")
	grams, read, ok := field.weight()
	if !ok || !b.FloorKnown() {
		return b
	}
	weighed, err := b.CalibrateWalls(grams)
	var wrong *glass.FactorError
	switch {
	case errors.As(err, &wrong):
		field.refuse(oneLine(wrong.In(read.unit, read.grams), 200), "measure the walls and the floor again, or say what glass it is")
	case err != nil:
		field.refuse("the weight of this glass", oneLine(err.Error(), 120))
	default:
		return weighed
	}
	return b
}

func materialNames() []string {
	var names []string
	for _, m := range glass.Materials() {
		names = append(names, m.Name)
	}
	return names
}

// material reads what glass a blank is of: by its name, by its density, or by both.
func (s section) material(b *glass.Blank) {
	given, ok := s.optional("glass").word(materialNames())
	if ok {
		b.Material = glass.Materials()[given]
	}
	if density, dense := s.optional("density").within(span{2, 8, 2.52}); dense {
		if !ok {
			b.Material.Name = "glass"
		}
		b.Material.Density = density
	}
}

// fill reads the height of a blank's fill line, which must lie above its floor.
func (s section) fill(b *glass.Blank) {
	field := s.optional("fill")
	height, ok := field.length(span{0.1, maxAcross, 75})
	if !ok || !b.FloorKnown() {
		return
	}
	if height <= b.Floor || height > b.Height()+1e-9 {
		field.refuse(fmt.Sprintf("a height above the table, over the floor of %s and up to the rim at %s",
			s.unit.FormatUp(b.Floor), s.unit.FormatDown(b.Height())), "")
		return
	}
	b.Fill = height
}
