package report

import (
	"fmt"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// passJSON is what is cut with one wheel before the next.
type passJSON struct {
	Wheel   string    `json:"wheel"`                        // its name
	Face    string    `json:"face,omitempty" word:"base"`   // the face it cuts; left out on the side
	Cuts    []int     `json:"cuts"`                         // the ids of its cuts all round the glass, in order
	Length  number    `json:"length" unit:"mm"`             // of groove
	Minutes *number   `json:"minutes,omitempty" unit:"min"` // how long that takes; left out where the wheel's rate isn't known
	Wear    *wearJSON `json:"wear,omitempty"`               // what its wear does; left out where the job doesn't say how fast it wears
}

func passes(p *pattern.Plan) []passJSON {
	out := []passJSON{}
	for _, face := range p.Faces() {
		for _, pass := range face.Order() {
			one := passJSON{Wheel: p.Job.Rack[pass.Wheel].Name, Face: faceName(face), Cuts: face.Within(pass), Length: number(face.Length(pass))}
			one.Minutes = where(p.Rate(pass.Wheel) > 0, face.PassMinutes(pass))
			one.Wear = wear(face, pass)
			out = append(out, one)
		}
	}
	return out
}

// Order says in which order to cut, by the numbers of the first repeat.
func Order(b *strings.Builder, p *pattern.Plan) {
	order := p.Order()
	fmt.Fprintf(b, "Cutting order, %s", count(len(order), "wheel"))
	switch {
	case p.GoesOn():
		fmt.Fprintf(b, "; each with all its copies round the %s before the next", body(p))
	case p.Periods() > 1:
		fmt.Fprintf(b, "; each cut %d times round the %s before the next", p.Periods(), body(p))
	}
	b.WriteString(":\n")
	for i, pass := range order {
		length := p.Length(pass)
		fmt.Fprintf(b, "  %d. %s: %s, %s of groove%s", i+1, p.Job.Rack[pass.Wheel].Name,
			count(len(pass.Cuts)*p.Periods(), "cut"), Groove(p.Job.Length, length), passTime(p, pass))
		fmt.Fprintf(b, "\n     %s\n", wrap(runs(pass.Chains), 74, "     "))
		if words := WearWords(p, pass); words != "" {
			fmt.Fprintf(b, "     %s\n", wrap(words, 74, "     "))
		}
	}
}

// Groove writes a length of groove: metres, or inches, and feet where it is long.
func Groove(u geometry.Unit, mm float64) string {
	if u == geometry.Millimetre {
		return fmt.Sprintf("%.2f m", mm/1000)
	}
	const foot, long = 12, 10 * 12
	inches := mm / geometry.MillimetresPerInch
	if inches < long {
		return fmt.Sprintf("%.0f in", inches)
	}
	return fmt.Sprintf("%.0f in (%.0f ft)", inches, inches/foot)
}

// runs writes the numbers of cuts, those that follow on from one another joined,
// and lines that go on from repeat to repeat as one.
func runs(chains []pattern.Chain) string {
	follows := func(c, before pattern.Chain) bool {
		return c.Alone() && before.Alone() && c.Cuts[0] == before.Cuts[0]+1
	}
	return Runs(chains, follows, func(c pattern.Chain) string {
		if c.Alone() {
			return fmt.Sprint(c.Cuts[0])
		}
		return Line(c.Cuts, c.Closed)
	})
}

// Minutes writes a time as a shop does: "40 minutes", "2 h 5 min".
func Minutes(minutes float64) string {
	whole := int(minutes + 0.5)
	switch {
	case minutes < 1:
		return "less than a minute"
	case whole < 60:
		return count(whole, "minute")
	}
	return fmt.Sprintf("%d h %d min", whole/60, whole%60)
}
