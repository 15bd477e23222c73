package screen

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// plans are of glasses of every shape, with a motif on each repeat and one on every other,
// one that keeps its shape, and one inside another.
func plans(t *testing.T) map[string]*pattern.Plan {
	t.Helper()
	all := map[string]*pattern.Plan{}
	for name, radii := range map[string][]float64{"straight": {40, 40}, "widens": {30, 45}, "narrows": {45, 30}, "barrel": {32, 43, 33}, "waist": {45, 35, 45}} {
		var stations []glass.Station
		for i, r := range radii {
			up := float64(i) / float64(len(radii)-1)
			stations = append(stations, glass.Station{Height: 100 * up, Radius: r, Wall: 7 - 5*up})
		}
		blank, err := glass.NewBlank(name, 9, stations)
		if err != nil {
			t.Fatal(err)
		}
		j := jobtest.On(blank, 6,
			jobtest.Motif(t, "leaf", nil, jobtest.Size(0.5, 0.6), jobtest.Turn(20)),
			jobtest.Motif(t, "fan", nil, jobtest.Size(0.4, 0.3), jobtest.At(0.3, 0.2), jobtest.Repeats(job.Even)),
		)
		if all[name], err = pattern.New(t.Context(), j, blank); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// flats yields every flat map of every plan.
func flats(t *testing.T, visit func(name string, p *pattern.Plan, f Flat)) {
	t.Helper()
	for name, p := range plans(t) {
		for _, inside := range []bool{false, true} {
			f, err := NewFlat(p, inside)
			if err != nil {
				t.Fatal(err)
			}
			visit(fmt.Sprintf("%s, inside %t", name, inside), p, f)
		}
	}
}

// A place of the map is the place of the glass that it shows.
func TestReverse(t *testing.T) {
	kinds := map[Kind]bool{}
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		kinds[f.Kind] = true
		for theta := -2.0; theta <= 2; theta += 0.5 {
			for z := 25.0; z < 90; z += 13 {
				s := geometry.Spot{Theta: theta, Along: p.Surface.AlongAt(z)}
				got := f.Reverse(f.Forward(s))
				if math.Abs(got.Theta-s.Theta) > 1e-9 || math.Abs(got.Along-s.Along) > 1e-6 {
					t.Errorf("%s: %v comes back as %v", name, s, got)
				}
			}
		}
	})
	if len(kinds) != 3 {
		t.Errorf("only %v were tried", kinds)
	}
}

// The shapes of a period, drawn once for each of the copies, are the cuts all round the
// glass.
func TestCopies(t *testing.T) {
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		w := NewWrap(f)
		if len(w.Copies) != p.Periods() {
			t.Errorf("%s: %d copies of %d periods", name, len(w.Copies), p.Periods())
		}
		for k := -1; k <= p.Periods(); k++ {
			copied := w.After
			switch {
			case k < 0:
				copied = w.Before
			case k < p.Periods():
				copied = w.Copies[k]
			}
			turned := float64(k*p.Period)*p.PitchAngle() - f.middle()
			for _, c := range p.Cuts {
				for _, s := range c.Samples {
					along := p.Surface.AlongAt(s.Height)
					want := f.Forward(geometry.Spot{Theta: s.Theta + turned, Along: along})
					got := moved(copied, f.Forward(geometry.Spot{Theta: s.Theta, Along: along}))
					if off := r2.Norm(r2.Sub(got, want)); off > 1e-6 {
						t.Fatalf("%s: copy %d of cut %d is %g off", name, k, c.ID, off)
					}
				}
			}
		}
	})
}

// A motif's copies are its frame on each repeat on which it stands, whatever the period, and one
// more at either end.
func TestMotifCopies(t *testing.T) {
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		for i, m := range NewWrap(f).Motifs {
			repeats := p.Job.Layout.Copies(p.Job.Motifs[i])
			n, last := p.Repeats, len(repeats)-1
			if len(m.Copies) != len(repeats)+2 {
				t.Fatalf("%s, motif %d: %d copies on %d repeats", name, i+1, len(m.Copies), len(repeats))
			}
			middle := p.Grip(i).Middle()
			for k, repeat := range append(repeats, repeats[last]-n, repeats[0]+n) {
				by := float64(repeat-repeats[0])*p.PitchAngle() - f.middle()
				want := f.Forward(geometry.Spot{Theta: middle.Theta + by, Along: middle.Along})
				if off := r2.Norm(r2.Sub(moved(m.Copies[k], f.Forward(middle)), want)); off > 1e-6 {
					t.Errorf("%s, motif %d: its copy on repeat %d is %g off", name, i+1, repeat, off)
				}
			}
		}
	})
}

// moved carries a point to a copy.
func moved(m [4]Precise, q geometry.Point) geometry.Point {
	return geometry.Motion{Cos: float64(m[0]), Sin: float64(m[1]), X: float64(m[2]), Y: float64(m[3])}.Apply(q)
}

// points reads the places of a path.
func points(t *testing.T, d string) [][]geometry.Point {
	t.Helper()
	var all [][]geometry.Point
	for _, part := range strings.Split(d, "M")[1:] {
		fields := strings.Fields(strings.TrimSuffix(part, "z"))
		if len(fields)%2 != 0 {
			t.Fatalf("odd: %q", part)
		}
		var line []geometry.Point
		for i := 0; i < len(fields); i += 2 {
			x, err := strconv.ParseFloat(fields[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			y, err := strconv.ParseFloat(fields[i+1], 64)
			if err != nil {
				t.Fatal(err)
			}
			line = append(line, geometry.Point{X: x, Y: y})
		}
		all = append(all, line)
	}
	return all
}

// A footprint as it is drawn is nowhere farther from the true one than no screen shows.
func TestFootprints(t *testing.T) {
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		w := NewWrap(f)
		for i := range p.Job.Motifs {
			drawn := points(t, w.Motifs[i].Footprint)
			n := 0
			for _, c := range p.Cuts {
				if c.Motif != i {
					continue
				}
				for _, o := range c.Outlines {
					outline := geometry.NewOutline(append(drawn[n], drawn[n][0]))
					n++
					for _, q := range f.charted(o.Points) {
						if off := nearest(outline.Points, q); off > fine+0.008 {
							t.Fatalf("%s: cut %d is drawn %.3f off", name, c.ID, off)
						}
					}
				}
			}
			if n != len(drawn) || n == 0 {
				t.Errorf("%s: %d outlines of motif %d, drawn %d", name, n, i+1, len(drawn))
			}
		}
	})
}

// nearest returns the distance from a polyline to a point.
func nearest(line []geometry.Point, q geometry.Point) float64 {
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		u := r2.Sub(line[i], line[i-1])
		at := 0.0
		if n := r2.Norm2(u); n > 0 {
			at = min(max(r2.Dot(r2.Sub(q, line[i-1]), u)/n, 0), 1)
		}
		best = min(best, r2.Norm(r2.Sub(q, r2.Add(line[i-1], r2.Scale(at, u)))))
	}
	return best
}

// In the round, every place of a footprint lies on the glass.
func TestGlass(t *testing.T) {
	for name, p := range plans(t) {
		for i, m := range NewGlass(p).Motifs {
			var cuts [][][3]float64
			if err := json.Unmarshal(m.Cuts, &cuts); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if len(cuts) == 0 || m.Called != p.Job.Motifs[i].Kind.Name {
				t.Errorf("%s: motif %d (%s) has %d outlines", name, i+1, m.Called, len(cuts))
			}
			for _, cut := range cuts {
				for _, at := range cut {
					if off := at[2] - p.Surface.RadiusAt(at[1]); math.Abs(off) > 0.02 {
						t.Fatalf("%s: %v is %.3f off the glass", name, at, off)
					}
				}
			}
		}
	}
}

// The box of the wrap holds its ends, and a motif's box its middle.
func TestBoxes(t *testing.T) {
	flats(t, func(name string, p *pattern.Plan, f Flat) {
		w := NewWrap(f)
		for _, line := range points(t, w.Ends+w.Edges+w.Seam) {
			for _, q := range line {
				const grain = 0.01
				if q.X < float64(w.Box[0])-grain || q.Y < float64(w.Box[1])-grain || q.X > float64(w.Box[2])+grain || q.Y > float64(w.Box[3])+grain {
					t.Fatalf("%s: %v is outside %v", name, q, w.Box)
				}
			}
		}
		if sheet := points(t, w.Paper); len(sheet) != 1 || geometry.BoxOf(sheet[0]...).Max.X < float64(w.Box[2])-0.01 {
			t.Errorf("%s: the paper's outline does not reach all of its box", name)
		}
		for _, m := range w.Motifs {
			var corners []geometry.Point
			for _, c := range m.Box {
				corners = append(corners, geometry.Point{X: float64(c[0]), Y: float64(c[1])})
			}
			if !geometry.NewOutline(corners).Contains(geometry.Point{X: float64(m.Middle[0]), Y: float64(m.Middle[1])}) {
				t.Errorf("%s: motif %d: the middle %v is not in %v", name, m.Number, m.Middle, m.Box)
			}
		}
	})
}

func TestNumber(t *testing.T) {
	for want, x := range map[string]float64{"0": -0.0001, "1.235": 1.2346, "-3": -3, "null": math.NaN()} {
		if got, err := json.Marshal(Number(x)); err != nil || string(got) != want {
			t.Errorf("%v is written %s", x, got)
		}
	}
	for want, x := range map[string]float64{"0": -0.001, "1.2": 1.2, "-0.05": -0.05, "12.35": 12.346, "-7": -7} {
		if got := string(appendNumber(nil, x)); got != want {
			t.Errorf("%v is written %s; want %s", x, got, want)
		}
	}
}
