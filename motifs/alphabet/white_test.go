package alphabet_test

import (
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// raster is how fine white is measured in these tests: squares to a cap height.
const raster = 250

// ink is, for each row of squares up a letter, its leftmost and its rightmost square,
// and those of the whole letter.
type ink struct {
	left, right         [raster]int
	leftmost, rightmost int
}

// blacken draws strokes square by square. Accents are left out, as the eye leaves them.
func blacken(strokes []alphabet.Stroke) ink {
	k := ink{leftmost: math.MaxInt, rightmost: math.MinInt}
	for i := range k.left {
		k.left[i], k.right[i] = math.MaxInt, math.MinInt
	}
	for _, s := range strokes {
		if s.Part != alphabet.Letter {
			continue
		}
		for _, p := range along(s.Path, 4*raster) {
			x, y := int(math.Floor(p.X*raster)), int(math.Floor(p.Y*raster))
			y = min(max(y, 0), raster-1) // what overshoots counts to the last row
			k.left[y], k.right[y] = min(k.left[y], x), max(k.right[y], x)
			k.leftmost, k.rightmost = min(k.leftmost, x), max(k.rightmost, x)
		}
	}
	return k
}

// white counts the squares between two letters, no deeper in either than the eye looks,
// and returns their area. A stroke runs, in the mean, through the middle of its squares.
func white(a, b ink) float64 {
	deep := int(math.Round(alphabet.Depth * raster))
	squares := 0
	for y := range raster {
		from, to := max(a.right[y], a.rightmost-deep), min(b.left[y], b.leftmost+deep)
		squares += to - from
	}
	return float64(squares) / (raster * raster)
}

// TestWhite counts the white between the letters of every pair of capitals. It is even,
// but for pairs whose strokes are as near as strokes may come: they have more.
func TestWhite(t *testing.T) {
	const (
		even = 0.015 // of the white
		rows = 0.01  // how much farther apart than need be strokes may be held
	)
	const capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	held, loosest, worst := 0, 0.0, 0.0
	for _, a := range capitals {
		first := len(write(t, string(a)).Strokes)
		for _, b := range capitals {
			pair := write(t, string([]rune{a, b})).Strokes
			near := nearest(pair[:first], pair[first:])
			if near < alphabet.Clearance-exact {
				t.Errorf("%c%c come within %.3f", a, b, near)
			}
			share := white(blacken(pair[:first]), blacken(pair[first:]))/alphabet.White - 1
			switch {
			case near < alphabet.Clearance+rows && share > even:
				held++
				loosest = max(loosest, share)
			case math.Abs(share) > even:
				t.Errorf("%c%c: white off by %.1f %%, strokes %.3f apart", a, b, 100*share, near)
			default:
				worst = max(worst, math.Abs(share))
			}
		}
	}
	t.Logf("of %d pairs %d are held apart, with up to %.0f %% more white; the others' is even within %.1f %%", 26*26, held, 100*loosest, 100*worst)
	if held > 26*26/3 {
		t.Errorf("%d pairs are held apart by their strokes", held)
	}
}

// nearest returns the least distance between the strokes of two letters.
func nearest(a, b []alphabet.Stroke) float64 {
	var p, q []geometry.Point
	for _, s := range a {
		p = append(p, along(s.Path, 90)...)
	}
	for _, s := range b {
		q = append(q, along(s.Path, 90)...)
	}
	least := math.Inf(1)
	for _, u := range p {
		for _, v := range q {
			if math.Abs(u.Y-v.Y) < least {
				least = min(least, math.Hypot(u.X-v.X, u.Y-v.Y))
			}
		}
	}
	return least
}

// TestKerned compares pairs with two upright stems: the second letter of a kerned pair
// stands nearer to the first, in some even under it.
func TestKerned(t *testing.T) {
	gap := func(text string) float64 {
		pair := write(t, text).Strokes
		n := len(write(t, text[:1]).Strokes)
		a, b := blacken(pair[:n]), blacken(pair[n:])
		return float64(b.leftmost-a.rightmost) / raster
	}
	// White is the distance of two stems.
	if got := gap("HI"); math.Abs(got-alphabet.White) > 2.0/raster {
		t.Errorf("two stems stand %.3f apart", got)
	}
	for _, pair := range []string{"AV", "VA", "AT", "TA", "LT", "LY", "WA", "AW", "AY", "YA", "TO", "PA", "FA", "LV", "OA", "RT"} {
		if got := gap(pair); got > 0.75*alphabet.White {
			t.Errorf("%s stand %.3f apart", pair, got)
		}
	}
	for _, pair := range []string{"LT", "LY"} {
		if got := gap(pair); got > 0.05 {
			t.Errorf("%s stand %.3f apart", pair, got)
		}
	}
}

// TestAccentsApart sets accents side by side on narrow letters, where they are wider
// than what they stand on.
func TestAccentsApart(t *testing.T) {
	for _, text := range []string{"ÎÎ", "ĨĪ", "ÏŤ", "ŤŤ", "ĻŢ", "ĄŲ", "ĽT", "ŁŁ", "ĦĐ", "ÅŸ"} {
		letters := []rune(text)
		n := len(write(t, string(letters[:1])).Strokes)
		pair := write(t, text).Strokes
		if near := nearest(pair[:n], pair[n:]); near < alphabet.Clearance-exact {
			t.Errorf("%s come within %.3f", text, near)
		}
	}
}
