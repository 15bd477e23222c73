package job

import (
	"bytes"

	"roundlay/geometry"
)

// whole returns a table of the job together with what included files have of it.
func (r *revising) whole(p place) place {
	if r.files == nil || p.path == "" {
		return p
	}
	if v := (source{root: r.root}).find(p.path); v != nil && v.table != nil {
		p.table = v.table
	}
	return p
}

// fromIncluded fills in a field with what an included file says, if it does.
func (r *revising) fromIncluded(e *entry, k Key, field *FormField) {
	if e == nil {
		return
	}
	file := includedAt(r.files, e.at)
	if file == nil {
		return
	}
	in := &revising{text: string(bytes.TrimPrefix(file.text, []byte("\ufeff"))), doc: file.doc, assumed: file.unit}
	from, to, ok := extent(in.text, e.at-file.first)
	if !ok || e.value.open || e.value.table != nil {
		return
	}
	field.From = file.name
	field.Text, field.List = in.typed(k, e.value, from, to)
	if of := k.item(); of.Sort == OfLength || of.Sort == OfMeasure {
		field.inUnit(of, file.unit, r.unit())
	}
}

// inUnit adds the unit of a field's lengths where they have none and it is another than the
// job's. A bare number of a measure is a share, and stays one.
func (f *FormField) inUnit(of Key, from, to geometry.Unit) {
	if from == to {
		return
	}
	unit := func(text string) string {
		if of.Sort == OfMeasure && manner(of.scalar(text)) != '"' {
			return text
		}
		mm, err := from.Parse(text)
		if same, _ := to.Parse(text); err != nil || same == mm {
			return text
		}
		return text + " " + from.String()
	}
	if f.List == nil {
		f.Text = unit(f.Text)
		return
	}
	for i := range f.List {
		f.List[i] = unit(f.List[i])
	}
	f.Text = joinedItems(f.List)
}
