package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// CutList writes every cut of the plans for a spreadsheet, a row each, in the
// order to cut them. Lengths are decimals in the job's unit, which the header
// names, so that a spreadsheet can calculate with them. What is gauged with a rule
// or a caliper in 64ths of an inch is repeated in 64ths at the end of the row.
func CutList(w io.Writer, plans []*pattern.Plan) error {
	u := plans[0].Job.Length
	in := func(what string) string { return fmt.Sprintf("%s (%s)", what, u) }
	c := csv.NewWriter(w)
	// Errors are kept for Error, below.
	header := []string{
		"blank", "step", "wheel", "cut", "repeat", "motif", "kind", "part", "stroke",
		in("length"), in("depth"), in("depth asked"), in("width"), in("glass left"),
		in("start height"), "start angle (degrees)", in("end height"), "end angle (degrees)",
	}
	if u == geometry.Inch {
		header = append(header, "length (64ths)", "start height (64ths)", "end height (64ths)")
	}
	faced := slices.ContainsFunc(plans, func(p *pattern.Plan) bool { return p.Base != nil })
	if faced {
		header = append(header, "face")
	}
	byHand := plans[0].Job.ByHand()
	if byHand {
		header = append(header, "swell (shares of the depth asked)", "rock left (degrees)", "rock right (degrees)")
	}
	rolled := slices.ContainsFunc(plans, anySetsLess)
	if rolled {
		header = append(header, in("depth to set"))
	}
	c.Write(header)
	for _, p := range plans {
		step := 0
		for _, face := range p.Faces() {
			all := face.All()
			for _, id := range face.Sequence() {
				step++
				cut := all[id-all[0].ID]
				row := cutRow(face, step, cut)
				if faced {
					row = append(row, face.Face.String())
				}
				if byHand {
					row = append(row, handRow(*cut.Hand)...)
				}
				if rolled {
					row = append(row, decimal(face.Job.Length, DepthToSet(cut)))
				}
				c.Write(row)
			}
		}
	}
	c.Flush()
	return c.Error()
}

func cutRow(p *pattern.Plan, step int, c pattern.Cut) []string {
	u, start, end := p.Job.Length, c.Samples[0], c.Samples[len(c.Samples)-1]
	angle := func(theta float64) string { return geometry.Decimal(float64(degrees(theta)), 2) }
	stroke := "drawn"
	if c.Touch {
		stroke = "touch"
	}
	row := []string{
		plainText(p.Blank.Name), strconv.Itoa(step), plainText(p.Job.Rack[c.Wheel].Name), strconv.Itoa(c.ID), strconv.Itoa(c.Repeat),
		strconv.Itoa(c.Motif + 1), p.Job.Motifs[c.Motif].Kind.Name, c.Part, stroke,
		decimal(u, c.Length), decimal(u, c.Depth), decimal(u, c.Asked), decimal(u, c.Width), decimal(u, c.Left),
		decimal(u, start.Height), angle(start.Theta), decimal(u, end.Height), angle(end.Theta),
	}
	if u == geometry.Inch {
		row = append(row, gauged(u, c.Length), gauged(u, start.Height), gauged(u, end.Height))
	}
	return row
}

// anySetsLess reports whether a wheel is set to less than a cut's depth somewhere on a glass.
func anySetsLess(p *pattern.Plan) bool {
	return slices.ContainsFunc(p.Faces(), func(face *pattern.Plan) bool {
		_, set := Deep(p.Job.Length, face.Cuts)
		return set != ""
	})
}

// handRow is what the hand does along a cut: empty where that is nothing.
func handRow(h groove.Hand) []string {
	shares := make([]string, len(h.Swell))
	for i, share := range h.Swell {
		shares[i] = fmt.Sprintf("%.4g", share)
	}
	row := []string{strings.Join(shares, " "), "", ""}
	if h.Rock != [2]float64{} {
		for i, roll := range h.Rock {
			row[1+i] = job.InDegrees(geometry.Angle(roll))
		}
	}
	return row
}

// plainText returns a name that a spreadsheet takes as text: one that begins like a
// formula gets an apostrophe in front.
func plainText(name string) string {
	if start := strings.TrimSpace(name); start != "" && strings.Contains("=+-@＝＋－＠", string([]rune(start)[:1])) {
		return "'" + name
	}
	return name
}

// gauged writes a length in 64ths. A spreadsheet takes 1/16 for a day of January, and
// 0 1/16 for a fraction.
func gauged(u geometry.Unit, mm float64) string {
	text, _ := strings.CutSuffix(u.Format(mm), " "+u.String())
	if strings.Contains(text, "/") && !strings.Contains(text, " ") {
		text = "0 " + text
	}
	return text
}

// decimal writes a length as a bare decimal, ten times finer than calipers show.
func decimal(u geometry.Unit, mm float64) string {
	if math.IsInf(mm, 0) {
		return "" // of a cut off the glass, what it leaves
	}
	number, _, _ := strings.Cut(u.FormatDecimal(mm), " ")
	return number
}
