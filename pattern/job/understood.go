package job

import (
	"math"
	"strings"

	"roundlay/geometry"
)

// understood says what the lengths of a field come to: an inch in millimetres, and a
// length that has a unit of its own in the job's. It is "" where that adds nothing.
func (k *Key) understood(u geometry.Unit, f FormField) string {
	switch k.Sort {
	default:
		return ""
	case OfLength, OfLengths, OfHeights, OfMeasure, OfPlace:
	}
	typed := f.List
	if typed == nil {
		typed = []string{f.Text}
	}
	var all []string
	for _, text := range typed {
		share := (k.Sort == OfMeasure || k.Sort == OfPlace) && plainNumber().MatchString(text)
		if words := comesTo(u, text); words != "" && !share {
			all = append(all, words)
		}
	}
	return strings.Join(all, "; ")
}

// comesTo says what one length comes to in the other unit, rounded to what calipers
// show or, where that isn't near enough, as a decimal.
func comesTo(job geometry.Unit, text string) string {
	mm, err := job.Parse(text)
	if err != nil || mm == 0 {
		return ""
	}
	switch {
	case unitOf(job, text) == geometry.Inch:
		return geometry.Inch.FormatChosen(mm) + " = " + inMillimetres(mm)
	case job == geometry.Inch:
		return geometry.Millimetre.FormatChosen(mm) + " = " + inInches(mm)
	}
	return ""
}

// unitOf returns the unit in which a length was typed: its own or else the job's.
func unitOf(job geometry.Unit, text string) geometry.Unit {
	other := geometry.Inch
	if job == geometry.Inch {
		other = geometry.Millimetre
	}
	mm, _ := job.Parse(text)
	if same, _ := other.Parse(text); same != mm {
		return job
	}
	if text = strings.ToLower(text); strings.Contains(text, "m") {
		return geometry.Millimetre
	}
	return geometry.Inch
}

// inMillimetres has a tenth where calipers are used, and a hundredth for what is as small
// as a depth.
func inMillimetres(mm float64) string {
	const small = 10
	if math.Abs(mm) < small {
		return geometry.Millimetre.FormatDecimal(mm)
	}
	return geometry.Millimetre.Format(mm)
}

func inInches(mm float64) string {
	const near = 0.05 // mm: half of what calipers show
	if set := geometry.Inch.Setting(mm); math.Abs(set.Length-mm) <= near {
		return set.Text
	}
	return geometry.Inch.FormatDecimal(mm)
}
