package job

import "strings"

// block is the lines of a table from its header on: its keys, and the comments that
// stand directly under them.
type block struct {
	above    int // where the comments directly above the header begin
	from, to int
}

// blocks returns the lines of a table that has a header, and of the tables in it, in the
// file's order.
func (r *revising) blocks(t *table) []block {
	var all []block
	if t.made == headed {
		all = append(all, r.block(t))
	}
	for _, e := range t.fields {
		switch v := e.value; {
		case v.open:
			for _, item := range v.items {
				all = append(all, r.blocks(item.table)...)
			}
		case v.table != nil && (v.table.made == headed || v.table.made == implied):
			all = append(all, r.blocks(v.table)...)
		}
	}
	return all
}

func (r *revising) block(t *table) block {
	b := block{from: lineStart(r.text, t.at), to: pastLine(r.text, t.at)}
	if last, end := r.lastKey(t); last != nil {
		b.to = pastLine(r.text, end)
	}
	b.above = b.from
	for b.above > 0 {
		start := lineStart(r.text, b.above-1)
		if !isNote(r.text[start:b.above]) {
			break
		}
		b.above = start
	}
	// Comments that lead on to the next header are that one's.
	under := b.to
	for under < len(r.text) && isNote(r.text[under:lineEnd(r.text, under)]) {
		under = pastLine(r.text, under)
	}
	if under == len(r.text) || isEmpty(r.text[under:lineEnd(r.text, under)]) {
		b.to = under
	}
	return b
}

// addBlock returns the patch that puts a table with a header after others, with a blank
// line before it where the last of those has one.
func (r *revising) addBlock(after []block, text string) patch {
	first, at := after[0], after[len(after)-1].to
	if first.above > 0 && isEmpty(r.text[lineStart(r.text, first.above-1):first.above]) {
		text = r.eol + text
	}
	if at > 0 && r.text[at-1] != '\n' {
		text = r.eol + strings.TrimSuffix(text, r.eol)
	}
	return patch{at, at, text}
}

// dropBlocks returns the patches that take blocks out, with the blank lines before them.
// The comments above the first of its list stay, for they may be for all of it: then the
// blank lines after it go.
func (r *revising) dropBlocks(all []block, first bool) []patch {
	var patches []patch
	for i, b := range all {
		from := b.from
		if !first || i > 0 {
			from = r.beforeBlank(b.above)
		}
		if i > 0 && from <= patches[len(patches)-1].to {
			patches[len(patches)-1].to = b.to
			continue
		}
		patches = append(patches, patch{from, b.to, ""})
	}
	if p := &patches[0]; first {
		for p.to < len(r.text) && isEmpty(r.text[p.to:lineEnd(r.text, p.to)]) {
			p.to = pastLine(r.text, p.to)
		}
	}
	if p := &patches[len(patches)-1]; p.to == len(r.text) && p.from > 0 && r.text[p.to-1] != '\n' {
		p.from = len(strings.TrimSuffix(r.text[:p.from], r.eol))
	}
	return patches
}

// beforeBlank returns where the blank lines before a line begin.
func (r *revising) beforeBlank(at int) int {
	for at > 0 && isEmpty(r.text[lineStart(r.text, at-1):at]) {
		at = lineStart(r.text, at-1)
	}
	return at
}
