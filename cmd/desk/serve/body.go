package serve

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"strings"

	"roundlay/cmd/desk"
)

// readBody reads all of a request's body. If it can't, it answers the request and
// returns false.
func readBody(w http.ResponseWriter, r *http.Request, limit int64) ([]byte, bool) {
	var large *http.MaxBytesError
	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, limit))
	switch {
	case err == nil:
		return data, true
	case errors.As(err, &large):
		refuse(w, r, http.StatusRequestEntityTooLarge, fmt.Sprintf("that is too large: at most %d bytes are accepted", limit))
	case errors.Is(err, os.ErrDeadlineExceeded):
		refuse(w, r, http.StatusRequestTimeout, "that came too slowly")
	default:
		refuse(w, r, http.StatusBadRequest, "that broke off")
	}
	return nil, false
}

// readJSON reads a request's body into a value. If it can't, it answers the request and
// returns false.
func readJSON(w http.ResponseWriter, r *http.Request, limit int64, into any) bool {
	data, ok := readBody(w, r, limit)
	if !ok {
		return false
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	wrong := ""
	if err := d.Decode(into); err != nil {
		wrong = desk.Unreadable(err)
	} else if d.InputOffset() != int64(len(bytes.TrimRight(data, " \t\r\n"))) {
		wrong = "something follows after its end"
	}
	if wrong != "" {
		refuse(w, r, http.StatusBadRequest, "that can't be understood: "+wrong)
	}
	return wrong == ""
}

// writeJSON answers with a value.
func writeJSON(w http.ResponseWriter, status int, value any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.Encode(value) // an error here is a connection that broke off
}

// refuse answers with words instead of what was asked for: in JSON for the page, in
// plain text for a person who typed an address.
func refuse(w http.ResponseWriter, r *http.Request, status int, words string) {
	if r.Method == http.MethodPost || strings.HasPrefix(r.URL.Path, "/file") {
		writeJSON(w, status, struct {
			Error string `json:"error"`
		}{words})
		return
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.WriteHeader(status)
	fmt.Fprintln(w, words)
}
