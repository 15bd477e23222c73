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

// outline is the outline of a stroke of a pen: points to either side of a middle line,
// off by half a width that changes along it, with a joint of some sort at its ends.
func outline(at func(t float64) geometry.Point, half func(t float64) float64, blunt bool) string {
	const n = 120
	var left, right []geometry.Point
	for i := range n + 1 {
		t := float64(i) / n
		const by = 1e-4
		d := r2.Unit(r2.Sub(at(t+by), at(t-by)))
		off := r2.Scale(half(t), geometry.Point{X: -d.Y, Y: d.X})
		left, right = append(left, r2.Add(at(t), off)), append(right, r2.Sub(at(t), off))
	}
	if !blunt { // to points at both ends
		left[0], right[0], left[n], right[n] = at(0), at(0), at(1), at(1)
	}
	var b strings.Builder
	for i, p := range left {
		fmt.Fprintf(&b, "%s%.9g %.9g", map[bool]string{true: "M", false: "L"}[i == 0], p.X, p.Y)
	}
	for i := n; i >= 0; i-- {
		fmt.Fprintf(&b, "L%.9g %.9g", right[i].X, right[i].Y)
	}
	return b.String() + "z"
}

// filled wraps outlines as fills without a stroke.
func filled(outlines ...string) []byte {
	var b strings.Builder
	b.WriteString("<svg>")
	for _, o := range outlines {
		fmt.Fprintf(&b, "<path fill='black' d='%s'/>", o)
	}
	return []byte(b.String() + "</svg>")
}

// Slivers along known lines become those lines, from end to end.
func TestSliversBecomeTheirMiddle(t *testing.T) {
	straight := func(t float64) geometry.Point { return geometry.Point{X: 100 * t, Y: 20 * t} }
	wave := func(t float64) geometry.Point { return geometry.Point{X: 100 * t, Y: 10 * math.Sin(5*t)} }
	horseshoe := func(t float64) geometry.Point {
		sin, cos := math.Sincos(0.4 + 5.2*t)
		return geometry.Point{X: 50 * cos, Y: 50 * sin}
	}
	even := func(float64) float64 { return 1.5 }
	brush := func(t float64) float64 { return 4 * math.Sin(math.Pi*t) } // a twelfth of the length broad
	wedge := func(t float64) float64 { return 5 * t }                   // broadest at an end
	for _, test := range []struct {
		name  string
		at    func(float64) geometry.Point
		half  func(float64) float64
		blunt bool
	}{
		{"a bar", straight, even, true}, {"a needle", straight, brush, false}, {"a wedge", straight, wedge, true},
		{"a wave of a felt pen", wave, even, true}, {"a wave of a brush", wave, brush, false},
		{"a horseshoe of a felt pen", horseshoe, even, true}, {"a horseshoe of a brush", horseshoe, brush, false},
	} {
		d, err := strokes.Read(filled(outline(test.at, test.half, test.blunt)), strokes.Options{Centre: true})
		if err != nil {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		if len(d.Strokes) != 1 || d.Strokes[0].Closed {
			t.Errorf("%s: %d strokes", test.name, len(d.Strokes))
			continue
		}
		off := 0.0
		for i := range 401 {
			m := test.at(float64(i) / 400)
			off = math.Max(off, apart(place(m.X, m.Y), d.Strokes))
		}
		// From end to end, and no longer than that.
		want := 0.0
		for i := range 1000 {
			want += r2.Norm(r2.Sub(test.at(float64(i+1)/1000), test.at(float64(i)/1000)))
		}
		if length := d.Strokes[0].Length(); off > 0.2 || math.Abs(length-want) > 0.01*want {
			t.Errorf("%s: %.3g from the middle, %.4g long, want %.4g", test.name, off, length, want)
		}
		t.Logf("%s: %.3g off in %d curves; %v", test.name, off, len(d.Strokes[0].Curves), d.Notes)
	}
}

// What is broad, or has no two sides, is no sliver. Without Centre a fill is no stroke.
func TestWhatIsNoSliver(t *testing.T) {
	leaf := outline(func(t float64) geometry.Point { return geometry.Point{X: 100 * t} }, func(t float64) float64 { return 12 * math.Sin(math.Pi*t) }, false)
	for name, data := range map[string]string{
		"a leaf": leaf, "a circle": "M0 0A50 50 0 0 1 100 0A50 50 0 0 1 0 0z", "a square": "M0 0H50V50H0z", "a triangle": "M0 0H50L25 20z",
		"a cross": "M0 45H45V0H55V45H100V55H55V100H45V55H0z", "a star": "M50 0L55 45L100 50L55 55L50 100L45 55L0 50L45 45z",
		"an angle": "M0 0H100V4H4V100H0z", // two bars: their middle line has a corner, and could be taken twice
	} {
		d, err := strokes.Read(filled(data, "M200 0h100v3h-100z"), strokes.Options{Centre: true})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if name != "an angle" && len(d.Strokes) != 1 {
			t.Errorf("%s: %d strokes", name, len(d.Strokes))
		}
	}
	needle := "M0 0L50 2L100 0L50 -2z"
	if d, err := strokes.Read(filled(needle), strokes.Options{}); err == nil {
		t.Errorf("a fill is cut: %+v", d.Strokes)
	}
	// The outline of a sliver drawn with a pen stays an outline unless asked otherwise.
	file := []byte("<svg><path stroke='black' d='" + needle + "'/></svg>")
	d, err := strokes.Read(file, strokes.Options{})
	if err != nil || len(d.Strokes) != 2 {
		t.Errorf("%+v, %v", d, err)
	}
	d, err = strokes.Read(file, strokes.Options{Centre: true})
	if err != nil || len(d.Strokes) != 1 {
		t.Fatalf("%+v, %v", d, err)
	}
	c := d.Strokes[0].Curves
	if a, b := c[0][0], c[len(c)-1][3]; !near(a, place(0, 0), 0.01) && !near(a, place(100, 0), 0.01) || math.Abs(r2.Norm(r2.Sub(a, b))-100) > 0.02 {
		t.Errorf("from %v to %v", a, b)
	}
}
