package desk

import (
	"context"
	"fmt"
	"slices"

	"roundlay/pattern/job"
)

// mostAnswer is the number found for a count that is to be the most that clears.
type mostAnswer struct {
	Path   string `json:"path"`
	Count  int    `json:"count"`
	Clears bool   `json:"clears"` // false where not even the least does
}

// most finds the numbers that a layout waits for, and keeps them for it.
func (d *Desk) most(ctx context.Context, body []byte) (*Reply, error) {
	var ask struct{ jobText }
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, err := ask.read()
	if err != nil {
		return unlaidAnswer(err)
	}
	r, err := d.counts.find(ctx, j)
	if err != nil {
		return unlaidAnswer(err)
	}
	found := []mostAnswer{}
	for i, m := range r.Job.Motifs {
		for _, key := range m.Most {
			found = append(found, mostAnswer{
				fmt.Sprintf("%s.%s", job.Item("motif", i), key), m.Values.Count(key),
				!slices.Contains(r.NoneClears, job.Count{Motif: i, Key: key}),
			})
		}
	}
	return answer(struct {
		Found []mostAnswer `json:"found"`
	}{found})
}
