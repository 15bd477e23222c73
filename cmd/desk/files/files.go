// Package files makes the files that a person takes away, from what they asked for in words:
// the command's flags and the page's choices are read here, so that both make the same files
// and call them the same.
//
// [Print], [Paper] and [View] read words into options; an *OptionError says which of them is
// wrong. [Wrap], [Sheet] and [Picture] make files of plans. [BlankFile] and [JobFile] name
// them. Nothing here touches a disk.
package files

import "fmt"

// The endings of files.
const PDF, SVG, PNG = ".pdf", ".svg", ".png"

// OptionError says what is wrong with an option. A command writes its name with dashes.
type OptionError struct {
	Option string // such as printed-across
	Err    error
}

func (e *OptionError) Error() string { return e.Option + ": " + e.Err.Error() }

func (e *OptionError) Unwrap() error { return e.Err }

func wrong(option string, err error) error { return &OptionError{option, err} }

func wrongf(option, format string, of ...any) error {
	return &OptionError{option, fmt.Errorf(format, of...)}
}
