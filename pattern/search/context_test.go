package search

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// dying is a context that is done once it has been asked so often.
type dying struct {
	context.Context
	asked atomic.Int64
	lives int64
}

func (d *dying) Err() error {
	if d.asked.Add(1) > d.lives {
		return context.Canceled
	}
	return nil
}

// Every search ends with its context's error, wherever in its midst that is done, and
// soon after: it asks the context no more than a few hundred times then, where the
// whole search of such a job asks it thousands of times.
func TestCancelled(t *testing.T) {
	j := ten(t)
	most := jobOn(straight(t), 4, motif(t, "leaf", motifs.Values{"arch": 0}, with(fine)))
	most.Motifs[0].Most = []string{"fronds"}
	searches := map[string]func(ctx context.Context) error{
		"Lay": func(ctx context.Context) error { _, err := Lay(ctx, most); return err },
		"Cures": func(ctx context.Context) error {
			plans, err := Lay(t.Context(), j)
			if err != nil {
				return err
			}
			return Cures(ctx, plans...)
		},
		"NewFit": func(ctx context.Context) error { _, err := NewFit(ctx, j); return err },
		"Wheels": func(ctx context.Context) error { _, err := Wheels(ctx, j); return err },
	}
	for name, search := range searches {
		for _, lives := range []int64{0, 1, 5, 30} {
			ctx := &dying{Context: t.Context(), lives: lives}
			if err := search(ctx); !errors.Is(err, context.Canceled) {
				t.Errorf("%s, done after %d: %v", name, lives, err)
			}
			if after := ctx.asked.Load() - lives; after > 400 {
				t.Errorf("%s, done after %d, asks %d times more", name, lives, after)
			}
		}
	}
}

// What a search that was cancelled has found is none of what a later one goes by.
func TestCancelledLeavesTheJob(t *testing.T) {
	j := ten(t)
	before := offersOf(t, j)
	for _, lives := range []int64{3, 40} {
		_, _ = NewFit(&dying{Context: t.Context(), lives: lives}, j)
	}
	if after := offersOf(t, j); after != before {
		t.Errorf("%s, and then %s", before, after)
	}
}

func offersOf(t *testing.T, j *job.Job) string {
	t.Helper()
	f, err := NewFit(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for _, o := range f.Offers {
		text += changesOf(f.Job, o.Changes) + "\n"
	}
	return text
}
