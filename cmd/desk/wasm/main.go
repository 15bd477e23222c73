//go:build js

package main

import (
	"context"
	"errors"
	"runtime/debug"
	"syscall/js"
	"time"

	"roundlay/cmd/desk"
)

// version is set by the script that builds the folder.
var version string

func main() {
	// A worker that is ended takes its memory with it; until then little is kept.
	debug.SetGCPercent(50)
	engine := desk.New()
	engine.Version = version
	js.Global().Set("answerFromEngine", js.FuncOf(func(_ js.Value, args []js.Value) any {
		name, body, done := args[0].String(), args[1].String(), args[2]
		go func() { done.Invoke(answer(engine, name, body)) }() // what js calls may not wait
		return nil
	}))
	js.Global().Call("engineReady")
	select {}
}

// answer is what a server would say, as {status, type, file, data}: see serve's ask.go.
func answer(engine *desk.Desk, name, body string) map[string]any {
	reply, err := engine.Answer(&pausing{Context: context.Background(), paused: time.Now()}, name, []byte(body))
	var unclear *desk.BadRequest
	switch {
	case errors.As(err, &unclear):
		return said(400, "text/plain", "", []byte(err.Error()))
	case err != nil:
		return said(422, "text/plain", "", []byte(err.Error()))
	}
	return said(200, reply.ContentType, reply.Name, reply.Data)
}

// pausing is a context that pauses now and then for those who ask it whether to go on. In a
// worker only one thing runs: in a pause a newer question is heard, and answered first.
type pausing struct {
	context.Context
	paused time.Time
}

func (p *pausing) Err() error {
	const often, pause = 30 * time.Millisecond, time.Millisecond
	if time.Since(p.paused) > often {
		time.Sleep(pause)
		p.paused = time.Now()
	}
	return p.Context.Err()
}

func said(status int, kind, file string, data []byte) map[string]any {
	bytes := js.Global().Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	return map[string]any{"status": status, "type": kind, "file": file, "data": bytes}
}
