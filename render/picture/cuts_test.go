package picture

import (
	"fmt"
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
)

// plansForWalls returns plans with every edge of wheel, on all sorts of glass.
func plansForWalls(t *testing.T) map[string]*pattern.Plan {
	t.Helper()
	const (
		widening  = "{height=0, across=60, wall=8}, {height=90, across=90, wall=4}"
		narrowing = "{height=0, across=92, wall=8}, {height=90, across=66, wall=4}"
		bulged    = "{height=0, across=60, wall=8}, {height=40, across=84, wall=5}, {height=95, across=64, wall=4}"
	)
	all := map[string]*pattern.Plan{"the demo": demo(t), "a trellis": planFor(t, trellis)}
	for _, c := range []struct{ name, edge, stations string }{
		{"mitre", "edge = \"mitre\"\nangle = 90", bulged},
		{"round", "edge = \"round\"\nradius = 5", widening},
		{"flat", "edge = \"flat\"", narrowing},
		{"gang", "edge = \"gang\"\nangle = 90\nmitres = 3\nspacing = 1.5", widening},
	} {
		all[c.name] = planFor(t, fmt.Sprintf(`
length = "mm"
[blank]
station = [%s]
[[wheel]]
name = "w"
across = 90
thick = 8
%s
[layout]
repeats = 4
[[motif]]
kind = "leaf"
wheel = "w"
depth = 0.8
on = "odd"
fronds = 3
[[motif]]
kind = "fan"
wheel = "w"
depth = 0.6
on = "even"
turn = 30
rays = 4
`, c.stations, c.edge))
	}
	return all
}

func viewOf(p *pattern.Plan, turn, down float64) drawing.Drawing {
	return newView(p, newWalls(p, details()[0]), stance{turn, down}, false).drawing
}

// The one upright cut of a glass, seen from all sides: it runs from 20 to 80 mm,
// and is as wide as the chord of its footprint.
func TestCutLiesWhereItIs(t *testing.T) {
	p := planFor(t, upright)
	const r = 40.0
	half := p.Cuts[0].Width / 2 / r // in angle
	for _, c := range []struct {
		name       string
		turn, down float64
		layer      drawing.Layer
		from, to   float64 // across
		lift       float64 // what the tilt adds to its heights
	}{
		{"in front", 0, 0, drawing.Cuts, -r * math.Sin(half), r * math.Sin(half), 0},
		{"two turns on", 720, 0, drawing.Cuts, -r * math.Sin(half), r * math.Sin(half), 0},
		{"30° to the right", -30, 0, drawing.Cuts, r * math.Sin(30*degree-half), r * math.Sin(30*degree+half), 0},
		{"60° to the left", 60, 0, drawing.Cuts, -r * math.Sin(60*degree+half), -r * math.Sin(60*degree-half), 0},
		// As good as on the side: 40 mm from the axis, and no wider than a hair.
		{"on the right side", -88, 0, drawing.Cuts, r * math.Sin(88*degree-half), r * math.Sin(88*degree+half), 0},
		{"on the left side", 88, 0, drawing.Cuts, -r * math.Sin(88*degree+half), -r * math.Sin(88*degree-half), 0},
		{"behind", 180, 0, drawing.Footprints, -r * math.Sin(half), r * math.Sin(half), 0},
		{"behind, to the right", 180 + 30, 0, drawing.Footprints, r * math.Sin(30*degree-half), r * math.Sin(30*degree+half), 0},
		// Looked down on by one in eight, the near side stands lower by an eighth of
		// the radius and the far one higher.
		{"in front, from above", 0, 0.125, drawing.Cuts, -r * math.Sin(half), r * math.Sin(half), -5},
		{"behind, from above", 180, 0.125, drawing.Footprints, -r * math.Sin(half), r * math.Sin(half), 5},
	} {
		d := viewOf(p, c.turn*degree, c.down)
		box := boxOf(d, c.layer)
		want := geometry.Box{Min: geometry.Point{X: c.from, Y: 20 + c.lift}, Max: geometry.Point{X: c.to, Y: 80 + c.lift}}
		// Its ends are points: what is too thin to see at them is left out.
		const ends = 0.2
		if !near(box.Min.X, want.Min.X, 0.02) || !near(box.Max.X, want.Max.X, 0.02) ||
			!near(box.Min.Y, want.Min.Y, ends) || !near(box.Max.Y, want.Max.Y, ends) {
			t.Errorf("%s: lies in %.3f, want %.3f", c.name, box, want)
		}
		other := drawing.Cuts
		if c.layer == drawing.Cuts {
			other = drawing.Footprints
		}
		if math.Abs(c.turn) != 88 && len(areas(d, other)) > 0 {
			t.Errorf("%s: it is on the other side too", c.name)
		}
	}
}

// On the near side the cut has a dark flank at the left, away from the light, and
// a light one at the right. On the far side it is faint: hardly lighter or darker
// than the glass it is seen through.
func TestNearIsStrongAndFarIsFaint(t *testing.T) {
	p := planFor(t, upright)
	var left, right tone
	for _, a := range areas(viewOf(p, 0, 0), drawing.Cuts)[1:] { // after the ground under all
		for _, o := range a.Outlines {
			middle := polygon(o).middle()
			if math.Abs(ringArea(o)) < 10 {
				continue // the tails
			}
			if middle.X < 0 {
				left = tone(a.Ink.Grey())
			} else {
				right = tone(a.Ink.Grey())
			}
		}
	}
	if left == 0 || right == 0 || right-left < 100 {
		t.Errorf("the flanks are grey %.0f and %.0f of 255", left, right)
	}
	glass := hollow(0).ink().Grey()
	for _, a := range areas(viewOf(p, math.Pi, 0), drawing.Footprints) {
		if grey := a.Ink.Grey(); math.Abs(float64(grey)-float64(glass)) > 30 {
			t.Errorf("a far wall is grey %d on glass of grey %d", grey, glass)
		}
	}
}

// Nothing of a cut lies outside the glass, at any turn, and what is drawn can be
// printed.
func TestCutsStayOnTheGlass(t *testing.T) {
	for name, p := range plansForWalls(t) {
		w := newWalls(p, details()[0])
		for _, tilt := range []float64{0, DefaultTilt, MaxTilt} {
			for _, turn := range []float64{17, 133} {
				s := stance{turn * degree, math.Tan(tilt)}
				v := newView(p, w, s, true)
				if err := v.drawing.Check(); err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				outline := geometry.NewOutline(outside(p.Blank, s).outline())
				worst := 0.0
				for _, layer := range []drawing.Layer{drawing.Cuts, drawing.Footprints} {
					for _, a := range areas(v.drawing, layer) {
						for _, o := range a.Outlines {
							for i := 0; i < len(o); i += 11 {
								worst = max(worst, outline.DistanceTo(o[i], 5))
							}
						}
					}
				}
				if worst > 0.05 {
					t.Errorf("%s, turned %g°, tilt %.0f°: a cut is %.3f mm outside the glass", name, turn, tilt/degree, worst)
				}
			}
		}
	}
}

// Turning the glass by one repeat shows the same picture.
func TestRepeatsLookAlike(t *testing.T) {
	p := demo(t)
	for _, layer := range []drawing.Layer{drawing.Cuts, drawing.Footprints} {
		var first float64
		for i := range p.Repeats {
			area := 0.0
			for _, a := range areas(viewOf(p, float64(i)*p.PitchAngle()+0.3, math.Tan(DefaultTilt)), layer) {
				for _, o := range a.Outlines {
					area += ringArea(o)
				}
			}
			if i == 0 {
				first = area
			}
			if math.Abs(area-first) > 0.002*first {
				t.Errorf("repeat %d in front: %.2f mm² on layer %v, the first has %.2f", i+1, area, layer, first)
			}
		}
	}
}
