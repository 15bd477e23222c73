package motifs_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/motifs/strokes"
)

// blade is a stem and two fronds in a box of 40 by 100. The right frond begins on the
// stem, the left one a little off it.
const blade = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 100" fill="none" stroke="black">
<g id="stem"><path d="M20 100 L20 10"/></g>
<g id="frond"><path d="M20 60 L36 30"/><path d="M17 60 L4 30"/></g>
<circle id="eye" cx="20" cy="5" r="3"/>
<text>left out</text>
</svg>`

func drawnFrom(t testing.TB, svg string) motifs.Kind {
	t.Helper()
	d, err := strokes.Read([]byte(svg), strokes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return motifs.Drawing(d)
}

// A stroke's place in the box, by hand: x/40 - 1/2 across, 1 - y/100 up.
func TestDrawing(t *testing.T) {
	k := drawnFrom(t, blade)
	cuts := k.Draw(nil, 7)
	if k.Aspect != 0.4 || len(cuts) != 4 {
		t.Fatalf("aspect %g, %d cuts", k.Aspect, len(cuts))
	}
	for i, want := range []struct {
		part     string
		from, to geometry.Point
		joins    []int
	}{
		{"stem", geometry.Point{X: 0, Y: 0}, geometry.Point{X: 0, Y: 0.9}, []int{1}},
		{"frond", geometry.Point{X: 0, Y: 0.4}, geometry.Point{X: 0.4, Y: 0.7}, []int{0}},
		{"frond", geometry.Point{X: -0.075, Y: 0.4}, geometry.Point{X: -0.4, Y: 0.7}, nil},
	} {
		c := cuts[i]
		if c.Part != want.part || !near(c.At(0), want.from) || !near(c.At(1), want.to) || !slices.Equal(c.Joins, want.joins) || c.Closed {
			t.Errorf("cut %d: %+v, want %+v", i, c, want)
		}
	}
	eye := cuts[3]
	if !eye.Closed || eye.Part != "eye" || !near(eye.At(0), eye.At(1)) {
		t.Errorf("the circle: %+v", eye)
	}
	for n := range 100 { // 3 of 40 across, 3 of 100 up, round (0, 0.95)
		p := eye.At(float64(n) / 100)
		if off := math.Hypot(p.X/0.075, (p.Y-0.95)/0.03); math.Abs(off-1) > 1e-3 {
			t.Errorf("the circle at %d of 100 is %g radii off", n, off)
		}
	}
	if len(k.Notes) != 1 || !strings.Contains(k.Notes[0].Text, "text") {
		t.Errorf("notes: %+v", k.Notes)
	}
}

// A line of several curves is one cut, and a corner divides it.
func TestDrawingChains(t *testing.T) {
	d, err := strokes.ReadPaths([]string{"M 0 0 C 0 10 10 20 20 20 S 40 30 40 40", "M 0 40 L 10 40 L 10 30"}, strokes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	cuts := motifs.Drawing(d).Draw(nil, 1)
	if len(cuts) != 3 || cuts[0].Curves() != 2 || !near(cuts[0].At(0.5), geometry.Point{X: 0, Y: 0.5}) {
		t.Errorf("%+v", cuts)
	}
	if cuts[1].Part != "stroke" || !slices.Equal(cuts[1].Joins, []int{2}) {
		t.Errorf("the angle: %+v", cuts[1:])
	}
}

// What differs between two drawings is in their contents, and nothing else is.
func TestDrawingContents(t *testing.T) {
	own := drawnFrom(t, blade)
	if again := drawnFrom(t, blade); again.Contents != own.Contents {
		t.Error("the same drawing has other contents")
	}
	if moved := drawnFrom(t, strings.ReplaceAll(blade, "<text>left out</text>", "\n")); moved.Contents != own.Contents {
		t.Error("what isn't cut counts")
	}
	for _, edit := range [][2]string{{"36 30", "36 31"}, {`id="stem"`, `id="stalk"`}, {"0 0 40 100", "0 0 40 101"}, {`M17`, `M20`}, {`r="3"`, `r="3.001"`}} {
		if other := drawnFrom(t, strings.Replace(blade, edit[0], edit[1], 1)); other.Contents == own.Contents {
			t.Errorf("%s is not counted", edit[1])
		}
	}
}

// Names of parts come from anyone's file.
func TestDrawingParts(t *testing.T) {
	k := drawnFrom(t, `<svg xmlns="http://www.w3.org/2000/svg" stroke="red">`+
		`<g id="a&#10;b"><path d="M0 0H9"/></g><g id="`+strings.Repeat("é", 50)+`"><path d="M0 1H9"/></g><g id="  "><path d="M0 2H9"/></g></svg>`)
	var parts []string
	for _, c := range k.Draw(nil, 1) {
		parts = append(parts, c.Part)
	}
	if want := []string{"ab", strings.Repeat("é", 40), "stroke"}; !slices.Equal(parts, want) {
		t.Errorf("%q", parts)
	}
}

// Random drawings: no panic, no NaN, all inside the box, joins on both cuts.
func TestDrawingRandom(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 13))
	made := 0
	for range 300 {
		size := math.Pow(10, 8*random.Float64()-4)
		num := func() string { return fmt.Sprintf(" %g", size*(random.Float64()-0.5)) }
		var paths []string
		for range 1 + random.IntN(5) {
			p := "M" + num() + num()
			for range random.IntN(6) {
				p += map[int]string{
					0: "L" + num() + num(), 1: "C" + num() + num() + num() + num() + num() + num(), 2: "Z", 3: "H" + num(),
					4: "A" + num() + num() + " 30 1 0" + num() + num(), 5: "m" + num() + num(), 6: "q" + num() + num() + num() + num(),
				}[random.IntN(7)]
			}
			paths = append(paths, p)
		}
		d, err := strokes.ReadPaths(paths, strokes.Options{})
		if err != nil {
			continue
		}
		made++
		k := motifs.Drawing(d)
		if !(k.Aspect >= 0.00999 && k.Aspect < 100.1) {
			t.Fatalf("%q: aspect %g", paths, k.Aspect)
		}
		cuts := k.Draw(nil, 1)
		for i, c := range cuts {
			last := c.At(0)
			for n := range 200 {
				p := c.At(float64(n) / 199)
				if !(math.Abs(p.X) <= 0.5+1e-9 && p.Y >= -1e-9 && p.Y <= 1+1e-9) {
					t.Fatalf("%q: cut %d at %v", paths, i, p)
				}
				if c.Curves() < 20 && r2.Norm(r2.Sub(p, last)) > 0.5 {
					t.Fatalf("%q: cut %d jumps to %v", paths, i, p)
				}
				last = p
			}
			for _, j := range c.Joins {
				if j == i || !slices.Contains(cuts[j].Joins, i) {
					t.Fatalf("%q: joins of %d and %d", paths, i, j)
				}
			}
		}
	}
	if made < 200 {
		t.Errorf("%d drawings", made)
	}
}
