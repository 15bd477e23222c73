package serve

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"time"

	"roundlay/cmd/desk"
)

// Engine answers what the page asks: a desk.Desk, or what stands in for one.
type Engine interface {
	Answer(ctx context.Context, name string, body []byte) (*desk.Reply, error)
}

// asks hands questions to the engine, in two lanes.
type asks struct {
	engine     Engine
	bounds     Bounds
	fast, slow *lane
}

// lane returns the lane of a question and how long it may take. What the page asks for
// at every key has a lane that nothing slow can block.
func (a *asks) lane(name string) (*lane, time.Duration) {
	switch name {
	case "lay", "describe":
		return a.fast, a.bounds.FastTime
	}
	return a.slow, a.bounds.SlowTime
}

// answer is POST /ask/NAME.
func (a *asks) answer(w http.ResponseWriter, r *http.Request) {
	// All of the body is read before a turn is waited for: no slow client holds a turn, and
	// only then does net/http notice a client that goes away.
	body, ok := readBody(w, r, a.bounds.Body)
	if !ok {
		return
	}
	name := r.PathValue("name")
	lane, allowed := a.lane(name)
	ctx, cancel := context.WithTimeout(r.Context(), allowed)
	defer cancel()
	reply, err := a.work(ctx, lane, name, body)
	var unclear *desk.BadRequest
	switch {
	case err == nil:
		send(w, reply)
	case r.Context().Err() != nil: // nobody is there to read an answer, or the server ends
		refuse(w, r, http.StatusServiceUnavailable, "stopped")
	case ctx.Err() != nil:
		refuse(w, r, http.StatusServiceUnavailable, fmt.Sprintf("%s took longer than %v and was stopped", name, allowed))
	case errors.Is(err, errBusy):
		w.Header().Set("Retry-After", "1")
		refuse(w, r, http.StatusServiceUnavailable, err.Error())
	case errors.As(err, &unclear):
		refuse(w, r, http.StatusBadRequest, err.Error())
	default:
		refuse(w, r, http.StatusUnprocessableEntity, err.Error())
	}
}

// work waits for a turn and has the engine answer.
func (a *asks) work(ctx context.Context, l *lane, name string, body []byte) (*desk.Reply, error) {
	if err := l.enter(ctx); err != nil {
		return nil, err
	}
	defer l.leave()
	return a.engine.Answer(ctx, name, body)
}

func send(w http.ResponseWriter, a *desk.Reply) {
	w.Header().Set("Content-Type", a.ContentType)
	if a.Name != "" {
		w.Header().Set("Content-Disposition", "attachment; filename*=UTF-8''"+url.PathEscape(a.Name))
	}
	w.Write(a.Data)
}
