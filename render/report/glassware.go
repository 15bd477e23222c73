package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Units in which a glassblower reads what a glass holds and weighs (NIST
// Handbook 44, appendix C).
const (
	millilitresPerOunce = 29.5735      // of the US fluid ounce
	gramsPerOunce       = 28.349523125 // of the avoirdupois ounce
)

// glassJSON is what a blank holds and weighs, worked out from its outside, its walls and its floor.
type glassJSON struct {
	Material    string  `json:"material"`                          // what glass it is
	Density     number  `json:"density" unit:"g/cm³"`              // of that glass
	WallFactor  number  `json:"wall_factor" unit:"factor"`         // by which the weight on a scale corrects the walls; 1 where it wasn't weighed
	Weighs      *number `json:"weighs,omitempty" unit:"g"`         // uncut, on a scale; left out where the job doesn't say
	HoldsToRim  *number `json:"holds_to_rim,omitempty" unit:"ml"`  // filled to the rim; left out where the floor wasn't measured
	Fill        *number `json:"fill,omitempty" unit:"mm"`          // the line it is filled to, above the table; left out where the job doesn't say
	HoldsToFill *number `json:"holds_to_fill,omitempty" unit:"ml"` // filled to that line; left out where the job doesn't say
	Weight      *number `json:"weight,omitempty" unit:"g"`         // uncut, as worked out; left out where the floor wasn't measured
	GroundAway  number  `json:"ground_away" unit:"g"`              // of glass, by all cuts
	WeightAfter *number `json:"weight_after,omitempty" unit:"g"`   // once cut; left out where the floor wasn't measured
}

func glassware(p *pattern.Plan) glassJSON {
	b, away := p.Blank, p.Blank.Grams(p.GroundAway())
	return glassJSON{
		Material: b.Material.Name, Density: number(b.Material.Density),
		WallFactor: number(b.Factor), Weighs: where(b.ScaleWeight > 0, b.ScaleWeight),
		HoldsToRim: where(b.FloorKnown(), b.Capacity(b.Height())/1000),
		Fill:       where(b.Fill > 0, b.Fill), HoldsToFill: where(b.Fill > 0, b.Capacity(b.Fill)/1000),
		Weight: where(b.FloorKnown(), b.Weight()), GroundAway: number(away),
		WeightAfter: where(b.FloorKnown(), b.Weight()-away),
	}
}

// Glassware says what the blank holds, and what it weighs before and after.
func Glassware(b *strings.Builder, p *pattern.Plan) {
	u, glass := p.Job.Length, p.Blank
	away := glass.Grams(p.GroundAway())
	if !glass.FloorKnown() {
		fmt.Fprintf(b, "About %s of glass is ground away. What the blank holds and weighs is not known without its floor.\n", Weight(u, away))
		return
	}
	text := "Holds " + volume(u, glass.Capacity(glass.Height())) + " to the rim"
	if glass.Fill > 0 {
		text += fmt.Sprintf(", %s to the fill line %s above the table", volume(u, glass.Capacity(glass.Fill)), u.Format(glass.Fill))
	}
	text += fmt.Sprintf(". Weighs %s uncut, of %s at %.2f g/cm³; %s is ground away, and %s remains.",
		Weight(u, glass.Weight()), glass.Material.Name, glass.Material.Density, Weight(u, away), Weight(u, glass.Weight()-away))
	if glass.ScaleWeight > 0 {
		text += fmt.Sprintf(" To weigh what the scale says, its walls are taken %.3f times as thick as measured.", glass.Factor)
		if glass.Factor > 1 {
			text += asMeasured
		}
	}
	fmt.Fprintf(b, "%s\n", wrap(text, 100, ""))
}

// asMeasured goes with walls that a scale makes thicker.
const asMeasured = " Glass left goes by the walls as measured."

// Calibrated says how weighing a blank corrected its walls, "" for a blank that was
// not weighed.
func Calibrated(p *pattern.Plan) string {
	glass := p.Blank
	if glass.ScaleWeight == 0 {
		return ""
	}
	text := fmt.Sprintf("Its walls are taken %.3f times as thick as measured, to weigh what the scale says.", glass.Factor)
	if glass.Factor > 1 {
		text += asMeasured
	}
	return text
}

// volume writes cubic millimetres as millilitres and US fluid ounces, the one that
// goes with the user's unit first.
func volume(u geometry.Unit, mm3 float64) string {
	ml := mm3 / 1000
	metric, ounces := fmt.Sprintf("%.0f ml", ml), fmt.Sprintf("%.1f US fl oz", ml/millilitresPerOunce)
	if u == geometry.Inch {
		metric, ounces = ounces, metric
	}
	return metric + " (" + ounces + ")"
}

// Weight writes grams as a scale shows them, to those who read inches in ounces first.
func Weight(u geometry.Unit, grams float64) string {
	text := fmt.Sprintf("%.0f g", grams)
	if grams < 20 {
		text = fmt.Sprintf("%.1f g", grams)
	}
	if u == geometry.Inch {
		text = fmt.Sprintf("%.2f oz (%s)", grams/gramsPerOunce, text)
	}
	return text
}

// ground writes the volume that is ground away.
func ground(u geometry.Unit, mm3 float64) string {
	if u == geometry.Inch {
		return fmt.Sprintf("%.3f cubic in", mm3/math.Pow(geometry.MillimetresPerInch, 3))
	}
	return fmt.Sprintf("%.0f mm³", mm3)
}
