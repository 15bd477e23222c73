package job

import (
	"fmt"
	"math"
	"strconv"

	"roundlay/geometry"
)

// span is a range of values that are accepted, ends included, with an example
// to show. Lengths are millimetres.
type span struct{ low, high, example float64 }

// holds reports whether the span holds a value; none holds NaN.
func (s span) holds(x float64) bool { return x >= s.low && x <= s.high }

// lengths says in words which lengths the span holds, in the user's unit.
func (s span) lengths(u geometry.Unit) string {
	return fmt.Sprintf("a length from %s to %s, such as %q", end(s.low, u, 1), end(s.high, u, -1), example(s.example, u))
}

// example writes a length that is easy to read. In inches, one over a quarter is
// rounded to the nearest eighth.
func example(mm float64, u geometry.Unit) string {
	const eighth = geometry.MillimetresPerInch / 8
	if u == geometry.Inch && math.Abs(mm) > 2*eighth {
		mm = math.Round(mm/eighth) * eighth
	}
	return u.Format(mm)
}

// numbers says in words which numbers the span holds.
func (s span) numbers() string {
	return fmt.Sprintf("a number from %g to %g, such as %g", s.low, s.high, s.example)
}

// end writes one end of a span. It is rounded inwards, so that every length a message
// names is accepted. Millimetres have three figures. Inches are whole from ten up,
// tenths from one up, and below that have one figure, no finer than a thousandth.
func end(mm float64, u geometry.Unit, inwards float64) string {
	x := mm / u.Millimetres()
	if x != 0 {
		figure := math.Floor(math.Log10(math.Abs(x)) + 1e-9)
		grain := math.Pow(10, figure-2)
		if u == geometry.Inch {
			grain = math.Pow(10, max(min(figure, 0), -3))
			if figure == 0 {
				grain = 0.1
			}
		}
		if inwards > 0 {
			x = math.Ceil(x/grain-1e-9) * grain
		} else {
			x = math.Floor(x/grain+1e-9) * grain
		}
	}
	return strconv.FormatFloat(x, 'g', 5, 64) + " " + u.String()
}

// MaxRock is how far a job may roll a cut to either side, in degrees.
const MaxRock = 30.0

// What is accepted. The bounds keep out slips, and numbers too large or too small to
// calculate with. No glass or wheel in any shop comes near them.
const (
	maxAcross = 1000.0 // of a glass and of a wheel, mm
	maxGirth  = maxAcross * math.Pi
	minRise   = 0.1  // from one station to the next, mm: the step of calipers
	minWall   = 0.1  // mm
	maxDepth  = 50.0 // of a cut, and of lands and glass left, mm
	maxPolish = 3.0  // on each side of a groove, mm: more takes it away
	minBand   = 1.0  // mm
	minBase   = 5.0  // across, mm
	minWheel  = 5.0  // across, mm
	maxThick  = 150  // of a wheel, mm: beyond it is a drum, whose cut the groove model does not hold for

	maxStations = 64
	maxBlanks   = 64
	maxWheels   = 64
	maxMotifs   = 256
	maxRepeats  = 360
	maxShares   = 12  // of a swell
	maxTitle    = 120 // runes
	maxName     = 60  // runes
)
