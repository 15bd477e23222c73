package page

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
)

// Printed is what a ruler says of the two 100 mm bars of a portrait page that a
// printer made from a true file: how long it makes 100 mm along the short side of
// its paper, which is across that page, and along the long side. A printer errs
// along the sides of its paper, whichever way a page lies on it.
type Printed struct{ Short, Long float64 }

const barLength = 100.0

// TruePrinter returns the printer that prints every length as it is in the file.
func TruePrinter() Printed { return Printed{barLength, barLength} }

// True reports whether the printer needs no correction.
func (p Printed) True() bool { return p == TruePrinter() }

// Scale returns how much larger than in the file the printer makes things across
// and up a page.
func (p Printed) Scale(landscape bool) (across, up float64) {
	if landscape {
		return p.Long / barLength, p.Short / barLength
	}
	return p.Short / barLength, p.Long / barLength
}

// maxOff is the largest error of a printer that is corrected, as a share.
// Paper that slips or shrinks makes a hundredth or two; a printer that is off by
// more is fitting the page to the paper.
const maxOff = 0.05

// ParsePrinted reads how long a printer made one of the 100 mm bars.
func ParsePrinted(unit geometry.Unit, text string) (float64, error) {
	length, err := unit.Parse(text)
	if err != nil {
		return 0, fmt.Errorf("%w; accepted: %s", err, geometry.LengthForms)
	}
	if !(length >= (1-maxOff)*barLength && length <= (1+maxOff)*barLength) {
		return 0, fmt.Errorf("read %q, which is %.1f mm; accepted: what a ruler says of the 100 mm bar, from %.0f to %.0f mm; "+
			"a printer that is farther off is fitting pages to its paper: turn \"fit to page\" off and print the test page again",
			text, length, (1-maxOff)*barLength, (1+maxOff)*barLength)
	}
	inches := !strings.ContainsAny(text, "mM")
	if inches && math.Abs(length-4*geometry.MillimetresPerInch) < 1e-9 {
		return 0, fmt.Errorf("read %q, which is what a true printer makes of the 4 in bar; "+
			"accepted: what a ruler says of the 100 mm bar, such as 99.5 mm", text)
	}
	return length, nil
}

// Corrected says on the page what was done for the printer.
func (p Printed) Corrected() string {
	return fmt.Sprintf("Corrected for a printer that makes 100 mm into %.5g mm along the short side of its paper and %.5g mm along the long side.", p.Short, p.Long)
}
