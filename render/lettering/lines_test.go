package lettering

import (
	"math"
	"strings"
	"testing"
)

func TestLines(t *testing.T) {
	letters, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	const size = 9.0
	for _, words := range []string{
		"", "one", "Step the mark round the foot first, then stand each base tick on its mark.",
		strings.Repeat("unbroken", 12), "a " + strings.Repeat("w", 50) + " b",
	} {
		for _, width := range []float64{1, 12, 40, 1000} {
			lines := letters.Lines(words, size, false, width)
			for _, line := range lines {
				if letters.Width(line, size, false) > width && len([]rune(line)) > 1 {
					t.Errorf("%q in %g mm: the line %q is wider", words, width, line)
				}
			}
			// Nothing is lost and nothing added but the breaks.
			join := func(s string) string { return strings.Join(strings.Fields(s), "") }
			if got := join(strings.Join(lines, " ")); got != join(words) {
				t.Errorf("%q in %g mm: reads %q", words, width, got)
			}
		}
	}
	if n := len(letters.Lines("two words", size, false, 1000)); n != 1 {
		t.Errorf("two words with room to spare take %d lines", n)
	}
}

// A line is as wide as its words and the spaces between, which Lines reckons with.
func TestLineIsAsWideAsItsWords(t *testing.T) {
	l, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	const line = "AVAIL To Ty. WAVE 1/64 in, \"fit to page\" (ff fi) Tape, Yoke; 11 71"
	for _, bold := range []bool{false, true} {
		for _, size := range []float64{6, 7.5, 8, 9, 11} {
			words := strings.Fields(line)
			sum := float64(len(words)-1) * l.Width(" ", size, bold)
			for _, word := range words {
				sum += l.Width(word, size, bold)
			}
			if off := math.Abs(sum - l.Width(line, size, bold)); off > 1e-9 {
				t.Errorf("%g points, bold %v: the words are %g mm off the line", size, bold, off)
			}
		}
	}
}
