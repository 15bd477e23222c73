package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"sync"
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
	if r, ok := s.stderr.(*remarks); ok {
		r.end()
	}
	if p := s.counting; p != nil {
		p.done()
	}
	if len(s.wrote) == 0 {
		return errStopped
	}
	return fmt.Errorf("stopped, when all of this had been written: %s", strings.Join(s.wrote, ", "))
}

// remarks is standard error while a command works. After its end, work that was abandoned is
// not heard any more.
type remarks struct {
	mu   sync.Mutex
	to   io.Writer
	over bool
}

func (r *remarks) Write(words []byte) (int, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.over {
		return len(words), nil
	}
	return r.to.Write(words)
}

func (r *remarks) end() {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.over = true
}
