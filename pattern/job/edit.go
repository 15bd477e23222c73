package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Edit is a new value for a key of a job file, in place of the one it has or as a
// new line.
type Edit struct {
	Motif int    // the number of its motif from 0, or one of the tables below
	Key   string // of the motif or of the table
	Value string // as it is written in TOML
	Note  string // a comment to put above the line
	// Over is how an older note begins. If one stands above the line, the new note
	// replaces it.
	Over string
}

// The tables other than motifs.
const (
	OfLayout = -1 - iota
	OfShop
	OfLimits
)

// tableName is the name of one of them in a file.
func tableName(of int) string { return [...]string{"layout", "shop", "limits"}[OfLayout-of] }

// Rewrite returns a job file with other values. All else stays as its owner wrote
// it: comments, order and spaces. The file is one that Read reads.
func Rewrite(data []byte, edits []Edit) ([]byte, error) {
	text, marked := strings.CutPrefix(string(data), "\ufeff")
	doc, wrong := newDocument([]byte(text))
	if wrong != nil {
		return nil, wrong.inFile("job", doc)
	}
	var patches []patch
	for _, e := range edits {
		made, ok := doc.edit(text, e)
		if !ok {
			return nil, fmt.Errorf("%s can't be written into this file: its place was not found", e.Key)
		}
		patches = append(patches, made...)
	}
	// From the end of the file, so that what comes before stays in its place.
	slices.SortStableFunc(patches, func(a, b patch) int { return cmp.Compare(b.from, a.from) })
	out := []byte(text)
	for _, p := range patches {
		out = slices.Concat(out[:p.from], []byte(p.text), out[p.to:])
	}
	if marked {
		out = append([]byte("\ufeff"), out...)
	}
	return out, nil
}

// patch is a text to stand in place of a part of the file.
type patch struct {
	from, to int
	text     string
}

// edit returns the patches of one edit: the value, and the note on a line above
// it.
func (d *document) edit(text string, e Edit) ([]patch, bool) {
	end := "\n"
	if strings.Contains(text, "\r\n") {
		end = "\r\n"
	}
	t, known := d.edited(e)
	added := "# " + e.Note + end + e.Key + " = " + e.Value + end
	switch {
	case t == nil && (e.Motif == OfShop || e.Motif == OfLimits):
		return []patch{{len(text), len(text), end + "[" + tableName(e.Motif) + "]" + end + added}}, true
	case t == nil:
		return nil, false
	case t.made == headed && len(t.fields) == 0:
		_, rest, more := strings.Cut(text[t.at:], "\n")
		at := len(text) - len(rest)
		if !more {
			added = end + added
		}
		return []patch{{at, at, added}}, true
	}
	found := t.find(e.Key)
	beside := found
	if found == nil {
		beside = t.find(known)
	}
	if beside == nil {
		return nil, false
	}
	from, to, ok := extent(text, beside.at)
	if !ok {
		return nil, false
	}
	start := d.lines[d.line(beside.at)-1]
	indent := text[start : start+len(text[start:])-len(strings.TrimLeft(text[start:], " \t"))]
	note := patch{start, start, indent + "# " + e.Note + end}
	if e.Over != "" && start > 0 {
		older := d.lines[d.line(start-1)-1]
		if strings.HasPrefix(strings.TrimLeft(text[older:start], " \t"), "# "+e.Over) {
			note.from = older
		}
	}
	switch {
	case found != nil:
		return []patch{note, {from, to, e.Value}}, true
	case t.made == inline:
		return []patch{note, {to, to, ", " + e.Key + " = " + e.Value}}, true
	}
	// A line of its own. It begins as the line of the key beside it does: with spaces,
	// or with the name of the table where that is dotted.
	line := text[start:beside.at] + e.Key + " = " + e.Value + end
	return []patch{{start, start, note.text + line}}, true
}

// edited returns the table that an edit changes, and a key that the table has.
func (d *document) edited(e Edit) (t *table, known string) {
	switch e.Motif {
	case OfLayout:
		if found := d.root.find("layout"); found != nil {
			return found.value.table, "repeats"
		}
		return nil, ""
	case OfShop, OfLimits:
		found := d.root.find(tableName(e.Motif))
		if found == nil || found.value.table == nil {
			return nil, ""
		}
		if fields := found.value.table.fields; len(fields) > 0 {
			known = fields[0].key
		}
		return found.value.table, known
	}
	found := d.root.find("motif")
	if found == nil || e.Motif >= len(found.value.items) {
		return nil, ""
	}
	return found.value.items[e.Motif].table, "depth"
}

// extent returns where the value of a key begins and ends, given where the key
// begins, in a file whose syntax is right.
func extent(text string, key int) (from, to int, ok bool) {
	eq := scan(text, key, "=")
	if eq >= len(text) {
		return 0, 0, false
	}
	from = eq + 1 + len(text[eq+1:]) - len(strings.TrimLeft(text[eq+1:], " \t"))
	to = scan(text, from, "\n#,]}")
	return from, from + len(strings.TrimRight(text[from:to], " \t\r")), from < to
}

// scan returns the first place at or after at that has one of the given signs
// outside strings, lists and tables. It returns the text's end if there is none.
func scan(text string, at int, signs string) int {
	depth := 0
	for at < len(text) {
		c := text[at]
		switch {
		case depth == 0 && strings.IndexByte(signs, c) >= 0:
			return at
		case c == '"' || c == '\'':
			at = pastString(text, at)
			continue
		case c == '#':
			at += strings.IndexByte(text[at:]+"\n", '\n')
			continue
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth--
		}
		at++
	}
	return len(text)
}

// pastString returns the place after the string that begins at one.
func pastString(text string, at int) int {
	quote := text[at : at+1]
	if triple := strings.Repeat(quote, 3); strings.HasPrefix(text[at:], triple) {
		quote = triple
	}
	at += len(quote)
	for at < len(text) {
		switch {
		case text[at] == '\\' && quote[0] == '"':
			at++
		case strings.HasPrefix(text[at:], quote):
			return at + len(quote)
		}
		at++
	}
	return len(text)
}
