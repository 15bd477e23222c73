package desk

import (
	"context"

	"roundlay/render/report"
)

// ground says how much glass the cuts of a job take from one blank. Where many cross, that
// takes longer than laying them out.
func (d *Desk) ground(ctx context.Context, body []byte) (*Reply, error) {
	var ask ofJob
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, blank, err := ask.onBlank()
	if err != nil {
		return unlaidAnswer(err)
	}
	plans, err := d.planned(ctx, j, blank)
	if err != nil {
		return unlaidAnswer(err)
	}
	return answer(struct {
		Numbers []report.Table `json:"numbers"`
	}{[]report.Table{report.GroundTable(plans[0])}})
}
