package serve

import (
	"context"
	"errors"
	"fmt"
	"net/http"

	"roundlay/pattern/job"
)

// answerFile is GET /file: the opened job file, or the one of a name; the demo where
// there is none.
func (f *jobFiles) answerFile(w http.ResponseWriter, r *http.Request) {
	asked := r.URL.Query().Get("name")
	v, err := f.read(asked)
	demo := asked == "" && errors.Is(err, errNotOpen)
	if demo {
		v, err = version{Text: string(f.demo)}, nil
	}
	if err != nil {
		refuseFile(w, r, err)
		return
	}
	writeJSON(w, http.StatusOK, struct {
		version
		Demo bool `json:"demo"`
	}{v, demo})
}

// answerSave is POST /file: a text in place of the version it came from.
func (f *jobFiles) answerSave(w http.ResponseWriter, r *http.Request) {
	var given struct{ Name, Text, Stamp string }
	if !f.readText(w, r, &given, &given.Text) {
		return
	}
	// Whoever asked may go away; what was begun is done.
	stamp, err := f.save(context.WithoutCancel(r.Context()), given.Name, []byte(given.Text), given.Stamp)
	if err != nil {
		refuseFile(w, r, err)
		return
	}
	writeJSON(w, http.StatusOK, struct {
		Stamp string `json:"stamp"`
	}{stamp})
}

// answerSaveAs is POST /file-as: a text in a new file beside the job.
func (f *jobFiles) answerSaveAs(w http.ResponseWriter, r *http.Request) {
	var given struct{ Name, Text string }
	if !f.readText(w, r, &given, &given.Text) {
		return
	}
	name, stamp, err := f.saveAs(context.WithoutCancel(r.Context()), given.Name, []byte(given.Text))
	if err != nil {
		refuseFile(w, r, err)
		return
	}
	writeJSON(w, http.StatusOK, struct {
		Name  string `json:"name"`
		Stamp string `json:"stamp"`
	}{name, stamp})
}

// answerChanges is GET /file/changes: what the file is when it is no longer the version
// with the stamp, or one of those beside it another than when the stamp "seen" was given; or
// after a while.
func (f *jobFiles) answerChanges(w http.ResponseWriter, r *http.Request) {
	ctx, cancel := context.WithTimeout(r.Context(), f.bounds.Wait)
	defer cancel()
	asked := r.URL.Query()
	others := f.neighbours(asked["beside"], asked.Get("seen"))
	v, err := f.changed(ctx, asked.Get("name"), asked.Get("stamp"), others)
	if err != nil {
		refuseFile(w, r, err)
		return
	}
	writeJSON(w, http.StatusOK, struct {
		version
		Seen string `json:"seen,omitempty"`
	}{v, others.stamp})
}

// readText reads a request with a job's text in it. If it can't, or no job may be so
// large, it answers the request and returns false.
func (f *jobFiles) readText(w http.ResponseWriter, r *http.Request, into any, text *string) bool {
	if !readJSON(w, r, f.bounds.Body, into) {
		return false
	}
	if len(*text) > job.MaxBytes {
		refuse(w, r, http.StatusRequestEntityTooLarge, fmt.Sprintf("that is too large: a job file is at most %d bytes", job.MaxBytes))
		return false
	}
	return true
}

// refuseFile answers with what is wrong with a file. Of a conflict the page is given the
// version on disk, so that neither is lost.
func refuseFile(w http.ResponseWriter, r *http.Request, err error) {
	var c *conflict
	var name *badName
	var there *taken
	switch {
	case errors.As(err, &c):
		writeJSON(w, http.StatusConflict, struct {
			Error string `json:"error"`
			version
		}{c.Error(), c.onDisk})
	case errors.As(err, &there):
		refuse(w, r, http.StatusConflict, err.Error())
	case errors.As(err, &name):
		refuse(w, r, http.StatusBadRequest, err.Error())
	case errors.Is(err, errNotOpen):
		refuse(w, r, http.StatusNotFound, err.Error())
	case errors.Is(err, errReadOnly):
		refuse(w, r, http.StatusForbidden, err.Error())
	default:
		refuse(w, r, http.StatusInternalServerError, err.Error())
	}
}
