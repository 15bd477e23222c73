package page

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
)

// What a person at the printer needs, and the same for a narrow page.
const (
	printWords = `Print at 100 % ("actual size", not "fit to page"), then measure both bars with a ruler: each must read 100 mm.`
	printShort = `Print at 100 %, not "fit to page": both bars must read 100 mm.`
)

// Cautions go on every page that may lie at the bench, the short ones where there
// is little room.
const (
	Cautions = "Cutting glass can hurt. Keep wheel and glass wet: dry glass dust harms the lungs, and lead glass poisons. " +
		"Wear eye protection. Keep electricity away from water, behind a residual-current switch. Cut annealed glass only. " +
		"The depths are geometry, not a promise of strength. Local rules and qualified advice come before this paper."
	CautionsShort = "Keep wheel and glass wet; dust harms the lungs, lead glass poisons. Wear eye protection. " +
		"Keep electricity off the water. Cut annealed glass only. Depths are geometry, no promise of strength."
)

// Frame draws what every page carries round what it shows: words at its head,
// the check bars and the cautions at its foot.
type Frame struct {
	Letters *lettering.Letters
	Unit    geometry.Unit
}

// Head is what stands at the top of a page.
type Head struct {
	Title  string // cut off where it is too long
	Ending string // of the title, which is never cut off
	Number string // such as page 1 of 2
	About  string
	Aside  float64 // how much of the lines' width is kept for what else stands at the right
}

// Sizes in the head: points, and millimetres.
const (
	titleSize, numberSize, headSize = 11.0, 10.0, 9.0

	titleDrop, headDrop, headAir = 4.0, 0.7, 2.3

	headLine = 3.8 // between the lines
)

// HeadRoom returns how deep a head is on a page.
func (fr Frame) HeadRoom(f Format, h Head) float64 {
	return titleDrop + headDrop + float64(len(fr.headLines(f, h)))*headLine + headAir
}

// AsideRoom returns how deep a head is that has a drawing of a depth at its right.
func AsideRoom(depth float64) float64 { return titleDrop + asideDrop + depth + headAir }

// asideDrop is what is left between a title and what stands below it at the right.
const asideDrop = 1.5

// Aside returns the upper right corner for what stands at the right of the head's
// lines.
func (f Format) Aside() geometry.Point {
	return geometry.Point{X: f.Width - f.Margin, Y: f.Height - f.Margin - titleDrop - asideDrop}
}

// headStart returns where the head's lines begin: to the right of the bar up, on
// a page so low that the bar reaches up to them.
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
	print := printWords
	if f.narrow() {
		print = printShort
	}
	texts := []string{print}
	if !f.Printed.True() {
		texts = append(texts, f.Printed.Corrected())
	}
	if h.About != "" {
		texts = append(texts, h.About)
	}
	var lines []string
	for _, words := range texts {
		lines = append(lines, Note{Words: words, Size: headSize}.fold(width, fr.Letters)...)
	}
	return lines
}

// Head adds the words at the top.
func (fr Frame) Head(d *drawing.Drawing, f Format, h Head) {
	top, left := f.Height-f.Margin, f.headStart()
	room := f.Width - f.Margin - left
	if h.Number != "" {
		d.Add(drawing.Notes, drawing.Text{
			At: geometry.Point{X: f.Width - f.Margin, Y: top - titleDrop}, Words: h.Number, Size: numberSize, Align: drawing.Right,
		})
		room -= fr.Letters.Width(h.Number, numberSize, false) + 4
	}
	d.Add(drawing.Notes, drawing.Text{
		At: geometry.Point{X: left, Y: top - titleDrop}, Words: fr.title(h, room), Size: titleSize, Bold: true,
	})
	y := top - titleDrop - headDrop
	for _, line := range fr.headLines(f, h) {
		y -= headLine
		d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: left, Y: y}, Words: line, Size: headSize})
	}
}

// title returns the title with its ending, in a width.
func (fr Frame) title(h Head, width float64) string {
	title := fr.Letters.Shortened(h.Title, titleSize, true, width-fr.Letters.Width(h.Ending, titleSize, true))
	return fr.Letters.Shortened(title+h.Ending, titleSize, true, width)
}

// Foot adds the check bars and the cautions, and where to look for what is not on
// the page, if that is to be said.
func (fr Frame) Foot(d *drawing.Drawing, f Format, see string) {
	for _, b := range CheckBars(fr.Unit) {
		d.Add(drawing.CheckBars, b.Marks(f.Bar(b))...)
	}
	words := Cautions
	if f.narrow() {
		words = CautionsShort
	}
	notes := []Note{{Words: words, Size: 7.5}}
	if see != "" {
		notes = append([]Note{{Words: see, Size: 9, Bold: true}}, notes...)
	}
	set, _, _ := Column(notes, f.cautions(), fr.Letters)
	d.Add(drawing.Notes, set...)
}

// RoomForBars returns an error if on a page of some paper the bars would reach
// into its margin.
func (fr Frame) RoomForBars(f Format, o Options) error {
	if least := fr.BarsReach() + 2*f.Margin; min(f.Width, f.Height) < least {
		return fmt.Errorf("--paper: read %q, which with a margin of %s has no room for the check bars; accepted: %s or more each way, or a smaller --margin",
			o.Paper.Name, fr.Unit.Text(o.Margin), fr.Unit.Text(math.Ceil(least)))
	}
	return nil
}

// BarsReach returns how far the bars reach into the page, ahead of the margin.
func (fr Frame) BarsReach() float64 {
	longest := 0.0
	for _, b := range CheckBars(fr.Unit) {
		longest = max(longest, b.Length)
	}
	return BarDepth + 1 + upStart + longest + barWidth
}
