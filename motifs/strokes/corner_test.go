package strokes_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// fit reads path data and makes it fit to cut, by the defaults.
func fit(t *testing.T, data ...string) *strokes.Drawing {
	t.Helper()
	d, err := strokes.ReadPaths(data, strokes.Options{})
	if err != nil {
		t.Fatalf("%.60q: %v", data, err)
	}
	return d
}

// bent is a line of two parts 50 long that turns by an angle in the middle.
func bent(degrees float64) string {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return fmt.Sprintf("M0 0L50 0L%.12g %.12g", 50+50*cos, 50*sin)
}

// Strokes are divided where they turn by more than 20°, or by more than 5° from one long
// straight line to the next, and only there.
func TestCorners(t *testing.T) {
	for _, test := range []struct {
		name, data string
		strokes    int
		closed     bool // of the first
	}{
		{"4°", bent(4), 1, false}, {"6°", bent(6), 2, false}, {"12°", bent(12), 2, false}, {"−19°", bent(-19), 2, false}, {"21°", bent(21), 2, false}, {"−21°", bent(-21), 2, false}, {"back", bent(180), 1, false},
		{"two like bends", "M0 0L50 0L98.9 10.4L142.6 31.2", 3, false}, {"a zigzag of 12°", "M0 0L50 5.25L100 0L150 5.25L200 0", 4, false},
		{"a square", "M0 0H9V9H0z", 4, false},
		{"a circle", "M0 0A5 5 0 0 1 10 0A5 5 0 0 1 0 0z", 1, true},
		{"a drop", "M0 0C-10 10 10 10 0 0z", 1, false}, // 90° at its tip alone
		{"a heart", "M0 0C-10 -10 -10 5 0 20C10 5 10 -10 0 0z", 2, false},
		{"a rounded square", "M2 0H8A2 2 0 0 1 10 2V8A2 2 0 0 1 8 10H2A2 2 0 0 1 0 8V2A2 2 0 0 1 2 0z", 1, true},
		{"a cusp", "M0 0C100 100 0 100 100 0", 2, false}, // both handles reach as far: it stops in the middle
		{"a loop", "M0 0C120 100 -20 100 100 0", 1, false},
		{"a line there and back", "M0 0C60 0 60 0 20 0", 2, false}, // turns at its far end
		{"handles of no length", "M0 0C0 0 50 50 50 50C50 50 100 0 100 0", 2, false},
		{"a smooth joint without handles", "M0 0C0 0 50 0 50 0C50 0 100 0 100 0", 1, false},
		{"36 sides", polygon(36), 1, true}, {"12 sides", polygon(12), 12, false},
	} {
		d := fit(t, test.data)
		if len(d.Strokes) != test.strokes || d.Strokes[0].Closed != test.closed {
			t.Errorf("%s: %d strokes, closed %v", test.name, len(d.Strokes), d.Strokes[0].Closed)
		}
	}
}

// polygon is a regular polygon's outline.
func polygon(n int) string {
	var b strings.Builder
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		fmt.Fprintf(&b, "%s%.9g %.9g", map[bool]string{true: "M", false: "L"}[i == 0], 50*cos, 50*sin)
	}
	return b.String() + "z"
}

// The pieces of a divided stroke go on where the one before ends, and together they
// are the stroke.
func TestPiecesAreTheWhole(t *testing.T) {
	const data = "M0 0H9V9C20 30 40 -10 60 40L70 0z"
	whole, pieces := paths(t, data), fit(t, data)
	sum := 0.0
	for i, s := range pieces.Strokes {
		next := pieces.Strokes[(i+1)%len(pieces.Strokes)]
		if s.Curves[len(s.Curves)-1][3] != next.Curves[0][0] {
			t.Errorf("stroke %d ends at %v, the next starts at %v", i, s.Curves[len(s.Curves)-1][3], next.Curves[0][0])
		}
		sum += s.Length()
	}
	if want := whole.Strokes[0].Length(); math.Abs(sum-want) > 1e-9 || len(pieces.Strokes) != 5 {
		t.Errorf("%d pieces of %g in all, the whole is %g", len(pieces.Strokes), sum, want)
	}
}

// Curves that are drawn cleanly stay exactly as they are.
func TestCleanCurvesStay(t *testing.T) {
	for _, data := range []string{
		"M0 0C10 20 30 -10 50 0S90 30 100 10", "M0 0A5 5 0 0 1 10 0A5 5 0 0 1 0 0z", "M0 0H100", bent(0.5),
		"M0 0C30 0 50 20 50 50V100", // a curve that goes on straight
	} {
		d := fit(t, data)
		if got, want := d.Strokes[0].Curves, paths(t, data).Strokes[0].Curves; fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%q became %v", data, got)
		}
		if len(d.Notes) > 0 {
			t.Errorf("%q: %v", data, d.Notes)
		}
	}
}

// trembling is a line through points of a curve that trembles to both sides.
func trembling(at func(t float64) geometry.Point, n int, tremor float64) string {
	var b strings.Builder
	seed := uint32(1)
	noise := func() float64 { // between −1 and 1, the same every time
		seed = seed*1664525 + 1013904223
		return float64(seed)/math.MaxUint32*2 - 1
	}
	for i := range n + 1 {
		p := r2.Add(at(float64(i)/float64(n)), r2.Scale(tremor, geometry.Point{X: noise(), Y: noise()}))
		fmt.Fprintf(&b, "%s%.9g %.9g", map[bool]string{true: "M", false: "L"}[i == 0], p.X, p.Y)
	}
	return b.String()
}

// A pen's trembling line becomes a few smooth curves near the line that was meant, and
// the note says by how much it was moved.
func TestTremorIsSmoothed(t *testing.T) {
	meant := func(t float64) geometry.Point { // two bends, 100 long and 30 high
		return geometry.Point{X: 100 * t, Y: 15 * math.Sin(2*math.Pi*t)}
	}
	const tremor = 0.05 // a third of the tolerance in each direction
	d := fit(t, trembling(meant, 400, tremor))
	if len(d.Strokes) != 1 {
		t.Fatalf("%d strokes", len(d.Strokes))
	}
	s := d.Strokes[0]
	if len(s.Curves) > 12 {
		t.Errorf("400 lines became %d curves", len(s.Curves))
	}
	off := 0.0
	for i := range 1001 {
		m := meant(float64(i) / 1000)
		off = math.Max(off, apart(place(m.X, m.Y), d.Strokes))
	}
	if off > 0.06 {
		t.Errorf("the curves are %.3g from what was meant", off)
	}
	if text := fmt.Sprint(d.Notes); !strings.Contains(text, "1 rough stroke smoothed: 400 short pieces of line are now ") || !strings.Contains(text, "no line was moved by more than 0.") {
		t.Errorf("notes: %v", d.Notes)
	}
	t.Logf("%d curves, %.3g from what was meant; %v", len(s.Curves), off, d.Notes)
}

// A trembling line keeps its corners, within a step of where they are.
func TestTremorKeepsCorners(t *testing.T) {
	zigzag := func(t float64) geometry.Point { // two corners of 90°
		switch x := 120 * t; {
		case x < 40:
			return geometry.Point{X: x, Y: x}
		case x < 80:
			return geometry.Point{X: x, Y: 80 - x}
		default:
			return geometry.Point{X: x, Y: x - 80}
		}
	}
	d := fit(t, trembling(zigzag, 600, 0.05))
	if len(d.Strokes) != 3 {
		t.Fatalf("%d strokes", len(d.Strokes))
	}
	for i, want := range []geometry.Point{place(40, 40), place(80, 0)} {
		if got := d.Strokes[i+1].Curves[0][0]; !near(got, want, 0.4) {
			t.Errorf("corner %d at %v, want %v", i+1, got, want)
		}
	}
}

// The worst distance that a note gives is true: no point of the line as it was drawn
// lies farther from the smooth one.
func TestWorstDistanceIsTrue(t *testing.T) {
	curl := func(t float64) geometry.Point {
		sin, cos := math.Sincos(7 * t)
		return geometry.Point{X: 50 * (1 - t*0.8) * cos, Y: 50 * (1 - t*0.8) * sin}
	}
	data := trembling(curl, 700, 0.04)
	drawn, smooth := paths(t, data), fit(t, data)
	off := 0.0
	for _, c := range drawn.Strokes[0].Curves {
		off = math.Max(off, apart(c[0], smooth.Strokes))
	}
	told := -1.0
	for _, n := range smooth.Notes {
		if strings.HasPrefix(n.Text, "no line was moved by more than") {
			told = n.Share * math.Max(smooth.Box.Size())
		}
	}
	if told < 0 || off > told*1.01 { // the line is followed by points
		t.Errorf("%.3g off, told %g: %v", off, told, smooth.Notes)
	}
	t.Logf("%.3g off, told %g, %d curves", off, told, len(smooth.Strokes[0].Curves))
}

// Closed rough lines without a corner stay closed and smooth where they close.
func TestRoughRingStaysClosed(t *testing.T) {
	ring := func(t float64) geometry.Point {
		sin, cos := math.Sincos(2 * math.Pi * t)
		return geometry.Point{X: 40 * cos, Y: 50 * sin}
	}
	d := fit(t, trembling(ring, 300, 0.03)+"z")
	if len(d.Strokes) != 1 || !d.Strokes[0].Closed {
		t.Fatalf("%d strokes, closed %v", len(d.Strokes), d.Strokes[0].Closed)
	}
	curves := d.Strokes[0].Curves
	first, last := curves[0], curves[len(curves)-1]
	a, b := r2.Sub(first[1], first[0]), r2.Sub(last[3], last[2])
	if angle := math.Abs(math.Atan2(r2.Cross(a, b), r2.Dot(a, b))); first[0] != last[3] || angle > 1e-6 {
		t.Errorf("closes from %v to %v, turning by %g", last[3], first[0], angle)
	}
}
