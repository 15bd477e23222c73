package desk

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
)

// read reads a request's body. A field that the request doesn't have is refused, for it is
// a slip that would otherwise go unnoticed.
func read(body []byte, into any) error {
	if len(bytes.TrimSpace(body)) == 0 {
		return nil
	}
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return badRequest("the body can't be read: %s", Unreadable(err))
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return badRequest("the body can't be read: something follows after its end")
	}
	return nil
}

// answer is an answer in JSON.
func answer(v any) (*Reply, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return &Reply{ContentType: "application/json", Data: b.Bytes()}, nil
}
