package desk

import (
	"encoding/json"
	"errors"
	"strings"

	"roundlay/pattern/job"
)

// Edit is a change to a job's text: one that job.Revise makes, a drag on a drawing, or a
// stroke drawn on the wrap.
type Edit struct {
	Op    string          `json:"op"` // set, remove, add, drop, copy, drag or stroke
	Path  string          `json:"path"`
	Value json.RawMessage `json:"value,omitempty"`
	At    int             `json:"at,omitempty"` // of add: the number in its list
}

// mostEdits is how many edits one request may make.
const mostEdits = 500

// revise makes the edits, and reads the job that comes of them: nil with a mistake noted on
// the answer, whose text is then the one before the edit that could not be made.
func (out *layAnswer) revise(ask layRequest, form bool) (*job.Job, error) {
	if len(ask.Edits) > mostEdits {
		return nil, badRequest("edits: read %d; accepted: up to %d at once", len(ask.Edits), mostEdits)
	}
	err := out.edit(ask)
	if form {
		// Where the syntax is broken there is none; readJob says where.
		if f, wrong := job.NewForm([]byte(out.Job)); wrong == nil {
			out.Form = f
		}
	}
	var j *job.Job
	if err == nil {
		j, err = ask.readAs(out.Job)
	}
	if wrong, ok := mistaken(err); ok {
		out.Mistake = wrong
		return nil, nil
	}
	return j, err
}

// edit makes the edits in the answer's text, one after another.
func (out *layAnswer) edit(ask layRequest) error {
	for _, e := range ask.Edits {
		revisions, err := e.revisions(out.Job, ask)
		if err != nil {
			return err
		}
		text, err := job.Revise([]byte(out.Job), revisions...)
		if err != nil {
			return err
		}
		out.Job = string(text)
	}
	return nil
}

// revisions returns the changes of a text that an edit asks for.
func (e Edit) revisions(text string, ask layRequest) ([]job.Revision, error) {
	switch e.Op {
	case "drag":
		return e.dragged(text, ask)
	case "stroke":
		return e.drawn(text, ask)
	}
	r := job.Revision{Op: e.Op, Path: e.Path, At: e.At}
	if len(e.Value) > 0 {
		if err := json.Unmarshal(e.Value, &r.Value); err != nil {
			return nil, badRequest("edits: the value of %q can't be read: %v", e.Path, err)
		}
	}
	if e.Op == "add" && strings.HasSuffix(e.Path, ".station") {
		r.Value = gauged(ask, text, r.Value)
	}
	return []job.Revision{r}, nil
}

// gauged returns a new station with its height as calipers show it: it was pointed at, not
// measured.
func gauged(ask layRequest, text string, station any) any {
	keys, ok := station.(map[string]any)
	if !ok {
		return station
	}
	height, ok := keys["height"].(string)
	if !ok {
		return station
	}
	j, err := ask.readAs(text)
	if err != nil {
		return station
	}
	if mm, err := j.Length.Parse(height); err == nil {
		keys["height"] = j.Length.Format(mm)
	}
	return keys
}

// refusedEdit returns the mistake of an edit that could not be made, if an error is about
// one.
func refusedEdit(err error) (*mistake, bool) {
	var refused *job.RevisionError
	if !errors.As(err, &refused) {
		return nil, false
	}
	return &mistake{Line: refused.Line, Path: refused.Path, Words: refused.Path + ": " + refused.Words}, true
}
