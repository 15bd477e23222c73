package lettering

import (
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
