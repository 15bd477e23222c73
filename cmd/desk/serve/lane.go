package serve

import (
	"context"
	"errors"
)

// lane bounds how many answers are worked on at once, and how many wait for it.
type lane struct {
	working chan struct{}
	inside  chan struct{} // working or waiting
}

// errBusy is the error of a lane that is full.
var errBusy = errors.New("too much is being worked on already: try again when some of it is done")

func newLane(workers, queue int) *lane {
	return &lane{working: make(chan struct{}, workers), inside: make(chan struct{}, workers+queue)}
}

// enter waits for a turn. It fails at once where too many wait, and when the context is
// done. After nil, leave must be called.
func (l *lane) enter(ctx context.Context) error {
	select {
	case l.inside <- struct{}{}:
	default:
		return errBusy
	}
	select {
	case l.working <- struct{}{}:
		return nil
	case <-ctx.Done():
		<-l.inside
		return ctx.Err()
	}
}

func (l *lane) leave() {
	<-l.working
	<-l.inside
}
