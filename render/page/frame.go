package page

import (
	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// What a person at the printer needs, and the same for a narrow page.
const (
	printWords = `Print at 100 % ("actual size", not "fit to page"), then measure both bars with a ruler: each must read 100 mm.`
	printShort = `Print at 100 %, not "fit to page": both bars must read 100 mm.`
)

// Frame draws what every page has round its content: words at its head, the check
// bars and the cautions at its foot.
type Frame struct {
	Column // that its words are set in
	Unit   geometry.Unit
	// Corrects labels each bar with the flag that takes what a ruler says of it.
	Corrects bool

	sizes sizes
	large bool // whether it is read at arm's length
}

// sizes are those of a head's words, in points, and how far below the margin its
// title stands, in millimetres.
type sizes struct{ title, number, drop float64 }

// NewFrame returns the frame of a page that is read at a desk: it says how it is
// to be printed and what it is about.
func NewFrame(letters *lettering.Letters, unit geometry.Unit) Frame {
	return Frame{Column: NewColumn(letters), Unit: unit, sizes: sizes{title: 11, number: 10, drop: 4}}
}

// NewBenchFrame returns the frame of a page that is read at arm's length: title,
// number and cautions alone, in large letters.
func NewBenchFrame(letters *lettering.Letters, unit geometry.Unit) Frame {
	return Frame{
		Column: NewBenchColumn(letters), Unit: unit, sizes: sizes{title: 15, number: BenchSize, drop: 4.5}, large: true,
	}
}

// Head is what stands at the top of a page.
type Head struct {
	Title  string  // cut off where it is too long
	Ending string  // of the title, which is never cut off
	After  string  // said after the title in smaller letters, if there is room
	Number string  // such as page 1 of 2
	About  string  // below the title
	Aside  float64 // the width below the title that is kept free at the right
}

// Sizes in the head: points, and millimetres.
const (
	headSize            = 9.0
	headDrop, headAir   = 0.7, 2.3
	headLine            = 3.8  // between the lines
	asideDrop           = 1.5  // between the title and what stands below it at the right
	apart               = 4.0  // between words on the title's line
	afterWorth          = 30.0 // the least room that words after the title are worth
	benchHead, benchAir = 9.0, 2.0
)

// Fit returns a page with the room that a head takes on it, and its foot.
func (fr Frame) Fit(f Format, h Head) Format {
	if fr.large {
		f.Head, f.Foot = benchHead, SideRoom+float64(len(fr.Lines(benchCautions(), fr.width(f))))*fr.line()+benchAir
		return f
	}
	f.Head = fr.sizes.drop + headDrop + float64(len(fr.headLines(f, h)))*headLine + headAir
	f.Foot = FootRoom
	return f
}

// width returns that of what a page shows.
func (fr Frame) width(f Format) float64 { return f.Width - 2*f.Margin - SideRoom }

// line returns the distance between the lines of the cautions at the bench.
func (fr Frame) line() float64 { return fr.Leading * BenchSize * lettering.MillimetresPerPoint }

// Aside returns the upper right corner for what stands at the right of the head's
// lines.
func (fr Frame) Aside(f Format) geometry.Point {
	return geometry.Point{X: f.Width - f.Margin, Y: f.Height - f.Margin - fr.sizes.drop - asideDrop}
}

// AsideRoom returns the depth of a head with a drawing of the given depth at its right.
func (fr Frame) AsideRoom(depth float64) float64 { return fr.sizes.drop + asideDrop + depth + headAir }

// headStart returns where the head's lines begin: to the right of the bar up on a
// page so low that the bar reaches them.
func (f Format) headStart() float64 {
	const deepHead = 40
	if f.Height-f.Margin-deepHead < f.corner().Y+UpEnd {
		return f.Margin + SideRoom
	}
	return f.Margin
}

// headLines returns the words of a head in lines.
func (fr Frame) headLines(f Format, h Head) []string {
	width := f.Width - f.Margin - f.headStart() - h.Aside
	texts := []string{printWords}
	if f.narrow() {
		texts[0] = printShort
	}
	if !f.Printed.True() {
		texts = append(texts, f.Printed.Corrected())
	}
	if h.About != "" {
		texts = append(texts, h.About)
	}
	var lines []string
	for _, words := range texts {
		lines = append(lines, fr.fold(Note{Words: words, Size: headSize}, width)...)
	}
	return lines
}

// DrawHead adds the words at the top.
func (fr Frame) DrawHead(d *drawing.Drawing, f Format, h Head) {
	fr.titleLine(d, f, h)
	if fr.large {
		return
	}
	y := f.Height - f.Margin - fr.sizes.drop - headDrop
	for _, line := range fr.headLines(f, h) {
		y -= headLine
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: f.headStart(), Y: y}, Words: line, Size: headSize})
	}
}

// titleLine adds the title, what is said after it, and the page's number.
func (fr Frame) titleLine(d *drawing.Drawing, f Format, h Head) {
	at := geometry.Point{X: f.headStart(), Y: f.Height - f.Margin - fr.sizes.drop}
	if fr.large {
		at.X = f.Margin
	}
	room := f.Width - f.Margin - at.X
	if which := f.which(h.Number); which != "" {
		d.Add(drawing.Notes, drawing.Text{
			At: geometry.Point{X: f.Width - f.Margin, Y: at.Y}, Words: which, Size: fr.sizes.number, Align: drawing.Right,
		})
		room -= fr.Letters.Width(which, fr.sizes.number, false) + apart
	}
	title := fr.title(h, room)
	d.Add(drawing.Notes, drawing.Text{At: at, Words: title, Size: fr.sizes.title, Bold: true})
	taken := fr.Letters.Width(title, fr.sizes.title, true) + apart
	if room -= taken; h.After != "" && room > afterWorth {
		at.X += taken
		d.Add(drawing.Notes, drawing.Text{
			At: at, Words: fr.Letters.Shortened(h.After, fr.sizes.number, false, room), Size: fr.sizes.number,
		})
	}
}

// which names the paper and the page.
func (f Format) which(number string) string {
	if f.Paper == "" || number == "" {
		return f.Paper + number
	}
	return f.Paper + ", " + number
}

// title returns the title with its ending, in a width.
func (fr Frame) title(h Head, width float64) string {
	ending := fr.Letters.Width(h.Ending, fr.sizes.title, true)
	title := fr.Letters.Shortened(h.Title, fr.sizes.title, true, width-ending)
	return fr.Letters.Shortened(title+h.Ending, fr.sizes.title, true, width)
}

// DrawFoot adds the check bars, the cautions, and see: where to look for what is not
// on the page, "" for nothing.
func (fr Frame) DrawFoot(d *drawing.Drawing, f Format, see string) {
	fr.DrawBars(d, f)
	notes, box := []Note{Cautions()}, f.cautions()
	if f.narrow() {
		notes[0].Words = cautionsShort
	}
	if fr.large { // the tails of its last line have room below it
		notes, box = []Note{benchCautions()}, f.Beside()
		box.Min.Y, box.Max.Y = 0, box.Min.Y-benchAir+BenchRise*fr.line()
	}
	if see != "" {
		notes = append([]Note{{Words: see, Size: 9, Bold: true}}, notes...)
	}
	set, _, _ := fr.Set(notes, box)
	d.Add(drawing.Notes, set...)
}

// DrawBars adds the check bars.
func (fr Frame) DrawBars(d *drawing.Drawing, f Format) {
	for _, b := range CheckBars(fr.Unit) {
		if fr.Corrects && b.Length == barLength {
			b.Label += ": " + f.flag(b)
		}
		d.Add(drawing.CheckBars, b.Marks(f.Bar(b))...)
	}
}

// flag returns the flag that takes what a ruler says of a bar. On a landscape page
// the bar across is along the long side of the paper.
func (f Format) flag(b Bar) string {
	if b.Up != f.Landscape {
		return "--printed-up"
	}
	return "--printed-across"
}

func benchCautions() Note { return Note{Words: cautionsShort, Size: BenchSize, Bold: true} }
