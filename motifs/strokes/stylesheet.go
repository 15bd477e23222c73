package strokes

import (
	"slices"
	"strings"

	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/css"
)

// declaration is a property and its value.
type declaration struct {
	property, value string
	important       bool
}

// rule is a selector with what it declares.
type rule struct {
	selector
	order        int // of all rules in the file
	declarations []declaration
}

// sheet holds the rules of a file, each under what its last part asks for first: an
// id, a class, a name of elements, or anything.
type sheet struct {
	rules  map[string][]rule
	count  int
	unread []string // selectors and at-rules that are left out
}

// read adds the rules of a style element.
func (s *sheet) read(text string) {
	p := css.NewParser(parse.NewInputString(text), false)
	var selectors [][]css.Token
	var held []declaration
	inside := 0 // how deep in at-rules
	// Each step takes at least a byte of the text, whatever is wrong with it.
	for range len(text) + 16 {
		grammar, _, data := p.Next()
		switch grammar {
		case css.ErrorGrammar:
			if !p.HasParseError() {
				return
			}
		case css.AtRuleGrammar, css.BeginAtRuleGrammar:
			s.unread = append(s.unread, strings.TrimSpace(string(data)))
			if grammar == css.BeginAtRuleGrammar {
				inside++
			}
		case css.EndAtRuleGrammar:
			inside--
		case css.QualifiedRuleGrammar:
			selectors = append(selectors, slices.Clone(p.Values()))
		case css.BeginRulesetGrammar:
			selectors = append(selectors, slices.Clone(p.Values()))
			held = nil
		case css.DeclarationGrammar:
			held = append(held, declared(data, p.Values()))
		case css.EndRulesetGrammar:
			if inside == 0 {
				s.addRules(selectors, held)
			}
			selectors = nil
		}
	}
}

// addRules adds a rule for each of its selectors.
func (s *sheet) addRules(selectors [][]css.Token, held []declaration) {
	for _, tokens := range selectors {
		sel, ok := readSelector(tokens)
		if !ok {
			s.unread = append(s.unread, written(tokens))
			continue
		}
		if s.rules == nil {
			s.rules = map[string][]rule{}
		}
		key := sel.key()
		s.rules[key] = append(s.rules[key], rule{sel, s.count, held})
		s.count++
	}
}

// declared returns a declaration by its name and the tokens of its value.
func declared(name []byte, value []css.Token) declaration {
	d := declaration{property: string(name), value: strings.TrimSpace(written(value))}
	if rest, ok := strings.CutSuffix(strings.ToLower(d.value), "important"); ok {
		if rest = strings.TrimSpace(rest); strings.HasSuffix(rest, "!") {
			d.important = true
			d.value = strings.TrimSpace(d.value[:len(rest)-1])
		}
	}
	return d
}

// written returns tokens as they are written.
func written(tokens []css.Token) string {
	var b strings.Builder
	for _, t := range tokens {
		b.Write(t.Data)
	}
	return b.String()
}

// readStyle reads the declarations of a style attribute.
func readStyle(text string) []declaration {
	p := css.NewParser(parse.NewInputString(text), true)
	var all []declaration
	for range len(text) + 16 {
		grammar, _, data := p.Next()
		if grammar == css.DeclarationGrammar {
			all = append(all, declared(data, p.Values()))
		}
		if grammar == css.ErrorGrammar && !p.HasParseError() {
			break
		}
	}
	return all
}
