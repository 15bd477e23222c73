package strokes

import (
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
)

// mark is a trail as it lies in the drawing, y down, and what it is.
type mark struct {
	trail
	part   string
	line   int
	stroke bool // drawn with a pen; otherwise only filled
}

// reader walks through a file's elements as a picture of it is drawn, and keeps the
// marks it meets.
type reader struct {
	cascade
	tally
	ids      map[string]*element
	marks    []mark
	elements int
	curves   int
}

// place is where, and in what state, an element is met.
type place struct {
	matrix
	style
	ruler
	part    string // the id of the nearest group round it
	windows []window
	uses    []*element // what the uses round it name
	depth   int
}

// gather looks through all elements: it finds ids, style rules, and what is left out.
func (r *reader) gather(e *element) {
	if id := e.attrs["id"]; id != "" && r.ids[id] == nil {
		r.ids[id] = e
	}
	if kind := leftOut()[e.name]; kind != "" {
		r.add(kind, e.line)
	}
	if e.name == "style" {
		r.read(e.text)
	}
	for _, c := range e.children {
		r.gather(c)
	}
}

// walk draws an element and what it holds.
func (r *reader) walk(e *element, at place) *Error {
	if r.elements++; r.elements > maxElements {
		return bounded(e.line, "elements, uses followed", maxElements)
	}
	if at.depth++; at.depth > maxDepth {
		return bounded(e.line, "elements in one another, uses followed", maxDepth)
	}
	declared, err := r.of(e)
	if err != nil {
		return err
	}
	if declared["display"] == "none" {
		if isShape(e.name) {
			r.add(hiddenKind, e.line)
		} else if e.name == "g" || e.name == "use" {
			r.add("hidden group", e.line)
		}
		return nil
	}
	at.style = at.style.under(declared, at.ruler)
	at.ruler.font = at.style.font
	if e.parent == nil {
		at.ruler.root = at.style.font
	}
	if !above(declared["opacity"], true) {
		at.style.gone = true
	}
	own, err := ownTransform(e, declared, at.ruler)
	if err != nil {
		return placed(err, e)
	}
	at.matrix = at.matrix.times(own)
	if at.matrix.wild() {
		return &Error{Line: e.line, Where: e.name, Read: "transforms that go too far", Accepted: "places up to 1e9 from the origin"}
	}
	return r.enter(e, declared, at)
}

// enter draws an element whose own transform and style are known.
func (r *reader) enter(e *element, declared map[string]string, at place) *Error {
	switch {
	case isShape(e.name):
		return r.shape(e, declared, at)
	case e.name == "use":
		return r.use(e, declared, at)
	case e.name == "svg" && e.parent != nil:
		return r.viewport(e, e, declared, at)
	case e.name == "g" || e.name == "a" || e.name == "svg":
		return r.group(e, at)
	case e.name == "switch":
		for _, c := range e.children {
			if c.name != "foreignObject" && c.attrs["requiredExtensions"] == "" && c.attrs["systemLanguage"] == "" {
				return r.walk(c, at)
			}
		}
	}
	return nil
}

// group draws what an element holds. Its id names the part, unless it is the file's
// outermost element.
func (r *reader) group(e *element, at place) *Error {
	if id := e.attrs["id"]; id != "" && e.parent != nil {
		at.part = id
	}
	for _, c := range e.children {
		if err := r.walk(c, at); err != nil {
			return err
		}
	}
	return nil
}

// use draws the element that a use names.
func (r *reader) use(e *element, declared map[string]string, at place) *Error {
	name, own := strings.CutPrefix(strings.TrimSpace(e.attrs["href"]), "#")
	target := r.ids[name]
	switch {
	case !own && name != "":
		r.add(foreignKind, e.line)
		return nil
	case target == nil:
		r.add(unfoundKind, e.line)
		return nil
	case slices.Contains(at.uses, target) || holds(target, e):
		r.add(cycleKind, e.line)
		return nil
	}
	v, err := sizes{declared, at.ruler}.all("x", "y")
	if err != nil {
		return placed(err, e)
	}
	at.matrix = at.matrix.times(shift(v[0], v[1]))
	at.uses = append(slices.Clip(at.uses), target)
	if target.name == "symbol" || target.name == "svg" && target.parent != nil {
		return r.instance(target, e, at)
	}
	return r.walk(target, at)
}

// instance draws a symbol or an inner svg that is used, in the size the use gives it.
func (r *reader) instance(target, use *element, at place) *Error {
	if target.name == "svg" {
		declared, err := r.of(target)
		if err != nil {
			return err
		}
		at.style = at.style.under(declared, at.ruler)
		return r.viewport(target, use, declared, at)
	}
	if at.depth++; at.depth > maxDepth {
		return bounded(use.line, "elements in one another, uses followed", maxDepth)
	}
	declared, err := r.of(target)
	if err != nil {
		return err
	}
	at.style = at.style.under(declared, at.ruler)
	own, err := ownTransform(target, declared, at.ruler)
	if err != nil {
		return placed(err, target)
	}
	at.matrix = at.matrix.times(own)
	return r.viewport(target, use, declared, at)
}

// holds reports whether an element is another, or holds it.
func holds(e, inner *element) bool {
	for ; inner != nil; inner = inner.parent {
		if inner == e {
			return true
		}
	}
	return false
}

// viewport draws an inner svg or a symbol in its viewport. The size is that of the
// element itself or of the use that names it.
func (r *reader) viewport(e, sized *element, declared map[string]string, at place) *Error {
	box, err := r.viewportBox(e, sized, declared, at.ruler)
	if err != nil {
		return err
	}
	width, height := box.Size()
	if width == 0 || height == 0 {
		return nil
	}
	if flow := declared["overflow"]; flow != "visible" && flow != "auto" && !at.matrix.flat() {
		at.windows = append(slices.Clip(at.windows), window{at.matrix.inverse(), box})
	}
	at.matrix = at.matrix.times(shift(box.Min.X, box.Min.Y))
	v, ok, err := readViewBox(e)
	if err != nil {
		return placed(in(err, "viewBox"), e)
	}
	if ok {
		f, err := readFit(e.attrs["preserveAspectRatio"])
		if err != nil {
			return placed(in(err, "preserveAspectRatio"), e)
		}
		if v.width == 0 || v.height == 0 {
			return nil
		}
		at.matrix = at.matrix.times(f.onto(v, width, height))
		width, height = v.width, v.height
	}
	at.ruler.width, at.ruler.height = width, height
	return r.group(e, at)
}

// viewportBox returns where a viewport lies in the user space round it.
func (r *reader) viewportBox(e, sized *element, declared map[string]string, rule ruler) (geometry.Box, *Error) {
	s := sizes{declared, rule}
	var corner []float64
	var err *Error
	if corner, err = s.all("x", "y"); err != nil {
		return geometry.Box{}, placed(err, e)
	}
	size := [2]float64{rule.width, rule.height}
	for _, from := range []*element{e, sized} { // the use's size wins
		declared, wrong := r.of(from)
		if wrong != nil {
			return geometry.Box{}, wrong
		}
		for i, name := range []string{"width", "height"} {
			length, given, err := sizes{declared, rule}.positive(name, axis(i))
			if err != nil {
				return geometry.Box{}, placed(err, from)
			}
			if given {
				size[i] = length
			}
		}
	}
	at := geometry.Point{X: corner[0], Y: corner[1]}
	return geometry.BoxOf(at, geometry.Point{X: at.X + size[0], Y: at.Y + size[1]}), nil
}

// shape draws a shape and keeps its marks.
func (r *reader) shape(e *element, declared map[string]string, at place) *Error {
	p, err := drawShape(e, sizes{declared, at.ruler})
	if err != nil {
		return placed(err, e)
	}
	for range p.without {
		r.add(shortKind, e.line)
	}
	stroke := at.style.stroke && at.style.wide && at.style.opaque
	switch {
	case len(p.trails) == 0 || !stroke && !at.style.fill:
		return nil
	case !at.style.visible || at.style.gone:
		r.add(hiddenKind, e.line)
		return nil
	case at.matrix.flat():
		r.add(flatKind, e.line)
		return nil
	}
	part := at.part
	if part == "" {
		part = e.attrs["id"]
	}
	if stroke && at.style.dashed {
		r.add(dashedKind, e.line)
	}
	for _, t := range p.trails {
		if r.curves += len(t.curves); r.curves > maxCurves {
			return bounded(e.line, "curves", maxCurves)
		}
		t = at.matrix.trail(t)
		if !t.near() {
			return &Error{Line: e.line, Where: e.name, Read: "a place too far out", Accepted: "places up to 1e9 from the origin"}
		}
		if slices.ContainsFunc(at.windows, func(w window) bool { return !w.shows(t) }) {
			r.add(outsideKind, e.line)
			continue
		}
		if slices.ContainsFunc(at.windows[min(1, len(at.windows)):], func(w window) bool { return !w.holds(t) }) {
			r.add(uncutKind, e.line)
		}
		r.marks = append(r.marks, mark{t, part, e.line, stroke})
	}
	return nil
}

// near reports whether all of a trail's points are finite and not too far out.
func (t *trail) near() bool {
	for _, c := range t.curves {
		for _, p := range c {
			if !(math.Abs(p.X) <= largestNumber && math.Abs(p.Y) <= largestNumber) {
				return false
			}
		}
	}
	return true
}

// placed gives an error the element it is about.
func placed(err *Error, e *element) *Error {
	if err != nil {
		err.Line = e.line
		err.Where = strings.TrimSpace(e.name + " " + err.Where)
	}
	return err
}

// ownTransform reads an element's transform, by attribute or style.
func ownTransform(e *element, declared map[string]string, r ruler) (matrix, *Error) {
	for _, property := range []string{"rotate", "scale", "translate", "zoom", "offset-path"} {
		if value := declared[property]; value != "" && value != "none" && e.attrs[property] == "" {
			return matrix{}, &Error{Where: property, Read: quoted(value), Accepted: "transform, the one property for this that is read"}
		}
	}
	m, err := readTransform(declared["transform"], func(x float64, unit string) (float64, bool) { return r.length(x, unit, across) })
	if err != nil || m == identity() {
		return m, in(err, "transform")
	}
	if box := declared["transform-box"]; box != "" && box != "view-box" {
		return m, &Error{Where: "transform-box", Read: quoted(box), Accepted: "view-box"}
	}
	x, y, err := origin(declared["transform-origin"], r)
	if err != nil {
		return m, in(err, "transform-origin")
	}
	return shift(x, y).times(m).times(shift(-x, -y)), nil
}

// origin reads the place that a transform leaves where it is.
func origin(text string, r ruler) (x, y float64, err *Error) {
	words := strings.Fields(text)
	if len(words) == 0 {
		return 0, 0, nil
	}
	if len(words) != 2 {
		return 0, 0, &Error{Read: quoted(text), Accepted: "two lengths, across and down"}
	}
	if x, err = r.read(words[0], across); err == nil {
		y, err = r.read(words[1], upright)
	}
	return x, y, err
}
