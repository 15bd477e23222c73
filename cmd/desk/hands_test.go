package desk

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"roundlay/render/screen"
)

const handed = `title = "Hand"
length = "mm"
[blank]
name = "tumbler"
station = [{height = 0, across = 90, wall = 9}, {height = 100, across = 90, wall = 9}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 75
thick = 8
angle = 90
[layout]
repeats = 6
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 1
fronds = 3
swell = [0.4, 1, 0.7]
rock = [0, 12]
[motif.parts.stem]
swell = [1]
rock = [0, 0]
`

func handAt(t *testing.T, all []screen.Hand, path string) screen.Hand {
	t.Helper()
	for _, h := range all {
		if h.Path == path {
			return h
		}
	}
	t.Fatalf("%q has no hand", path)
	return screen.Hand{}
}

// The hands of an answer are those of the job: its shares, its rolls, and what a part has for itself.
func TestHands(t *testing.T) {
	all := laidAs(t, map[string]any{"job": handed}).Hands
	whole, frond, stem := handAt(t, all, "motif[1]"), handAt(t, all, "motif[1].parts.frond"), handAt(t, all, "motif[1].parts.stem")
	for _, h := range []screen.Hand{whole, frond} {
		if len(h.Swell.Shares) != 3 || h.Swell.Shares[0] != 0.4 || h.Swell.Shares[2] != 0.7 || h.Rock != [2]screen.Number{0, 12} {
			t.Errorf("%s has %v and %v", h.Path, h.Swell.Shares, h.Rock)
		}
		if want := [2]screen.Number{50, -100}; h.Swell.Points[1] != want {
			t.Errorf("the second share of %s is at %v, want %v", h.Path, h.Swell.Points[1], want)
		}
	}
	if !whole.Even || frond.Even || stem.Rock != [2]screen.Number{} || stem.Swell.Shares[0] != 1 {
		t.Errorf("even without their own: %v and %v; the stem is rolled %v", whole.Even, frond.Even, stem.Rock)
	}
	if n, m := len(whole.Swell.More), len(whole.Swell.Fewer); n != 4 || m != 2 {
		t.Errorf("one point more is %d, one fewer %d", n, m)
	}
	// Fritsch and Butland through (0, 0.4), (0.5, 1), (1, 0.7): the top is flat, so that a third of
	// the way the first piece lies above its chord.
	if got := float64(whole.Swell.More[1]); got < 0.8 || got > 1 {
		t.Errorf("a third of the way the share is %g", got)
	}
}

// An upright mitre of 90° that goes 1 mm deep is 1 mm wide to either side. Rolled 12° to the
// right its right flank lies 45 + 12 degrees off upright, and the groove is tan 57° wide there;
// to the left, where it isn't rolled, it stays as it was.
func TestHandSection(t *testing.T) {
	all := laidAs(t, map[string]any{"job": handed}).Hands
	for _, c := range []struct {
		path        string
		left, right float64
	}{{"motif[1].parts.stem", 1, 1}, {"motif[1].parts.frond", 1, math.Tan(57 * math.Pi / 180)}} {
		left, right, low := extent(t, handAt(t, all, c.path).Section.Cut)
		if math.Abs(left+c.left) > 0.011 || math.Abs(right-c.right) > 0.011 || math.Abs(low+1) > 0.006 {
			t.Errorf("%s is cut from %.3f to %.3f and %.3f deep, want -%.3f to %.3f and 1", c.path, left, right, low, c.left, c.right)
		}
	}
}

// extent returns how far a path of straight lines reaches.
func extent(t *testing.T, path string) (left, right, low float64) {
	t.Helper()
	for i, text := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("Mz ", r) }) {
		x := number(t, text)
		if i%2 == 0 {
			left, right = min(left, x), max(right, x)
		} else {
			low = min(low, x)
		}
	}
	return left, right, low
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
