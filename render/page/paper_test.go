package page

import (
	"math"
	"strings"
	"testing"
)

func TestPapersByName(t *testing.T) {
	for _, test := range []struct {
		name          string
		width, height float64
		source        string
	}{
		{"a4", 210, 297, "ISO 216"},
		{"A3", 297, 420, "ISO 216"},
		{"letter", 215.9, 279.4, "ASME Y14.1: 8.5 by 11 in"},
		{"Tabloid", 279.4, 431.8, "ASME Y14.1: 11 by 17 in"},
		{" legal ", 215.9, 355.6, "8.5 by 14 in, from memory"},
	} {
		p, err := ParsePaper(test.name)
		if err != nil || math.Abs(p.Width-test.width) > 1e-9 || math.Abs(p.Height-test.height) > 1e-9 {
			t.Errorf("%s is %v, %v; %s has %v by %v mm", test.name, p, err, test.source, test.width, test.height)
		}
	}
}

func TestPapersBySize(t *testing.T) {
	for text, want := range map[string][2]float64{
		"210x297":            {210, 297},
		"297mm x 420mm":      {297, 420},
		"8.5x11in":           {215.9, 279.4},
		"8.5 x 11":           {215.9, 279.4},
		"13 x 19 in":         {330.2, 482.6},
		`8 1/2" X 11"`:       {215.9, 279.4},
		"8½×14 in":           {215.9, 355.6},
		"12in by 30 cm":      {304.8, 300},
		"21 x 29.7 cm":       {210, 297},
		"8.5 in x 11":        {215.9, 279.4},
		"13 inches x 19 in.": {330.2, 482.6},
	} {
		p, err := ParsePaper(text)
		if err != nil || math.Abs(p.Width-want[0]) > 1e-9 || math.Abs(p.Height-want[1]) > 1e-9 {
			t.Errorf("%q is %v, %v; want %v", text, p, err, want)
		}
	}
}

// No number is a sheet's side in both units, or a bare size would not show its unit.
func TestBarePapersHaveOneReading(t *testing.T) {
	if least := minSide * 25.4; least <= maxSide {
		t.Errorf("a side of %d is a sheet's in millimetres and in inches", minSide)
	}
}

func TestPapersThatAreNone(t *testing.T) {
	for text, says := range map[string]string{
		"a5":       "tabloid", // says what there is
		"":         "a4",
		"210":      "8.5x11in",
		"axb":      `"a"`,
		"100x150":  "115",
		"5x4in":    "115",
		"2000x300": "1524",
		"1x2x3":    "a4",
		"210xmm":   "no number",
		"-210x297": "115",
	} {
		if p, err := ParsePaper(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q is read as %v with the error %v, which should say %s", text, p, err, says)
		}
	}
}
