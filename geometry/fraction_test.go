package geometry

import (
	"math"
	"testing"
)

// What a slip of the keys makes of a ruler's fraction is asked for, where it can be
// only one of them.
func TestMeantUnder(t *testing.T) {
	for typed, want := range map[string]string{
		"23": "32", "61": "16", "46": "64", // changed places
		"31": "32", "33": "32", "65": "64", "17": "16", // another digit
		"322": "32", "632": "32", "6": "", "3": "32", // one too many, one too few: 6 could be 16 or 64
		"36": "", "12": "", // 16 or 32, by another digit
		"7": "", "5": "", "48": "8", "99": "",
	} {
		if got := meantUnder(typed); got != want {
			t.Errorf("%s is taken for %q, wanted %q", typed, got, want)
		}
	}
}

// The fractions of rulers, of tables of cuts and of decimals are read in either unit.
func TestParseFractions(t *testing.T) {
	for text, want := range map[string]float64{
		"1/128": 0.0078125, "3/128": 0.0234375, "63/64": 0.984375, "7/32": 0.21875, "15/16": 0.9375,
		"1/10": 0.1, "7/100": 0.07, "35/1000": 0.035, "3/1": 3, "3/032": 0.09375,
	} {
		for _, unit := range []Unit{Inch, Millimetre} {
			if got, err := unit.Parse(text); err != nil || math.Abs(got-want*unit.Millimetres()) > 1e-12 {
				t.Errorf("%s %s: %v, %v", text, unit, got, err)
			}
		}
	}
}
