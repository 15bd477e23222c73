package main

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// printable returns a text with everything that a terminal would act on, or not show,
// as an escape. A file's name may hold anything.
func printable(text string) string {
	var b strings.Builder
	for len(text) > 0 {
		r, size := utf8.DecodeRuneInString(text)
		switch {
		case r == utf8.RuneError && size == 1, !unicode.IsPrint(r) && r < utf8.RuneSelf:
			fmt.Fprintf(&b, `\x%02x`, text[0])
		case unicode.IsPrint(r):
			b.WriteString(text[:size])
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
		text = text[size:]
	}
	return b.String()
}

// oneLine puts a message on one line of printable characters, whatever a file or a
// library put in it.
func oneLine(text string) string { return printable(strings.Join(strings.Fields(text), " ")) }
