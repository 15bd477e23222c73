package drawing

import (
	"testing"

	"roundlay/geometry"
)

// dot is a kind of mark that nothing in this package names.
type dot struct {
	At   geometry.Point
	Fine bool
}

func (p dot) places() []geometry.Point { return points{p.At} }

func (p dot) placed(place func(geometry.Point) geometry.Point, _ float64) Mark {
	p.At = place(p.At)
	return p
}

func (p dot) clipped(w Window) []Mark {
	if w.Contains(p.At) {
		return []Mark{p}
	}
	return nil
}

func (p dot) thinned(float64) Mark {
	p.Fine = true
	return p
}

func (p dot) ink() Ink { return Black }

// Whatever is done with a drawing is done with a mark of any kind: it is neither
// left out nor left where it was.
func TestMarksOfAnyKindAreKept(t *testing.T) {
	at := geometry.Point{X: 2, Y: 3}
	for _, layer := range Layers() {
		var d Drawing
		d.Add(layer, dot{At: at})
		for name, test := range map[string]struct {
			got  Drawing
			want dot
		}{
			"moved":      {d.Moved(geometry.Motion{Cos: 1, X: 10, Y: 20}), dot{At: geometry.Point{X: 12, Y: 23}}},
			"stretched":  {d.Stretched(2, 3), dot{At: geometry.Point{X: 4, Y: 9}}},
			"mirrored":   {d.Mirrored(), dot{At: geometry.Point{X: -2, Y: 3}}},
			"mapped":     {d.Mapped(func(p geometry.Point) geometry.Point { return geometry.Point{X: p.Y, Y: p.X} }), dot{At: geometry.Point{X: 3, Y: 2}}},
			"clipped":    {d.Clipped(BoxWindow(geometry.BoxOf(geometry.Point{}, geometry.Point{X: 5, Y: 5}))), dot{At: at}},
			"simplified": {d.Simplified(0.1), dot{At: at, Fine: true}},
			"thinned":    {d.Thinned(layer, 0.1), dot{At: at, Fine: true}},
			"ordered":    {d.EdgesFirst(layer), dot{At: at}},
		} {
			if on := test.got.On(layer); len(on) != 1 || on[0] != Mark(test.want) {
				t.Errorf("%s on %v: %v, want %v", name, layer, on, test.want)
			}
		}
		if d.Box() != geometry.BoxOf(at) || d.Check() != nil {
			t.Errorf("on %v: box %v, %v", layer, d.Box(), d.Check())
		}
		if outside := d.Clipped(BoxWindow(geometry.BoxOf(geometry.Point{X: 5}, geometry.Point{X: 9, Y: 9}))); len(outside.On(layer)) != 0 {
			t.Errorf("on %v: it is not clipped", layer)
		}
	}
}
