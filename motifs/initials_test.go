package motifs_test

import (
	"math"
	"strings"
	"testing"

	"roundlay/motifs"
)

// Letters lie in their box, and keep their height where there are no accents.
func TestInitials(t *testing.T) {
	for _, text := range []string{"E & R", "AV", "J", "O", "1896", "ÅSE Ç", "St. Ives", "Łódź", "'", "QQQQ", "ÉMILE"} {
		k, err := motifs.Initials(text)
		if err != nil {
			t.Fatal(err)
		}
		cuts := k.Draw(nil, 1)
		if len(cuts) == 0 || !(k.Aspect > 0) {
			t.Errorf("%s: %d cuts, aspect %g", text, len(cuts), k.Aspect)
		}
		for i, c := range cuts {
			for n := range 201 {
				if p := c.At(float64(n) / 200); !(math.Abs(p.X) <= 0.5 && p.Y >= 0 && p.Y <= 1) {
					t.Fatalf("%s: cut %d is at %v", text, i, p)
				}
			}
		}
	}
	// An upright stroke goes from the level to the cap height: a 1.05th of the box.
	k, _ := motifs.Initials("I")
	c := k.Draw(nil, 1)[0]
	low, high := min(c.At(0).Y, c.At(1).Y), max(c.At(0).Y, c.At(1).Y)
	if math.Abs(high-low-1/1.05) > 1e-9 || math.Abs(low+high-1) > 1e-9 {
		t.Errorf("the I goes from %g to %g", low, high)
	}
}

func TestInitialsContents(t *testing.T) {
	seen := map[string]bool{}
	for _, text := range []string{"AB", "BA", "ab", "Å", "A"} {
		k, err := motifs.Initials(text)
		if err != nil {
			t.Fatal(err)
		}
		seen[k.Contents] = true
	}
	if len(seen) != 4 { // small letters are set as capitals
		t.Errorf("%d contents", len(seen))
	}
	if _, err := motifs.Initials("A#"); err == nil || !strings.Contains(err.Error(), "; accepted: ") {
		t.Error(err)
	}
}
