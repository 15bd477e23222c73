package strokes_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs/strokes"
)

// touch is the default distance, for a drawing that is 100 in its longer side.
const touch = 100.0 / 600

// Strokes that cross, meet, nearly meet, run beside each other, and don't.
func TestJoinsByHand(t *testing.T) {
	type join struct {
		a, b int
		at   geometry.Point
	}
	for _, test := range []struct {
		name  string
		data  []string
		joins []join
	}{
		{"a cross", []string{"M0 50H100", "M50 0V100"}, []join{{0, 1, place(50, 50)}}},
		{"a T", []string{"M0 0H100", "M30 0V50"}, []join{{0, 1, place(30, 0)}}},
		{"an L", []string{"M0 0H100", "M100 0V50"}, []join{{0, 1, place(100, 0)}}},
		{"nearly a T", []string{"M0 0H100", "M30 0.15V50"}, []join{{0, 1, place(30, 0.075)}}},
		{"not a T", []string{"M0 0H100", "M30 0.2V50"}, nil},
		{"across a level arc twice", []string{"M0 50A50 50 0 0 1 100 50", "M0 20H100"}, []join{{0, 1, place(10, 20)}, {0, 1, place(90, 20)}}},
		{"a star of three", []string{"M0 0L100 0", "M0 0L0 100", "M0 0L70 70"}, []join{{0, 1, place(0, 0)}, {0, 2, place(0, 0)}, {1, 2, place(0, 0)}}},
		{"apart", []string{"M0 0H100", "M0 1H100"}, nil},
		{"a divided corner", []string{"M0 0H100V50"}, []join{{0, 1, place(100, 0)}}},
		{"a square", []string{"M0 0H100V100H0z"}, []join{{0, 1, place(100, 0)}, {0, 3, place(0, 0)}, {1, 2, place(100, 100)}, {2, 3, place(0, 100)}}},
		{"a ring and its spoke", []string{"M0 50A50 50 0 0 1 100 50A50 50 0 0 1 0 50z", "M50 50H100"}, []join{{0, 1, place(100, 50)}}},
	} {
		d, err := strokes.ReadPaths(test.data, strokes.Options{})
		if err != nil {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		if len(d.Joins) != len(test.joins) {
			t.Errorf("%s: %v", test.name, d.Joins)
			continue
		}
		for i, want := range test.joins {
			if got := d.Joins[i]; got.A != want.a || got.B != want.b || !near(got.At, want.at, touch/10) {
				t.Errorf("%s: %v, want %v", test.name, got, want)
			}
		}
	}
	// Along a common part there is one join; where it turns off, at a corner, two more.
	d := fit(t, "M0 0H100", "M20 0H60L80 40")
	if len(d.Joins) != 3 || d.Joins[0].A != 0 || d.Joins[0].B != 1 {
		t.Errorf("beside each other: %v", d.Joins)
	}
}

// Without a touch, strokes meet only where they really do.
func TestJoinsWithoutATouch(t *testing.T) {
	d, err := strokes.ReadPaths([]string{"M0 0H100", "M30 0.1V50", "M40 -9C40 0 60 0 60 9"}, strokes.Options{Touch: -1})
	if err != nil || len(d.Joins) != 1 || !near(d.Joins[0].At, place(50, 0), 0.01) {
		t.Errorf("%v, %v", d.Joins, err)
	}
}

// TestJoinsAgainstSimpleFeatures compares which strokes of random drawings meet, and
// where those that do are, with distances and intersections by another library.
func TestJoinsAgainstSimpleFeatures(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 1))
	pairs, places := 0, 0
	for range 20 {
		d := fit(t, randomPaths(random, 8)...)
		width, height := d.Box.Size()
		within := strokes.DefaultTouch * math.Max(width, height)
		var lines []geom.Geometry
		for _, s := range d.Strokes {
			lines = append(lines, lineString(s.Points(within/50)))
		}
		met := map[[2]int][]geometry.Point{}
		for _, j := range d.Joins {
			met[[2]int{j.A, j.B}] = append(met[[2]int{j.A, j.B}], j.At)
		}
		for i := range lines {
			for j := i + 1; j < len(lines); j++ {
				apart, ok := geom.Distance(lines[i], lines[j])
				at := met[[2]int{i, j}]
				// Lines stand for curves, here and there.
				if ok && apart < 0.9*within && len(at) == 0 || apart > 1.1*within && len(at) > 0 {
					t.Errorf("strokes %d and %d are %.3g apart, touch is %.3g: joins %v", i, j, apart, within, at)
				}
				if len(at) > 0 {
					pairs++
				}
				for _, p := range at {
					if p := pointOf(p); distance(p, lines[i]) > 0.6*within || distance(p, lines[j]) > 0.6*within {
						t.Errorf("strokes %d and %d: the join at %v isn't on both", i, j, p.AsText())
					}
				}
				meet, err := geom.Intersection(lines[i], lines[j])
				if err != nil {
					continue // the library gave up
				}
				crossings := meet.DumpCoordinates()
				for k := range crossings.Length() {
					c := crossings.GetXY(k)
					places++
					if !slices.ContainsFunc(at, func(p geometry.Point) bool {
						return runsTo(d.Strokes[i], lines[j], geometry.Point{X: c.X, Y: c.Y}, p, within)
					}) {
						t.Errorf("strokes %d and %d cross at %v, and have no join there: %v", i, j, c, at)
					}
				}
			}
		}
	}
	if pairs < 500 || places < 500 {
		t.Errorf("only %d pairs meet, in %d crossings", pairs, places)
	}
	t.Logf("%d pairs meet, %d crossings", pairs, places)
}

// runsTo reports whether two places on a stroke are one contact with a line: between
// them the stroke is nowhere apart from it for long.
func runsTo(s strokes.Stroke, line geom.Geometry, from, to geometry.Point, within float64) bool {
	if near(from, to, 3*within) {
		return true
	}
	points := s.Points(within / 50)
	index := func(p geometry.Point) (best int) {
		for i := range points {
			if r2.Norm(r2.Sub(points[i], p)) < r2.Norm(r2.Sub(points[best], p)) {
				best = i
			}
		}
		return best
	}
	i, j := index(from), index(to)
	gap := 0.0
	for k := min(i, j) + 1; k <= max(i, j); k++ {
		gap += r2.Norm(r2.Sub(points[k], points[k-1]))
		if distance(pointOf(points[k]), line) <= within {
			gap = 0
		}
		if gap > 4*within {
			return false
		}
	}
	return true
}

func distance(a, b geom.Geometry) float64 {
	d, _ := geom.Distance(a, b)
	return d
}

// lineString is a line of points as the other library has it.
func lineString(points []geometry.Point) geom.Geometry {
	var xy []float64
	for _, p := range points {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewLineString(geom.NewSequence(xy, geom.DimXY)).AsGeometry()
}

// pointOf is a place as the other library has it.
func pointOf(p geometry.Point) geom.Geometry { return geom.XY{X: p.X, Y: p.Y}.AsPoint().AsGeometry() }
