package picture

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// An upright cut on a straight glass of radius 40: the surface's curvature across
// it is 1/40.
func TestSections(t *testing.T) {
	cone := geometry.NewCone(0, geometry.Circle{Radius: 40}, 0).Surface()
	s := groove.Sample{
		At: geometry.Point{X: 0, Y: 50}, Height: 50, Depth: 0.8, Left: 2, Right: 2,
		LeftEdge: geometry.Point{X: -2, Y: 50}, RightEdge: geometry.Point{X: 2, Y: 50},
	}
	for _, c := range []struct {
		name   string
		wheel  groove.Wheel
		x      []float64
		depths []float64
	}{
		{"mitre", groove.Wheel{Edge: groove.Mitre, Angle: 90 * degree}, []float64{-2, 0, 2}, []float64{0, 0.8, 0}},
		// The depth falls with the square of the way to the edge: 0.8 (1 - 0.7²).
		{"round", groove.Wheel{Edge: groove.Round, Convex: 5}, []float64{-2, -1.4, -0.7, 0, 0.7, 1.4, 2},
			[]float64{0, 0.408, 0.702, 0.8, 0.702, 0.408, 0}},
		// 2 mm off its middle a flat panel is 2²/(2·40) = 0.05 mm less deep: its
		// faces leave a step of 0.75.
		{"flat", groove.Wheel{Edge: groove.Flat, Thick: 4}, []float64{-2, -1, 0, 1, 2}, []float64{0.75, 0.7875, 0.8, 0.7875, 0.75}},
	} {
		rungs := section(s, c.wheel, &cone, details()[0])[0]
		if len(rungs) != len(c.x) {
			t.Fatalf("%s: %d rungs", c.name, len(rungs))
		}
		for i, r := range rungs {
			if !near(r.at.X, c.x[i], 1e-9) || !near(r.depth, c.depths[i], 1e-9) {
				t.Errorf("%s, rung %d: %.4f deep at %.3f, want %.4f at %.3f", c.name, i, r.depth, r.at.X, c.depths[i], c.x[i])
			}
			// Below the touching plane a flat panel is level.
			if c.name == "flat" && !near(r.sunk, 0.8, 1e-9) {
				t.Errorf("flat, rung %d is %.4f below the plane, want 0.8", i, r.sunk)
			}
		}
	}
	// Three mitres of 90°, 1 mm apart and 0.8 deep: they run into one another 0.3
	// deep, half a millimetre from each bottom. The outer ones are 1/80 less deep.
	g := section(s, groove.Wheel{Edge: groove.Gang, Angle: 90 * degree, Mitres: 3, Spacing: 1}, &cone, details()[0])
	if len(g) != 3 {
		t.Fatalf("a gang of three leaves %d mitres", len(g))
	}
	for i, offset := range []float64{1, 0, -1} { // the map's X grows to the right of the cut
		bottom := 0.8 - offset*offset/80
		if r := g[i][1]; !near(r.at.X, offset, 1e-9) || !near(r.depth, bottom, 1e-9) {
			t.Errorf("mitre %d: %.4f deep at %.3f, want %.4f at %.3f", i+1, r.depth, r.at.X, bottom, offset)
		}
		if r := g[i][0]; !near(r.depth, bottom-0.5, 1e-9) {
			t.Errorf("mitre %d: the crest is %.4f deep, want %.4f", i+1, r.depth, bottom-0.5)
		}
	}
}

// trellis is two straight cuts that cross in the middle of a straight glass.
const trellis = `
length = "mm"
[blank]
station = [{height=0, across=100, wall=9}, {height=100, across=100, wall=8}]
[limits]
land = 0
clear = 0
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 8
angle = 90
[layout]
repeats = 3
band = [20, 80]
[[motif]]
kind = "diamond"
wheel = "mitre"
depth = 1
width = 0.5
height = 0.8
across = 1
up = 1
`

// The walls that are seen cover the footprints once: where two cuts of width w
// cross at an angle they share a rhombus of w²/sin φ.
func TestCrossingIsCoveredOnce(t *testing.T) {
	p := planFor(t, trellis)
	if len(p.Cuts) != 2 {
		t.Fatalf("%d cuts, want two that cross", len(p.Cuts))
	}
	want := 0.0
	var ahead [2]geometry.Point
	for i, c := range p.Cuts {
		for _, o := range c.Outlines {
			want += math.Abs(ringArea(o.Points))
		}
		ahead[i] = r2.Unit(r2.Sub(c.Samples[len(c.Samples)-1].At, c.Samples[0].At))
	}
	w := p.Cuts[0].Middle().Left + p.Cuts[0].Middle().Right
	want -= w * w / math.Abs(r2.Cross(ahead[0], ahead[1]))
	got := 0.0
	for _, f := range visible(p, details()[0]) {
		got += f.outline.area()
	}
	if math.Abs(got-want) > 0.005*want {
		t.Errorf("the walls cover %.3f mm², want %.3f", got, want)
	}
}

// Wherever a wall is seen, no other is deeper: neighbours in the same repeat, in
// the next, and across the seam.
func TestSeenIsDeepest(t *testing.T) {
	for name, p := range plansForWalls(t) {
		seen := visible(p, details()[0])
		area, deeper := 0.0, 0.0
		var all []facet
		var boxes []geometry.Box
		for turns := -1; turns <= 1; turns++ {
			m := p.Surface.Turned(float64(turns*p.Period) * p.PitchAngle())
			for i, c := range p.Cuts {
				for _, f := range facets(i+turns*len(p.Cuts), *c.Groove, p.Job.Rack[c.Wheel], &p.Surface, details()[0]) {
					f = f.moved(m)
					all, boxes = append(all, f), append(boxes, geometry.BoxOf(f.outline...))
				}
			}
		}
		for i, f := range seen {
			if i%11 != 0 {
				continue // every eleventh is enough to find a rule broken
			}
			at := f.outline.middle()
			area += f.outline.area()
			for k, g := range all {
				if boxes[k].Distance2(geometry.BoxOf(at)) == 0 && g.cut != f.cut && g.depth.on(at) > f.depth.on(at)+1e-4 &&
					geometry.NewOutline(g.outline).Contains(at) {
					deeper += f.outline.area()
					break
				}
			}
		}
		if deeper > 0.002*area {
			t.Errorf("%s: %.4f of %.2f mm² lie under a deeper wall", name, deeper, area)
		}
	}
}

// Two facets of one groove meet in the same tone: nothing of a round groove looks
// stepped.
func TestTonesMeet(t *testing.T) {
	p := planFor(t, trellis)
	all := facets(0, *p.Cuts[0].Groove, p.Job.Rack[0], &p.Surface, details()[0])
	type side struct {
		at    geometry.Point
		right bool
	}
	// A mitre is two walls: each is the same all along but for its tails.
	line := p.Cuts[0].Samples
	a, b := line[0].At, line[len(line)-1].At
	tones := map[side]float64{}
	for _, f := range all {
		right := r2.Cross(r2.Sub(b, a), r2.Sub(f.outline.middle(), a)) < 0
		for _, q := range f.outline {
			got := f.bright.on(q)
			if was, there := tones[side{q, right}]; there && !near(got, was, 1e-9) {
				t.Errorf("at %v a wall has the tones %.4f and %.4f", q, was, got)
			}
			tones[side{q, right}] = got
		}
	}
}
