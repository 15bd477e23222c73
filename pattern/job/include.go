package job

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
)

// maxIncluded is how many files a job may include.
const maxIncluded = 16

// included is a file beside the job whose tables are read as if they stood in the job,
// before its own.
type included struct {
	name string // as the job has it
	path string // as messages name it
	text []byte
	doc  *document // its places begin at first, which is below 0: the job's begin at 0
	// first is such that the files' places follow one another in the order in which the job
	// lists them, so that a mistake in one of them comes before those it leads to.
	first int
	unit  geometry.Unit // of a bare number: its own, or the job's where it names none
}

// placesEach is how many places each included file has to itself.
const placesEach = MaxBytes + 1

// includedAt returns the included file that has a place, nil where that is the job's own.
func includedAt(files []*included, at int) *included {
	if at >= 0 || len(files) == 0 {
		return nil
	}
	return files[len(files)-1-(-at-1)/placesEach]
}

// line returns the line of the file on which a place lies.
func (f *included) line(at int) int { return f.doc.line(at - f.first) }

// includes reads the files that the job includes, in the order in which it lists them. It
// reports whether all of them can be used.
func (s section) includes() bool {
	field := s.optional("include")
	const accepted = `a list of files in the job's own folder, such as ["shop.toml"]`
	switch {
	case field.absent(accepted):
		return true
	case field.value.kind == unstable.String:
		field.refuse(accepted, "write it in brackets")
		return false
	case field.value.kind != unstable.Array || field.value.open || len(field.value.items) == 0:
		field.refuse(accepted, "")
		return false
	case len(field.value.items) > maxIncluded:
		over := field.item(maxIncluded)
		over.read = fmt.Sprint(len(field.value.items))
		over.refuse(fmt.Sprintf("at most %d of them", maxIncluded), "")
		return false
	}
	files := make([]*included, len(field.value.items))
	for k := range files {
		file, ok := field.item(k).included(field.value.items[:k])
		if !ok {
			return false
		}
		file.first = -(len(files) - k) * placesEach
		files[k] = file
	}
	s.reading.files = files
	for _, file := range files {
		if !s.tables(file) {
			return false
		}
	}
	return true
}

// included reads the file that an item of the list names, given the items before it.
func (f field) included(before []*value) (*included, bool) {
	const one = "each file once"
	named := f.value.text
	switch again := func(v *value) bool { return v.kind == unstable.String && v.text == named }; {
	case f.value.kind == unstable.String && named == baseName(f.in.file):
		f.refuse("files other than the job", "that is the job itself")
		return nil, false
	case slices.ContainsFunc(before, again):
		f.refuse(one, "it is in the list already")
		return nil, false
	}
	data, ok := f.besides("a TOML file", "shop.toml", "write its tables into the job")
	if !ok {
		return nil, false
	}
	if len(data) > MaxBytes {
		f.refuse("a file of at most 1 MiB", fmt.Sprintf("it has %d bytes", len(data)))
		return nil, false
	}
	path := f.in.file[:len(f.in.file)-len(baseName(f.in.file))] + named
	return &included{name: named, path: path, text: data}, true
}

// baseName returns the last step of the way to a file.
func baseName(path string) string { return path[strings.LastIndexAny(path, `/\`)+1:] }

// tables reads the syntax of an included file, and refuses what it may not have. What is
// in its tables is read with the job's.
func (s section) tables(file *included) bool {
	doc, wrong := newDocument(bytes.TrimPrefix(file.text, []byte("\ufeff")))
	file.doc = doc
	if wrong != nil {
		wrong.at += file.first
		s.note(wrong)
		return false
	}
	doc.root.shift(file.first)
	top := section{reading: s.reading, table: doc.root}
	file.unit = s.unit
	if unit, ok := top.optional("length").word([]string{geometry.Inch.String(), geometry.Millimetre.String()}); ok {
		file.unit = []geometry.Unit{geometry.Inch, geometry.Millimetre}[unit]
	}
	may := includable()
	for _, e := range doc.root.fields {
		if slices.Contains(may, e.key) {
			continue
		}
		hint := quoted(e.key) + " belongs in the job"
		switch {
		case e.key == "include":
			hint = "an included file can't include others: list them all in the job"
		case !slices.Contains(keysOf(""), e.key):
			if hint = belongs(e.key); hint == "" {
				hint = meant(e.key, may)
			}
		}
		s.note(&mistake{
			at: e.at, key: written(e.key), read: "a key " + quoted(e.key),
			accepted: "the keys of an included file, " + strings.Join(may, ", "), hint: hint,
		})
		return false
	}
	if n := len(doc.root.fields); n == 0 || n == 1 && doc.root.find("length") != nil {
		s.note(&mistake{
			at: file.first, read: "a file without a table",
			accepted: "one or more of the tables that a job can include, " + strings.Join(may[1:], ", "),
		})
		return false
	}
	return s.first == nil || s.first.at > file.first+len(file.text)
}

// includable returns the keys that may stand at the top of an included file: length, and
// then the tables.
func includable() []string {
	return slices.DeleteFunc(keysOf(""), func(key string) bool {
		return key == "title" || key == "include" || key == "blank"
	})
}

// shift moves the places of a table and of all in it.
func (t *table) shift(by int) {
	t.at += by
	for _, e := range t.fields {
		e.at += by
		e.value.shift(by)
	}
}

func (v *value) shift(by int) {
	v.at += by
	for _, item := range v.items {
		item.shift(by)
	}
	if v.table != nil {
		v.table.shift(by)
	}
}
