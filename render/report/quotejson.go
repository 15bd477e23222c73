package report

import "roundlay/pattern"

// quoteJSON is what the pieces of one blank take and cost.
type quoteJSON struct {
	Pieces    int       `json:"pieces"`                         // how many are wanted; 1 where the job doesn't say
	Cutting   number    `json:"cutting" unit:"min"`             // at the wheel for these pieces, spoiled ones not counted
	Wheels    int       `json:"wheels"`                         // how many are put on, if all pieces are cut with one before the next
	Change    *number   `json:"change,omitempty" unit:"min"`    // for each wheel that is put on; left out where the job doesn't say
	Finishing *number   `json:"finishing,omitempty" unit:"min"` // of each piece; left out where the job doesn't say
	Begun     number    `json:"begun" unit:"pieces"`            // how many are begun for that, on average
	Blanks    int       `json:"blanks"`                         // begun, in whole blanks
	Safe      int       `json:"blanks_mostly"`                  // the blanks that are enough nine times in ten
	Spread    number    `json:"spread" unit:"share"`            // how far the times may be off either way
	Minutes   spanJSON  `json:"minutes"`                        // in all, in minutes
	Price     *spanJSON `json:"price,omitempty"`                // in all, in the shop's own money; left out where it isn't known what an hour costs
}

// spanJSON is from the least to the most.
type spanJSON struct {
	Least number `json:"least" unit:"min or money"` // each wheel put on once for all pieces, and all times shorter by the spread
	Most  number `json:"most" unit:"min or money"`  // each wheel put on for each piece begun, and all times longer by the spread
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
