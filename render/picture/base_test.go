package picture

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
	"roundlay/render/drawing"
)

const degree = math.Pi / 180

// A glass 80 mm across and 100 mm high with a single upright cut in the middle of
// its only repeat, from 20 to 80 mm above the table.
const upright = `
length = "mm"
[blank]
floor = 10
station = [{height=0, across=80, wall=6}, {height=100, across=80, wall=4}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[layout]
repeats = 1
band = [20, 80]
[[motif]]
kind = "fan"
wheel = "mitre"
depth = 0.8
width = 0.1
rays = 1
hub = 0
`

// planOf lays a job out on its first blank. What it is made of may stand in the gallery.
func planOf(t testing.TB, name string, data []byte) *pattern.Plan {
	t.Helper()
	j, err := job.ReadWith(name, data, func(file string) ([]byte, error) { return os.ReadFile(filepath.Join(gallery, file)) })
	if err != nil {
		t.Fatal(err)
	}
	return laidOut(t, j)
}

func laidOut(t testing.TB, j *job.Job) *pattern.Plan {
	t.Helper()
	plans, err := search.Lay(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return plans[0]
}

func planFor(t testing.TB, text string) *pattern.Plan {
	t.Helper()
	return planOf(t, "test.toml", []byte(text))
}

func demo(t testing.TB) *pattern.Plan {
	t.Helper()
	name, data := job.Demo()
	return planOf(t, name, data)
}

// boxOf returns the box round all areas of a layer.
func boxOf(d drawing.Drawing, layer drawing.Layer) geometry.Box {
	box := geometry.EmptyBox()
	for _, a := range areas(d, layer) {
		for _, o := range a.Outlines {
			box = box.Union(geometry.BoxOf(o...))
		}
	}
	return box
}

// areas returns the areas on a layer.
func areas(d drawing.Drawing, layer drawing.Layer) []drawing.Area {
	var all []drawing.Area
	for _, m := range d.On(layer) {
		if a, ok := m.(drawing.Area); ok {
			all = append(all, a)
		}
	}
	return all
}

// ringArea returns the area inside an outline, negative if it runs clockwise.
func ringArea(o []geometry.Point) float64 { return polygon(o).area() }

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }
