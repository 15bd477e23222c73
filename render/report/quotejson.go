package report

import "roundlay/pattern"

// quoteJSON is the quote for one blank's pieces. What the job doesn't give is left out.
type quoteJSON struct {
	Pieces    int       `json:"pieces"`
	Cutting   number    `json:"cutting"`
	Wheels    int       `json:"wheels"`
	Change    *number   `json:"change,omitempty"`
	Finishing *number   `json:"finishing,omitempty"`
	Begun     number    `json:"begun"`
	Blanks    int       `json:"blanks"`
	Safe      int       `json:"blanks_mostly"`
	Spread    number    `json:"spread"`
	Minutes   spanJSON  `json:"minutes"`
	Price     *spanJSON `json:"price,omitempty"`
}

// spanJSON is the least and the most of something.
type spanJSON struct {
	Least number `json:"least"`
	Most  number `json:"most"`
}

func spanOf(i pattern.Interval) spanJSON { return spanJSON{number(i.Least), number(i.Most)} }

// quote returns the quote of a plan: nil where its job wants none, or a rate isn't known.
func quote(p *pattern.Plan) *quoteJSON {
	if !p.Job.Shop.Quotes() {
		return nil
	}
	q, ok := pattern.NewQuote([]*pattern.Plan{p})
	if !ok {
		return nil
	}
	out := &quoteJSON{
		Pieces: q.Pieces, Cutting: number(q.Cutting), Wheels: q.Wheels, Begun: number(q.Begun), Blanks: q.Blanks, Safe: q.Safe,
		Spread: number(q.Shop.Spread), Minutes: spanOf(q.Minutes),
	}
	if q.Shop.Change != nil {
		out.Change = known(*q.Shop.Change)
	}
	if q.Shop.Finishing != nil {
		out.Finishing = known(*q.Shop.Finishing)
	}
	if q.Shop.Hour > 0 {
		price := spanOf(q.Price)
		out.Price = &price
	}
	return out
}

// wearJSON is what wear does to the marks of one wheel.
type wearJSON struct {
	PerPiece number  `json:"lost_per_piece"`
	Pieces   int     `json:"pieces"`
	Groove   number  `json:"groove"`
	Across   number  `json:"across"`
	Cut      int     `json:"cut,omitempty"`
	Shorter  *number `json:"shorter,omitempty"`
	Deeper   *number `json:"deeper,omitempty"`
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
