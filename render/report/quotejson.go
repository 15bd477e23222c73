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
