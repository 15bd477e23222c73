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
	bare := *wrong
	bare.File = ""
	return &mistake{wrong.Line, wrong.Key, wrong.Read, wrong.Accepted, wrong.Hint, bare.Error()}, true
}
