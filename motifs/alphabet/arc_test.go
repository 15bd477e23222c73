package alphabet_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// Three I's along arcs up and down. Their feet lie on the arc, which touches the level in
// the middle; each stands square on it; and they are as far apart along the circle that
// counts as they are on the level. The line takes the angle asked of that circle.
func TestAlongByHand(t *testing.T) {
	level := write(t, "III")
	pitch := level.Strokes[1].Path[0].X - level.Strokes[0].Path[0].X
	for _, angle := range []float64{0.3, -0.3, 0.02, -0.02} {
		bowed := level.Along(angle)
		counts := level.Advance / angle
		radius := counts
		if angle < 0 {
			radius-- // the tops' circle counts, and the feet's is one cap height larger
		}
		centre := geometry.Point{Y: -radius}
		for i, s := range bowed.Strokes {
			sin, cos := math.Sincos(float64(i-1) * pitch / counts)
			for _, end := range []struct {
				got  geometry.Point
				high float64
			}{{s.Path[3], 0}, {s.Path[0], 1}} {
				want := r2.Add(centre, r2.Scale(radius+end.high, geometry.Point{X: sin, Y: cos}))
				if r2.Norm(r2.Sub(end.got, want)) > exact*math.Abs(radius) {
					t.Errorf("along %g: I number %d at %v, want %v", angle, i+1, end.got, want)
				}
			}
		}
		if first := bowed.Strokes[0].Path[3]; (first.Y < 0) != (angle > 0) {
			t.Errorf("along %g: the first foot stands at %v", angle, first)
		}
	}
	// A single I stands in the middle, upright: its foot at the origin.
	for _, angle := range []float64{0.05, -0.05} {
		foot := write(t, "I").Along(angle).Strokes[0].Path[3]
		if r2.Norm(foot) > exact*100 {
			t.Errorf("along %g: an I alone stands at %v", angle, foot)
		}
	}
}

// Words on arcs as tight as can be: letters stay as far apart as on the level, but for what
// the lean of two kerned letters takes, and keep their shapes and joins.
func TestAlongClear(t *testing.T) {
	const lean = 0.05
	for _, text := range []string{"HALLELUJAH", "LTLYLATAVA", "EFELFTOHNI", "WAVY"} {
		level := write(t, text)
		for _, share := range []float64{1, 0.6, 0.2, -0.2, -0.6, -1} {
			bowed := level.Along(share * level.WidestArc())
			first := 0
			for i, r := range text {
				n := len(write(t, string(r)).Strokes)
				if near := nearest(bowed.Strokes[:first], bowed.Strokes[first:first+n]); i > 0 && near < alphabet.Clearance-lean {
					t.Errorf("%s along %g: letter %d comes within %.3f", text, share, i+1, near)
				}
				first += n
			}
			for i, s := range bowed.Strokes {
				was := level.Strokes[i]
				for k := 1; k < 4; k++ {
					if d := r2.Norm(r2.Sub(s.Path[k], s.Path[0])) - r2.Norm(r2.Sub(was.Path[k], was.Path[0])); math.Abs(d) > exact*10 {
						t.Errorf("%s along %g: stroke %d changes by %g", text, share, i, d)
					}
				}
				for _, j := range s.Joins {
					if near := nearest(bowed.Strokes[i:i+1], bowed.Strokes[j:j+1]); near > 0.02 {
						t.Errorf("%s along %g: strokes %d and %d join, %g apart", text, share, i, j, near)
					}
				}
			}
		}
	}
	if level := write(t, "III"); level.Along(0.2).Strokes[0].Path[0] == level.Strokes[0].Path[0] || level.Strokes[0].Path[0].Y != 1 {
		t.Error("a line is changed when it is set along an arc")
	}
}

// A line takes no more of a circle than leaves its letters apart and its ends too.
func TestWidestArc(t *testing.T) {
	short, long := write(t, "A"), write(t, "WWWWWWWWWWWWWWWWWWWWWWWW")
	if got := short.WidestArc(); got != short.Advance/alphabet.MinBow {
		t.Errorf("an A alone takes %g", got)
	}
	if got := long.WidestArc(); got != alphabet.MaxArc {
		t.Errorf("a long line takes %g", got)
	}
	if got, want := long.Along(99).Box(), long.Along(alphabet.MaxArc).Box(); got != want {
		t.Errorf("past the widest: %v, want %v", got, want)
	}
}
