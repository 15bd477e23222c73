package pattern

import (
	"context"
	"errors"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"roundlay/motifs"
	"roundlay/pattern/glass"
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

// Laying out and checking end with their context, wherever they are then, and leave
// nothing behind that goes on working.
func TestStopped(t *testing.T) {
	j := jobOn(straight(t), 4, motif(t, "leaf", motifs.Values{"fronds": 30, "arch": 0}, size(0.9, 0.9)), motif(t, "fan", nil))
	plans, err := Lay(t.Context(), j)
	if err != nil {
		t.Fatal(err)
	}
	before := runtime.NumGoroutine()
	for _, lives := range []int64{0, 1, 5, 30, 100} {
		ctx := &dying{Context: t.Context(), lives: lives}
		if _, err := new(Editor).Lay(ctx, j); !errors.Is(err, context.Canceled) {
			t.Errorf("done after %d: %v", lives, err)
		}
		// It is asked before each cut and each pair: once more by each processor, and by
		// those that pass the error on.
		if after, few := ctx.asked.Load()-lives, int64(2*runtime.GOMAXPROCS(0)+6); after > few {
			t.Errorf("done after %d, it is asked %d times more", lives, after)
		}
	}
	done, stop := context.WithCancel(t.Context())
	stop()
	for name, work := range map[string]func() error{
		"New":    func() error { _, err := New(done, j, j.Blanks[0]); return err },
		"Lay":    func() error { _, err := Lay(done, j); return err },
		"check":  func() error { _, err := plans[0].check(done, nil); return err },
		"NewSet": func() error { _, err := NewSet(done, laidAll(t, three(t, motif(t, "leaf", nil)))); return err },
	} {
		if err := work(); !errors.Is(err, context.Canceled) {
			t.Errorf("%s, stopped before it began: %v", name, err)
		}
	}
	ended(t, before)
}

// ended waits until no more goroutines are left than before. One whose work is waited for
// has told so, and is counted until it has returned as well: on a busy machine that takes a
// while. One that goes on working is still there at the end.
func ended(t *testing.T, before int) {
	t.Helper()
	for range 1000 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
	t.Errorf("%d goroutines before, %d after", before, runtime.NumGoroutine())
}

// The largest wheel for a hollow is sought wheel by wheel, and the search ends between two
// of them: here for a bar through a waist of 66 mm, which a wheel of 300 mm bridges.
func TestLargestWheelStopped(t *testing.T) {
	waist := jobOn(blank(t,
		glass.Station{Height: 0, Radius: 46, Wall: 8}, glass.Station{Height: 30, Radius: 38, Wall: 3}, glass.Station{Height: 60, Radius: 33, Wall: 3},
		glass.Station{Height: 90, Radius: 38, Wall: 3}, glass.Station{Height: 120, Radius: 46, Wall: 3},
	), 6, bar(t, 0, 30, 64, depth(0.7)))
	waist.Rack[mitre].Radius = 150
	p := planned(t, waist)
	if !p.Cuts[0].Bridges() {
		t.Fatal("the wheel goes into the waist")
	}
	for _, lives := range []int64{0, 1, 5, 9} {
		ctx := &dying{Context: t.Context(), lives: lives}
		if _, err := p.LargestWheel(ctx, &p.Cuts[0]); !errors.Is(err, context.Canceled) || ctx.asked.Load() > lives+1 {
			t.Errorf("the largest wheel, done after %d: %v, asked %d times", lives, err, ctx.asked.Load())
		}
	}
}
