package printing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// SVG writes a page as a picture true to size, one group a layer. Words are outlines:
// only browsers read a font from an SVG file, and other programs would set the words
// in a font of their own, a sixth longer. The words themselves lie on the outlines,
// unpainted, so that they can be found and copied. Each named thing is an element of
// its own. Consecutive unnamed lines of one pen are one path, and so are fills of one
// ink, which halves the file.
func SVG(w io.Writer, title string, page Page, letters *lettering.Letters) error {
	if err := page.check(); err != nil {
		return err
	}
	var file bytes.Buffer
	fmt.Fprintf(&file, `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"`+
		` width="%[1]smm" height="%[2]smm" viewBox="0 0 %[1]s %[2]s" stroke-linejoin="round" stroke-linecap="round"`+
		` font-family="Go,sans-serif" font-size="%[4]d">`+"\n<title>%[3]s</title>\n",
		decimal(page.Width), decimal(page.Height), escaped(title), em)
	words := newOutlines(&file, page.Height, letters)
	if err := words.define(page.Drawing); err != nil {
		return err
	}
	for _, layer := range drawing.Layers() {
		fmt.Fprintf(&file, "<g id=%q>\n", layer)
		if title := page.Titles[layer]; title != "" {
			fmt.Fprintf(&file, "<title>%s</title>\n", escaped(title))
		}
		if err := writeLayer(&file, page.Drawing.On(layer), page.Height, words); err != nil {
			return err
		}
		file.WriteString("</g>\n")
	}
	file.WriteString("</svg>\n")
	return write(w, file.Bytes())
}

// writeLayer writes the marks of a layer, first those that have a name.
func writeLayer(file *bytes.Buffer, marks []drawing.Mark, height float64, words *outlines) error {
	things, marks := named(marks)
	paths := paths{file: file, height: height}
	paths.things(things)
	for len(marks) > 0 {
		if numbers := leadingNumbers(marks); len(numbers) > 1 {
			paths.end()
			words.writeNumbers(numbers)
			marks = marks[len(numbers):]
			continue
		}
		switch m := marks[0].(type) {
		case drawing.Stroke:
			paths.stroke(m)
		case drawing.Fill:
			paths.fill(m)
		case drawing.Area:
			paths.area(m)
		case drawing.Text:
			paths.end()
			words.write(m)
		default:
			return drawing.Unknown(m)
		}
		marks = marks[1:]
	}
	paths.end()
	return nil
}

// paths writes lines and fills, joining those that look alike into one path.
type paths struct {
	file   *bytes.Buffer
	height float64 // of the page: y grows downwards in the file
	look   string  // the attributes of the path that is open; none is open without
	grain  int     // what places on it are rounded to, in micrometres
	steps  steps   // along it
}

// flatness is how far lines may deviate to save points: an eighth of a dot.
const flatness = 0.005

// Places are written to the micrometre; those of greys, which nobody measures, to
// the hundredth of a millimetre, a quarter of a dot.
const fineGrain, greyGrain = 1, 10

func (p *paths) stroke(s drawing.Stroke) {
	p.begin(look(s), fineGrain)
	p.along(s)
}

// look returns the attributes of a stroke's path.
func look(s drawing.Stroke) string {
	look := fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%s"`, hex(s.Pen.Ink), decimal(s.Pen.Width))
	if s.Pen.Cap == drawing.FlatCap || len(s.Pen.Dash) > 0 {
		look += ` stroke-linecap="butt"`
	}
	return look
}

// along adds a stroke to the path that is open.
func (p *paths) along(s drawing.Stroke) {
	dashes := s.Dashes()
	if dashes == nil {
		p.line(s.Points, s.Closed)
	}
	for _, d := range dashes {
		p.line(d, false)
	}
}

// fill runs every polygon the same way round: where two in one path overlap,
// they would otherwise leave a hole.
func (p *paths) fill(f drawing.Fill) {
	grain := fineGrain
	if f.Ink != drawing.Black && f.Ink != drawing.White {
		grain = greyGrain
	}
	look := fmt.Sprintf(`fill="%s"`, hex(f.Ink))
	if f.Edge.Width > 0 {
		look += fmt.Sprintf(` stroke="%s" stroke-width="%s" paint-order="stroke"`, hex(f.Edge.Ink), decimal(f.Edge.Width))
	}
	p.begin(look, grain)
	var area float64
	for i, a := range f.Points {
		b := f.Points[(i+1)%len(f.Points)]
		area += a.X*b.Y - a.Y*b.X
	}
	points := f.Points
	if area < 0 {
		points = make([]geometry.Point, len(f.Points))
		for i, q := range f.Points {
			points[len(points)-1-i] = q
		}
	}
	p.line(points, true)
}

// area writes a path of its own: which way its outlines run matters.
func (p *paths) area(a drawing.Area) {
	p.end()
	p.begin(fmt.Sprintf(`fill="%s"`, hex(a.Ink)), fineGrain)
	for _, o := range a.Outlines {
		p.line(o, true)
	}
	p.end()
}

// begin opens a path of the given look, unless it is open already.
func (p *paths) begin(look string, grain int) {
	if look == p.look {
		return
	}
	p.end()
	fmt.Fprintf(p.file, `<path %s d="`, look)
	p.look, p.grain, p.steps = look, grain, steps{file: p.file}
}

// end closes the path that is open.
func (p *paths) end() {
	if p.look != "" {
		p.file.WriteString("\"/>\n")
		p.look = ""
	}
}

func (p *paths) line(points []geometry.Point, closed bool) {
	for i, q := range drawing.Thinned(points, flatness) {
		x, y := p.micrometres(q.X), p.micrometres(p.height-q.Y)
		if i == 0 {
			p.steps.move(x, y)
		} else {
			p.steps.line(x, y)
		}
	}
	if closed {
		p.steps.end()
	}
}

// micrometres returns a length in whole micrometres, to the grain.
func (p *paths) micrometres(x float64) int {
	return p.grain * int(math.Round(1000*x/float64(p.grain)))
}

func hex(ink drawing.Ink) string {
	red, green, blue := ink.RGB()
	s := fmt.Sprintf("#%02x%02x%02x", red, green, blue)
	if s[1] == s[2] && s[3] == s[4] && s[5] == s[6] {
		return string([]byte{'#', s[1], s[3], s[5]})
	}
	return s
}

func escaped(text string) []byte {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(text)) // a Buffer takes every write
	return b.Bytes()
}
