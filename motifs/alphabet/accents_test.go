package alphabet_test

import (
	"math"
	"reflect"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// boxes returns the boxes round a line's letters and round its accents.
func boxes(l alphabet.Line) (letter, accent geometry.Box) {
	letter, accent = geometry.EmptyBox(), geometry.EmptyBox()
	for _, s := range l.Strokes {
		for _, p := range along(s.Path, 100) {
			if s.Part == alphabet.Accent {
				accent = accent.Add(p)
			} else {
				letter = letter.Add(p)
			}
		}
	}
	return letter, accent
}

// TestAccentsStand looks where accents stand: those above clear of the top, those below
// under the foot, each with its middle over its letter, and on an even letter in its middle.
func TestAccentsStand(t *testing.T) {
	for _, base := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ" {
		for _, mark := range marksAbove + marksBelow {
			if base == 'L' && mark == '\u030c' {
				continue // Ľ has a stroke beside its stem
			}
			letter, accent := boxes(write(t, string([]rune{base, mark})))
			if above := accent.Min.Y > 1; above != (mark < '\u0326' || mark > '\u0328') || !above && accent.Max.Y > 0 {
				t.Errorf("%c%c: accent from %.2f to %.2f", base, mark, accent.Min.Y, accent.Max.Y)
			}
			middle := (accent.Min.X + accent.Max.X) / 2
			if off := 0.05; middle < letter.Min.X-off || middle > letter.Max.X+off {
				t.Errorf("%c%c: accent's middle at %.2f, letter from %.2f to %.2f", base, mark, middle, letter.Min.X, letter.Max.X)
			}
		}
	}
	for _, text := range []string{"Â", "Î", "Ô", "Û", "Ÿ", "Ĥ", "Ť"} {
		letter, accent := boxes(write(t, text))
		if off := (accent.Min.X + accent.Max.X - letter.Min.X - letter.Max.X) / 2; math.Abs(off) > exact {
			t.Errorf("%s: accent %.3f off the middle", text, off)
		}
	}
}

// TestCommas has a comma under the letters of Latvian, a cedilla under those of French
// and Turkish, and the Slovak Ľ with its stroke beside the stem.
func TestCommas(t *testing.T) {
	for text, comma := range map[string]string{"Ģ": "G\u0326", "Ķ": "K\u0326", "Ļ": "L\u0326", "Ņ": "N\u0326", "Ŗ": "R\u0326"} {
		if !reflect.DeepEqual(write(t, text), write(t, comma)) {
			t.Errorf("%s has no comma", text)
		}
	}
	for text, comma := range map[string]string{"Ç": "C\u0326", "Ş": "Ș", "Ţ": "Ț"} {
		if reflect.DeepEqual(write(t, text), write(t, comma)) {
			t.Errorf("%s has a comma", text)
		}
	}
	if letter, accent := boxes(write(t, "ľ")); accent.Min.X < letter.Min.X+alphabet.AccentGap || accent.Max.Y > 1 {
		t.Errorf("Ľ: stroke at %v", accent)
	}
}
