package groove_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// maxPlaces bounds where a groove is measured and what its outlines are drawn by,
// from what is asked: some for each millimetre of its length and of the wheel's
// breadth, and more where it turns sharply, under each mitre.
func maxPlaces(length float64, wheel groove.Wheel) int {
	mitres := 1
	if wheel.Edge == groove.Gang {
		mitres = wheel.Mitres
	}
	return mitres * int(8*(length+wheel.Thick)+2500)
}

// maxThick is the thickest wheel that a job takes, in millimetres.
const maxThick = 150

// widestWheels are wheels with their sizes at the ends of what a job takes, of every
// edge.
func widestWheels() []groove.Wheel {
	const degree = math.Pi / 180
	var all []groove.Wheel
	for _, radius := range []float64{2.5, 40, 500} {
		for _, thick := range []float64{0.1, min(6, 1.9*radius), min(1.9*radius, maxThick)} {
			w := groove.Wheel{Radius: radius, Thick: thick}
			flat := w
			flat.Edge = groove.Flat
			all = append(all, flat)
			for _, convex := range []float64{0.1, 6, 500} {
				round := w
				round.Edge, round.Convex = groove.Round, convex
				all = append(all, round)
			}
			for _, angle := range []float64{20, 90, 170} {
				mitre := w
				mitre.Edge, mitre.Angle = groove.Mitre, angle*degree
				if (mitre.Thick/2)/math.Tan(mitre.Angle/2) >= radius {
					continue // the V would reach the axle
				}
				all = append(all, mitre)
				tipped := mitre
				tipped.Tip = 0.9 * mitre.Thick
				all = append(all, tipped)
				rounded := mitre
				if rounded.TipRadius = 0.4 * mitre.Thick; thick > 0.1 {
					all = append(all, rounded) // the others: TestBuriedTip
				}
			}
		}
	}
	for _, mitres := range []int{2, 5, 40} {
		for _, spacing := range []float64{0.05, 0.7, 10} {
			for _, angle := range []float64{20, 90, 170} {
				g := groove.Wheel{Edge: groove.Gang, Radius: 40, Angle: angle * degree, Mitres: mitres, Spacing: spacing}
				g.Thick = float64(mitres)*spacing + 0.2
				if g.Thick < 2*g.Radius && (spacing/2)/math.Tan(g.Angle/2) < g.Radius {
					all = append(all, g)
				}
			}
		}
	}
	return all
}

// extremeGlass is a cone from a stem to a bowl, upright or as flat as a dish.
type extremeGlass struct{ halfAngle, radius float64 }

func (g extremeGlass) surface() *geometry.Surface {
	s := geometry.NewCone(geometry.Angle(g.halfAngle), geometry.Circle{Radius: g.radius, Height: 50}, 50).Surface()
	return &s
}

// Wheels, glasses, depths, lengths and directions at their extremes, each pair of
// them: every groove is cut, with finite places and no more of them than its bound.
func TestExtremesInPairs(t *testing.T) {
	const degree = math.Pi / 180
	glasses := []extremeGlass{{0, 2}, {0, 40}, {0, 500}, {20 * degree, 40}, {-60 * degree, 40}, {85 * degree, 100}}
	depths := []float64{0.01, 0.5, 10, 50}
	lengths := []float64{0.01, 1, 30, 400}
	angles := []float64{0, 1e-6, 45, 89.999, 90}
	wheels := widestWheels()
	plain := groove.Wheel{Edge: groove.Mitre, Radius: 40, Thick: 6, Angle: 90 * degree}
	cut := func(g extremeGlass, w groove.Wheel, depth, length, angle, bend float64) {
		if depth >= min(w.Radius, g.radius) {
			return // refused where it is asked for
		}
		checkExtreme(t, g, w, depth, length, angle*degree, bend)
	}
	for _, w := range wheels {
		for _, g := range glasses {
			cut(g, w, 0.5, 30, 45, 0)
		}
		for _, depth := range depths {
			cut(glasses[1], w, depth, 30, 45, 0)
		}
		for _, length := range lengths {
			cut(glasses[1], w, 0.5, length, 45, 0)
		}
		for _, angle := range angles {
			cut(glasses[1], w, 0.5, 30, angle, 0)
		}
		for _, bend := range []float64{1, 20, 180} {
			cut(glasses[1], w, 0.5, 30, 45, bend*degree)
		}
	}
	for _, g := range glasses {
		for _, depth := range depths {
			for _, length := range lengths {
				for _, angle := range angles {
					cut(g, plain, depth, length, angle, 0)
					cut(g, plain, depth, length, angle, 20*degree)
				}
			}
		}
	}
}

// A gang of forty mitres 0.05 mm apart is cut like any other.
func TestFineGang(t *testing.T) {
	w := groove.Wheel{Edge: groove.Gang, Radius: 40, Thick: 8, Angle: math.Pi / 2, Mitres: 40, Spacing: 0.05}
	for _, angle := range []float64{0, 0.3, math.Pi / 4, math.Pi / 2} {
		checkExtreme(t, extremeGlass{0, 42}, w, 0.5, 60, angle, 0)
		checkExtreme(t, extremeGlass{0.1, 42}, w, 0.5, 60, angle, 0.3)
	}
}

// A tip rounded by 0.04 mm on a wheel a tenth of a millimetre thick, far below its
// shoulders.
func TestBuriedTip(t *testing.T) {
	for _, radius := range []float64{40, 500} {
		for _, angle := range []float64{20, 90} {
			w := groove.Wheel{Edge: groove.Mitre, Radius: radius, Thick: 0.1, Angle: angle * math.Pi / 180, TipRadius: 0.04}
			checkExtreme(t, extremeGlass{0, 40}, w, 10, 30, math.Pi/4, 0)
		}
	}
}

// A drum, as broad as a wheel may be, set askew on a taper.
func TestDrumOnTaper(t *testing.T) {
	glass := extremeGlass{20 * math.Pi / 180, 40}
	for _, w := range widestWheels() {
		if w.Thick == maxThick {
			for _, angle := range []float64{0, 0.4, math.Pi / 4, 1.2, math.Pi / 2} {
				checkExtreme(t, glass, w, 0.5, 30, angle, 0)
			}
		}
	}
}

// checkExtreme cuts a mark of a length and a direction, straight or bent into an
// arc that turns by an angle, and looks at what comes of it.
func checkExtreme(t *testing.T, g extremeGlass, w groove.Wheel, depth, length, angle, bend float64) {
	t.Helper()
	where := fmt.Sprintf("glass %+v, wheel %+v, depth %g, length %g, angle %g, bend %g", g, w, depth, length, angle, bend)
	done := make(chan string, 1)
	go func() {
		defer func() {
			if r := recover(); r != nil {
				done <- fmt.Sprint("panics: ", r)
			}
		}()
		done <- wrongWith(groove.Cut(g.surface(), extremeLine(length, angle, bend), w, depth, 0.1), length, w)
	}()
	// A groove takes a millisecond; nothing that ends takes a thousand times that.
	select {
	case wrong := <-done:
		if wrong != "" {
			t.Errorf("%s: %s", where, wrong)
		}
	case <-time.After(20 * time.Second):
		t.Errorf("%s: does not end", where)
	}
}

// extremeLine returns a line about the place 50 mm up.
func extremeLine(length, angle, bend float64) groove.Line {
	sin, cos := math.Sincos(angle)
	to := func(along, aside float64) geometry.Point {
		return geometry.Point{X: along*sin + aside*cos, Y: 50 + along*cos - aside*sin}
	}
	if bend == 0 {
		return groove.NewLine([]geometry.Point{to(-length/2, 0), to(length/2, 0)})
	}
	const parts = 64
	radius := length / bend
	points := make([]geometry.Point, parts+1)
	for i := range points {
		s, c := math.Sincos(bend * (float64(i)/parts - 0.5))
		points[i] = to(radius*s, radius*(1-c))
	}
	return groove.NewLine(points)
}

// wrongWith says what is wrong with a groove, "" if nothing is.
func wrongWith(g groove.Groove, length float64, w groove.Wheel) string {
	places := len(g.Samples)
	for _, o := range g.Outlines {
		places += len(o.Points)
		for _, q := range o.Points {
			if !(r2.Norm(q) < 1e6) {
				return fmt.Sprintf("its outline runs to %v", q)
			}
		}
	}
	switch most := maxPlaces(length, w); {
	case len(g.Samples) == 0:
		return "it has no place"
	case places > most:
		return fmt.Sprintf("it is measured in %d places, at most %d", places, most)
	case !(g.Depth > 0 && g.Depth <= g.Asked*(1+1e-9)):
		return fmt.Sprintf("it is %g deep, asked for %g", g.Depth, g.Asked)
	case !(g.Length > 0 && g.Width >= 0 && g.Volume >= 0) || math.IsInf(g.Width+g.Volume, 0):
		return fmt.Sprintf("length %g, width %g, volume %g", g.Length, g.Width, g.Volume)
	}
	for i, s := range g.Samples {
		if !(math.Abs(s.Theta)+math.Abs(s.Height)+math.Abs(s.Left)+math.Abs(s.Right) < 1e6) || !(s.Depth >= 0) {
			return fmt.Sprintf("sample %d is %+v", i, s)
		}
	}
	return ""
}
