package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"syscall"
)

// stoppable returns a context that is done when the person presses Ctrl-C or the
// system asks the program to end. The second time ends the program at once.
func stoppable() (ctx context.Context, stop context.CancelFunc) {
	ctx, stop = signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop)
	return ctx, stop
}

// errStopped is the error of a run that was stopped before anything was written.
var errStopped = errors.New("stopped: nothing was written")

// heed does work until it is done or the run is stopped. Work that looks at the context
// ends by itself. Other work is abandoned, since the program is about to end. Only
// files that are being written are waited for: they are all put in place or taken back.
func (s *session) heed(work func() error) error {
	done := make(chan error, 1)
	go func() { done <- work() }()
	select {
	case err := <-done:
		if s.ctx.Err() == nil || !errors.Is(err, context.Canceled) {
			return err
		}
	case <-s.ctx.Done():
	}
	s.writing.Lock() // and never unlocked: nothing is written from here on
	if p := s.counting; p != nil {
		p.done()
	}
	if len(s.wrote) == 0 {
		return errStopped
	}
	return fmt.Errorf("stopped, when all of this had been written: %s", strings.Join(s.wrote, ", "))
}
