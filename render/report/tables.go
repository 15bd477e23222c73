package report

import (
	"fmt"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Table is figures of a plan in rows under a title, for a screen.
type Table struct {
	Title string `json:"title"`
	Rows  []Row  `json:"rows"`
}

// Row is one figure: what it is of, the figure, and what else is to be known of it.
type Row struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	Hint  string `json:"hint"`
}

// Tables returns what divide, check and plan print of a plan, in rows: divider settings, the
// band, the least land and the least glass left, the cuts with each wheel, what the glass holds
// and weighs, and what one such piece takes and costs, if the job gives anything for that.
// What is ground away takes longer to find: see GroundTable.
func Tables(p *pattern.Plan) []Table {
	all := []Table{dividers(p), limitsTable(p)}
	if p.Base != nil {
		for _, t := range []Table{dividers(p.Base), limitsTable(p.Base), wheelsTable(p.Base)} {
			t.Title += " of the base"
			all = append(all, t)
		}
	}
	all = append(all, cutting(p), wheelsTable(p), glassTable(p))
	if t, ok := quoteTable(p); ok {
		all = append(all, t)
	}
	return all
}

// GroundTable gives how much glass the cuts take, and what remains.
func GroundTable(p *pattern.Plan) Table {
	u, away := p.Job.Length, p.Blank.Grams(p.GroundAway())
	t := Table{"Cut away", []Row{{Name: "ground away", Value: Weight(u, away)}}}
	if p.Blank.FloorKnown() {
		t.Rows = append(t.Rows, Row{Name: "remains", Value: Weight(u, p.Blank.Weight()-away)})
	}
	return t
}

// dividers gives the settings for the job's circles, from the foot up.
func dividers(p *pattern.Plan) Table {
	t := Table{Title: "Dividers", Rows: []Row{}}
	u := p.Job.Length
	if len(p.Chords) == 0 {
		t.Rows = append(t.Rows, Row{Name: "repeats", Value: "1", Hint: Undivided})
	}
	for _, c := range p.Chords {
		circle := Circle{Name: c.Name, Radius: c.Radius, Parts: c.Parts}
		hint := fmt.Sprintf("chord %s; so set, %d steps %s; %s across", u.FormatDecimal(c.Chord), c.Parts, Closing(u, closingGap(u, circle)), u.Format(2*c.Radius))
		if c.Height > 0 && p.Face == job.Side {
			hint += ", " + u.Format(c.Height) + " above the table"
		}
		row := Row{c.Name, u.Format(c.Chord), hint}
		if words := TooShort(u, c.Chord); words != "" {
			row.Value, row.Hint = "-", words
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// limitsTable gives the band of a face and what it is measured against: land and glass left.
func limitsTable(p *pattern.Plan) Table {
	u := p.Job.Length
	limits := p.Job.Limits
	return Table{"Room", []Row{
		{"band", u.Format(p.Band.Foot) + " to " + u.Format(p.Band.Top), p.From() + "; " + shape(p)},
		{"least land", landWords(u, p.Job, nearestOn(p)), fmt.Sprintf("%s is asked, where a motif has no limit of its own", u.FormatChosen(limits.Land))},
		{"least glass left", leftWords(u, p.Job, p.MinLeft()), leastLeft(p)},
	}}
}

// leastLeft says under which cut the least glass is left, and how much is asked.
func leastLeft(p *pattern.Plan) string {
	u, left := p.Job.Length, p.MinLeft()
	asked := u.FormatChosen(p.Job.Limits.Leave) + " is asked"
	for _, c := range p.Cuts {
		height := c.Remains.Height
		if c.Bridges() && c.Bridge.Left == left {
			height = c.Bridge.Height
		} else if c.Left != left {
			continue
		}
		return fmt.Sprintf("cut %d, motif %d (%s), %s %s; %s", c.ID, c.Motif+1,
			p.Job.Motifs[c.Motif].Called(), u.Format(height), p.From(), asked)
	}
	return asked
}

// cutting gives the sums over the whole glass.
func cutting(p *pattern.Plan) Table {
	u, t := p.Job.Length, p.Whole()
	rows := []Row{
		{"cuts", fmt.Sprint(t.Cuts), count(p.Repeats, "repeat")},
		{"groove", Groove(u, t.Length), CuttingTime(p)},
	}
	return Table{"Cutting", rows}
}

// wheelsTable gives, for each wheel in the order to cut, its cuts and how deep they are.
func wheelsTable(p *pattern.Plan) Table {
	u := p.Job.Length
	t := Table{Title: "Depth by wheel", Rows: []Row{}}
	for _, pass := range p.Order() {
		deep, set := Deep(u, pass.Cuts)
		hint := fmt.Sprintf("%s, %s of groove", count(len(pass.Cuts)*p.Periods(), "cut"), Groove(u, p.Length(pass)))
		if set != "" {
			hint += "; set the wheel " + set + " deep: where it is rolled it comes deeper at one side"
		}
		t.Rows = append(t.Rows, Row{p.Job.Rack[pass.Wheel].Name, deep, hint})
	}
	return t
}

// glassTable gives what the glass holds and weighs.
func glassTable(p *pattern.Plan) Table {
	u, b := p.Job.Length, p.Blank
	t := Table{Title: "The glass", Rows: []Row{}}
	add := func(name, value, hint string) { t.Rows = append(t.Rows, Row{name, value, hint}) }
	if b.FloorKnown() {
		add("holds to the rim", volume(u, b.Capacity(b.Height())), "")
		if b.Fill > 0 {
			add("holds to the fill line", volume(u, b.Capacity(b.Fill)), u.Format(b.Fill)+" above the table")
		}
		add("weighs uncut", Weight(u, b.Weight()), strings.TrimSpace(fmt.Sprintf("of %s at %.2f g/cm³. %s", b.Material.Name, b.Material.Density, Calibrated(p))))
	} else {
		add("holds and weighs", "not known", "without its floor")
	}
	return t
}
