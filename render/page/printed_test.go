package page

import (
	"math"
	"strings"
	"testing"

	"roundlay/geometry"
)

func TestWhatARulerSays(t *testing.T) {
	for _, test := range []struct {
		unit geometry.Unit
		text string
		want float64
	}{
		{geometry.Millimetre, "98.5", 98.5},
		{geometry.Millimetre, "95", 95},
		{geometry.Millimetre, "105 mm", 105},
		{geometry.Inch, "100.5 mm", 100.5},
		{geometry.Inch, "101.6 mm", 101.6},
		{geometry.Inch, "3 15/16", 100.0125},
	} {
		if got, err := ParsePrinted(test.unit, test.text); err != nil || math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%q in %v is %v, %v", test.text, test.unit, got, err)
		}
	}
	for text, want := range map[string]string{
		"94.9 mm": "fit to page", "105.1 mm": "fit to page", "0": "fit to page", "-100 mm": "fit to page",
		"4": "4 in bar", "4 in": "4 in bar", `4"`: "4 in bar", "hundred": "not a length", "98": "fit to page",
	} {
		if got, err := ParsePrinted(geometry.Inch, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is %v, %v; it should say %s", text, got, err, want)
		}
	}
}
