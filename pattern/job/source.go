package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// source is the file a job was read from. It gives line numbers for mistakes that
// show only when the job is laid out. The zero source is that of a job from no file.
type source struct {
	name string
	doc  *document
	// root is the top of the job with what it includes, and files what that is.
	root  *table
	files []*included
	needs []string // the names of the files beside it that were read
	// beside reads the files beside it; nil where it can't be done.
	beside Beside
}

// ReadAgain reads the job's text with changes made to it, with the same files beside it, or
// with others in place of some of those.
func (j *Job) ReadAgain(name string, data []byte, others ...File) (*Job, error) {
	beside := j.source.beside
	if len(others) > 0 {
		beside = func(name string) ([]byte, error) {
			if i := slices.IndexFunc(others, func(f File) bool { return f.Name == name }); i >= 0 {
				return others[i].Data, nil
			}
			return j.source.beside(name)
		}
	}
	return ReadWith(name, data, beside)
}

// Given reports whether a key stands in the job's file. Keys are written as in an
// Error, such as "motif[2].depth"; blank[1] is the one blank of a job that has one.
func (j *Job) Given(key string) bool { return j.source.find(key) != nil }

// Refuse returns the Error for a key whose value could be read but can't be used.
// read is shown where the file has no value for the key, or a list.
func (j *Job) Refuse(key, read, accepted, hint string) *Error {
	e := &Error{Key: key, Read: read, Accepted: accepted, Hint: hint}
	if j.source.doc == nil {
		return e
	}
	e.File, e.Line = fileName(j.source.name), 1
	if len(j.Blanks) == 1 && j.source.find("blank[1]") == j.source.find("blank") {
		e.Key = strings.Replace(key, "blank[1]", "blank", 1)
	}
	if v := j.source.find(key); v != nil {
		e.File, e.Line = j.source.place(v.at)
		if v.items == nil { // of a list the file shows only its length
			e.Read = v.shown()
		}
		return e
	}
	// A key that is not in the file is placed at its table, if that is.
	if table, _, ok := strings.Cut(key, "."); ok {
		if v := j.source.find(table); v != nil {
			e.File, e.Line = j.source.place(v.at)
		}
	}
	return e
}

// Where names the place of a key in the job's file. For a job from no file it is the
// key alone.
func (j *Job) Where(key string) string {
	e := j.Refuse(key, "", "", "")
	if e.File == "" {
		return e.Key
	}
	return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Key)
}

// place returns the file in which a place lies, as messages name it, and its line.
func (s source) place(at int) (file string, line int) {
	if f := includedAt(s.files, at); f != nil {
		return fileName(f.path), f.line(at)
	}
	return fileName(s.name), s.doc.line(at)
}

// find returns the value of a key, nil where the file has none.
func (s source) find(key string) *value {
	if s.root == nil {
		return nil
	}
	found := &value{table: s.root}
	for _, step := range stepsOf(key) {
		name, item, many := strings.Cut(strings.TrimSuffix(step, "]"), "[")
		if found.table == nil || found.table.find(name) == nil {
			return nil
		}
		found = found.table.find(name).value
		if !many || found.table != nil && item == "1" {
			continue
		}
		n, err := strconv.Atoi(item)
		if err != nil || n < 1 || n > len(found.items) {
			return nil
		}
		found = found.items[n-1]
	}
	return found
}

// Item returns the key of one of several tables, by its number from 0.
func Item(table string, i int) string { return fmt.Sprintf("%s[%d]", table, i+1) }
