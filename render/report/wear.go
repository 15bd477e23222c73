package report

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/pattern"
)

// WearWords says how fast a wheel wears and when to measure it again; "" where the job doesn't
// say how fast it wears.
func WearWords(p *pattern.Plan, pass pattern.Pass) string {
	u := p.Job.Length
	w, ok := p.Wearing(pass, u.Step())
	if !ok {
		return ""
	}
	if w.Cut == nil {
		return fmt.Sprintf("Wear: half the wheel can wear away before a mark comes out %s shorter.", u.Format(u.Step()))
	}
	const many = 1000 // pieces
	after := "within this piece, after " + longGroove(u, w.Groove)
	switch {
	case w.Pieces >= many:
		return fmt.Sprintf("Wear: it takes over %d pieces like this until a mark comes out %s shorter.", many, u.Format(u.Step()))
	case w.Pieces > 0:
		after = fmt.Sprintf("after %s like this, which is %s", count(w.Pieces, "piece"), longGroove(u, w.Groove))
	}
	words := fmt.Sprintf("Wear: measure it again %s. From %s it is then down to %s across, and a mark as deep as cut %d comes out %s shorter",
		after, u.FormatChosen(2*p.Job.Rack[pass.Wheel].Radius), u.FormatDecimal(w.Across), w.Cut.ID, u.Format(w.Shorter))
	if w.Deeper > 0 {
		words += fmt.Sprintf(", or made as long %s deeper", fine(u, w.Deeper))
	}
	return words + "."
}

// longGroove writes a length of groove as a wheel's wear is given: in metres or feet.
func longGroove(u geometry.Unit, mm float64) string {
	if u == geometry.Millimetre {
		return fmt.Sprintf("%.1f m of groove", mm/1000)
	}
	return fmt.Sprintf("%.1f ft of groove", mm/(12*geometry.MillimetresPerInch))
}

// fine writes a small length with one decimal more than FormatDecimal.
func fine(u geometry.Unit, mm float64) string {
	digits := 3
	if u == geometry.Inch {
		digits = 4
	}
	return geometry.Decimal(mm/u.Millimetres(), digits) + " " + u.String()
}

// wearJSON is what wear does to the marks of one wheel.
type wearJSON struct {
	PerPiece number  `json:"lost_per_piece" unit:"mm"`    // how much of its diameter
	Pieces   int     `json:"pieces"`                      // after how many like this it is to be measured again
	Groove   number  `json:"groove" unit:"mm"`            // after how much groove that is
	Across   number  `json:"across" unit:"mm"`            // its diameter then
	Cut      int     `json:"cut,omitempty"`               // the id of the cut that then comes out otherwise; left out where half the wheel can wear away before one does
	Shorter  *number `json:"shorter,omitempty" unit:"mm"` // by how much its mark is shorter at its depth; left out without a cut
	Deeper   *number `json:"deeper,omitempty" unit:"mm"`  // by how much its mark is deeper at its length; left out where the cut is no touch
}

// wear returns what wear does in a pass: nil where it isn't known how fast the wheel wears.
func wear(p *pattern.Plan, pass pattern.Pass) *wearJSON {
	w, ok := p.Wearing(pass, p.Job.Length.Step())
	if !ok {
		return nil
	}
	out := &wearJSON{PerPiece: number(w.PerPiece), Pieces: w.Pieces, Groove: number(w.Groove), Across: number(w.Across)}
	if w.Cut != nil {
		out.Cut, out.Shorter, out.Deeper = w.Cut.ID, known(w.Shorter), where(w.Deeper > 0, w.Deeper)
	}
	return out
}
