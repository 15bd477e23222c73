package desk

import (
	"context"

	"roundlay/pattern/search"
	"roundlay/render/report"
)

// offerAnswer is changes with which a job clears, or that it has room for.
type offerAnswer struct {
	Words string `json:"words"`
	Edits []Edit `json:"edits"`
	Cost  string `json:"cost"`
}

// fit looks for what makes a job clear or, of one that clears, for what it has room for.
func (d *Desk) fit(ctx context.Context, body []byte) (*Reply, error) {
	var ask struct{ jobText }
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, err := ask.read()
	if err != nil {
		return unlaidAnswer(err)
	}
	f, err := search.NewFit(ctx, j)
	if err != nil {
		return unlaidAnswer(err)
	}
	out := struct {
		Clear  bool          `json:"clear"`
		Words  string        `json:"words"`
		Offers []offerAnswer `json:"offers"`
		Wheels []string      `json:"wheels"` // to buy: the job clears with all of them together
	}{Clear: f.Clear, Words: report.FitWords(f), Offers: []offerAnswer{}, Wheels: append([]string{}, report.NewWheels(f)...)}
	if len(f.Offers) == 0 {
		return answer(out)
	}
	plans, err := d.planned(ctx, f.Job, f.Job.Blanks[0]) // for what a share comes to in lengths
	if err != nil {
		return unlaidAnswer(err)
	}
	for _, o := range f.Offers {
		out.Offers = append(out.Offers, offerAnswer{report.ChangeWords(plans[0], o.Changes), editsOf(o.Job, o.Changes), report.CostWords(f, o)})
	}
	return answer(out)
}
