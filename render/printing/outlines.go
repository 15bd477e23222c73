package printing

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"unicode/utf8"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"

	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// outlines writes words into an SVG file as the outlines of their letters. Each
// letter is defined once and used wherever it stands, which makes the file a
// tenth as long; so are runs of letters that recur, which makes it a tenth
// shorter again.
type outlines struct {
	file    *bytes.Buffer
	height  float64 // of the page: y grows downwards in the file
	letters *lettering.Letters
	perEm   float64         // the fonts' own units to the em; both weights have the same
	known   map[glyph]int   // the letters defined, by their numbers
	names   []string        // of letters and, after them, of runs, by their numbers
	lines   map[line][]mark // what the drawing's words are written as
}

// em is how many units of the file a letter's size has. One is 0.005 mm in words
// of 15 points, the largest there are.
const em = 1000

// glyph is one letter in one weight.
type glyph struct {
	letter rune
	bold   bool
}

// blank is the number of letters that leave nothing on paper.
const blank = -1

// line is words in one weight, which are set alike at any size.
type line struct {
	words string
	bold  bool
}

func newOutlines(file *bytes.Buffer, height float64, letters *lettering.Letters) *outlines {
	return &outlines{
		file: file, height: height, letters: letters,
		perEm: float64(letters.Face(1, false, drawing.Black).Font.Head.UnitsPerEm),
		known: map[glyph]int{}, lines: map[line][]mark{},
	}
}

// define defines every letter of a drawing, and the runs of them that recur.
func (o *outlines) define(d drawing.Drawing) error {
	o.file.WriteString("<defs>\n")
	var order []line
	var lines [][]mark
	for _, layer := range drawing.Layers() {
		for _, m := range d.On(layer) {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			l := line{text.Words, text.Bold}
			if _, done := o.lines[l]; done {
				continue
			}
			marks, err := o.spell(l)
			if err != nil {
				return err
			}
			o.lines[l] = marks
			order, lines = append(order, l), append(lines, marks)
		}
	}
	runs := findRuns(lines, len(o.names))
	for i, worth := range runs.worth {
		is := runs.letters + i
		o.names = append(o.names, name(is))
		if worth {
			fmt.Fprintf(o.file, "<g id=%q>", o.names[is])
			o.use(runs.spelled(is))
			o.file.WriteString("</g>\n")
		}
	}
	for i, l := range order {
		o.lines[l] = runs.set(lines[i])
	}
	o.file.WriteString("</defs>\n")
	return nil
}

// spell returns the letters of a line at their places, and defines the new ones.
func (o *outlines) spell(l line) ([]mark, error) {
	face := o.letters.Face(1, l.bold, drawing.Black).Font
	var marks []mark
	along := 0
	for _, letter := range o.letters.Printable(l.words) {
		is, err := o.letter(glyph{letter, l.bold}, face)
		if err != nil {
			return nil, err
		}
		if is != blank {
			marks = append(marks, mark{is, along})
		}
		along += int(face.GlyphAdvance(face.GlyphIndex(letter)))
	}
	return marks, nil
}

// letter returns the number of a letter, and defines it if it is new.
func (o *outlines) letter(g glyph, face *canvas.Font) (int, error) {
	if is, ok := o.known[g]; ok {
		return is, nil
	}
	outline := &canvas.Path{}
	if err := face.GlyphPath(outline, face.GlyphIndex(g.letter), 0, 0, 0, em/o.perEm, font.NoHinting); err != nil {
		return blank, fmt.Errorf("the letter %q: %w", g.letter, err)
	}
	if outline.Empty() {
		o.known[g] = blank
		return blank, nil
	}
	is := len(o.names)
	o.known[g], o.names = is, append(o.names, name(is))
	fmt.Fprintf(o.file, "<path id=%q d=\"", o.names[is])
	o.data(outline)
	o.file.WriteString("\"/>\n")
	return is, nil
}

// data writes an outline to the whole unit, y downwards. TrueType letters have
// straight and quadratic sides, no others.
func (o *outlines) data(outline *canvas.Path) {
	const unit = 1000 // thousandths, in which steps count
	steps := steps{file: o.file}
	at := func(p canvas.Point) (x, y int) { return unit * int(math.Round(p.X)), -unit * int(math.Round(p.Y)) }
	for side := outline.Scanner(); side.Scan(); {
		x, y := at(side.End())
		switch side.Cmd() {
		case canvas.MoveToCmd:
			steps.move(x, y)
		case canvas.LineToCmd:
			steps.line(x, y)
		case canvas.QuadToCmd:
			overX, overY := at(side.CP1())
			steps.quad(overX, overY, x, y, 2*unit) // what three roundings may add up to
		case canvas.CloseCmd:
			steps.end()
		}
	}
}

// name returns the shortest name that is still free for the nth letter or run.
func name(n int) string {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
	if n < len(letters) {
		return letters[n : n+1]
	}
	return name(n/len(letters)-1) + letters[n%len(letters):n%len(letters)+1]
}

// use writes letters and runs that are defined.
func (o *outlines) use(marks []mark) {
	for _, m := range marks {
		o.file.WriteString(`<use xlink:href="#` + o.names[m.is] + `"`)
		if m.x > 0 {
			o.file.WriteString(` x="` + strconv.Itoa(int(math.Round(float64(m.x)*em/o.perEm))) + `"`)
		}
		o.file.WriteString("/>")
	}
}

// write writes one text.
func (o *outlines) write(t drawing.Text) {
	o.begin(t)
	o.place(t)
	o.file.WriteString(`">`)
	o.find(t)
	o.use(o.lines[line{t.Words, t.Bold}])
	o.file.WriteString("</g>\n")
}

// find writes a text's words unpainted, as long as the outlines are, for whoever
// looks for them.
func (o *outlines) find(t drawing.Text) {
	o.file.WriteString(`<text fill="none"`)
	if utf8.RuneCountInString(t.Words) > 3 { // others can't be far out
		fmt.Fprintf(o.file, ` textLength="%.0f"`, o.letters.Width(t.Words, t.Size, t.Bold)/unit(t))
	}
	fmt.Fprintf(o.file, ">%s</text>", escaped(t.Words))
}

// begin opens a group of a text's size and ink, and leaves its transform open.
func (o *outlines) begin(t drawing.Text) {
	o.file.WriteString("<g")
	if t.Ink != drawing.Black {
		fmt.Fprintf(o.file, ` fill="%s"`, hex(t.Ink))
	}
	fmt.Fprintf(o.file, ` transform="scale(%.6g)`, unit(t))
}

// place writes where a text begins, in its own units, and how it is turned.
func (o *outlines) place(t drawing.Text) {
	start, unit := o.letters.Start(t), unit(t)
	fmt.Fprintf(o.file, "translate(%.0f %.0f)", start.X/unit, (o.height-start.Y)/unit)
	if turn := decimal(-t.Turn * 180 / math.Pi); turn != "0" {
		o.file.WriteString("rotate(" + turn + ")")
	}
}

// unit returns how long a unit of a text is, in millimetres.
func unit(t drawing.Text) float64 { return t.Size * lettering.MillimetresPerPoint / em }
