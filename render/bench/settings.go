package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
	"roundlay/render/picture"
	"roundlay/render/report"
)

// glass is what the sheet says of one blank.
type glass struct {
	format
	plan *pattern.Plan
}

// Room for the small picture, in millimetres, and what stands between it and the
// settings.
const (
	pictureWidth = 58.0
	pictureDepth = 78.0
	pictureApart = 5.0
)

// settings sets how to divide and mark the blank, with the picture beside it or,
// on small paper, below.
func (g glass) settings() []block {
	words := stack(g.steps(g.column() - pictureWidth - pictureApart))
	beside := block{depth: max(words.depth, pictureDepth+2), draw: func(d *drawing.Drawing, x, top float64) {
		words.draw(d, x, top)
		g.picture(d, geometry.Point{X: x + g.column(), Y: top - 2})
	}}
	blocks := []block{beside}
	if _, room := g.room().Size(); beside.depth > room {
		blocks = append(g.steps(g.column()), block{depth: pictureDepth + 2, draw: func(d *drawing.Drawing, x, top float64) {
			g.picture(d, geometry.Point{X: x + pictureWidth, Y: top - 2})
		}})
	}
	for _, words := range g.notes() {
		blocks = append(blocks, g.paragraph(words, g.column())...)
	}
	return slices.Concat(blocks, g.doubted(), g.findings())
}

// steps sets the divider settings and where to mark, in a width.
func (g glass) steps(width float64) []block {
	if report.Bare(g.plan) {
		return g.heading("Nothing is cut on the side", width)
	}
	title := fmt.Sprintf("1  Set the dividers, %d parts", g.plan.Repeats)
	if len(g.plan.Chords) == 0 {
		title = "1  One repeat: there is nothing to divide"
	}
	blocks := g.heading(title, width)
	for _, c := range g.plan.Chords {
		blocks = append(blocks, g.setting(c, width)...)
	}
	blocks = append(blocks, g.heading("2  Mark the blank", width)...)
	for i, words := range g.marks() {
		blocks = append(blocks, g.item(string(rune('a'+i)), words, width)...)
	}
	return blocks
}

// setting sets one circle and, in large letters, its divider setting.
func (g glass) setting(c pattern.Chord, width float64) []block {
	u := g.Unit
	where := fmt.Sprintf("%s, %s across", c.Name, u.Format(2*c.Radius))
	if c.Height > 0 && g.plan.Face == job.Side {
		where = fmt.Sprintf("%s, %s up", c.Name, u.Format(c.Height))
	}
	if words := report.TooShort(u, c.Chord); words != "" {
		return g.paragraph(where+": "+words+".", width)
	}
	set := u.Setting(c.Chord)
	large := bold(ending(width, set.Text))
	large.Size = settingSize
	blocks := []block{line(body(0, where), large)}
	if g.Letters.Width(where, bodySize, false)+2+g.Letters.Width(set.Text, settingSize, true) > width {
		blocks = []block{line(body(0, where)), line(large)}
	}
	gap := geometry.Division{Radius: c.Radius, Parts: c.Parts}.ClosingGap(math.Min(set.Length, 2*c.Radius))
	said := fmt.Sprintf("exactly %s; the last step will %s", u.FormatDecimal(c.Chord), report.Closing(u, gap))
	for _, l := range g.Letters.Lines(said, bodySize, false, width-4) {
		blocks = append(blocks, line(body(4, l)))
	}
	return append(blocks, space(1))
}

// marks says where to mark, step by step.
func (g glass) marks() []string {
	p, u := g.plan, g.Unit
	foot := fmt.Sprintf("Step %d marks round the foot", p.Repeats)
	middle := "Each mark is the middle of a repeat. Check it at the band's top with the dividers."
	if p.Repeats == 1 {
		foot, middle = "One mark at the foot", "The mark is the middle of the design."
	}
	if face := p.Outside(); face.Lower.Why != pattern.WholeGlass {
		foot += fmt.Sprintf("; for the outside paper, along a line drawn round %s up, where it begins", u.Format(face.Low))
	}
	if p.Repeats > 1 {
		foot += ". Number them to the right, rim up"
	}
	if free := report.Free(p); free != "" {
		middle += " " + strings.ToUpper(free[:1]) + free[1:] + ", and marked all the same."
	}
	steps := []string{foot + ".", fmt.Sprintf("Band: a line round %s up, and one %s up.", u.Format(p.Band.Foot), u.Format(p.Band.Top)), middle}
	return steps
}

// notes says what else to know of this blank: its glass, its fill line, that it was
// weighed and that it is out of round.
func (g glass) notes() []string {
	p := g.plan
	about := "Of " + p.Blank.Material.Name
	if p.Blank.Fill > 0 {
		about += fmt.Sprintf("; filled to a line %s up", g.Unit.Format(p.Blank.Fill))
	}
	said := []string{about + "."}
	if words := report.Calibrated(p); words != "" {
		said = append(said, words)
	}
	if words := g.round(); words != "" {
		said = append(said, words)
	}
	return said
}

// doubted lists what to measure again before cutting, as large as NOT CLEAR.
func (g glass) doubted() []block {
	said := report.Remeasure(g.plan)
	if len(said) == 0 {
		return nil
	}
	blocks := g.heading(remeasure+" before you cut:", g.column())
	for _, words := range said {
		blocks = append(blocks, g.warning(words, g.column())...)
	}
	return blocks
}

// findings lists what the check found. That a job is not clear is as large as a
// heading, so that nobody begins before reading it.
func (g glass) findings() []block {
	width := g.column()
	if g.plan.Clear() {
		if len(g.plan.Doubts()) > 0 {
			return nil // doubted has said on what it hangs
		}
		return g.paragraph(report.Verdict("Checked", g.plan), width)
	}
	blocks := g.heading(notClear+". Mend the job before you cut:", width)
	for _, face := range g.plan.Faces() {
		told, more := report.Listed(face)
		for _, f := range told {
			blocks = append(blocks, g.paragraph(glass{g.format, face}.finding(f), width)...)
		}
		if more != "" {
			blocks = append(blocks, g.paragraph(more, width)...)
		}
	}
	return blocks
}

// notClear marks what must not be cut as it is.
const notClear = "NOT CLEAR"

// remeasure marks what must be measured again before it is cut.
const remeasure = "MEASURE AGAIN"

// round says how much being out of round upsets equal steps at the worst station.
func (g glass) round() string {
	var worst *pattern.Roundness
	for _, r := range g.plan.Roundness() {
		const shows = 0.01 // on no caliper below this
		if r.OutOfRound() >= shows && !math.IsNaN(r.Off) && (worst == nil || r.Off > worst.Off) {
			worst = &r
		}
	}
	if worst == nil {
		return ""
	}
	u := g.Unit
	return fmt.Sprintf("Out of round: %s up it is from %s to %s across, which puts a mark up to %s off its place. Share out what the last step leaves.",
		u.Format(worst.Height), u.Format(worst.Min), u.Format(worst.Max), u.FormatDecimal(worst.Off))
}

// finding describes the worst of a group of findings: its cuts, its place and its
// cure.
func (g glass) finding(group pattern.Group) string {
	worst := group.Worst()
	words := group.Letter + "  " + strings.ToUpper(group.Kind.String())
	for i, id := range worst.Cuts {
		words += []string{", cut ", " and cut "}[min(i, 1)] + fmt.Sprint(id)
	}
	from := "up"
	if g.plan.Face == job.Base {
		from = "from the middle of the base"
	}
	words = fmt.Sprintf("%s, %s %s: %s.", words, g.Unit.Format(worst.Height), from, report.Measured(g.plan, worst))
	if cure := report.Cure(g.plan, worst); cure != "" {
		words += " Cure: " + cure + "."
	}
	return words
}

// picture draws the cut glass as large as there is room, below and to the left of a
// corner.
func (g glass) picture(d *drawing.Drawing, corner geometry.Point) {
	const air = 0.5 // what its lines need
	small, box := picture.Small(g.plan, pictureWidth-air, pictureDepth-air)
	middle := corner.X - pictureWidth/2
	d.Append(small.Moved(geometry.Motion{Cos: 1, X: middle - (box.Min.X+box.Max.X)/2, Y: corner.Y - box.Max.Y}))
}
