package strokes

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
)

// Drawing is what there is to cut in a drawing: strokes in a box. Lengths are in the
// drawing's own units, and y grows upwards.
type Drawing struct {
	// Box is the file's viewBox, made larger where strokes go beyond it, or else the
	// box round the strokes. Neither side is less than a hundredth of the other.
	Box     geometry.Box
	Strokes []Stroke
	Joins   []Join
	Notes   []Note
	// Unit is how many millimetres the file says one of its units is long; 0 where it
	// doesn't say.
	Unit float64
}

// Stroke is one line to cut: curves that continue one another without a corner. A
// closed one ends where it begins, without a corner there either.
type Stroke struct {
	// Part is the id of the nearest group round the stroke, else that of its element;
	// it may be empty.
	Part   string
	Closed bool
	Curves []geometry.Bezier
	// Line is where its element stands in the file; 0 for path data by itself.
	Line int
}

// Points returns the points of a line that stays within a distance of the stroke, from
// its start to its end.
func (s Stroke) Points(within float64) []geometry.Point {
	t := trail{curves: s.Curves}
	return t.flattened(within)
}

// Read reads the strokes of an SVG file. Nothing that the file names is opened. The
// error is an *Error.
func Read(svg []byte, options Options) (*Drawing, error) {
	root, err := readTree(svg)
	if err != nil {
		return nil, err
	}
	var r reader
	r.ids = map[string]*element{}
	r.gather(root)
	p, err := outermost(root)
	if err != nil {
		return nil, err
	}
	at := place{matrix: p.stretch, style: initial(), ruler: p.ruler}
	if p.given {
		at.windows = []window{p.window}
	}
	if err := r.walk(root, at); err != nil {
		return nil, err
	}
	notes := r.notes()
	if n := len(r.unread); n > 0 {
		notes = append(notes, Note{Text: counted(n, "style rule") + " not read: " + named(r.unread)})
	}
	d, err := finish(r.marks, p, notes, options)
	if err != nil {
		return nil, err
	}
	return d, nil
}

// ReadPaths reads strokes from SVG path data, each text one path; y grows downwards
// in it, as it does in SVG. The box is that of the strokes. An *Error counts the
// paths from 1, in Where.
func ReadPaths(paths []string, options Options) (*Drawing, error) {
	var marks []mark
	var short tally
	curves := 0
	for i, text := range paths {
		p, err := readPath(text)
		if err == nil && len(text) > maxBytes {
			err = bounded(0, "bytes", maxBytes)
		}
		for range p.without {
			short.add(shortKind, 0)
		}
		for _, t := range p.trails {
			curves += len(t.curves)
			marks = append(marks, mark{trail: t, stroke: true})
			if err == nil && !t.near() {
				err = &Error{Read: "a place too far out", Accepted: "places up to 1e9 from the origin"}
			}
		}
		if err == nil && curves > maxCurves {
			err = bounded(0, "curves", maxCurves)
		}
		if err != nil {
			err.Path, err.Where = i+1, fmt.Sprintf("path %d", i+1)
			return nil, err
		}
	}
	d, err := finish(marks, page{}, short.notes(), options)
	if err != nil {
		return nil, err
	}
	return d, nil
}

// page is what the outermost element says about the whole drawing.
type page struct {
	given   bool // there is a viewBox
	box     geometry.Box
	window  window
	stretch matrix
	ruler   ruler
	unit    float64
}

// outermost reads the outermost element's viewBox and size. They only matter to the
// drawing where preserveAspectRatio is none, which stretches it: its places are
// otherwise those of the viewBox.
func outermost(root *element) (page, *Error) {
	p := page{stretch: identity(), ruler: ruler{font: initial().font, root: initial().font}}
	v, given, err := readViewBox(root)
	if err != nil {
		return p, placed(in(err, "viewBox"), root)
	}
	width, height, err := outerSize(root)
	if err != nil {
		return p, placed(err, root)
	}
	f, err := readFit(root.attrs["preserveAspectRatio"])
	if err != nil {
		return p, placed(in(err, "preserveAspectRatio"), root)
	}
	if !given {
		p.ruler.width, p.ruler.height = width, height
		if width > 0 || height > 0 {
			p.unit = millimetresPerPixel
		}
		return p, nil
	}
	if v.width == 0 || v.height == 0 {
		return p, placed(&Error{Where: "viewBox", Read: quoted(root.attrs["viewBox"]), Accepted: "a width and a height above zero"}, root)
	}
	p.given = true
	p.ruler.width, p.ruler.height = v.width, v.height
	if width == 0 {
		width = height * v.width / v.height
	}
	if height == 0 {
		height = width * v.height / v.width
	}
	p.frame(v, f, width, height)
	return p, nil
}

// frame sets where the viewBox lies, and what of the drawing is seen. A size of zero
// is one that isn't known.
func (p *page) frame(v viewBox, f fit, width, height float64) {
	seen := geometry.Box{Min: geometry.Point{X: v.x, Y: v.y}, Max: geometry.Point{X: v.x + v.width, Y: v.y + v.height}}
	p.box = seen
	if width > 0 {
		onto := f.onto(v, width, height)
		p.unit = millimetresPerPixel * onto.a
		back := onto.inverse()
		seen = geometry.BoxOf(back.apply(geometry.Point{}), back.apply(geometry.Point{X: width, Y: height}))
		if f.none {
			p.stretch = scaling(1, onto.d/onto.a)
			p.box = geometry.BoxOf(p.stretch.apply(p.box.Min), p.stretch.apply(p.box.Max))
		}
	}
	p.window = window{p.stretch.inverse(), seen}
}

// outerSize returns the outermost element's size in pixels; 0 where it doesn't say.
func outerSize(root *element) (width, height float64, err *Error) {
	s := sizes{root.attrs, ruler{font: initial().font, root: initial().font}}
	read := func(name string, along axis) float64 {
		if err != nil || strings.HasSuffix(strings.TrimSpace(root.attrs[name]), "%") {
			return 0
		}
		var length float64
		length, _, err = s.positive(name, along)
		return length
	}
	return read("width", across), read("height", upright), err
}

// largest returns the longer side of a box.
func largest(b geometry.Box) float64 {
	width, height := b.Size()
	return math.Max(width, height)
}
