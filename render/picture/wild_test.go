package picture

import (
	"context"
	"fmt"
	"io"
	"math"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
)

// wildJob is a glass with all of its sizes to fill in: floor, foot, height, rim
// and their walls.
const wildJob = `
length = "mm"
[blank]
%s
station = [{height=0, across=%g, wall=%g}, {height=%g, across=%g, wall=%g}]
[limits]
leave = 0
rim = 0
foot = 0
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[layout]
repeats = 3
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.02
rays = 3
`

// wildGlass is the sizes of a glass: across its foot and its rim, its height, its
// wall, and its floor as a share of the height.
type wildGlass struct{ foot, rim, height, wall, floor float64 }

func (g wildGlass) job(t *testing.T) (*job.Job, string) {
	t.Helper()
	floor := ""
	if g.floor > 0 {
		floor = fmt.Sprintf("floor = %g", g.floor*g.height)
	}
	text := fmt.Sprintf(wildJob, floor, g.foot, g.wall, g.height, g.rim, g.wall)
	j, err := job.Read("wild.toml", []byte(text))
	if err != nil {
		return nil, text // a wall thicker than the glass, a leap from foot to rim
	}
	return j, text
}

// wildGlasses are a plain glass with each pair of its sizes at their extremes: a
// dish, a thread, a disc that is all floor, a shell of a tenth of a millimetre.
func wildGlasses() []wildGlass {
	extremes := [][]float64{{4, 1000}, {4, 1000}, {2, 1000}, {0.1, 30}, {0, 0.0001, 0.9999}}
	var all []wildGlass
	for i, first := range extremes {
		for k, second := range extremes[:i] {
			for _, a := range first {
				for _, b := range second {
					size := [5]float64{80, 84, 100, 1.9, 0.1}
					size[i], size[k] = a, b
					all = append(all, wildGlass{size[0], size[1], size[2], size[3], size[4]})
				}
			}
		}
	}
	return all
}

// Wild glasses are drawn whole from the side, from a little above and from as far
// above as there is, and what is painted on them stays in the box of their profile.
func TestWildGlasses(t *testing.T) {
	drawn := 0
	for _, g := range wildGlasses() {
		j, _ := g.job(t)
		if j == nil {
			continue
		}
		drawn++
		for _, tilt := range []float64{0, DefaultTilt, MaxTilt} {
			checkVessel(t, fmt.Sprintf("%+v from %.2f above", g, tilt), newVessel(j.Blanks[0], stance{0.3, math.Tan(tilt)}))
		}
	}
	if drawn < 25 {
		t.Errorf("only %d glasses were drawn", drawn)
	}
}

// Whole pictures of the wildest, with a cut on each.
func TestWildPictures(t *testing.T) {
	for _, g := range []wildGlass{
		{160, 160, 30, 5, 26.0 / 30}, {460, 460, 20, 0.1, 0}, {4, 8, 2, 0.1, 0.95}, {1000, 1000, 2, 39, 0}, {4, 12, 1000, 1, 0},
	} {
		j, text := g.job(t)
		if j == nil {
			t.Fatalf("%+v can't be read", g)
		}
		p := planFor(t, text)
		drawn, err := New(context.Background(), p, Options{Tilt: DefaultTilt, Round: true, Findings: true})
		if err != nil {
			t.Fatal(err)
		}
		if err := drawn.SVG(io.Discard); err != nil {
			t.Errorf("%+v: %v", g, err)
		}
		small, _ := Small(p, 60, 80)
		if err := small.Check(); err != nil {
			t.Errorf("%+v, small: %v", g, err)
		}
	}
}

func checkVessel(t *testing.T, where string, v vessel) {
	t.Helper()
	var d drawing.Drawing
	v.behind(&d)
	v.before(&d)
	if err := d.Check(); err != nil {
		t.Errorf("%s: %v", where, err)
		return
	}
	// A level circle is as wide as the glass, and lower by the tilt.
	wide := max(v.blank.Profile().Radius(0), v.blank.Profile().Radius(v.blank.Height()))
	low := v.stance.down * wide
	box := geometry.Box{Min: geometry.Point{X: -wide, Y: -low}, Max: geometry.Point{X: wide, Y: v.blank.Height() + low}}.Grow(stray + grain)
	for _, m := range d.On(drawing.Marks) {
		points := []geometry.Point(nil)
		switch m := m.(type) {
		case drawing.Fill:
			points = m.Points
		case drawing.Stroke:
			points = m.Points
		}
		for _, q := range points {
			if !box.Contains(q) {
				t.Errorf("%s: drawn at %v, outside the glass's box %v", where, q, box)
				return
			}
		}
	}
}
