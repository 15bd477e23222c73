package desk

import (
	"context"
	"errors"

	"roundlay/pattern/job"
)

// mistake says what stands in the way of laying a job out.
type mistake struct {
	Line     int    `json:"line"` // from 1; 0 where no line can be named
	Path     string `json:"path"`
	Read     string `json:"read"`
	Accepted string `json:"accepted"`
	Hint     string `json:"hint"`
	Words    string `json:"words"` // all of it, but for the line
	// File is the included file in which it stands, whose line is then in the words; "" of
	// the job itself.
	File string `json:"file,omitempty"`
}

// mistaken returns the mistake in a job that an error is about. An error that is the
// context's, or the asker's, is none.
func mistaken(err error) (*mistake, bool) {
	if err == nil || errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return nil, false
	}
	var bad *BadRequest
	if errors.As(err, &bad) {
		return nil, false
	}
	if refused, ok := refusedEdit(err); ok {
		return refused, true
	}
	var wrong *job.Error
	if !errors.As(err, &wrong) {
		return &mistake{Words: err.Error()}, true
	}
	if wrong.File != "" && wrong.File != jobName {
		return &mistake{Path: wrong.Key, Read: wrong.Read, Accepted: wrong.Accepted, Hint: wrong.Hint, Words: wrong.Error(), File: wrong.File}, true
	}
	bare := *wrong
	bare.File = ""
	return &mistake{Line: wrong.Line, Path: wrong.Key, Read: wrong.Read, Accepted: wrong.Accepted, Hint: wrong.Hint, Words: bare.Error()}, true
}
