package wrap

import (
	"context"
	"errors"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
)

// stopping is a context that is done after it was asked a number of times.
type stopping struct {
	context.Context
	left int
}

func (s *stopping) Err() error {
	if s.left--; s.left < 0 {
		return context.Canceled
	}
	return nil
}

// A wrap that is stopped draws no page more: of six patches that each have a
// place, as many are drawn as it was let.
func TestWrapStopsBetweenPages(t *testing.T) {
	t.Parallel()
	p := planOf(t, leafJob(taperedGlass, 6))
	for side, paper := range map[Side]string{Patches: "a4", Outside: "150x150mm"} {
		a, err := newComposer(p, on(t, side, paper))
		if err != nil {
			t.Fatal(err)
		}
		l, _ := a.layout()
		const let = 2
		if _, err := a.pages(&stopping{t.Context(), let}, l); !errors.Is(err, context.Canceled) {
			t.Errorf("%v: %v", side, err)
		}
		if n := len(a.sheet.drawn); n != let {
			t.Errorf("%v: %d pieces drawn, want %d", side, n, let)
		}
		if _, err := a.picture(&stopping{t.Context(), 0}); !errors.Is(err, context.Canceled) {
			t.Errorf("%v: the picture: %v", side, err)
		}
	}
}

// What is asked for when all is to stop is not made.
func TestStoppedBeforeItBegins(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	p, o := demoPlan(t), DefaultOptions(geometry.Inch)
	_, wrap := New(ctx, p, o)
	_, test := NewTestPage(ctx, p, o)
	_, chart := NewChart(ctx, motifs.All(), o)
	_, of := NewMotifChart(ctx, motifs.Leaf(), o)
	for name, err := range map[string]error{"wrap": wrap, "test page": test, "chart": chart, "motif's chart": of} {
		if !errors.Is(err, context.Canceled) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
