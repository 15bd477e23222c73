package strokes_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// asDrawn leaves strokes as they are drawn: nothing split or smoothed.
func asDrawn() strokes.Options { return strokes.Options{Corner: -1, Step: -1, Tremor: -1} }

// paths reads path data as it is drawn.
func paths(t *testing.T, data ...string) *strokes.Drawing {
	t.Helper()
	d, err := strokes.ReadPaths(data, asDrawn())
	if err != nil {
		t.Fatalf("%q: %v", data, err)
	}
	return d
}

// The W3C's SVG 1.1 test suite draws a path in red and the same path, written
// otherwise, over it: no red may show. From web-platform-tests, svg/import; some of them
// compared again with copies of the suite that stand in other libraries' tests.
func TestTheSameWrittenOtherwise(t *testing.T) {
	for file, pairs := range map[string][][2]string{
		"paths-data-17-f": {
			{"M 50 50 L 50 150 L 150 150 L 150 50 z", "M 50 50 L 50 150 L 150 150 L 150 50 Z"},
		},
		"paths-data-18-f": { // white space and commas
			{"M 20 40 H 40", "M 20 40\n             H 40"},
			{"M 20 60 H 40", "\n M\n 20\n 60\n H\n 40\n "},
			{"M 20 80 H40", "M       20,80          H    40"},
			{"M 20 120 H 40.5 0.6", "M 20 120 H 40.5.6"},
			{"M 20 140 h 10 -20", "M 20 140 h 10-20"},
		},
		"paths-data-19-f": { // more numbers are more of the same command
			{"M20 20 H40 H60", "M20 20 H40 60"},
			{"M20 40 h20 h20", "M20 40 h20 20"},
			{"M120 20 V40 V60", "M120 20 V40 60"},
			{"M140 20 v20 v20", "M140 20 v20 20"},
			{"M220 20 L 240 20 L260 20", "M220 20 L 240 20 260 20"},
			{"M220 40 l 20 0 l 20 0", "M220 40 l 20 0 20 0"},
			{"M50 150 C50 50 200 50 200 150 C200 50 350 50 350 150", "M50 150 C50 50 200 50 200 150 200 50 350 50 350 150"},
			{"M50, 200 c0,-100 150,-100 150,0 c0,-100 150,-100 150,0", "M50, 200 c0,-100 150,-100 150,0 0,-100 150,-100 150,0"},
			{"M50 250 S125 200 200 250 S275, 200 350 250", "M50 250 S125 200 200 250 275, 200 350 250"},
			{"M50 275 s75 -50 150 0 s75, -50 150 0", "M50 275 s75 -50 150 0 75, -50 150 0"},
			{"M50 300 Q 125 275 200 300 Q 275 325 350 300", "M50 300 Q 125 275 200 300 275 325 350 300"},
			{"M50 325 q 75 -25 150 0 q 75 25 150 0", "M50 325 q 75 -25 150 0 75 25 150 0"},
			{"M425 25 T 425 75 T 425 125", "M425 25 T 425 75 425 125"},
			{"M450 25 t 0 50 t 0 50", "M450 25 t 0 50 0 50"},
			{"M400,200 A25 25 0 0 0 425 150 A25 25 0 0 0 400 200", "M400,200 A25 25 0 0 0 425 150 25 25 0 0 0 400 200"},
			{"M400,300 a25 25 0 0 0 25 -50 a25 25 0 0 0 -25 50", "M400,300 a25 25 0 0 0 25 -50 25 25 0 0 0 -25 50"},
		},
		"paths-data-20-f": { // flags
			{"M120,120 h25 a25,25 0 1,0 -25,25 z", "M120,120 h25 a25,25 0 10 -25,25z"},
			{"M200,120 h-25 a25,25 0 1,1 25,25 z", "M200,120 h-25 a25,25 0 1125,25 z"},
			{"M120,200 h25 a25,25 0 1,1 -25,-25 z", "M120,200 h25 a25,25 0 1 1-25,-25 z"},
		},
		// Examples of the specification's text (SVG 1.1, 8.3; SVG 2, 9.3), compared with copies
		// of it. Lines are drawn to the last two, which in the text are movetos alone.
		"specification": {
			{"M 100 100 L 200 200", "M100 100L200 200"},
			{"M 100 200 L 200 100 L -100 -200", "M 100 200 L 200 100 -100 -200"},
			{"M 0.6 0.5 L 1 1", "M 0.6.5 L 1 1"},
			{"M 100 -200 L 1 1", "M 100-200 L 1 1"},
		},
		// Own examples of what it says in words, from memory (SVG 2, 9.3.3): "m" first is
		// absolute, what follows a moveto are linetos.
		"own": {
			{"M 100 200 L 200 100 -100 -200", "M 100 200 200 100 -100 -200"},
			{"M 10 10 L 15 10", "m 10 10 5 0"},
		},
	} {
		for _, pair := range pairs {
			want, got := paths(t, pair[0]), paths(t, pair[1])
			if diff := cmp.Diff(want.Strokes, got.Strokes, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
				t.Errorf("%s: %q is not %q:\n%s", file, pair[1], pair[0], diff)
			}
		}
	}
}

// What the test suite shows as an error, the place where it is, and more of that sort.
// A browser draws up to the error; a cut that is half of what was drawn is worse than none.
func TestWrongPathData(t *testing.T) {
	for _, test := range []struct {
		data      string
		character int
		read      string
	}{
		{"M280,120 h25 a25,25 0 6 0 -25,25 z", 23, `"6 0 -25,25 z"`},              // paths-data-20-f
		{"M360,120 h-25 a25,25 0 1 -1 25,25 z", 26, `"-1 25,25 z"`},               // paths-data-20-f
		{"M200,200 h-25 a25,2501 025,-25 z", 28, `"-25 z"`},                       // paths-data-20-f: 25, 2501, 25, and no flag
		{"M280,200 h25 a25 25 0 1 7 -25 -25 z", 25, `"7 -25 -25 z"`},              // paths-data-20-f
		{"M360,200 h-25 a25,25 0 -1 0 25,-25 z", 24, `"-1 0 25,-25 z"`},           // paths-data-20-f
		{"M 20 100 H 40#90", 14, `"#90"`},                                         // paths-data-18-f
		{"m 0 0 l 3 -4 z # ignored suffix v 123", 16, `"# ignored suffix v 123"`}, // web-platform-tests svg/path/error-handling/bounding.svg
		{"m 0 0 l -9 11 -123 z # ignore last l parameter", 20, `"z # ignore last l parameter"`},
		{"# invalid", 1, `"# invalid"`},
		{"L 10 10", 1, `"L 10 10"`},
		{"M 100 100 L 200 200 Z 100 200", 23, `"100 200"`},
		{"M 1", 4, "the end"},
		{"M 1,,2", 5, `",2"`},
		{"M 1 2,", 7, "the end"},
		{"M 1 2 L 3 4,L 5 6", 13, `"L 5 6"`},
		{"M 1 2 L NaN 3", 9, `"NaN 3"`},
		{"M 1 2 L 1e999 3", 9, `"1e999 3"`},
		{"M 1 2 L 3 - 4", 11, `"- 4"`},
		{"M ö 2", 3, `"ö 2"`},
	} {
		_, err := strokes.ReadPaths([]string{"M0 0H1", test.data}, asDrawn())
		var e *strokes.Error
		if !errors.As(err, &e) {
			t.Errorf("%q: %v", test.data, err)
			continue
		}
		if e.Where != "path 2" || e.Character != test.character || e.Read != test.read || e.Accepted == "" {
			t.Errorf("%q: %v", test.data, e)
		}
	}
}

// place is a point of path data, whose y grows downwards.
func place(x, y float64) geometry.Point { return geometry.Point{X: x, Y: -y} }

// Where subpaths end, and what Z begins.
func TestSubpaths(t *testing.T) {
	for _, test := range []struct {
		data   string
		starts []geometry.Point
		closed []bool
	}{
		// SVG 1.1 test suite, paths-data-02-t, compared with copies of it: M, Q, z, m, q, z; the
		// second m is from the first's start. The others are our own.
		{"M372 130Q272 50 422 10zm70 0q50-150-80-90z", []geometry.Point{place(372, 130), place(442, 130)}, []bool{true, true}},
		{"M0 0H9V9z L5 5", []geometry.Point{place(0, 0), place(0, 0)}, []bool{true, false}}, // SVG 2, 9.3.4, from memory
		{"M0 0H9m1 1h9", []geometry.Point{place(0, 0), place(10, 1)}, []bool{false, false}},
		{"M0 0 1 1 M 5 5 M 7 7 L 8 8", []geometry.Point{place(0, 0), place(7, 7)}, []bool{false, false}},
		{"M0 0H5V5H0V0", []geometry.Point{place(0, 0)}, []bool{true}}, // comes back without a z
	} {
		d := paths(t, test.data)
		if len(d.Strokes) != len(test.starts) {
			t.Errorf("%q: %d strokes", test.data, len(d.Strokes))
			continue
		}
		for i, s := range d.Strokes {
			if s.Curves[0][0] != test.starts[i] || s.Closed != test.closed[i] {
				t.Errorf("%q: stroke %d starts at %v, closed %v", test.data, i, s.Curves[0][0], s.Closed)
			}
		}
	}
}

// The control points that S and T mirror: the path data of the SVG specification's pictures
// cubic01 and quad01, compared with copies of it. Where the handles are is worked out by
// hand. After another command it is the pen's place (SVG 2, 9.3.6 and 9.3.7, from memory).
func TestMirroredHandles(t *testing.T) {
	for _, test := range []struct {
		data string
		last geometry.Bezier
	}{
		{"M100,200 C100,100 250,100 250,200 S400,300 400,200", geometry.Bezier{place(250, 200), place(250, 300), place(400, 300), place(400, 200)}},
		{"M100,200 H250 S400,300 400,200", geometry.Bezier{place(250, 200), place(250, 200), place(400, 300), place(400, 200)}},
		// quad01: M200,300 Q400,50 600,300 T1000,300 mirrors 400,50 to 800,550. A cubic's
		// handles are two thirds of the way there.
		{"M200,300 Q400,50 600,300 T1000,300", geometry.Bezier{place(600, 300), place(600+400.0/3, 300+500.0/3), place(1000-400.0/3, 300+500.0/3), place(1000, 300)}},
		{"M0 0 Q 9 9 30 0 L 60 0 T 90 0", geometry.Bezier{place(60, 0), place(60, 0), place(70, 0), place(90, 0)}},
	} {
		d := paths(t, test.data)
		s := d.Strokes[0]
		if diff := cmp.Diff(test.last, s.Curves[len(s.Curves)-1], cmpopts.EquateApprox(0, 1e-9)); diff != "" {
			t.Errorf("%q:\n%s", test.data, diff)
		}
	}
}

// Numbers of all forms that the grammar has (SVG 2, 9.3.9; a bare dot behind from SVG 1.1,
// 8.3.9; both from memory).
func TestNumbers(t *testing.T) {
	d := paths(t, "M+1.5e1-.5E-1L1.5.5 5.-0 1e+2 0")
	want := []geometry.Point{place(15, -0.05), place(1.5, 0.5), place(5, 0), place(100, 0)}
	for i, c := range d.Strokes[0].Curves {
		if math.Hypot(c[0].X-want[i].X, c[0].Y-want[i].Y) > 1e-12 {
			t.Errorf("point %d at %v, want %v", i, c[0], want[i])
		}
	}
}
