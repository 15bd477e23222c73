package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// Readings returns remarks on a glass's diameters: how far they deviate from the
// line of a glass that is taken as straight, or which single reading makes a
// straight glass curved. Each begins with a small letter.
func Readings(p *pattern.Plan) []string {
	if p.Blank.Straight {
		return []string{taken(p)}
	}
	if m, ok := p.Misread(); ok {
		return []string{odd(p, m)}
	}
	return nil
}

// taken says how far each reading of a glass that is taken as straight is off.
func taken(p *pattern.Plan) string {
	u := p.Job.Length
	off, shows := make([]string, len(p.Blank.Stations)), false
	for i, s := range p.Blank.Stations {
		by := 2 * p.Blank.Off(s)
		words := "nothing"
		if u.FormatDecimal(math.Abs(by)) != u.FormatDecimal(0) {
			words, shows = u.FormatDecimal(math.Abs(by))+wider(by), true
		}
		off[i] = fmt.Sprintf("%s at %s", words, u.Format(s.Height))
	}
	if !shows {
		return "taken as straight, as it was measured."
	}
	return "taken as straight, along the line nearest to its readings. They deviate from it across: " + strings.Join(off, ", ") + "."
}

func wider(by float64) string {
	if by < 0 {
		return " narrower"
	}
	return " wider"
}

// odd says which reading makes the glass curved, and which reading would not.
func odd(p *pattern.Plan, m pattern.Misreading) string {
	u, way := p.Job.Length, "across"
	if m.Round {
		way = "round"
	}
	read, straight := u.FormatChosen(m.Read), straightReading(u, m)
	where := u.Format(m.Station.Height) + " above the table"
	words := fmt.Sprintf("only the reading %s makes it curved: %s %s was read, and with %s the glass would be straight.", where, read, way, straight)
	if !m.Sure {
		words = fmt.Sprintf("is it curved, or was it misread %s? %s %s was read, and with %s there the glass would be straight.", where, read, way, straight)
	}
	words += " Measure there once more"
	if m.Takes {
		return words + "; meanwhile, straight = true under the blank takes it as straight."
	}
	return words + "."
}

// straightReading writes what the reading would be on a straight glass, to the
// caliper's step, or finer where that would equal the actual reading.
func straightReading(u geometry.Unit, m pattern.Misreading) string {
	if text := u.Format(m.Straight); text != u.Format(m.Read) {
		return text
	}
	return u.FormatDecimal(m.Straight)
}
