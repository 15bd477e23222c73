package alphabet_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/alphabet"
)

// exact is what rounding may leave of a length of the order of a letter.
const exact = 1e-9

// plain are the letters, figures and signs without accents.
const plain = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789&.-'ÆŒẞÞŊ"

// marks are the accents of Latin languages above and below a letter.
const (
	marksAbove = "\u0300\u0301\u0302\u0303\u0304\u0306\u0307\u0308\u030a\u030b\u030c"
	marksBelow = "\u0326\u0327\u0328"
)

// everything returns each plain character, each with a bar, and each letter with each
// accent; and two with one on either side.
func everything() []string {
	var all []string
	for _, r := range plain + "ØÐĐŁĦŦĿ" {
		all = append(all, string(r))
	}
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZÆŒØĐŁ" {
		for _, up := range marksAbove {
			all = append(all, string(r)+string(up))
		}
		for _, down := range marksBelow {
			all = append(all, string(r)+string(down))
		}
	}
	return append(all, "Ş\u030c", "A\u0328\u0301")
}

func write(t *testing.T, text string) alphabet.Line {
	t.Helper()
	l, err := alphabet.Write(text)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// along returns places along a stroke, evenly in its parameter.
func along(b geometry.Bezier, n int) []geometry.Point {
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = b.At(float64(i) / float64(n))
	}
	return points
}

// TestCells holds every stroke to the cell of its letter.
func TestCells(t *testing.T) {
	for _, text := range everything() {
		l := write(t, text)
		if len(l.Strokes) == 0 {
			t.Errorf("%s has no strokes", text)
		}
		for i, s := range l.Strokes {
			low, high := -alphabet.Overshoot, 1+alphabet.Overshoot
			if s.Part == alphabet.Accent || text == "Ŋ" {
				low, high = -alphabet.Descent, alphabet.Ascent
			}
			for _, p := range along(s.Path, 200) {
				// Written so that NaN fails.
				if !(p.X >= -exact && p.X <= l.Advance+exact && p.Y >= low-exact && p.Y <= high+exact) {
					t.Errorf("%s: stroke %d (%s) leaves its cell at %.3f, %.3f: %.3f wide, from %.2f to %.2f", text, i, s.Part, p.X, p.Y, l.Advance, low, high)
					break
				}
			}
		}
	}
}

// TestFit holds every stroke to what a wheel can follow: its length, and the radius of
// the circle through any three places near each other on it.
func TestFit(t *testing.T) {
	tightest, shortest, shortestOfLetter := math.Inf(1), math.Inf(1), math.Inf(1)
	for _, text := range everything() {
		for i, s := range write(t, text).Strokes {
			points := along(s.Path, 400)
			length, least := 0.0, math.Inf(1)
			for k := 1; k < len(points); k++ {
				length += r2.Norm(r2.Sub(points[k], points[k-1]))
			}
			shortest = min(shortest, length)
			if s.Part == alphabet.Letter && !slices.Contains([]string{".", "-", "'"}, text) {
				shortestOfLetter = min(shortestOfLetter, length)
			}
			for k := 2; k < len(points); k++ {
				r := radius(points[k-2], points[k-1], points[k])
				tightest, least = min(tightest, r), min(least, r)
			}
			if !(least >= alphabet.MinRadius) {
				t.Errorf("%s: stroke %d turns with a radius of %.3f", text, i, least)
			}
		}
	}
	if shortest < alphabet.MinLength || shortestOfLetter < alphabet.MinLetter {
		t.Errorf("shortest stroke %.3f, of a letter %.3f", shortest, shortestOfLetter)
	}
	t.Logf("tightest %.4f, shortest %.4f, of a letter %.4f", tightest, shortest, shortestOfLetter)
}

// radius returns the radius of the circle through three points: the product of their
// distances over four times their triangle's area.
func radius(a, b, c geometry.Point) float64 {
	u, v, w := r2.Sub(b, a), r2.Sub(c, b), r2.Sub(c, a)
	area2 := math.Abs(r2.Cross(u, v))
	if area2 < 1e-12 { // rounding: the places are some 1e-3 apart
		return math.Inf(1)
	}
	return r2.Norm(u) * r2.Norm(v) * r2.Norm(w) / 2 / area2
}

// distance returns the least distance between two strokes, from places at most 0.015
// apart: it may be 0.01 more where they meet, and 0.001 where they are 0.1 apart.
func distance(a, b geometry.Bezier) float64 {
	least := math.Inf(1)
	q := along(b, 90)
	for _, p := range along(a, 90) {
		for _, r := range q {
			least = min(least, math.Hypot(p.X-r.X, p.Y-r.Y))
		}
	}
	return least
}

// TestAccentsClear measures from every accent to its letter, and holds bars to their
// joins.
func TestAccentsClear(t *testing.T) {
	const sampled = 0.001
	for _, text := range everything() {
		l := write(t, text)
		for i, s := range l.Strokes {
			if s.Part != alphabet.Accent {
				continue
			}
			bar := slices.ContainsFunc(s.Joins, func(j int) bool { return l.Strokes[j].Part == alphabet.Letter })
			if bar {
				if !slices.Contains([]rune("ØÐĐŁĦŦ"), []rune(text)[0]) {
					t.Errorf("%s: accent %d joins its letter", text, i)
				}
				continue
			}
			for j, other := range l.Strokes {
				if d := distance(s.Path, other.Path); other.Part == alphabet.Letter && d < alphabet.AccentGap-sampled {
					t.Errorf("%s: accent %d comes within %.3f of stroke %d", text, i, d, j)
				}
			}
		}
	}
}

// TestJoins measures between all strokes of a letter: those that join meet, and those
// that don't are well apart.
func TestJoins(t *testing.T) {
	const meet, apart = 0.01, 0.05
	for _, text := range everything() {
		l := write(t, text)
		for i, s := range l.Strokes {
			for j := range i {
				other := l.Strokes[j]
				joined := slices.Contains(s.Joins, j)
				if joined != slices.Contains(other.Joins, i) {
					t.Errorf("%s: %d and %d join on one side only", text, i, j)
				}
				if d := distance(s.Path, other.Path); joined && d > meet || !joined && d < apart {
					t.Errorf("%s: %d and %d are %.3f apart, joined %v", text, i, j, d, joined)
				}
			}
		}
	}
}

// TestJoinsByHand is the A and the H: the A's bar joins both legs, which meet in the
// apex, the H's stems don't meet.
func TestJoinsByHand(t *testing.T) {
	for text, want := range map[string][][]int{"A": {{1, 2}, {0, 2}, {0, 1}}, "H": {{2}, {2}, {0, 1}}, "HI": {{2}, {2}, {0, 1}, nil}} {
		for i, s := range write(t, text).Strokes {
			if got := slices.Sorted(slices.Values(s.Joins)); !slices.Equal(got, want[i]) {
				t.Errorf("%s: stroke %d joins %v, want %v", text, i, got, want[i])
			}
		}
	}
}
