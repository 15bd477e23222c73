package files

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/wrap"
)

// The longest that a title and a blank's name may be in a file's name, in bytes:
// with what stands between and behind them they keep below 255, which is all that
// file systems take.
const maxTitle, maxName = 120, 80

// BlankFile returns the stem of a blank's file names: the job's title and, where the
// job has several blanks, the blank's name, even if only one is asked for. Blanks
// whose names come out alike are numbered.
func BlankFile(j *job.Job, blank *glass.Blank) string {
	name := JobFile(j)
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

// JobFile returns the stem of the name of a file for a whole job.
func JobFile(j *job.Job) string { return fileName(j.Title, maxTitle) }

// SheetFile returns the stem of a bench sheet's name: a blank's where it is for one.
func SheetFile(j *job.Job, of []*glass.Blank) string {
	return ListFile(j, of, "sheet")
}

// ListFile returns the stem of a list's name, such as cuts: a blank's where it is of one.
func ListFile(j *job.Job, of []*glass.Blank, what string) string {
	if len(of) == 1 {
		return BlankFile(j, of[0]) + "-" + what
	}
	return JobFile(j) + "-" + what
}

// WrapFile returns the stem of the name of a blank's paper for a side.
func WrapFile(j *job.Job, of *glass.Blank, side wrap.Side) string {
	return BlankFile(j, of) + [...]string{"-wrap", "-inside-wrap", "-patches", "-base"}[side]
}

// ViewFile returns the stem of the name of a picture of a blank.
func ViewFile(j *job.Job, of *glass.Blank) string { return BlankFile(j, of) + "-view" }

// ViewsFile returns the stem of the name of a picture of several jobs.
func ViewsFile(jobs []*job.Job) string {
	const between = "-and-"
	most := (maxTitle + maxName - len(between)*(len(jobs)-1)) / len(jobs)
	titles := make([]string, len(jobs))
	for i, j := range jobs {
		titles[i] = fileName(j.Title, most)
	}
	return strings.Join(titles, between) + "-view"
}

// BaseViewFile returns the stem of the name of a picture of a blank's base.
func BaseViewFile(j *job.Job, of *glass.Blank) string { return BlankFile(j, of) + "-base-view" }

// TestPageFile is the stem of the name of the page that tries a printer.
const TestPageFile = "test-page"

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
