package strokes

import (
	"slices"
	"strings"

	"github.com/tdewolff/parse/v2/css"
)

// selector says which elements a rule holds for: the last part holds for the element
// itself, those before it for elements round it or before it.
type selector struct {
	parts []compound
	joins []byte // between a part and the next: ' ' inside, '>' child, '+' next, '~' after
}

// compound is one part of a selector.
type compound struct {
	name, id string // empty for any
	classes  []string
	tests    []attributeTest
	first    bool // the first child
}

// attributeTest asks for an attribute, and for its value unless op is empty.
type attributeTest struct{ name, op, value string }

// readSelector reads a selector. ok is false for what isn't read: pseudo-classes
// but the first child, escapes, namespaces.
func readSelector(tokens []css.Token) (s selector, ok bool) {
	part := compound{}
	empty := true
	for i := 0; i < len(tokens); i++ {
		if join := joint(tokens[i]); join != 0 {
			if empty {
				return s, false
			}
			s.parts, s.joins = append(s.parts, part), append(s.joins, join)
			part, empty = compound{}, true
			continue
		}
		n := part.take(tokens[i:])
		if n == 0 {
			return s, false
		}
		i += n - 1
		empty = false
	}
	s.parts = append(s.parts, part)
	return s, !empty
}

// joint returns the sign that joins two parts, 0 if the token is none.
func joint(t css.Token) byte {
	if t.TokenType == css.WhitespaceToken {
		return ' '
	}
	if t.TokenType == css.DelimToken && strings.Contains(">+~", string(t.Data)) {
		return t.Data[0]
	}
	return 0
}

// take adds what the next tokens ask for, and returns how many they are, 0 if they
// aren't read.
func (c *compound) take(tokens []css.Token) int {
	data := string(tokens[0].Data)
	next := func(i int) css.TokenType {
		if i < len(tokens) {
			return tokens[i].TokenType
		}
		return css.ErrorToken
	}
	if strings.Contains(data, `\`) {
		return 0
	}
	switch {
	case next(0) == css.IdentToken:
		c.name = data
		return 1
	case next(0) == css.HashToken:
		c.id = data[1:]
		return 1
	case data == "*":
		return 1
	case data == "." && next(1) == css.IdentToken:
		c.classes = append(c.classes, string(tokens[1].Data))
		return 2
	case data == ":" && next(1) == css.IdentToken && string(tokens[1].Data) == "first-child":
		c.first = true
		return 2
	case data == "[":
		return c.takeTest(tokens)
	}
	return 0
}

// takeTest adds an attribute test.
func (c *compound) takeTest(tokens []css.Token) int {
	end := slices.IndexFunc(tokens, func(t css.Token) bool { return t.TokenType == css.RightBracketToken })
	inner := []string{}
	for _, t := range tokens[:max(end, 0)] {
		if t.TokenType != css.WhitespaceToken {
			inner = append(inner, string(t.Data))
		}
	}
	switch len(inner) {
	case 2: // [ name
		c.tests = append(c.tests, attributeTest{name: inner[1]})
	case 4: // [ name = value
		c.tests = append(c.tests, attributeTest{inner[1], inner[2], strings.Trim(inner[3], `"'`)})
	default:
		return 0
	}
	return end + 1
}

// key returns what the last part asks for first.
func (s *selector) key() string {
	switch last := s.parts[len(s.parts)-1]; {
	case last.id != "":
		return "#" + last.id
	case len(last.classes) > 0:
		return "." + last.classes[0]
	case last.name != "":
		return last.name
	}
	return "*"
}

// weight returns the selector's specificity (Selectors 3, chapter 9) as one number.
func (s *selector) weight() int {
	w := 0
	for _, p := range s.parts {
		if p.id != "" {
			w += 1_000_000
		}
		w += 1000 * (len(p.classes) + len(p.tests))
		if p.first {
			w += 1000
		}
		if p.name != "" {
			w++
		}
	}
	return w
}

// matcher compares selectors with elements, and counts how often.
type matcher struct{ tried int }

// matches reports whether the first n parts of a selector hold, the last of them for e.
func (m *matcher) matches(s *selector, n int, e *element) bool {
	if m.tried++; m.tried > maxMatches || e == nil || !s.parts[n-1].holds(e) {
		return false
	}
	if n == 1 {
		return true
	}
	switch s.joins[n-2] {
	case '>':
		return m.matches(s, n-1, e.parent)
	case '+':
		return e.parent != nil && e.index > 0 && m.matches(s, n-1, e.parent.children[e.index-1])
	case '~':
		for i := e.index - 1; e.parent != nil && i >= 0; i-- {
			if m.matches(s, n-1, e.parent.children[i]) {
				return true
			}
		}
		return false
	}
	for up := e.parent; up != nil; up = up.parent {
		if m.matches(s, n-1, up) {
			return true
		}
	}
	return false
}

// holds reports whether an element is what one part asks for.
func (c *compound) holds(e *element) bool {
	if c.name != "" && c.name != e.name || c.id != "" && c.id != e.attrs["id"] || c.first && e.index > 0 {
		return false
	}
	for _, class := range c.classes {
		if !slices.Contains(e.classes, class) {
			return false
		}
	}
	for _, t := range c.tests {
		if !t.holds(e) {
			return false
		}
	}
	return true
}

func (t attributeTest) holds(e *element) bool {
	value, ok := e.attrs[t.name]
	switch {
	case !ok || t.op == "":
		return ok
	case t.op == "=":
		return value == t.value
	case t.op == "~=":
		return slices.Contains(strings.Fields(value), t.value)
	case t.op == "|=":
		return value == t.value || strings.HasPrefix(value, t.value+"-")
	case t.value == "":
		return false
	case t.op == "^=":
		return strings.HasPrefix(value, t.value)
	case t.op == "$=":
		return strings.HasSuffix(value, t.value)
	}
	return t.op == "*=" && strings.Contains(value, t.value)
}
