package job

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// given is a key with its value as TOML has it.
type given struct{ key, value string }

// inBraces writes keys as a table in braces.
func inBraces(keys []given) string {
	all := make([]string, len(keys))
	for i, g := range keys {
		all[i] = g.key + " = " + g.value
	}
	return "{" + strings.Join(all, ", ") + "}"
}

// underHeader writes keys as a table with a header.
func (r *revising) underHeader(header, spaces string, keys []given) string {
	text := header + r.eol
	for _, g := range keys {
		text += spaces + g.key + " = " + g.value + r.eol
	}
	return text
}

// insert puts a new table into a list of a table's, as the one of the number i from 0, in
// the way in which the file has those that are there.
func (r *revising) insert(owner place, name string, i int, keys []given) error {
	path := joined(owner.path, name)
	before := owner.places(name)
	e := owner.find(name)
	var patches []patch
	switch {
	case owner.table == nil:
		return r.strange(path)
	case e == nil && owner.path == "":
		text := r.eol + r.underHeader("[["+name+"]]", "", keys)
		if n := len(r.text); n > 0 && r.text[n-1] != '\n' {
			text = r.eol + text
		}
		patches = []patch{{len(r.text), len(r.text), text}}
	case e == nil:
		return r.set(owner.path, name, "["+inBraces(keys)+"]")
	case e.value.open && i > 0:
		beside := e.value.items[i-1].table
		start := lineStart(r.text, beside.at)
		header := strings.TrimRight(r.text[start:scanHeader(r.text, beside.at)], " \t\r")
		spaces := indent(r.text, beside.at)
		if len(beside.fields) > 0 {
			spaces = indent(r.text, beside.fields[0].at)
		}
		patches = []patch{r.addBlock(r.blocks(beside), r.underHeader(header, spaces, keys))}
	case !e.value.open && e.value.kind == unstable.Array:
		from, _, ok := extent(r.text, e.at)
		if !ok {
			return r.strange(path)
		}
		patches = addPart(r.text, from, i, inBraces(keys), r.eol)
	default:
		return r.strange(path)
	}
	return r.spliceList(owner.path, name, len(before)+1, patches)
}

// scanHeader returns where the header of a table ends, given a place in it.
func scanHeader(text string, at int) int {
	end := scan(text, at, "]")
	for end < len(text) && text[end] == ']' {
		end++
	}
	return end
}

// spliceList makes patches after which a list is to have some length.
func (r *revising) spliceList(owner, name string, length int, patches []patch) error {
	was := *r
	if r.splice(patches...) {
		if p, ok := r.place(owner); ok && len(p.places(name)) == length {
			return nil
		}
	}
	*r = was
	return r.strange(joined(owner, name))
}

// item finds one of several tables by its path: the table that has the list, its name,
// the item's number from 0, and all there are.
func (r *revising) item(path string) (owner place, name string, i int, all []place, err error) {
	if err := r.isElsewhere(path); err != nil {
		return owner, "", 0, nil, err
	}
	table, step := parent(path)
	name, number := numbered(step)
	owner, ok := r.place(table)
	if ok {
		all = owner.places(name)
	}
	if number == 0 && len(all) == 1 {
		number = owner.table.number(name, 0)
	}
	known, _ := tableOf(name)
	i = -1
	if ok && owner.table != nil {
		i = owner.table.index(name, number)
	}
	if !ok || !known.Many || i < 0 || i >= len(all) {
		return owner, name, 0, nil, r.refuse(path, "the job has no such table")
	}
	return owner, name, i, all, nil
}

// take takes one of several tables out of the text.
func (r *revising) take(owner place, name string, i int) error {
	e, count := owner.find(name), len(owner.places(name))
	if e.value.table != nil {
		return r.strange(joined(owner.path, name))
	}
	if e.value.open {
		return r.spliceList(owner.path, name, count-1, r.dropBlocks(r.blocks(e.value.items[i].table), i == 0))
	}
	from, _, ok := extent(r.text, e.at)
	if !ok {
		return r.strange(joined(owner.path, name))
	}
	return r.spliceList(owner.path, name, count-1, dropPart(r.text, parts(r.text, from), i))
}

// double puts a copy of one of several tables after the last.
func (r *revising) double(owner place, name string, i int) error {
	e, count := owner.find(name), len(owner.places(name))
	last := count - 1
	var patches []patch
	switch from, _, ok := extent(r.text, e.at); {
	case e.value.open:
		var text strings.Builder
		for n, b := range r.blocks(e.value.items[i].table) {
			if n > 0 && b.above != b.from {
				text.WriteString(r.text[b.above:b.from])
			}
			text.WriteString(r.text[b.from:b.to])
			if b.to == len(r.text) && r.text[b.to-1] != '\n' {
				text.WriteString(r.eol)
			}
		}
		patches = []patch{r.addBlock(r.blocks(e.value.items[last].table), text.String())}
	case ok && e.value.kind == unstable.Array && e.value.table == nil:
		p := parts(r.text, from)[i]
		patches = addPart(r.text, from, last+1, r.text[p.from:p.to], r.eol)
	default:
		return r.strange(joined(owner.path, name))
	}
	return r.spliceList(owner.path, name, count+1, patches)
}

// makeMany turns a table of which there is one into the first of a list.
func (r *revising) makeMany(owner place, name string) error {
	e := owner.find(name)
	if e == nil || e.value.table == nil {
		return nil
	}
	var patches []patch
	switch t := e.value.table; t.made {
	case headed:
		open := lineStart(r.text, t.at)
		open += strings.IndexByte(r.text[open:], '[')
		end := scan(r.text, t.at, "]")
		patches = []patch{{open, open, "["}, {end, end, "]"}}
	case implied:
		at := lineStart(r.text, t.at)
		patches = []patch{{at, at, "[[" + name + "]]" + r.eol}}
	case inline:
		from, to, ok := extent(r.text, e.at)
		if !ok {
			return r.strange(name)
		}
		patches = []patch{{from, from, "["}, {to, to, "]"}}
	default:
		patches = r.undotted(t, name)
	}
	return r.spliceList(owner.path, name, 1, patches)
}

// undotted returns the patches that put the keys of a table that is written with dots
// under a header of its own, after the last key of the top.
func (r *revising) undotted(t *table, name string) []patch {
	_, end := r.lastKey(r.doc.root)
	at := pastLine(r.text, end)
	var patches []patch
	text := r.eol + "[[" + name + "]]" + r.eol
	for _, e := range t.fields {
		to, ok := r.end(e)
		if !ok {
			continue
		}
		past := pastLine(r.text, to)
		text += strings.TrimRight(r.text[e.at:past], "\r\n") + r.eol
		patches = append(patches, patch{lineStart(r.text, e.at), past, ""})
	}
	return append(patches, patch{at, at, text})
}
