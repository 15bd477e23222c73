package job

import "strings"

// dropPart returns the patches that take an item from a list in brackets, or a key from
// a table in braces: with its comma, and with its line and the comment on that where it
// has one of its own.
func dropPart(text string, all []part, i int) []patch {
	p, last := all[i], i == len(all)-1
	sameLine := func(from, to int) bool { return !strings.Contains(text[from:to], "\n") }
	switch {
	case p.ownLine(text):
		patches := []patch{{lineStart(text, p.from), pastLine(text, max(p.to, p.comma)), ""}}
		if last && i > 0 && p.comma < 0 {
			patches = append(patches, patch{all[i-1].comma, all[i-1].comma + 1, ""})
		}
		return patches
	case i > 0 && sameLine(all[i-1].to, p.from):
		return []patch{{all[i-1].to, p.to, ""}}
	case !last && sameLine(p.to, all[i+1].from):
		return []patch{{p.from, all[i+1].from, ""}}
	case p.comma >= 0:
		return []patch{{p.comma, p.comma + 1, ""}, {p.from, p.to, ""}}
	case i > 0:
		return []patch{{all[i-1].comma, all[i-1].comma + 1, ""}, {p.from, p.to, ""}}
	}
	return []patch{{p.from, p.to, ""}}
}

// addPart returns the patches that put an item into the list that a bracket opens, as
// the one of the given number from 0.
func addPart(text string, open, i int, item, eol string) []patch {
	all := parts(text, open)
	if len(all) == 0 {
		return []patch{{open + 1, open + 1, item}}
	}
	if i == 0 {
		first := all[0].from
		return []patch{{first, first, item + ", "}}
	}
	before := all[i-1]
	if !before.ownLine(text) {
		return []patch{{before.to, before.to, ", " + item}}
	}
	end := lineEnd(text, max(before.to, before.comma))
	if eol == "\r\n" && text[end-1] == '\r' {
		end--
	}
	line := eol + indent(text, before.from) + item
	if before.comma >= 0 {
		return []patch{{end, end, line + ","}}
	}
	// In this order the comma comes first where both are for one place.
	return []patch{{end, end, line}, {before.to, before.to, ","}}
}
