package main

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// The longest that a title and a blank's name may be in a file's name, in bytes:
// with what stands between and behind them they keep below 255, which is all that
// file systems take.
const maxTitle, maxName = 120, 80

// blankFile returns the stem of a blank's file names: the job's title and, where the
// job has several blanks, the blank's name, even if only one is asked for. Blanks
// whose names come out alike are numbered.
func blankFile(j *job.Job, blank *glass.Blank) string {
	name := fileName(j.Title, maxTitle)
	if len(j.Blanks) < 2 {
		return name
	}
	own, alike, number := fileName(blank.Name, maxName), 0, 0
	for _, b := range j.Blanks {
		if fileName(b.Name, maxName) == own {
			alike++
		}
		if b == blank {
			number = alike
		}
	}
	if alike > 1 {
		own += fmt.Sprintf("-%d", number)
	}
	return name + "-" + own
}

// fileName turns a title into a name any system takes for a file.
func fileName(title string, most int) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case b.Len()+utf8.RuneLen(r) > most:
			return strings.Trim(b.String(), "-")
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if name := strings.Trim(b.String(), "-"); name != "" {
		return name
	}
	return "untitled"
}
