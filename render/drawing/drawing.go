package drawing

import (
	"fmt"
	"math"

	"roundlay/geometry"
)

// Layer is one of the sheets a drawing is built up of, in the order they lie
// on each other, the lowest first.
type Layer int

// The layers of every drawing.
const (
	Paper Layer = iota
	Footprints
	Marks
	Cuts
	Findings
	CheckBars
	Notes

	layerCount
)

// String returns the layer's id in files.
func (l Layer) String() string {
	return [...]string{"paper", "footprints", "marks", "cuts", "findings", "check-bars", "notes"}[l]
}

// Layers returns all the layers in the order they are drawn.
func Layers() []Layer {
	all := make([]Layer, layerCount)
	for i := range all {
		all[i] = Layer(i)
	}
	return all
}

// Drawing is a picture in layers. The zero Drawing is empty and ready to use.
type Drawing struct {
	layers [layerCount][]Mark
}

// Add draws marks on a layer, over those that are there.
func (d *Drawing) Add(layer Layer, marks ...Mark) {
	d.layers[layer] = append(d.layers[layer], marks...)
}

// Append draws another drawing over this one, layer by layer.
func (d *Drawing) Append(other Drawing) {
	for layer, marks := range other.layers {
		d.Add(Layer(layer), marks...)
	}
}

// On returns the marks on a layer, in the order they are drawn.
func (d Drawing) On(layer Layer) []Mark { return d.layers[layer] }

// Moved returns the drawing carried along by a motion, words and all.
func (d Drawing) Moved(m geometry.Motion) Drawing {
	return d.placed(m.Apply, math.Atan2(m.Sin, m.Cos))
}

// Stretched returns the drawing with every place multiplied by across and up, for a
// printer that is not true. Strokes keep their width. Words are scaled by the
// smaller of the two, so that they stay in the room they were set in.
func (d Drawing) Stretched(across, up float64) Drawing {
	stretch := func(p geometry.Point) geometry.Point {
		return geometry.Point{X: across * p.X, Y: up * p.Y}
	}
	return d.each(func(m Mark) []Mark {
		m = m.placed(stretch, 0)
		if t, ok := m.(Text); ok {
			t.Size *= min(across, up)
			m = t
		}
		return []Mark{m}
	})
}

// Mirrored returns the drawing with right and left changed. Words stay
// readable: only their places are mirrored.
func (d Drawing) Mirrored() Drawing {
	mirror := func(p geometry.Point) geometry.Point { return geometry.Point{X: -p.X, Y: p.Y} }
	return d.each(func(m Mark) []Mark {
		m = m.placed(mirror, 0)
		if t, ok := m.(Text); ok {
			t.Turn = -t.Turn
			t.Align = [...]Align{Left: Right, Centre: Centre, Right: Left}[t.Align]
			m = t
		}
		return []Mark{m}
	})
}

// Mapped returns the drawing with every place taken somewhere else, points of
// lines one by one. Words are not turned.
func (d Drawing) Mapped(place func(geometry.Point) geometry.Point) Drawing {
	return d.placed(place, 0)
}

func (d Drawing) placed(place func(geometry.Point) geometry.Point, turn float64) Drawing {
	return d.each(func(m Mark) []Mark { return []Mark{m.placed(place, turn)} })
}

// Clipped returns what of the drawing lies in a window. Words stay whole, and
// stay if the place they are set at does.
func (d Drawing) Clipped(w Window) Drawing {
	return d.each(func(m Mark) []Mark { return m.clipped(w) })
}

func (d Drawing) each(change func(Mark) []Mark) Drawing {
	var out Drawing
	for layer, marks := range d.layers {
		for _, m := range marks {
			out.Add(Layer(layer), change(m)...)
		}
	}
	return out
}

// Box returns the smallest box round every place in the drawing. It ignores the
// width of strokes, and of words it counts only the places they are set at.
func (d Drawing) Box() geometry.Box {
	box := geometry.EmptyBox()
	for _, marks := range d.layers {
		for _, m := range marks {
			for _, p := range m.places() {
				box = box.Add(p)
			}
		}
	}
	return box
}

// farthest is the greatest distance of a mark from the origin, in millimetres: beyond
// any paper, and within the numbers of every file format.
const farthest = 1e5

// Check returns an error if a mark has no points, or one that can't be printed.
func (d Drawing) Check() error {
	for layer, marks := range d.layers {
		for i, m := range marks {
			if len(m.places()) == 0 {
				return fmt.Errorf("mark %d on layer %v has no points", i+1, Layer(layer))
			}
			for _, p := range m.places() {
				if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
					return fmt.Errorf("mark %d on layer %v is at (%g, %g), which is no place on paper", i+1, Layer(layer), p.X, p.Y)
				}
			}
		}
	}
	return nil
}
