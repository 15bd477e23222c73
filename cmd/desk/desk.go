// Package desk answers what the page asks: a job's text comes in, and out go its form, what
// is found, and drawings. It knows nothing of HTTP or of disks, so that the page can be
// answered from elsewhere too.
//
// Keep one Desk and hand it every request:
//
//	d := desk.New()
//	reply, err := d.Answer(ctx, "lay", body)
//
// A *BadRequest is the asker's fault: the name or the body can't be understood. A job with a
// mistake in it is no error. It is what most texts are while they are written, and the
// answer says where the mistake is. Lengths in answers are millimetres and angles degrees.
//
// Each request stands in a file of its own: lay.go is the one that is asked after every edit.
//
// # How the questions are answered
//
// cmd/desk answers in JSON what is asked in JSON: a job's text and edits go in, and out come
// the text after them, its form, what is found, and shapes to draw. lay is asked after every
// edit and while something is dragged. It goes through one Editor, one layout after the
// other, seeks no cures, and never shows a number for "most" that was found for another job:
// if finding it takes longer than a tenth of a second, the answer says waiting, and the
// request most finds it. All others lay out for themselves, so that none of them holds lay
// up, and end with their context. A new request is a function in a file of its own and a line
// in requests (cmd/desk/desk.go); TestCancelled and FuzzAnswer try it at once.
//
// Files beside the job (jobtext.go) come from Desk.Beside, which reads the job's folder as
// the commands do, or with the request: those are on the page alone until they are saved.
// Neither takes more than a plain name.
//
// A drag becomes what the job's owner would have typed. pattern/grip.go says where a place of
// a motif's box lies on the glass and, the other way round, which place, size and turn of the
// motif bring it somewhere else; cmd/desk/dragto.go keeps that within what a job may have and
// rounds it. A stroke drawn on the wrap (cmd/desk/stroke.go) becomes lines of a drawing in
// the job: smoothed to the pixel it was drawn with, in a box that lies where it was drawn.
// One more stroke makes the box larger and leaves the others where they were. cmd/desk and
// render/screen import nothing of a machine (TestAnywhere), so they can be built for a
// browser.
package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Desk answers requests, several at a time. What it keeps between them makes answers
// faster, never other.
type Desk struct {
	// Version names the build in the answer to describe.
	Version string
	// Beside reads the files beside the job; nil where there are none to read. Each request
	// may bring others in its own field.
	Beside job.Beside

	turn        turn // at the editor
	editor      pattern.Editor
	counts      counts
	turnOfAbout turn
	said        described
}

// New returns a desk with nothing on it.
func New() *Desk { return &Desk{turn: make(turn, 1), turnOfAbout: make(turn, 1)} }

// Reply is an answer: JSON, or a file with its name.
type Reply struct {
	ContentType string
	Name        string // of a file; "" for an answer that is no file
	Data        []byte
}

// request is one thing that can be asked.
type request struct {
	name   string
	answer func(d *Desk, ctx context.Context, body []byte) (*Reply, error)
}

func requests() []request {
	return []request{
		{"describe", (*Desk).describe},
		{"lay", (*Desk).lay},
		{wantMost, (*Desk).most},
		{"cures", (*Desk).cures},
		{"fit", (*Desk).fit},
		{"set", (*Desk).set},
		{"ground", (*Desk).ground},
		{"picture", (*Desk).picture},
		{"download", (*Desk).download},
		{"pages", (*Desk).pages},
	}
}

// Names returns the names of all requests.
func Names() []string {
	var names []string
	for _, r := range requests() {
		names = append(names, r.name)
	}
	return names
}

// Answer answers one request. The error is a *BadRequest, the context's, or says why
// something that was understood could not be done.
func (d *Desk) Answer(ctx context.Context, name string, body []byte) (*Reply, error) {
	all := requests()
	i := slices.IndexFunc(all, func(r request) bool { return r.name == name })
	if i < 0 {
		return nil, badRequest("there is no request %s; the requests are %s", Shown(name), strings.Join(Names(), ", "))
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return all[i].answer(d, ctx, body)
}

// BadRequest says why a request can't be understood.
type BadRequest struct{ Why string }

func (e *BadRequest) Error() string { return e.Why }

func badRequest(format string, of ...any) error {
	return &BadRequest{fmt.Sprintf(format, of...)}
}

// turn is whose turn it is at something that one at a time may use.
type turn chan struct{}

// take waits for the turn, and no longer than the context lasts.
func (t turn) take(ctx context.Context) error {
	select {
	case t <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (t turn) leave() { <-t }
