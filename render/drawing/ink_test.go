package drawing

import "testing"

func TestInk(t *testing.T) {
	for _, grey := range []Ink{Black, 1, 128, 254, White} {
		red, green, blue := grey.RGB()
		if grey.Coloured() || red != uint8(grey) || green != red || blue != red || grey.Grey() != red {
			t.Errorf("grey %d is (%d, %d, %d), in grey %d", grey, red, green, blue, grey.Grey())
		}
	}
	// 0.30 R + 0.59 G + 0.11 B, ISO 32000-1, 10.3.3.
	for _, c := range []struct{ red, green, blue, grey uint8 }{
		{255, 0, 0, 77}, {0, 255, 0, 150}, {0, 0, 255, 28}, {255, 255, 255, 255}, {100, 150, 200, 141}, {0, 0, 1, 0},
	} {
		ink := Colour(c.red, c.green, c.blue)
		red, green, blue := ink.RGB()
		if !ink.Coloured() || red != c.red || green != c.green || blue != c.blue || ink.Grey() != c.grey {
			t.Errorf("(%d, %d, %d) is (%d, %d, %d), in grey %d, want %d", c.red, c.green, c.blue, red, green, blue, ink.Grey(), c.grey)
		}
	}
	if Colour(0, 0, 0) != Black {
		t.Error("the colour without light is not black")
	}
}

func TestColouredDrawings(t *testing.T) {
	grey, colour := Ink(80), Colour(80, 90, 100)
	for name, marks := range map[string][2]Mark{
		"stroke": {Stroke{Pen: Pen{Ink: grey}}, Stroke{Pen: Pen{Ink: colour}}},
		"fill":   {Fill{Ink: grey}, Fill{Ink: colour}},
		"area":   {Area{Ink: grey}, Area{Ink: colour}},
		"text":   {Text{Ink: grey}, Text{Ink: colour}},
	} {
		var d Drawing
		d.Add(Cuts, marks[0])
		if d.Coloured() {
			t.Errorf("a grey %s makes a drawing coloured", name)
		}
		d.Add(Notes, marks[1])
		if !d.Coloured() {
			t.Errorf("a coloured %s does not make a drawing coloured", name)
		}
	}
}
