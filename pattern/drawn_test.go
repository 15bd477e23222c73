package pattern

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/motifs"
	"roundlay/motifs/strokes"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// blade is a stem with a frond on it and a ring above, in a box of 40 by 100.
const blade = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 100" fill="none" stroke="black">
<path id="stem" d="M20 100 L20 20"/><path id="frond" d="M20 60 L36 30"/><circle id="ring" cx="10" cy="20" r="9"/></svg>`

// drawn returns a motif made of a drawing, 50 mm high in its own proportions.
func drawn(t *testing.T, svg string, change ...func(*job.Motif)) job.Motif {
	t.Helper()
	d, err := strokes.Read([]byte(svg), strokes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	m := job.Motif{Kind: motifs.Drawing(d), Values: motifs.Values{}, Depth: 0.5, X: of(0.25), Y: of(0.5), Height: mm(50)}
	for _, f := range change {
		f(&m)
	}
	return m
}

// The places of a drawing's cuts by hand: on a straight glass of 40 mm radius with six
// repeats, the box's middle is a quarter of 60° to the right, 50 mm up. A place (x, y) of
// the viewBox is x/40 - 1/2 of the width, 20 mm, to the right of it, and 1/2 - y/100 of
// the height above it.
func TestDrawnPlaces(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		change func(*job.Motif)
		place  func(x, y float64) (right, up float64)
	}{
		{"as drawn", func(*job.Motif) {}, func(x, y float64) (float64, float64) { return x, y }},
		{"mirrored", jobtest.Mirrored, func(x, y float64) (float64, float64) { return -x, y }},
		{"turned", jobtest.Turn(90), func(x, y float64) (float64, float64) { return -y, x }},
		{"by its width", func(m *job.Motif) { m.Width, m.Height = mm(10), job.Measure{} },
			func(x, y float64) (float64, float64) { return x / 2, y / 2 }},
		{"stretched", func(m *job.Motif) { m.Width = mm(40) }, func(x, y float64) (float64, float64) { return 2 * x, y }},
	} {
		p, err := New(t.Context(), jobtest.On(jobtest.Straight(t), 6, drawn(t, blade, c.change)), jobtest.Straight(t))
		if err != nil {
			t.Fatal(err)
		}
		for i, ends := range [][2][2]float64{{{20, 100}, {20, 20}}, {{20, 60}, {36, 30}}} {
			for k, at := range ends {
				right, up := c.place((at[0]/40-0.5)*20, (0.5-at[1]/100)*50)
				s := p.Cuts[i].Samples
				got := s[k*(len(s)-1)]
				if off := math.Hypot(40*(got.Theta-math.Pi/12)-right, got.Height-50-up); off > 0.002 {
					t.Errorf("%s: end %d of cut %d is %g mm off", c.name, k, i+1, off)
				}
			}
		}
		// The frond meets the stem; the stem's end lies in the ring's groove, half a millimetre
		// from its line.
		if got := p.Cuts[0].Joins; !slices.Equal(got, []int{2, 3}) || p.Cuts[0].Part != "stem" {
			t.Errorf("%s: the stem %q joins %v", c.name, p.Cuts[0].Part, got)
		}
	}
}

// A closed line is cut all round: as long as its circle, as deep everywhere, without a step
// where it closes, and it runs on into no other.
func TestDrawnRing(t *testing.T) {
	t.Parallel()
	const ring = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 100"><circle cx="20" cy="50" r="18" stroke="red"/></svg>`
	for _, radii := range [][]float64{{40, 40}, {40, 45}, {36, 42, 38}} {
		p, err := New(t.Context(), jobtest.On(jobtest.BlankOf(t, radii...), 6, drawn(t, ring)), jobtest.BlankOf(t, radii...))
		if err != nil {
			t.Fatal(err)
		}
		c := p.Cuts[0]
		if want := 2 * math.Pi * 9; math.Abs(c.Length/want-1) > 0.002 || c.Touch || c.RunsOn {
			t.Errorf("%v: %g mm long, touch %t, runs on %t; wanted %g", radii, c.Length, c.Touch, c.RunsOn, want)
		}
		for _, s := range c.Samples {
			if math.Abs(s.Depth-0.5) > 0.001 { // the tails of an open line come to nothing
				t.Fatalf("%v: at %g of %g it is %g deep", radii, s.Along, c.Length, s.Depth)
			}
		}
		first, last := c.Samples[0], c.Samples[len(c.Samples)-1]
		if math.Abs(first.HalfWidth()-last.HalfWidth()) > 1e-3 || r2.Norm(r2.Sub(first.LeftEdge, last.LeftEdge)) > 0.01 {
			t.Errorf("%v: where it closes it is %g wide and %g", radii, 2*first.HalfWidth(), 2*last.HalfWidth())
		}
		if p.GoesOn() {
			t.Errorf("%v: it goes on into its next copy", radii)
		}
	}
}

// A drawing that was edited is laid out anew, even where all else of the job is the same.
func TestEditorDrawing(t *testing.T) {
	t.Parallel()
	e := new(Editor)
	blank := jobtest.Straight(t)
	seen := map[string]bool{}
	for _, edit := range []string{"36 30", "34 32", "36 30", `36 30"/><path d="M0 100H9`, `36 30"/><path d="M-10 90H9`} {
		j := jobtest.On(blank, 6, drawn(t, strings.Replace(blade, "36 30", edit, 1)))
		plans, err := e.Lay(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		fresh, err := new(Editor).Lay(t.Context(), j)
		if err != nil {
			t.Fatal(err)
		}
		if off := samePlan(fresh, plans); off != "" {
			t.Errorf("%s differs from scratch: %s", edit, off)
		}
		seen[Fingerprint(j)] = true
	}
	if len(seen) != 4 {
		t.Errorf("%d fingerprints of 4 drawings", len(seen))
	}
}

// On a set of blanks a drawing has one size, in its own proportions.
func TestDrawnSet(t *testing.T) {
	t.Parallel()
	j := jobtest.On(jobtest.Straight(t), 6, drawn(t, blade, func(m *job.Motif) { m.Width, m.Height = of(0.5), job.Measure{} }))
	j.Blanks = append(j.Blanks, jobtest.BlankOf(t, 36, 36))
	plans, err := new(Editor).Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range plans {
		s := p.set(p.sized[0])
		if want := math.Pi * 36 / 6; math.Abs(s.width-want) > 1e-9 || math.Abs(s.height-2.5*want) > 1e-9 {
			t.Errorf("%g by %g, wanted %g by %g", s.width, s.height, want, 2.5*want)
		}
	}
}
