package job

import (
	"fmt"
	"strconv"
)

// Revision is one change of a job's text, in the words of the one who makes it.
type Revision struct {
	// Op is one of set, remove (a key: its default holds again), add, drop and copy (one
	// of several tables).
	Op string `json:"op"`
	// Path is a key, or for add a list of tables and for drop and copy one of them, as
	// messages write it: motif[2].width, limits.land, blank.station[3].
	Path string `json:"path"`
	// Value is what was typed: a text, a number, a switch, a list of these, or for add the
	// keys of the new table.
	Value any `json:"value,omitempty"`
	// At is the number that a new station gets; 0 is where its height puts it, or the
	// widest gap. Other new tables come last.
	At int `json:"at,omitempty"`
}

// RevisionError says why a job's text can't be changed in a way that was asked for. Path
// and Words are each one line of printable text.
type RevisionError struct {
	Line        int // of the file as it was when it was asked for; 0 where it names none
	Path, Words string
}

func (e *RevisionError) Error() string {
	place := ""
	if e.Line > 0 {
		place = fmt.Sprintf("job:%d: ", e.Line)
	}
	return place + e.Path + ": " + e.Words
}

// Revise returns a job's text with changes made to it, one after another. All else stays
// as its owner wrote it, byte for byte. What a change asks of other keys is changed with
// it: a wheel's new name wherever it is used, what a new edge needs. The text is one
// that TOML takes; what the job doesn't take is for Read to say. The error is an *Error
// for a text that is broken to begin with, and otherwise a *RevisionError.
func Revise(data []byte, edits ...Revision) ([]byte, error) { return ReviseWith(data, nil, edits...) }

// ReviseWith is Revise for a job that may include files beside it. Wheels and motifs are
// counted as in the whole job. What stands in an included file is changed in the job, by a
// table that wins over it; the file stays as it is.
func ReviseWith(data []byte, beside Beside, edits ...Revision) ([]byte, error) {
	r, err := newRevising(data, beside)
	if err != nil {
		return nil, err
	}
	for _, e := range edits {
		if err := r.revise(e); err != nil {
			return nil, err
		}
	}
	return r.bytes(), nil
}

func (r *revising) revise(e Revision) error {
	switch e.Op {
	case "set":
		return r.setAsked(e.Path, e.Value)
	case "remove":
		return r.removeAsked(e.Path)
	case "add":
		return r.add(e)
	case "drop":
		return r.drop(e.Path)
	case "copy":
		return r.copy(e.Path)
	}
	return r.refuse(e.Path, "%s is no change that can be made: set, remove, add, drop or copy", quoted(e.Op))
}

// refuse returns the error of a change to what has a path.
func (r *revising) refuse(path, words string, args ...any) error {
	const most = 300 // characters
	e := &RevisionError{Path: oneLine(path, 120), Words: oneLine(fmt.Sprintf(words, args...), most)}
	e.Line = r.lineOf(path)
	if p, _ := parent(path); e.Line == 0 && p != "" {
		e.Line = r.lineOf(p)
	}
	return e
}

// lineOf returns the line of what has a path, 0 where the text has no such thing.
func (r *revising) lineOf(path string) int {
	v := (source{root: r.root}).find(path)
	if v == nil || includedAt(r.files, v.at) != nil {
		return 0
	}
	return r.doc.line(v.at)
}

// strange is the error for a file in which the place of a change can't be found or
// written.
func (r *revising) strange(path string) error {
	return r.refuse(path, "it can't be written into this file as it stands: change it in the text")
}

// parent returns the path of the table that has a key, and the key, as it is written.
func parent(path string) (table, key string) {
	at := -1
	eachDot(path, func(i int) { at = i })
	if at < 0 {
		return "", path
	}
	return path[:at], path[at+1:]
}

// stepsOf returns the steps of a path, those in quotes without them.
func stepsOf(path string) []string {
	var all []string
	from := 0
	take := func(to int) {
		step := path[from:to]
		if text, err := strconv.Unquote(step); err == nil && step[0] == '"' {
			step = text
		}
		all, from = append(all, step), to+1
	}
	eachDot(path, take)
	take(len(path))
	return all
}

// eachDot calls a function with the place of each dot that parts two steps of a path. One
// in quotes is part of a name.
func eachDot(path string, dot func(at int)) {
	quotes := false
	for i := 0; i < len(path); i++ {
		switch {
		case quotes && path[i] == '\\':
			i++
		case path[i] == '"':
			quotes = !quotes
		case path[i] == '.' && !quotes:
			dot(i)
		}
	}
}

// numbered returns the name of one of several tables and its number from 1, 0 where the
// path has none.
func numbered(step string) (name string, number int) {
	for i := range step {
		if step[i] == '[' && step[len(step)-1] == ']' {
			if n, err := strconv.Atoi(step[i+1 : len(step)-1]); err == nil {
				return step[:i], n
			}
		}
	}
	return step, 0
}
