package desk

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Unreadable says in words what is wrong with JSON that encoding/json refused: its own words
// are for someone who knows Go.
func Unreadable(err error) string {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return "it ends before it is complete"
	case errors.As(err, &syntax):
		return fmt.Sprintf("it is no JSON: see byte %d", syntax.Offset)
	case errors.As(err, &kind) && kind.Field == "":
		return fmt.Sprintf("read %s; accepted: an object in braces", article(kind.Value))
	case errors.As(err, &kind):
		name := kind.Field[strings.LastIndexByte(kind.Field, '.')+1:] // the others may be types of this package
		return fmt.Sprintf("%s: read %s, which is not accepted there", Shown(name), article(kind.Value))
	}
	if field, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		if name, err := strconv.Unquote(field); err == nil {
			return "it has a field " + Shown(name) + ", which is not known"
		}
	}
	return "it can't be taken as it is"
}

// article puts an article before the name that encoding/json has for a sort of value. A number
// may come with its digits, which can be many.
func article(value string) string {
	word, _, _ := strings.Cut(value, " ")
	switch word {
	case "string":
		return "a text"
	case "bool":
		return "true or false"
	case "array":
		return "a list"
	case "object":
		return "an object"
	}
	return "a " + word
}

// mostShown is how many letters of what was asked are shown again.
const mostShown = 80

// Shown is a text that came with a request, in quotes and no longer than a message can bear.
func Shown(text string) string {
	n := 0
	for i := range text {
		if n == mostShown {
			return strconv.Quote(text[:i]) + "…"
		}
		n++
	}
	return strconv.Quote(text)
}
