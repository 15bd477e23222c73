package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/report"
)

// row is consecutive cuts that are described by the same words, and are of one size as far as
// a hand holds it.
type row struct {
	words
	size
	numbers [][]string // of each cut, or of each line that goes on, all round the glass
}

// words is what a row says about each of its cuts.
type words struct {
	part, length string
	hand         string // what the hand does along it
	onwards      bool
	unfit        bool // whether it can't be cut like this
}

// size is what a row's cuts come to: the deepest, the widest, and the least glass left.
type size struct{ depth, wide, left float64 }

// with returns the size of two cuts in one row. ok is false where they differ by more than a
// thousandth of an inch in depth, or by twice that in width: what no hand holds. Common
// practice, no source. Glass left isn't set at the wheel: it may differ by a caliper's step.
func (s size) with(t size, step float64) (both size, ok bool) {
	const held = 0.0255 // mm
	near := func(a, b, within float64) bool { return a == b || math.Abs(a-b) <= within }
	ok = near(s.depth, t.depth, held) && near(s.wide, t.wide, 2*held) && near(s.left, t.left, step)
	return size{max(s.depth, t.depth), max(s.wide, t.wide), min(s.left, t.left)}, ok
}

// rows puts what is cut in a pass into rows, in its order.
func (g glass) rows(pass pattern.Pass) []row {
	var rows []row
	var first size // of the last row: a row must not creep along
	for _, c := range pass.Chains {
		sum := g.plan.Sum(c)
		said, size := g.words(sum), size{sum.Depth, sum.Width, sum.Left}
		said.onwards = !c.Alone()
		numbers := make([]string, c.Times)
		for turns := range numbers {
			numbers[turns] = report.Line(g.plan.Copy(c, turns), c.Closed)
		}
		if n := len(rows); n > 0 && rows[n-1].words == said {
			if _, near := first.with(size, g.Unit.Step()); near {
				rows[n-1].size, _ = rows[n-1].with(size, g.Unit.Step())
				rows[n-1].numbers = append(rows[n-1].numbers, numbers)
				continue
			}
		}
		first = size
		rows = append(rows, row{said, size, [][]string{numbers}})
	}
	return rows
}

func (g glass) words(c pattern.Cut) words {
	how := "drawn"
	if c.Touch {
		how = "touch"
	}
	if c.Bridges() { // what is listed is how deep it bites
		how += ", " + notClear + ", wheel too large"
	}
	m := g.plan.Job.Motifs[c.Motif]
	part := m.Called() + " " + c.Part
	if strings.HasPrefix(m.Called(), c.Part) { // the ring of rings
		part = c.Part
	}
	if on := report.Standing(g.plan, c.Motif); on != "" {
		part += " of " + on
	}
	return words{part: part + ", " + how, length: bare(g.Unit.Format(c.Length)), hand: report.Hand(g.Unit, c), unfit: c.Bridges()}
}

// bare returns a length without its unit, which is in the column's head.
func bare(length string) string {
	for i := len(length) - 1; i >= 0; i-- {
		if length[i] == ' ' {
			return length[:i]
		}
	}
	return length
}

// cuts lists the cuts in the order to cut them, wheel by wheel.
func (g glass) cuts() []block {
	if report.Bare(g.plan) {
		return nil
	}
	p, width := g.plan, g.column()
	blocks := g.heading("3  Cut, and tick", width)
	said := "The numbers are those on the wrap."
	if p.Periods() > 1 || p.Period > 2 {
		said = "Each entry all round the glass before the next. " + said
	}
	if p.Overruled() {
		said += " The order is the job's own."
	}
	return slices.Concat(blocks, heading(g.paragraph(said, width)), g.passes(), g.totals("4  Count"))
}

// passes lists the cuts of every wheel.
func (g glass) passes() []block {
	var blocks []block
	order := g.plan.Order()
	for i, pass := range order {
		blocks = append(blocks, g.pass(pass, fmt.Sprintf("Wheel %d of %d", i+1, len(order)))...)
	}
	return blocks
}

// pass lists the cuts of one wheel.
func (g glass) pass(pass pattern.Pass, number string) []block {
	width, wheel := g.column(), g.plan.Job.Rack[pass.Wheel]
	blocks := g.heading(fmt.Sprintf("%s: %s", number, wheel.Name), width)
	about := fmt.Sprintf("%s. %s, %s.", Describe(g.Unit, wheel), count(len(pass.Cuts)*g.plan.Periods(), "cut"), g.groove(g.plan.Length(pass), g.plan.Rate(pass.Wheel) > 0, g.plan.PassMinutes(pass)))
	said := g.paragraph(about, width)
	if wear := report.WearWords(g.plan, pass); wear != "" {
		said = append(said, g.paragraph(wear, width)...)
	}
	columns := g.columns()
	blocks = slices.Concat(blocks, heading(said), columns)
	again := append(g.heading(fmt.Sprintf("%s: %s, continued", number, wheel.Name), width), columns...)
	for _, r := range g.rows(pass) {
		blocks = append(blocks, g.lines(r, again)...)
	}
	return blocks
}

// places returns where the columns of the cut list end.
func (g glass) places() (length, depth, wide, left float64) {
	left = g.column()
	wide = left - 27
	depth = wide - 17
	return depth - 18, depth, wide, left
}

// columns is the head of the cut list.
func (g glass) columns() []block {
	length, depth, wide, left := g.places()
	// What is gauged with a rule is in 64ths; the others are finer than that.
	what := map[geometry.Unit]string{geometry.Inch: "cut (inches; long in 64ths)", geometry.Millimetre: "cut (mm)"}[g.Unit]
	what = g.Letters.Shortened(what, bodySize, true, length-g.Letters.Width("long", bodySize, true)-3)
	head := line(
		bold(body(0, what)),
		bold(ending(length, "long")),
		bold(ending(depth, "deep")),
		bold(ending(wide, "wide")),
		bold(ending(left, "glass left")),
	)
	head.heads = true
	return []block{head, rule(g.column())}
}

// lines sets one row: what is cut, and a box for each of its cuts or lines. again is
// repeated above it where it begins a page. A long row that continues on a page
// repeats what is cut.
func (g glass) lines(r row, again []block) []block {
	const apart = 5
	length, depth, wide, left := g.places()
	longest := length - g.Letters.Width(r.length, bodySize, false) - apart
	part := body(0, g.Letters.Shortened(r.part, bodySize, r.unfit, longest))
	part.Bold = r.unfit
	what := line(
		part,
		ending(length, r.length),
		bold(ending(depth, bare(g.Unit.FormatDecimal(r.depth)))),
		ending(wide, bare(g.Unit.FormatDecimal(r.wide))),
		ending(left, bare(report.GlassLeft(g.Unit, r.left))),
	)
	ticks := g.boxes(r.numbers, g.column())
	var blocks []block
	if at := g.Letters.Width(r.part, bodySize, r.unfit) + boxApart; len(ticks) == 1 && at+ticks[0].width < longest {
		blocks = append(blocks, beside(what, ticks[0].block(at)))
	} else {
		blocks = append(blocks, what)
		for _, l := range ticks {
			blocks = append(blocks, l.block(0))
		}
	}
	if r.hand != "" {
		blocks = append(blocks, g.note(page.Note{Words: "by hand: " + r.hand, Size: bodySize}, g.column())...)
	}
	if r.onwards {
		blocks = append(blocks, line(body(4, "each box one line from repeat to repeat: do not lift the wheel in it")))
	}
	blocks = append(together(blocks), space(0.8))
	for i := range blocks {
		blocks[i].again = again
		if i > 0 && i+1 < len(blocks) {
			blocks[i].again = append(slices.Clone(again), what)
		}
	}
	return blocks
}

// beside sets words and a line of boxes on one foot.
func beside(words, ticks block) block {
	down := boxFoot - words.depth*(1-page.BenchRise)
	return block{depth: ticks.depth, draw: func(d *drawing.Drawing, left, top float64) {
		words.draw(d, left, top-down)
		ticks.draw(d, left, top)
	}}
}

// totals sums up the cuts, under a heading.
func (g glass) totals(heading string) []block {
	p, t, width := g.plan, g.plan.Totals(), g.column()
	words := fmt.Sprintf("In all %s, %s. ", count(t.Cuts, "cut"), g.groove(t.Length, g.timed(), p.Times().Cutting))
	words += fmt.Sprintf("About %s of glass is ground away", report.Weight(g.Unit, p.Blank.Grams(p.Volume())))
	if p.Blank.FloorKnown() {
		words += fmt.Sprintf(" of %s", report.Weight(g.Unit, p.Blank.Weight()))
	}
	words += "."
	if slices.ContainsFunc(p.Cuts, func(c pattern.Cut) bool { return p.Job.Rack[c.Wheel].Edge == groove.Gang }) {
		words += " A stroke of the gang counts as one cut."
	}
	words += g.rates()
	blocks := append(g.heading(heading, width), g.paragraph(words, width)...)
	blocks = append(blocks, g.paragraph("Begun ____________   Done ____________   Minutes at the wheel ____________", width)...)
	return together(blocks)
}

// groove writes a length of groove and, where it is known, its time.
func (g glass) groove(mm float64, timed bool, minutes float64) string {
	words := report.Groove(g.Unit, mm) + " of groove"
	if timed {
		words += ", " + report.Minutes(minutes)
	}
	return words
}

// Describe names a wheel by what can be measured on it.
func Describe(u geometry.Unit, w groove.Wheel) string {
	degrees := fmt.Sprintf("%g°", math.Round(w.Angle*1800/math.Pi)/10)
	size := fmt.Sprintf("%s across, %s thick", u.Format(2*w.Radius), u.Format(w.Thick))
	var edge string
	switch w.Edge {
	case groove.Round:
		return fmt.Sprintf("Round edge of radius %s, %s", u.Format(w.Convex), size)
	case groove.Flat:
		return "Flat edge, " + size
	case groove.Gang:
		edge = fmt.Sprintf("Gang of %d mitres of %s, %s apart", w.Mitres, degrees, u.Format(w.Spacing))
	default:
		edge = fmt.Sprintf("Mitre of %s", degrees)
	}
	switch {
	case w.Tip > 0:
		edge += fmt.Sprintf(", tip dressed flat %s wide", u.Format(w.Tip))
	case w.TipRadius > 0:
		edge += fmt.Sprintf(", tip dressed round to %s", u.Format(w.TipRadius))
	}
	return edge + ", " + size
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
