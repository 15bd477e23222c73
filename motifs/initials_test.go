package motifs_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/motifs/alphabet"
)

// Letters lie in their box, and keep their height where there are no accents.
func TestInitials(t *testing.T) {
	for _, text := range []string{"E & R", "AV", "J", "O", "1896", "ÅSE Ç", "St. Ives", "Łódź", "'", "QQQQ", "ÉMILE"} {
		k, err := motifs.Initials(text, 0)
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
	k, _ := motifs.Initials("I", 0)
	c := k.Draw(nil, 1)[0]
	low, high := min(c.At(0).Y, c.At(1).Y), max(c.At(0).Y, c.At(1).Y)
	if math.Abs(high-low-1/1.05) > 1e-9 || math.Abs(low+high-1) > 1e-9 {
		t.Errorf("the I goes from %g to %g", low, high)
	}
}

// Three I's along 24° of a circle lean by the share of it that lies between them, the first
// to the left, whatever box they are given; all of them are of one length, and lie in the
// box, which they fill one way.
func TestInitialsOnArc(t *testing.T) {
	line, err := alphabet.Write("III")
	if err != nil {
		t.Fatal(err)
	}
	pitch := line.Strokes[1].Path[0].X - line.Strokes[0].Path[0].X
	for _, arc := range []float64{24, -24} {
		k, err := motifs.Initials("III", geometry.Degrees(arc))
		if err != nil {
			t.Fatal(err)
		}
		for _, aspect := range []float64{k.Aspect, 3 * k.Aspect, k.Aspect / 3} {
			var lengths []float64
			box := geometry.EmptyBox()
			for i, c := range k.Draw(motifs.Values{motifs.ArcKey: arc}, aspect) {
				foot, top := c.Path[3], c.Path[0] // an I is drawn downwards
				x, y := (top.X-foot.X)*aspect, top.Y-foot.Y
				if got, want := math.Atan2(x, y)*180/math.Pi, float64(i-1)*pitch/line.Advance*arc; math.Abs(got-want) > 1e-6 {
					t.Errorf("arc %g, aspect %g: I number %d leans %g°, want %g°", arc, aspect, i+1, got, want)
				}
				lengths = append(lengths, math.Hypot(x, y))
				box = box.Union(geometry.BoxOf(foot, top))
			}
			if slices.Max(lengths)-slices.Min(lengths) > 1e-9 {
				t.Errorf("arc %g, aspect %g: lengths %v", arc, aspect, lengths)
			}
			width, height := box.Size()
			if !(width <= 1 && height <= 1 && (width > 0.97 || height > 0.97)) {
				t.Errorf("arc %g, aspect %g: the letters take %g by %g of the box", arc, aspect, width, height)
			}
		}
	}
	// Whatever the text and the arc, all of it is in the box.
	for _, text := range []string{"Å", "E & R", "ÇÉŁØ", "HALLELUJAH '97", "WWWWWWWWWWWWWWWWWWWWWWWW"} {
		widest, err := motifs.WidestArc(text)
		if err != nil {
			t.Fatal(err)
		}
		for _, share := range []float64{-1, -0.5, 0.01, 0.5, 1} {
			arc := geometry.Angle(share) * widest
			k, _ := motifs.Initials(text, arc)
			for _, aspect := range []float64{k.Aspect, 0.05, 20} {
				for i, c := range k.Draw(motifs.Values{motifs.ArcKey: arc.Degrees()}, aspect) {
					for n := range 201 {
						if p := c.At(float64(n) / 200); !(math.Abs(p.X) <= 0.5 && p.Y >= 0 && p.Y <= 1) {
							t.Fatalf("%s along %g°: cut %d is at %v", text, arc.Degrees(), i, p)
						}
					}
				}
			}
		}
	}
}

// As it is listed the kind has all parts that a text can have, whatever the example's; a text
// has those of its own strokes.
func TestInitialsParts(t *testing.T) {
	for text, want := range map[string][]string{"AB": {"letter"}, "ÅB": {"letter", "accent"}} {
		k, err := motifs.Initials(text, 0)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(k.Parts, want) {
			t.Errorf("%s: parts %q, wanted %q", text, k.Parts, want)
		}
	}
	if listed := motifs.Lettered().Parts; !slices.Equal(listed, []string{"letter", "accent"}) {
		t.Errorf("listed with parts %q", listed)
	}
}

func TestInitialsContents(t *testing.T) {
	seen := map[string]bool{}
	for _, text := range []string{"AB", "BA", "ab", "Å", "A"} {
		k, err := motifs.Initials(text, 0)
		if err != nil {
			t.Fatal(err)
		}
		seen[k.Contents] = true
	}
	bowed, _ := motifs.Initials("AB", 0.2)
	seen[bowed.Contents] = true
	if len(seen) != 5 { // small letters are set as capitals
		t.Errorf("%d contents", len(seen))
	}
	if _, err := motifs.Initials("A#", 0); err == nil || !strings.Contains(err.Error(), "; accepted: ") {
		t.Error(err)
	}
}
