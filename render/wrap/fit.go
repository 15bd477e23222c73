package wrap

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/render/report"
)

// fitWords says how well the paper fits the glass, where it is not perfect.
func (a composer) fitWords() []string {
	s, u := a.sheet, a.sheet.plan.Job.Length
	misfit := fmt.Sprintf("%s in radius", u.FormatDecimal(s.face.Misfit))
	ends := report.PaperEnds(s.plan, s.face, "this paper")
	if s.curved {
		what := "The glass is curved"
		if s.side == Inside {
			what = "The inside is curved"
		}
		words := fmt.Sprintf("%s: on the %s it leaves the nearest cone by up to %s. So the paper is in %d gores, %d to a repeat%s. ",
			what, a.reaching(), misfit, s.parts, s.gores.PerRepeat, a.joined())
		words += "Round each gore and up its middle lengths are true; along its edges the paper is " + a.edgeError() +
			" the glass from end to end of the " + a.reaching() + ". Rub it down from the middle."
		return append([]string{words}, capitals(ends)...)
	}
	var words []string
	if !nothing(u, s.face.Misfit) {
		words = append(words, fmt.Sprintf("On the %s the glass leaves this paper's cone by up to %s, which is %s of girth.",
			a.reaching(), misfit, u.FormatDecimal(2*math.Pi*s.face.Misfit)))
	}
	return append(words, capitals(ends)...)
}

// reaching names what gores were made to lie on.
func (a composer) reaching() string {
	if a.sheet.plan.Blank.Paper != nil {
		return "paper"
	}
	return "band"
}

// readings says which readings are off a straight line, where that matters.
func (a composer) readings() []string {
	words := report.Readings(a.sheet.plan)
	for i := range words {
		words[i] = capital(words[i])
	}
	return words
}

// joined says what holds gores together.
func (a composer) joined() string {
	if !a.sheet.joined {
		return ", each a paper of its own: joined in a row they would lie on each other. Tape them edge to edge"
	}
	where := "at their widest"
	for z := a.sheet.low; z <= a.sheet.high; z++ {
		if a.sheet.gore.RadiusAt(z) > a.sheet.gore.RadiusAt(a.sheet.joint)+0.5 {
			where = a.sheet.plan.Job.Length.Format(a.sheet.joint) + " above the table"
		}
	}
	return ", joined " + where + ": cut between them, and leave what is not parted by a line"
}

// edgeError says how much a gore's edges are out.
func (a composer) edgeError() string {
	g, u := a.sheet.gores, a.sheet.plan.Job.Length
	switch {
	case nothing(u, g.Worst()):
		return fmt.Sprintf("within %s of", finest(u))
	case nothing(u, g.Gain):
		return fmt.Sprintf("up to %s shorter than", u.FormatDecimal(g.Loss))
	case nothing(u, g.Loss):
		return fmt.Sprintf("up to %s longer than", u.FormatDecimal(g.Gain))
	}
	return fmt.Sprintf("up to %s longer or %s shorter than", u.FormatDecimal(g.Gain), u.FormatDecimal(g.Loss))
}

// nothing reports whether a length is written as zeros only.
func nothing(u geometry.Unit, mm float64) bool { return u.FormatDecimal(mm) == u.FormatDecimal(0) }

// finest writes the smallest length that is not.
func finest(u geometry.Unit) string {
	zero := u.FormatDecimal(0)
	i := strings.LastIndexByte(zero, '0')
	return zero[:i] + "1" + zero[i+1:]
}
