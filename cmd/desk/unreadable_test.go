package desk

import (
	"errors"
	"strings"
	"testing"
)

// What can't be read of a request is said without the words of a programming language.
func TestUnreadable(t *testing.T) {
	for body, want := range map[string]string{
		`{"job": "`:                              "the body can't be read: it ends before it is complete",
		`{"job": x}`:                             "the body can't be read: it is no JSON: see byte 9",
		`[1]`:                                    "the body can't be read: read a list; accepted: an object in braces",
		`{"job": 7}`:                             `the body can't be read: "job": read a number, which is not accepted there`,
		`{"edits": [{"path": {}}]}`:              `the body can't be read: "path": read an object, which is not accepted there`,
		`{"jib": ""}`:                            `the body can't be read: it has a field "jib", which is not known`,
		`{} {}`:                                  "the body can't be read: something follows after its end",
		`{"` + strings.Repeat("x", 99) + `": 1}`: `the body can't be read: it has a field "` + strings.Repeat("x", mostShown) + `"…, which is not known`,
	} {
		_, err := New().Answer(t.Context(), "lay", []byte(body))
		var unclear *BadRequest
		if !errors.As(err, &unclear) || unclear.Why != want {
			t.Errorf("%s: %v, want %s", body, err, want)
		}
	}
}
