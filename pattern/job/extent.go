package job

import "strings"

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

// part is one item of a list, or one key with its value of a table in braces.
type part struct {
	from, to int
	comma    int // the comma after it, -1 where there is none
}

// parts returns the items between the bracket or brace at a place and the one that
// closes it, in a file whose syntax is right.
func parts(text string, open int) []part {
	var all []part
	for at := open + 1; at < len(text); {
		switch c := text[at]; c {
		case ' ', '\t', '\r', '\n':
			at++
		case '#':
			at = lineEnd(text, at)
		case ',':
			if len(all) > 0 {
				all[len(all)-1].comma = at
			}
			at++
		case ']', '}':
			return all
		default:
			end := scan(text, at, "\n#,]}")
			all = append(all, part{at, at + len(strings.TrimRight(text[at:end], " \t\r")), -1})
			at = end
		}
	}
	return all
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

// pastString returns the place after the string that begins at one. A string in
// triple quotes can end in a quote or two of its own.
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
			at += len(quote)
			for own := 0; len(quote) == 3 && own < 2 && at < len(text) && text[at] == quote[0]; own++ {
				at++
			}
			return at
		}
		at++
	}
	return len(text)
}

// lineStart returns where the line of a place begins.
func lineStart(text string, at int) int { return strings.LastIndexByte(text[:at], '\n') + 1 }

// lineEnd returns where the line of a place ends: at its new line, or at the text's end.
func lineEnd(text string, at int) int {
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n
	}
	return len(text)
}

// pastLine returns where the line after that of a place begins.
func pastLine(text string, at int) int { return min(lineEnd(text, at)+1, len(text)) }

// isNote reports whether a text is nothing but a comment, and isEmpty whether it is
// nothing at all.
func isNote(line string) bool  { return strings.HasPrefix(strings.TrimLeft(line, " \t"), "#") }
func isEmpty(line string) bool { return strings.Trim(line, " \t\r\n") == "" }

// ownLine reports whether a part stands on lines of its own, with no more than a
// comment behind it.
func (p part) ownLine(text string) bool {
	rest := text[max(p.to, p.comma+1):lineEnd(text, max(p.to, p.comma+1))]
	return isEmpty(text[lineStart(text, p.from):p.from]) && (isEmpty(rest) || isNote(rest))
}

// indent returns the spaces with which the line of a place begins.
func indent(text string, at int) string {
	start := lineStart(text, at)
	return text[start : start+len(text[start:])-len(strings.TrimLeft(text[start:], " \t"))]
}
