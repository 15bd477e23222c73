package lettering

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"

	"roundlay/geometry"
	"roundlay/render/drawing"
)

func load(t *testing.T) *Letters {
	t.Helper()
	letters, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	return letters
}

// sample has the signs that sheets for cutting use.
const sample = `Repeat 3 of 12: turn 30°, 2 45/64 in × 1½ in (Ø 79.4 mm) −0.1 … “é”`

// The same words, measured by x/image's own way at a size where its dots are
// the font's units.
func TestWidthIsTheFontsOwn(t *testing.T) {
	letters := load(t)
	for _, test := range []struct {
		data []byte
		bold bool
	}{{goregular.TTF, false}, {gobold.TTF, true}} {
		parsed, err := opentype.Parse(test.data)
		if err != nil {
			t.Fatal(err)
		}
		const units = 2048 // to the em, in both
		face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: units, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		const points = 9
		want := float64(font.MeasureString(face, sample)) / 64 / units * points * 25.4 / 72
		if got := letters.Width(sample, points, test.bold); math.Abs(got-want) > 1e-9 {
			t.Errorf("bold %v: %v mm, want %v", test.bold, got, want)
		}
	}
}

func TestBoxFollowsAlignAndTurn(t *testing.T) {
	letters := load(t)
	const words, size = "Ågy", 10
	width := letters.Width(words, size, false)
	for align, before := range map[drawing.Align]float64{drawing.Left: 0, drawing.Centre: width / 2, drawing.Right: width} {
		text := drawing.Text{At: geometry.Point{X: 50, Y: 60}, Words: words, Size: size, Align: align}
		level := letters.Box(text)
		if math.Abs(level.Min.X-(50-before)) > 1e-9 || math.Abs(level.Max.X-(50-before+width)) > 1e-9 || level.Max.Y < 62.5 || level.Min.Y > 59.5 {
			t.Errorf("align %v, level: %v", align, level)
		}
		text.Turn = math.Pi / 2 // its top is now on the left
		upright := letters.Box(text)
		if math.Abs(upright.Min.Y-(60-before)) > 1e-9 || math.Abs(upright.Max.Y-(60-before+width)) > 1e-9 || upright.Min.X > 47.5 || upright.Max.X < 50.5 {
			t.Errorf("align %v, upright: %v", align, upright)
		}
	}
}

func TestLettersTheFontLacks(t *testing.T) {
	letters := load(t)
	for words, want := range map[string]string{
		"e\u0301": "é",  // a letter and its accent become one
		"日⌀":      "□□", // neither is in the font
		"a\nb\tc": "a b c",
	} {
		if got := letters.Printable(words); got != want {
			t.Errorf("%q is set as %q, want %q", words, got, want)
		}
		if got, plain := letters.Width(words, 9, true), letters.Width(want, 9, true); got != plain {
			t.Errorf("%q is %v mm wide, %q is %v", words, got, want, plain)
		}
	}
}
