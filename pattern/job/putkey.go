package job

import "strings"

// put returns the patches that give a key of a table a value, as TOML has it: in place
// of its own, or after the keys that are there. A note is put above its line.
func (r *revising) put(p place, key, value string, above note) ([]patch, bool) {
	line := key + " = " + value
	switch found := p.find(key); {
	case p.table == nil && p.name == "part":
		return r.newPart(p, line, above)
	case p.table == nil:
		return r.newTable(p.name, above.text("", r.eol)+line), true
	case found != nil:
		from, to, ok := extent(r.text, found.at)
		if !ok || found.value.open || found.value.table != nil && found.value.table.made != inline {
			return nil, false
		}
		return append(above.patches(r, found.at), patch{from, to, value}), true
	case p.table.made == implied:
		at := lineStart(r.text, p.table.at)
		return []patch{{at, at, "[" + p.path + "]" + r.eol + above.text("", r.eol) + line + r.eol + r.eol}}, true
	case p.table.made == inline:
		return r.putInBraces(p.table, line, above), true
	}
	return r.putOnLine(p.table, line, above)
}

// newTable is a table at the end of the file, with what stands in it.
func (r *revising) newTable(name, lines string) []patch {
	before := r.eol
	if n := len(r.text); n == 0 {
		before = ""
	} else if r.text[n-1] != '\n' {
		before = r.eol + r.eol
	}
	return []patch{{len(r.text), len(r.text), before + "[" + name + "]" + r.eol + lines + r.eol}}
}

func (r *revising) putInBraces(t *table, line string, above note) []patch {
	keys := parts(r.text, t.at)
	if len(keys) == 0 {
		return append(above.patches(r, t.at), patch{t.at + 1, t.at + 1, line})
	}
	to := keys[len(keys)-1].to
	return append(above.patches(r, t.at), patch{to, to, ", " + line})
}

// putOnLine puts a key on a line after the last of its table. It begins as that one
// does: with spaces, or with the name of the table where that is dotted.
func (r *revising) putOnLine(t *table, line string, above note) ([]patch, bool) {
	last, end := r.lastKey(t)
	at, start := 0, ""
	switch {
	case last == nil && t == r.doc.root:
	case last == nil:
		at = pastLine(r.text, t.at)
	case t.made == dotted:
		at, start = pastLine(r.text, end), r.text[lineStart(r.text, last.at):last.at]
	default:
		at, start = pastLine(r.text, end), indent(r.text, last.at)
	}
	before, after := "", r.eol
	if at > 0 && r.text[at-1] != '\n' {
		before, after = r.eol, "" // the file has no new line at its end
	}
	spaces := start[:len(start)-len(strings.TrimLeft(start, " \t"))]
	return []patch{{at, at, before + above.text(spaces, r.eol) + start + line + after}}, true
}

// lastKey returns the last key that stands in a table's own lines, and where its value
// ends; nil where there is none.
func (r *revising) lastKey(t *table) (last *entry, end int) {
	for _, e := range t.fields {
		if to, ok := r.end(e); ok && to > end {
			last, end = e, to
		}
	}
	return last, end
}

// end returns where an entry ends, and reports whether it stands in the lines of the
// table that has it. What has a header of its own doesn't.
func (r *revising) end(e *entry) (int, bool) {
	t := e.value.table
	switch {
	case e.value.open || t != nil && (t.made == headed || t.made == implied):
		return 0, false
	case t != nil && t.made == dotted:
		_, to := r.lastKey(t)
		return to, to > 0
	}
	_, to, ok := extent(r.text, e.at)
	return to, ok
}

// remove returns the patches that take a key from a table, with its line.
func (r *revising) remove(t *table, e *entry) ([]patch, bool) {
	if t.made == inline {
		for i, p := range parts(r.text, t.at) {
			if p.from <= e.at && e.at < p.to {
				return dropPart(r.text, parts(r.text, t.at), i), true
			}
		}
		return nil, false
	}
	end, ok := r.end(e)
	return []patch{{lineStart(r.text, e.at), pastLine(r.text, end), ""}}, ok
}

// note is a comment to put above the line of a key.
type note struct{ words, over string }

// text returns the note's line.
func (n note) text(spaces, eol string) string {
	if n.words == "" {
		return ""
	}
	return spaces + "# " + n.words + eol
}

// patches puts the note above the line of a place, in place of an older one that begins
// as over does.
func (n note) patches(r *revising, at int) []patch {
	if n.words == "" {
		return nil
	}
	start := lineStart(r.text, at)
	p := patch{start, start, n.text(indent(r.text, at), r.eol)}
	if n.over != "" && start > 0 {
		older := lineStart(r.text, start-1)
		if strings.HasPrefix(strings.TrimLeft(r.text[older:start], " \t"), "# "+n.over) {
			p.from = older
		}
	}
	return []patch{p}
}
