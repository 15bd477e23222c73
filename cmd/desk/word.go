package desk

import (
	"encoding/json"
	"errors"

	"roundlay/cmd/desk/files"
)

// word is an option in words. A page may also send it as a number.
type word string

// UnmarshalJSON reads a text or a number; nothing is an empty text.
func (w *word) UnmarshalJSON(data []byte) error {
	var text string
	var number json.Number
	switch {
	case json.Unmarshal(data, &text) == nil:
		*w = word(text)
	case json.Unmarshal(data, &number) == nil:
		*w = word(number.String())
	default:
		return errors.New("a text or a number is accepted")
	}
	return nil
}

// asked turns the error of a wrong option into one of the asker's.
func asked(err error) error {
	var wrong *files.OptionError
	if errors.As(err, &wrong) {
		return badRequest("%v", wrong)
	}
	return err
}
