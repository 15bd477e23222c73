package geometry

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

// One inch is 25.4 mm exactly: international yard and pound agreement, 1959.
// So every eighth of an inch is 3.175 mm, and no row below needs rounding.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		text string
		want float64 // mm
	}{
		// Every written form of three and an eighth.
		{Inch, "3 1/8", 79.375},
		{Inch, "3-1/8", 79.375},
		{Inch, "3⅛", 79.375},
		{Inch, "3 ⅛", 79.375},
		{Inch, "3.125", 79.375},
		{Inch, "25/8", 79.375},
		{Millimetre, "3 1/8 in", 79.375},
		{Millimetre, "3 1/8in", 79.375},
		{Millimetre, "3 1/8 in.", 79.375},
		{Millimetre, "3 1/8 inch", 79.375},
		{Millimetre, "3 1/8 inches", 79.375},
		{Millimetre, "3 1/8 IN", 79.375},
		{Millimetre, `3 1/8"`, 79.375},
		{Millimetre, `3-1/8"`, 79.375},
		{Millimetre, `3-1/8 "`, 79.375},
		{Millimetre, `3⅛"`, 79.375},
		{Millimetre, "3⅛″", 79.375},
		{Millimetre, "3⅛”", 79.375},
		{Millimetre, "3⅛''", 79.375},
		{Millimetre, "3\u00a01/8\u00a0in", 79.375},
		{Millimetre, "\t 3  1/8 in \n", 79.375},

		{Millimetre, "3 1⁄8\"", 79.375}, // the fraction slash some keyboards type

		{Inch, "1/16", 1.5875},
		{Inch, "½", 12.7},
		{Inch, "1/64", 0.396875},
		{Inch, "3", 76.2},
		{Inch, "0.5", 12.7},
		{Inch, ".5", 12.7},
		{Inch, "3.", 76.2},
		{Inch, "0", 0},
		{Inch, "0/4", 0},
		{Inch, "-1/32", -0.79375},
		{Inch, "−1/32", -0.79375},
		{Inch, "-3 1/8", -79.375},
		{Inch, "- 3-1/8", -79.375},

		{Inch, "79.4 mm", 79.4},
		{Inch, "79.4mm", 79.4},
		{Inch, "79.4 MM", 79.4},
		{Inch, "79.4 millimetres", 79.4},
		{Inch, "79.4 millimeters", 79.4},
		{Inch, "7.94 cm", 79.4},
		{Inch, "7.94 centimetres", 79.4},
		{Inch, "7 1/2 cm", 75},
		{Millimetre, "79.4", 79.4},
		{Millimetre, "80", 80},
		{Millimetre, "1/2", 0.5},
		{Millimetre, "7.94cm", 79.4},
	} {
		got, err := c.unit.Parse(c.text)
		if err != nil || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%q in %s: %v mm, %v; wanted %v", c.text, c.unit, got, err, c.want)
		}
	}
}

// Each single-sign fraction is read as its two numbers are: those that a ruler has,
// and those that it has not.
func TestParseVulgar(t *testing.T) {
	onRuler := 0
	for sign, text := range vulgar() {
		got, err := Millimetre.Parse(string(sign))
		want, wrong := Millimetre.Parse(text)
		if (err == nil) != (wrong == nil) || got != want || err == nil && (got <= 0 || got >= 1) {
			t.Errorf("%c: %v, %v; %s: %v, %v", sign, got, err, text, want, wrong)
		}
		if err == nil {
			onRuler++
		}
	}
	if onRuler != 8 { // a half, two quarters, four eighths and a tenth
		t.Errorf("%d single signs are read", onRuler)
	}
}

func TestParseRefuses(t *testing.T) {
	for text, reason := range map[string]string{
		"":                       "no number",
		"   ":                    "no number",
		"in":                     "no number",
		"mm":                     "no number",
		"-":                      "no number",
		`"`:                      "no number",
		"--3":                    "neither a number nor a unit",
		"3-":                     "neither a number nor a unit",
		"3--1/8":                 "too many numbers",
		"3,5":                    "decimal point as a point",
		"3,5 mm":                 "decimal point as a point",
		"3 furlongs":             `the unit "furlongs" is not known: in, mm or cm`,
		"5/8 feet":               `the unit "feet" is not known: in, mm or cm`,
		"3 1/8 feet":             `the unit "feet" is not known: in, mm or cm`,
		"3 kg":                   `the unit "kg" is not known`,
		"3 m":                    `the unit "m" is not known`,
		"x":                      "neither a number nor a unit",
		"nan":                    "neither a number nor a unit",
		"inf":                    "neither a number nor a unit",
		"+inf":                   "neither a number nor a unit",
		"1e3":                    "neither a number nor a unit",
		"0x10":                   "neither a number nor a unit",
		"1_000":                  "neither a number nor a unit",
		"1.2.3":                  "neither a number nor a unit",
		"1/2/3":                  "neither a number nor a unit",
		"1/":                     "neither a number nor a unit",
		"/8":                     "neither a number nor a unit",
		".":                      "neither a number nor a unit",
		"1.5/8":                  "neither a number nor a unit",
		"mm 3":                   "neither a number nor a unit",
		"3 in 1/8":               "too many numbers",
		"3 1/8 1/8":              "too many numbers",
		"3⅛⅛":                    "too many numbers",
		"3 4":                    "a whole number and one fraction",
		"1/8 3":                  "a whole number and one fraction",
		"1/8 1/8":                "a whole number and one fraction",
		"3.5 1/8":                "a whole number and one fraction",
		"3 0.5":                  "a whole number and one fraction",
		"1/0":                    "not zero below the line",
		"3 1/0":                  "not zero below the line",
		"0/0":                    "not zero below the line",
		"3/23":                   "no ruler has 3/23: write halves, quarters, 8ths, 16ths, 32nds, 64ths or 128ths, or a decimal; is it 3/32?",
		"5/61":                   "is it 5/16?",
		"3/46 in":                "is it 3/64?",
		"2 3/23":                 "is it 3/32?",
		"1/12":                   "no ruler has 1/12",
		"1/3":                    "no ruler has 1/3",
		"⅓":                      "no ruler has 1/3",
		"5/6 mm":                 "no ruler has 5/6",
		"1/40":                   "no ruler has 1/40",
		"3 5/4":                  "less than one",
		"3 8/8":                  "less than one",
		strings.Repeat("9", 400): "too large",
	} {
		got, err := Inch.Parse(text)
		var wrong *LengthError
		if !errors.As(err, &wrong) {
			t.Errorf("%q: %v, %v", text, got, err)
			continue
		}
		if got != 0 || wrong.Text != text || !strings.Contains(wrong.Reason, reason) {
			t.Errorf("%q: %v, reason %q, wanted %q", text, got, wrong.Reason, reason)
		}
		if line := err.Error(); strings.ContainsAny(line, "\r\n") {
			t.Errorf("%q: more than a line: %s", text, line)
		}
	}
}

func TestParseUnit(t *testing.T) {
	for name, want := range map[string]Unit{"in": Inch, "mm": Millimetre} {
		got, err := ParseUnit(name)
		if err != nil || got != want || got.String() != name {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
	for _, name := range []string{"", "cm", "IN", "inch", "furlong"} {
		if _, err := ParseUnit(name); err == nil {
			t.Errorf("%q is a unit", name)
		}
	}
	if mm := Inch.Millimetres(); mm != 25.4 {
		t.Errorf("an inch of %v mm", mm)
	}
}

// Worked by hand: 2 45/64 is 173/64 = 2.703125 in.
func TestSetting(t *testing.T) {
	const in = MillimetresPerInch
	for _, c := range []struct {
		unit        Unit
		mm          float64
		text, exact string
		length      float64
	}{
		{Inch, 2.703125 * in, "2 45/64 in", "2 45/64 in", 68.659375},
		// A chord: 3 1/8 in across, in three parts, is 3.125 · sin 60° = 2.7063 in;
		// dividers stand a shade under 2 3/4 in, 0.0032 in over the 64th.
		{Inch, 3.125 * in * math.Sqrt(3) / 2, "2 45/64 in", "2 45/64 in and 0.003 in", 68.659375},
		{Inch, 2.700 * in, "2 45/64 in", "2 45/64 in less 0.003 in", 68.659375},
		// Less than half a thousandth isn't said.
		{Inch, 2.7035 * in, "2 45/64 in", "2 45/64 in", 68.659375},
		{Inch, 2.7037 * in, "2 45/64 in", "2 45/64 in and 0.001 in", 68.659375},
		// Lowest terms.
		{Inch, in, "1 in", "1 in", 25.4},
		{Inch, in / 2, "1/2 in", "1/2 in", 12.7},
		{Inch, in * 3 / 4, "3/4 in", "3/4 in", 19.05},
		{Inch, in / 8, "1/8 in", "1/8 in", 3.175},
		{Inch, in * 3 / 16, "3/16 in", "3/16 in", 4.7625},
		{Inch, in * 31 / 32, "31/32 in", "31/32 in", 24.60625},
		{Inch, in * 63 / 64, "63/64 in", "63/64 in", 25.003125},
		{Inch, in * 10.25, "10 1/4 in", "10 1/4 in", 260.35},
		{Inch, 1.2, "3/64 in", "3/64 in", 1.190625},
		{Inch, -in / 32, "-1/32 in", "-1/32 in", -0.79375},
		{Inch, -in * 1.5, "-1 1/2 in", "-1 1/2 in", -38.1},
		{Inch, 0, "0 in", "0 in", 0},
		{Inch, -0.1, "0 in", "0 in less 0.004 in", 0},
		// 0.999 in is 63.94 64ths.
		{Inch, in * 0.999, "1 in", "1 in less 0.001 in", 25.4},
		// The other unit, whose tenth is all that is said.
		{Millimetre, 68.74, "68.7 mm", "68.7 mm", 68.7},
		{Millimetre, 68.76, "68.8 mm", "68.8 mm", 68.8},
		{Millimetre, 1.2, "1.2 mm", "1.2 mm", 1.2},
		{Millimetre, 80, "80.0 mm", "80.0 mm", 80},
		{Millimetre, 0, "0.0 mm", "0.0 mm", 0},
		{Millimetre, -0.5, "-0.5 mm", "-0.5 mm", -0.5},
		{Millimetre, in, "25.4 mm", "25.4 mm", 25.4},
	} {
		got := c.unit.Setting(c.mm)
		if got.Text != c.text || math.Abs(got.Length-c.length) > 1e-12 {
			t.Errorf("%v mm in %s: %q, %v; wanted %q, %v", c.mm, c.unit, got.Text, got.Length, c.text, c.length)
		}
		if c.unit.Format(c.mm) != c.text {
			t.Errorf("%v mm in %s: %q; wanted %q", c.mm, c.unit, c.unit.Format(c.mm), c.text)
		}
		if exact := c.unit.FormatWithRest(c.mm); exact != c.exact {
			t.Errorf("%v mm in %s: %q; wanted %q", c.mm, c.unit, exact, c.exact)
		}
	}
}

// Every setting of a caliper is read as it is written.
func TestSettingParses(t *testing.T) {
	for n := range 64 * 12 {
		for unit, mm := range map[Unit]float64{Inch: float64(n) * MillimetresPerInch / 64, Millimetre: float64(n) / 10} {
			text := unit.Format(mm)
			got, err := unit.Parse(text)
			if err != nil || math.Abs(got-mm) > 1e-12 {
				t.Errorf("%v mm is %q, which is read %v, %v", mm, text, got, err)
			}
		}
	}
}

// Nothing is written with a minus sign.
func TestNeverMinusNothing(t *testing.T) {
	for got, want := range map[string]string{
		Inch.FormatDecimal(-0.001): "0.000 in", Millimetre.FormatDecimal(-0.004): "0.00 mm", Inch.Format(-0.1): "0 in", Millimetre.Format(-0.04): "0.0 mm",
		Decimal(-0.004, 2): "0.00", Decimal(-0.006, 2): "-0.01", Decimal(math.Copysign(0, -1), 0): "0", Millimetre.FormatWithRest(-0.01): "0.0 mm",
	} {
		if got != want {
			t.Errorf("%s, wanted %s", got, want)
		}
	}
}

// A least length is never written shorter than it is, nor a greatest one longer.
func TestRoundedOneWay(t *testing.T) {
	const in = MillimetresPerInch
	for _, c := range []struct {
		unit          Unit
		mm            float64
		atLeast, most string
	}{
		{Inch, 0.704 * in, "23/32 in", "45/64 in"}, // 45/64 is 0.703125
		{Inch, 45 * in / 64, "45/64 in", "45/64 in"},
		{Inch, 45*in/64 + 1e-12, "45/64 in", "45/64 in"}, // what rounding adds
		{Inch, 45*in/64 - 1e-12, "45/64 in", "45/64 in"},
		{Inch, 0.001 * in, "1/64 in", "0 in"},
		{Inch, 0, "0 in", "0 in"},
		{Millimetre, 12.01, "12.1 mm", "12.0 mm"},
		{Millimetre, 12.3, "12.3 mm", "12.3 mm"}, // no binary fraction
	} {
		if got := c.unit.FormatUp(c.mm); got != c.atLeast {
			t.Errorf("at least %v mm is %s, wanted %s", c.mm, got, c.atLeast)
		}
		if got := c.unit.FormatDown(c.mm); got != c.most {
			t.Errorf("at most %v mm is %s, wanted %s", c.mm, got, c.most)
		}
	}
}

func TestAgainst(t *testing.T) {
	const in = MillimetresPerInch
	for _, c := range []struct {
		unit            Unit
		measured, bound float64 // in the unit
		wantM, wantB    string
	}{
		{Inch, 0.013, 1. / 64, "0.013 in", "0.016 in"},
		{Inch, 0.01559, 1. / 64, "0.01559 in", "0.01563 in"}, // both 0.0156 to four places
		{Inch, 0.0311, 1. / 32, "0.0311 in", "0.0313 in"},    // the safe side of 0.03125
		{Inch, 0.0158, 1. / 64, "0.0158 in", "0.0156 in"},
		{Inch, 0.0161, 0.01605, "0.0161 in", "0.0160 in"},
		{Inch, 0.0004, 1. / 64, "0.0004 in", "0.0157 in"}, // not nothing
		{Inch, 0, 1. / 32, "0.000 in", "0.032 in"},        // but this is
		{Inch, 0.002, 0.0004, "0.0020 in", "0.0004 in"},
		{Inch, 1, 1, "1.000 in", "1.000 in"},
		{Millimetre, 0.56, 0.8, "0.56 mm", "0.80 mm"},
		{Millimetre, 0.796, 0.8, "0.796 mm", "0.800 mm"},
		{Millimetre, 0.79999, 0.8, "0.79999 mm", "0.80000 mm"},
		{Millimetre, 0.8 - 1e-12, 0.8, "0.8000000 mm", "0.8000000 mm"},
	} {
		scale := 1.0
		if c.unit == Inch {
			scale = in
		}
		if m, b := c.unit.FormatAgainst(Breach{c.measured * scale, c.bound * scale}); m != c.wantM || b != c.wantB {
			t.Errorf("%v against %v: %q, %q; wanted %q, %q", c.measured, c.bound, m, b, c.wantM, c.wantB)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"3 1/8 in", `3-1/8"`, "3⅛''", "-79.4 mm", "7.94cm", "−.5", "1/0", "9e9", "3,5", "\u00a0½\u2033"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, unit := range []Unit{Inch, Millimetre} {
			mm, err := unit.Parse(text)
			if err != nil {
				var wrong *LengthError
				if !errors.As(err, &wrong) || mm != 0 || wrong.Text != text || wrong.Reason == "" {
					t.Errorf("%q: %v, %v", text, mm, err)
				}
				continue
			}
			if math.IsNaN(mm) {
				t.Errorf("%q is not a number", text)
			}
			// A unit that is written out beats the one that is assumed.
			if again, err := unit.Parse(fmt.Sprintf("%s %s", text, unit)); err == nil && again != mm {
				// The text had one already, and now has two.
				t.Errorf("%q is %v mm, and %v with its unit", text, mm, again)
			}
		}
	})
}

func TestIsInchFraction(t *testing.T) {
	for text, want := range map[string]bool{
		"3/32": true, " 5 1/8 ": true, "3-1/16": true, "3⅛": true, "1⁄64": true, "-1/32": true,
		"1/2": false, "3/4": false, "1/3": false, "3/32 in": false, `3/32"`: false, "3⅛ mm": false, "8": false, "0.8": false, "": false, "1/128": false,
	} {
		if got := IsInchFraction(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
