package drawing

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

type points = []geometry.Point

// near compares to a billionth of a millimetre, which leaves room for rounding
// and for nothing else.
var near = cmpopts.EquateApprox(0, 1e-9)

// The window that clipping is tried on, and its middle:
//
//	(0,10)------(20,10)
//	   |           |
//	 (0,0)------(20,0)
var window = BoxWindow(geometry.Box{Max: geometry.Point{X: 20, Y: 10}})

func TestStrokesAreClippedExactly(t *testing.T) {
	pen := Pen{Width: 0.25, Dash: []float64{3, 1}}
	for _, test := range []struct {
		name  string
		in    Stroke
		wants []Mark
	}{
		{"inside", Stroke{Points: points{{X: 1, Y: 1}, {X: 19, Y: 9}}, Pen: pen},
			[]Mark{Stroke{Points: points{{X: 1, Y: 1}, {X: 19, Y: 9}}, Pen: pen}}},
		{"outside", Stroke{Points: points{{X: 1, Y: 11}, {X: 19, Y: 12}}, Pen: pen}, nil},
		{"past a corner", Stroke{Points: points{{X: 19, Y: -3}, {X: 23, Y: 1}}, Pen: pen}, nil},
		{"across", Stroke{Points: points{{X: -5, Y: 5}, {X: 25, Y: 5}}, Pen: pen},
			[]Mark{Stroke{Points: points{{Y: 5}, {X: 20, Y: 5}}, Pen: pen}}},
		// Out over the right edge and back in.
		{"out and in", Stroke{Points: points{{X: 16, Y: 2}, {X: 21, Y: 2}, {X: 21, Y: 4}, {X: 15, Y: 4}}, Pen: pen},
			[]Mark{
				Stroke{Points: points{{X: 16, Y: 2}, {X: 20, Y: 2}}, Pen: pen},
				Stroke{Points: points{{X: 20, Y: 4}, {X: 15, Y: 4}}, Pen: pen},
			}},
		{"along the edge", Stroke{Points: points{{X: -4}, {X: 30}}, Pen: pen},
			[]Mark{Stroke{Points: points{{}, {X: 20}}, Pen: pen}}},
		{"touching from outside", Stroke{Points: points{{X: 5, Y: 15}, {X: 10, Y: 10}, {X: 15, Y: 15}}, Pen: pen}, nil},
		{"closed", Stroke{Points: points{{X: 18, Y: 4}, {X: 22, Y: 5}, {X: 18, Y: 6}}, Closed: true, Pen: pen},
			[]Mark{
				Stroke{Points: points{{X: 18, Y: 4}, {X: 20, Y: 4.5}}, Pen: pen},
				Stroke{Points: points{{X: 20, Y: 5.5}, {X: 18, Y: 6}, {X: 18, Y: 4}}, Pen: pen},
			}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var d Drawing
			d.Add(Cuts, test.in)
			if diff := cmp.Diff(test.wants, d.Clipped(window).On(Cuts), near, cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("clipped (-want +got):\n%s", diff)
			}
		})
	}
}

func TestFillsAreClippedExactly(t *testing.T) {
	// An arrow whose two barbs, but not its notch, reach into the window.
	arrow := Fill{Points: points{{X: 15, Y: 1}, {X: 30, Y: 5}, {X: 15, Y: 9}, {X: 21, Y: 5}}, Ink: 200}
	var d Drawing
	d.Add(Footprints, arrow, Fill{Points: points{{X: 30}, {X: 31}, {X: 30, Y: 1}}})
	got := d.Clipped(window).On(Footprints)
	if len(got) != 1 {
		t.Fatalf("%d fills left, want the arrow's", len(got))
	}
	// Each barb is the triangle from its point to x = 20: by similar triangles
	// its edges meet x = 20 at heights 1 + 4/3 and 1 + 4·5/6.
	want := 2 * 0.5 * 5 * (4*5.0/6 - 4.0/3)
	if area := math.Abs(area(got[0].(Fill).Points)); math.Abs(area-want) > 1e-9 {
		t.Errorf("area %v, want %v", area, want)
	}
}

// Clipping keeps just what is inside: no place is lost and none is added.
func TestClippedFillsKeepTheirInside(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	at := func(size float64) geometry.Point {
		return geometry.Point{X: size * random.NormFloat64(), Y: size * random.NormFloat64()}
	}
	for range 300 {
		polygon := Fill{Points: star(random, at(10), 3+random.IntN(9))}
		w := Window{LeftOf(at(8), at(8)), LeftOf(at(8), at(8)), LeftOf(at(8), at(8))}
		left := polygon.clipped(w)
		for range 50 {
			p := at(12)
			want := w.Contains(p) && geometry.NewOutline(polygon.Points).Contains(p)
			got := len(left) == 1 && geometry.NewOutline(left[0].(Fill).Points).Contains(p)
			if got != want {
				t.Fatalf("%v is inside the clipped polygon: %v, want %v\n%v\n%v", p, got, want, polygon, w)
			}
		}
	}
}

// star returns a polygon without crossings, of uneven radius round a place.
func star(random *rand.Rand, centre geometry.Point, corners int) points {
	var out points
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		radius := 2 + 12*random.Float64()
		out = append(out, geometry.Point{X: centre.X + radius*cos, Y: centre.Y + radius*sin})
	}
	return out
}

func TestWordsStayWhole(t *testing.T) {
	var d Drawing
	in := Text{At: geometry.Point{X: 20, Y: 5}, Words: "stays, though it runs out"}
	d.Add(Notes, in, Text{At: geometry.Point{X: 20.001, Y: 5}, Words: "goes"})
	if diff := cmp.Diff([]Mark{in}, d.Clipped(window).On(Notes)); diff != "" {
		t.Errorf("clipped (-want +got):\n%s", diff)
	}
}

func TestMovedCarriesEverything(t *testing.T) {
	var d Drawing
	d.Add(Marks,
		Stroke{Points: points{{X: 1}, {X: 2}}, Closed: true, Pen: Pen{Width: 2}},
		Fill{Points: points{{Y: 1}}, Ink: 7},
		Text{At: geometry.Point{X: 1, Y: 1}, Words: "turned", Turn: 0.1})
	quarter := geometry.Motion{Sin: 1, X: 10, Y: 20}
	want := []Mark{
		Stroke{Points: points{{X: 10, Y: 21}, {X: 10, Y: 22}}, Closed: true, Pen: Pen{Width: 2}},
		Fill{Points: points{{X: 9, Y: 20}}, Ink: 7},
		Text{At: geometry.Point{X: 9, Y: 21}, Words: "turned", Turn: 0.1 + math.Pi/2},
	}
	if diff := cmp.Diff(want, d.Moved(quarter).On(Marks), near); diff != "" {
		t.Errorf("moved (-want +got):\n%s", diff)
	}
}

func TestStretchedKeepsPensAndRoom(t *testing.T) {
	var d Drawing
	d.Add(Marks, Stroke{Points: points{{X: 100, Y: 100}}, Pen: Pen{Width: 0.2}}, Text{At: geometry.Point{X: 50, Y: 10}, Size: 10})
	want := []Mark{
		Stroke{Points: points{{X: 101, Y: 98}}, Pen: Pen{Width: 0.2}},
		Text{At: geometry.Point{X: 50.5, Y: 9.8}, Size: 9.8},
	}
	if diff := cmp.Diff(want, d.Stretched(1.01, 0.98).On(Marks), near); diff != "" {
		t.Errorf("stretched (-want +got):\n%s", diff)
	}
}

func TestMirroredKeepsWordsReadable(t *testing.T) {
	var d Drawing
	d.Add(Cuts, Stroke{Points: points{{X: 1, Y: 2}, {X: 3, Y: 4}}, Pen: Pen{Width: 0.2}})
	d.Add(Notes,
		Text{At: geometry.Point{X: 5, Y: 6}, Words: "left", Turn: 0.1},
		Text{At: geometry.Point{X: 5, Y: 7}, Words: "middle", Align: Centre},
		Text{At: geometry.Point{X: 5, Y: 8}, Words: "right", Align: Right, Turn: -0.2})
	got := d.Mirrored()
	if diff := cmp.Diff([]Mark{Stroke{Points: points{{X: -1, Y: 2}, {X: -3, Y: 4}}, Pen: Pen{Width: 0.2}}}, got.On(Cuts), near); diff != "" {
		t.Errorf("mirrored (-want +got):\n%s", diff)
	}
	want := []Mark{
		Text{At: geometry.Point{X: -5, Y: 6}, Words: "left", Align: Right, Turn: -0.1},
		Text{At: geometry.Point{X: -5, Y: 7}, Words: "middle", Align: Centre},
		Text{At: geometry.Point{X: -5, Y: 8}, Words: "right", Turn: 0.2},
	}
	if diff := cmp.Diff(want, got.On(Notes), near); diff != "" {
		t.Errorf("mirrored (-want +got):\n%s", diff)
	}
}

func TestAppendDrawsLayerOverLayer(t *testing.T) {
	var under, over Drawing
	under.Add(Notes, Text{Words: "first"})
	over.Add(Notes, Text{Words: "second"})
	over.Add(Paper, Fill{Points: points{{}}})
	under.Append(over)
	if got := under.On(Notes); len(got) != 2 || got[1].(Text).Words != "second" || len(under.On(Paper)) != 1 {
		t.Errorf("got %v on notes and %v on paper", got, under.On(Paper))
	}
}

func TestCheckRefusesWhatCannotBePrinted(t *testing.T) {
	for _, m := range []Mark{
		Stroke{Points: points{{X: math.NaN()}}},
		Fill{Points: points{{}, {Y: math.Inf(1)}}},
		Text{At: geometry.Point{X: 1e6}},
		Stroke{},
	} {
		var d Drawing
		d.Add(Findings, m)
		if d.Check() == nil {
			t.Errorf("%#v is let through", m)
		}
	}
	if err := (Drawing{}).Check(); err != nil {
		t.Errorf("an empty drawing: %v", err)
	}
}

func TestArcsAreTrue(t *testing.T) {
	centre := geometry.Point{X: 105, Y: 150}
	for _, radius := range []float64{0.0004, 0.3, 40, 700, 30000} {
		circle := Circle(centre, radius)
		for i, a := range circle {
			b := circle[(i+1)%len(circle)]
			for _, p := range []geometry.Point{a, r2.Scale(0.5, r2.Add(a, b))} {
				if off := math.Abs(r2.Norm(r2.Sub(p, centre)) - radius); off > Flatness*(1+1e-6) {
					t.Fatalf("a circle of %g mm is %g mm off at %v", radius, off, p)
				}
			}
		}
	}
	arc := Arc(geometry.Point{}, 10, math.Pi/2, 0)
	if last := arc[len(arc)-1]; math.Abs(arc[0].Y-10) > 1e-12 || math.Abs(last.X-10) > 1e-12 || arc[1].X < 0 {
		t.Errorf("a clockwise quarter runs from %v by %v to %v", arc[0], arc[1], last)
	}
}

func TestHatchCoversTheInside(t *testing.T) {
	// A frame, open at the right: lines across its middle fall in two.
	//
	//	(0,9)-------(9,9)
	//	  |   (3,6)--(9,6)
	//	  |   (3,3)--(9,3)
	//	(0,0)-------(9,0)
	frame := points{{}, {X: 9}, {X: 9, Y: 3}, {X: 3, Y: 3}, {X: 3, Y: 6}, {X: 9, Y: 6}, {X: 9, Y: 9}, {Y: 9}}
	const angle, spacing = 0.7, 0.05
	var length float64
	outline := geometry.NewOutline(frame)
	for _, line := range Hatch(frame, angle, spacing) {
		a, b := line[0], line[1]
		length += r2.Norm(r2.Sub(b, a))
		if middle := r2.Scale(0.5, r2.Add(a, b)); !outline.Contains(middle) {
			t.Errorf("the line from %v to %v lies outside", a, b)
		}
		if turn := math.Atan2(b.Y-a.Y, b.X-a.X); math.Abs(turn-angle) > 1e-9 {
			t.Errorf("the line from %v to %v runs at %v", a, b, turn)
		}
	}
	// Lines so close cover the area, 81 − 18.
	if got := length * spacing; math.Abs(got-63) > 0.3 {
		t.Errorf("lines of %v mm², want 63", got)
	}
}

func TestHatchRunsThroughNeighbours(t *testing.T) {
	left := points{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	right := points{{X: 10}, {X: 20}, {X: 20, Y: 10}, {X: 10, Y: 10}}
	a, b := Hatch(left, 0, 1.3), Hatch(right, 0, 1.3)
	for i := range a {
		if a[i][1] != b[i][0] {
			t.Errorf("line %d ends at %v and goes on at %v", i, a[i][1], b[i][0])
		}
	}
}

func area(polygon points) float64 {
	var sum float64
	for i, a := range polygon {
		sum += r2.Cross(a, polygon[(i+1)%len(polygon)]) / 2
	}
	return sum
}

func TestThinnedStaysWithinTolerance(t *testing.T) {
	straight := points{{}, {X: 1}, {X: 2.5, Y: 0.0009}, {X: 4}, {X: 4, Y: 3}}
	if diff := cmp.Diff(points{{}, {X: 4}, {X: 4, Y: 3}}, Thinned(straight, 0.001)); diff != "" {
		t.Errorf("thinned (-want +got):\n%s", diff)
	}
	circle := Circle(geometry.Point{}, 40)
	if got := Thinned(circle, Flatness); len(got) != len(circle) {
		t.Errorf("%d points of a circle are left of %d", len(got), len(circle))
	}
	random := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		var walk points
		for i := range 60 {
			walk = append(walk, geometry.Point{X: float64(i), Y: 0.1 * random.NormFloat64()})
		}
		thin := Thinned(walk, 0.1)
		for _, p := range walk {
			nearest := math.Inf(1)
			for i := 1; i < len(thin); i++ {
				nearest = min(nearest, distanceTo(p, thin[i-1], thin[i]))
			}
			if nearest > 0.1 {
				t.Fatalf("%v is left %v off", p, nearest)
			}
		}
	}
}
