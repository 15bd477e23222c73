package job

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/motifs"
)

// MaxBytes is the size of the largest job file that is read.
const MaxBytes = 1 << 20

// Read reads a job file. The name is the file's, for messages; "-" is standard
// input. The error is an *Error, for the first mistake in the file: the first
// that breaks TOML's syntax if there is one, or else the first of what it says.
// Files beside the job can't be read: see ReadWith.
func Read(name string, data []byte) (*Job, error) { return ReadWith(name, data, nil) }

// ReadWith is Read for a job that may name files beside it.
func ReadWith(name string, data []byte, beside Beside) (*Job, error) {
	if len(data) > MaxBytes {
		return nil, &Error{
			File: fileName(name), Line: 1, Read: fmt.Sprintf("%d bytes", len(data)),
			Accepted: "a job file of at most 1 MiB",
		}
	}
	// Some editors put a byte order mark before a text.
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	doc, wrong := newDocument(data)
	if wrong != nil {
		return nil, wrong.inFile(name, doc)
	}
	r := &reading{file: name, beside: beside}
	j := r.job(doc)
	read := source{name: name, doc: doc, root: r.root, files: r.files, needs: r.needs, beside: beside}
	if r.first != nil {
		return nil, r.first.in(read)
	}
	j.source = read
	return j, nil
}

// job reads the whole of a job. It goes on after a mistake, because another may
// stand before it in the file.
func (r *reading) job(doc *document) *Job {
	if len(doc.root.fields) == 0 {
		r.note(&mistake{
			read: "an empty file", accepted: "a job",
			hint: "the command new writes one to start from",
		})
		return nil
	}
	top := section{reading: r, table: doc.root}
	top.only(keysOf(""))

	j := &Job{Title: "Untitled", Limits: DefaultLimits(), Shop: Shop{Spread: DefaultSpread}}
	if title, ok := top.optional("title").text(maxTitle); ok {
		j.Title = title
	}
	unit, ok := top.required("length").word([]string{geometry.Inch.String(), geometry.Millimetre.String()})
	if !ok {
		return nil // no length below can be understood
	}
	r.unit = []geometry.Unit{geometry.Inch, geometry.Millimetre}[unit]
	j.Length = r.unit
	r.root = doc.root
	if top.has("include") {
		if !top.includes() {
			return nil // nor what depends on them
		}
		r.root = merge(doc.root, r.files)
		top.table = r.root
	}

	r.cutBelow = top.has("base")
	j.Blanks = top.blanks()
	if limits, ok := top.optional("limits").single(); ok {
		limits.limits(&j.Limits)
	}
	rack := top.rack()
	j.Rack = rack.wheels
	if shop, ok := top.optional("shop").single(); ok {
		j.Shop = shop.shop(rack)
	}
	if layout, ok := top.required("layout").single(); ok {
		j.Layout = layout.layout(j.Blanks)
	}
	j.Base = top.underside(j.Blanks)
	layouts := [...]Layout{Side: j.Layout, Base: {}}
	if j.Base != nil {
		layouts[Base] = *j.Base
	}
	j.Motifs = top.motifs(rack, layouts, source{doc: doc, files: r.files})
	top.faces(j)
	return j
}

// single reads a table of which there is one.
func (f field) single() (section, bool) {
	accepted := fmt.Sprintf("one table [%s]", f.path)
	if f.absent(accepted) {
		return section{}, false
	}
	if f.value.table == nil {
		f.refuse(accepted, "")
		return section{}, false
	}
	return section{reading: f.in.reading, table: f.value.table, path: f.path}, true
}

// belongs says where a key belongs that stands in a wrong place, or "" if it
// belongs nowhere.
func belongs(key string) string {
	var homes []string
	for _, table := range tableNames() {
		switch {
		case !slices.Contains(keysOf(table), key):
		case table == "":
			homes = append(homes, "at the top, before the first table")
		default:
			homes = append(homes, "to a "+table)
		}
	}
	for _, kind := range motifs.Readable() {
		_, isParam := kind.Param(key)
		if _, isContent := kind.Key(key); isParam || isContent {
			homes = append(homes, "to a motif of the kind "+quoted(kind.Name))
		}
	}
	if homes == nil {
		return ""
	}
	text := quoted(key) + " belongs " + strings.Join(homes, ", or ")
	if key == motifs.HandParam {
		text += "; any other, a drawing too, takes swell and rock"
	}
	return text
}
