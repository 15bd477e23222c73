package job

import "strings"

// newPart returns the patches that give a motif a table for one of its parts, with a line
// in it: in the way in which the file has the motif, or its other parts.
func (r *revising) newPart(p place, line string, above note) ([]patch, bool) {
	holder, name := parent(p.path)
	motif, _ := parent(holder)
	owner, ok := r.place(motif)
	if !ok || owner.table == nil || owner.name != "motif" {
		return nil, false
	}
	braces := name + " = {" + line + "}"
	e := owner.find(partsKey)
	switch {
	case e != nil && e.value.table == nil:
		return nil, false
	case e != nil && e.value.table.made == inline:
		return r.putInBraces(e.value.table, braces, above), true
	case e != nil && e.value.table.made == dotted:
		return r.putOnLine(owner.table, partsKey+"."+name+"."+line, above)
	case owner.table.made == inline:
		return r.putInBraces(owner.table, partsKey+" = {"+braces+"}", above), true
	case owner.table.made != headed:
		return nil, false
	}
	header := "[motif." + partsKey + "." + name + "]"
	spaces := indent(r.text, owner.table.at)
	text := spaces + header + r.eol + above.text(spaces, r.eol) + spaces + line + r.eol
	return []patch{r.addPartBlock(owner.table, text)}, true
}

// addPartBlock puts a table under a motif's lines, after a blank line where its other
// parts have one before them.
func (r *revising) addPartBlock(motif *table, text string) patch {
	all := r.blocks(motif)
	last := all[len(all)-1]
	if len(all) > 1 && last.above > 0 && isEmpty(r.text[lineStart(r.text, last.above-1):last.above]) {
		text = r.eol + text
	}
	if last.to > 0 && r.text[last.to-1] != '\n' {
		text = r.eol + strings.TrimSuffix(text, r.eol)
	}
	return patch{last.to, last.to, text}
}

// dropParts takes the tables of those parts from a motif that its new kind doesn't have.
func (r *revising) dropParts(motif string, has func(part string) bool) error {
	for {
		p, ok := r.place(motif)
		if !ok {
			return r.strange(motif)
		}
		e := p.find(partsKey)
		if e == nil || e.value.table == nil {
			return nil
		}
		dropped := false
		for _, one := range e.value.table.fields {
			if has(one.key) || one.value.table == nil {
				continue
			}
			if err := r.dropTable(joined(joined(motif, partsKey), one.key), e.value.table, one); err != nil {
				return err
			}
			dropped = true
			break
		}
		if !dropped {
			return nil
		}
	}
}

// dropTable takes out a table that is one of its name: that of a part, or of the base.
func (r *revising) dropTable(path string, holder *table, e *entry) error {
	t := e.value.table
	var patches []patch
	ok := true
	switch {
	case t.made == headed || t.made == implied:
		patches = r.dropBlocks(r.blocks(t), false)
	case t.made == dotted:
		for _, key := range t.fields {
			one, found := r.remove(t, key)
			patches, ok = append(patches, one...), ok && found
		}
	default:
		patches, ok = r.remove(holder, e)
	}
	if !ok || !r.splice(patches...) {
		return r.strange(path)
	}
	return nil
}
