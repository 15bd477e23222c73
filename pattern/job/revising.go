package job

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"roundlay/geometry"
)

// revising is the text of a job file while it is changed, with its tree.
type revising struct {
	text string
	mark string // a byte order mark, or nothing
	eol  string
	doc  *document
	// assumed is the unit of a text that doesn't say it.
	assumed geometry.Unit

	// The files it includes, what it says of them, and the top of all of it together.
	beside   Beside
	files    []*included
	includes string
	root     *table
}

// newRevising reads the syntax of a file. The error is an *Error. Where there is nothing to
// read files beside it with, it is as if it included none.
func newRevising(data []byte, beside Beside) (*revising, error) {
	r := &revising{text: string(data), eol: "\n", assumed: geometry.Inch, beside: beside.kept()}
	if text, marked := strings.CutPrefix(r.text, "\ufeff"); marked {
		r.mark, r.text = "\ufeff", text
	}
	if strings.Contains(r.text, "\r\n") {
		r.eol = "\r\n"
	}
	doc, wrong := newDocument([]byte(r.text))
	if wrong != nil {
		return nil, wrong.inFile("job", doc)
	}
	r.doc = doc
	r.include()
	return r, nil
}

func (r *revising) bytes() []byte { return []byte(r.mark + r.text) }

// patch is a text to stand in place of a part of the file.
type patch struct {
	from, to int
	text     string
}

// patched returns a text with patches made to it. Of several for one place, the first
// comes last. It is not ok where two are for the same part of the text.
func patched(text string, patches []patch) (_ string, ok bool) {
	// From the end of the file, so that what comes before stays in its place.
	slices.SortStableFunc(patches, func(a, b patch) int { return cmp.Compare(b.from, a.from) })
	done := len(text)
	for _, p := range patches {
		if p.to > done {
			return "", false
		}
		text, done = text[:p.from]+p.text+text[p.to:], p.from
	}
	return text, true
}

// splice makes patches, and reports whether the file is still one that can be read.
// Where it isn't, nothing is changed.
func (r *revising) splice(patches ...patch) bool {
	text, ok := patched(r.text, patches)
	if !ok {
		return false
	}
	doc, wrong := newDocument([]byte(text))
	if wrong != nil {
		return false
	}
	r.text, r.doc = text, doc
	r.include()
	return true
}

// place is a table of a job, in its file or to be put there.
type place struct {
	table *table // nil where the file has none
	name  string // as in Table
	path  string // as messages write it
}

// place finds a table by its path: "" is the top. Of a table of which there is one, the
// path may or may not have the number.
func (r *revising) place(path string) (place, bool) {
	p := place{table: r.doc.root}
	if path == "" {
		return p, true
	}
	for _, step := range stepsOf(path) {
		if p.name == partsKey {
			p = p.part(step)
			continue
		}
		name, digits, numbered := strings.Cut(strings.TrimSuffix(step, "]"), "[")
		number, err := strconv.Atoi(digits)
		known, _ := tableOf(p.name)
		if key, ok := known.key(name); !ok || key.Sort != OfTables || p.table == nil || numbered && (err != nil || number < 1) {
			return place{}, false
		}
		if p, numbered = p.step(name, number); !numbered {
			return place{}, false
		}
	}
	return p, true
}

// partsKey is the key under which a motif has tables for its parts, each under its name.
const partsKey = "parts"

// part finds the table of a part among those of a motif.
func (p place) part(name string) place {
	next := place{name: "part", path: joined(p.path, written(name))}
	if e := p.find(name); e != nil && e.value.table != nil {
		next.table = e.value.table
	}
	return next
}

// parts returns the tables of parts that a motif has, in the file's order.
func (p place) parts() []place {
	e := p.find(partsKey)
	if e == nil || e.value.table == nil {
		return nil
	}
	holder := place{table: e.value.table, name: partsKey, path: joined(p.path, partsKey)}
	var all []place
	for _, one := range holder.table.fields {
		if one.value.table != nil {
			all = append(all, holder.part(one.key))
		}
	}
	return all
}

// cutters returns the motif and its parts: what may have a wheel.
func (p place) cutters() []place { return append([]place{p}, p.parts()...) }

// step finds a table in a table by its name and its number, which is 0 where the path
// has none.
func (p place) step(name string, number int) (place, bool) {
	found := p.table.find(name)
	next := place{name: name, path: joined(p.path, name)}
	known, _ := tableOf(name)
	switch {
	case found == nil:
		return next, !known.Many && number <= 1
	case found.value.table != nil:
		next.table = found.value.table
		return next, number <= 1
	}
	if number == 0 && len(found.value.items) == 1 {
		return p.item(name, 0)
	}
	return p.item(name, p.table.index(name, number))
}

// item returns one of the tables of a list, given its place in the text, from 0.
func (p place) item(name string, i int) (place, bool) {
	items := p.table.find(name).value.items
	if i < 0 || i >= len(items) || items[i].table == nil {
		return place{}, false
	}
	path := Item(joined(p.path, name), p.table.number(name, i)-1)
	return place{table: items[i].table, name: name, path: path}, true
}

// joined returns the path of what has a name within a table.
func joined(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// find returns the entry of a key, nil where it isn't given.
func (p place) find(key string) *entry {
	if p.table == nil {
		return nil
	}
	return p.table.find(key)
}

// says returns what a key says where that is a text, a number or a switch, otherwise "".
func (p place) says(key string) string {
	if e := p.find(key); e != nil {
		return e.value.text
	}
	return ""
}

// unit returns the job's unit; in a job that doesn't say it, inches.
func (r *revising) unit() geometry.Unit {
	u, err := geometry.ParseUnit(place{table: r.doc.root}.says("length"))
	if err != nil {
		return r.assumed
	}
	return u
}

// places returns the tables of one name that a table has, in the file's order.
func (p place) places(name string) []place {
	found := p.find(name)
	if found == nil {
		return nil
	}
	var all []place
	for i := range max(1, len(found.value.items)) {
		next, ok := p.item(name, i)
		if found.value.table != nil {
			next, ok = p.step(name, 0)
		}
		if ok {
			all = append(all, next)
		}
	}
	return all
}
