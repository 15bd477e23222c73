package alphabet_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// TestBowByHand bows three I's up and down. Their feet lie on the arc, which touches the
// level in the middle; each stands square on it; and they are as far apart along the arc
// that counts as they are on the level.
func TestBowByHand(t *testing.T) {
	level := write(t, "III")
	pitch := level.Strokes[1].Path[0].X - level.Strokes[0].Path[0].X
	for _, radius := range []float64{4, -4, 50, -50} {
		bowed, err := level.Bow(radius)
		if err != nil {
			t.Fatal(err)
		}
		centre := geometry.Point{Y: -radius}
		counts := radius
		if radius < 0 {
			counts = radius + 1 // their tops
		}
		for i, s := range bowed.Strokes {
			angle := float64(i-1) * pitch / counts
			sin, cos := math.Sincos(angle)
			for _, end := range []struct {
				got  geometry.Point
				high float64
			}{{s.Path[3], 0}, {s.Path[0], 1}} {
				want := r2.Add(centre, r2.Scale(radius+end.high, geometry.Point{X: sin, Y: cos}))
				if r2.Norm(r2.Sub(end.got, want)) > exact*math.Abs(radius) {
					t.Errorf("bowed %g: I number %d at %v, want %v", radius, i+1, end.got, want)
				}
			}
		}
		if first := bowed.Strokes[0].Path[3]; (first.Y < 0) != (radius > 0) {
			t.Errorf("bowed %g: the first foot stands at %v", radius, first)
		}
	}
}

// TestBowClear bows words as much as can be: letters stay as far apart as on the level,
// but for what the lean of two kerned letters takes, and keep their shapes.
func TestBowClear(t *testing.T) {
	const lean = 0.05
	for _, text := range []string{"HALLELUJAH", "LTLYLATAVA", "EFELFTOHNI", "WAVY"} {
		level := write(t, text)
		for _, radius := range []float64{alphabet.MinBow, -alphabet.MinBow - 1, 5, -6, 20, -20} {
			bowed, err := level.Bow(radius)
			if err != nil {
				t.Fatalf("%s, %g: %v", text, radius, err)
			}
			first := 0
			for i, r := range text {
				n := len(write(t, string(r)).Strokes)
				if near := nearest(bowed.Strokes[:first], bowed.Strokes[first:first+n]); i > 0 && near < alphabet.Clearance-lean {
					t.Errorf("%s bowed %g: letter %d comes within %.3f", text, radius, i+1, near)
				}
				first += n
			}
			for i, s := range bowed.Strokes {
				was := level.Strokes[i].Path
				for k := 1; k < 4; k++ {
					if d := r2.Norm(r2.Sub(s.Path[k], s.Path[0])) - r2.Norm(r2.Sub(was[k], was[0])); math.Abs(d) > exact {
						t.Errorf("%s bowed %g: stroke %d changes by %g", text, radius, i, d)
					}
				}
			}
		}
	}
	if level := write(t, "III"); level.Strokes[0].Path[0].Y != 1 {
		t.Error("a line is changed when it is bowed")
	}
}

// TestBowRefused bows lines as they can't be bowed.
func TestBowRefused(t *testing.T) {
	short, long := write(t, "ANNA"), write(t, "WWWWWWWWWWWWWWWWWWWWWWWW")
	for _, c := range []struct {
		line   alphabet.Line
		radius float64
		want   string
	}{
		{short, 0, "read an arc of 0 cap heights; accepted: a radius of 3 or more"},
		{short, -2.9, "accepted: a radius of 3 or more, or of -3 or less"},
		{short, math.NaN(), "accepted: a radius"},
		{short, math.Inf(-1), "accepted: a radius"},
		{long, 3, "for a line"},
		{long, -5, "for a line"},
	} {
		if _, err := c.line.Bow(c.radius); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("bowed %g: %v, want %q", c.radius, err, c.want)
		}
	}
}
