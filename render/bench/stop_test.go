package bench

import (
	"context"
	"errors"
	"testing"

	"roundlay/pattern"
	"roundlay/render/page"
)

// A sheet that is stopped draws no blank more: as many as could be begun before.
func TestSheetStopsBetweenBlanks(t *testing.T) {
	plans := plansOf(t, setJob())
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	drawn := make(chan *pattern.Plan, len(plans))
	_, err := New(ctx, plans, page.DefaultOptions(plans[0].Job.Length), func(p *pattern.Plan) {
		stop()
		drawn <- p
	})
	if !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	if n := len(drawn); n == 0 || n == len(plans) {
		t.Errorf("%d of %d blanks drawn", n, len(plans))
	}
}
