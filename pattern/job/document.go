package job

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"sort"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// document is a TOML file as a tree in which each key and value knows its place.
//
// go-toml reads the syntax and the scalars. The tree is built here, because
// go-toml's own decoding gives no places, and its search for doubled keys takes a
// time that grows with the square of their number.
type document struct {
	root  *table
	lines []int // the offset at which each line starts
}

// table is a table of the file, in whatever way it is written.
type table struct {
	at     int
	made   origin
	fields []*entry          // in the file's order
	named  map[string]*entry // for a table that has many
	// numbers has, for a list in the top of a file, the number of each of its tables in the
	// whole job, from 1. It is empty where those are the same.
	numbers map[string][]int
}

// find returns the entry of a key, nil if the table has none.
func (t *table) find(key string) *entry {
	if t.named != nil {
		return t.named[key]
	}
	for _, e := range t.fields {
		if e.key == key {
			return e
		}
	}
	return nil
}

// entry is one key of a table.
type entry struct {
	key   string
	at    int
	value *value
}

// value is a value of the file: a scalar, a list or a table.
type value struct {
	at    int
	kind  unstable.Kind
	text  string   // a string's contents; any other scalar as it is written
	items []*value // of a list
	table *table   // of a table
	// open says that the list is made of [[headers]], and grows with each.
	open bool
}

// origin is how a table was written, which decides what can be added to it.
type origin int

const (
	headed  origin = iota // by its own [header]
	implied               // on the way to a longer header
	dotted                // by a dotted key
	inline                // written { … }
)

// newDocument reads the syntax of a TOML file.
func newDocument(data []byte) (*document, *mistake) {
	data = data[:len(data):len(data)] // the parser finds places by capacity
	doc := &document{root: &table{}, lines: []int{0}}
	for i, b := range data {
		if b == '\n' {
			doc.lines = append(doc.lines, i+1)
		}
	}
	if wrong := notText(data); wrong != nil {
		return doc, wrong
	}
	var p unstable.Parser
	p.Reset(data)
	for current := doc.root; p.NextExpression(); {
		var wrong *mistake
		switch node := p.Expression(); node.Kind {
		case unstable.KeyValue:
			wrong = current.add(node)
		case unstable.Table, unstable.ArrayTable:
			current, wrong = doc.root.header(node)
		}
		if wrong != nil {
			return doc, wrong
		}
	}
	if err := p.Error(); err != nil {
		return doc, doc.badSyntax(data, &p, err)
	}
	return doc, nil
}

// line returns the line on which an offset lies.
func (d *document) line(at int) int {
	return sort.SearchInts(d.lines, at+1)
}

// notText finds the first byte that no text file has.
func notText(data []byte) *mistake {
	for at := 0; at < len(data); {
		r, size := utf8.DecodeRune(data[at:])
		control := r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0x7f
		if r == utf8.RuneError && size == 1 || control {
			return &mistake{
				at: at, read: fmt.Sprintf("a byte 0x%02x, which is not text", data[at]),
				accepted: "a text file in UTF-8", hint: "save the job as plain text",
			}
		}
		at += size
	}
	return nil
}

// header opens the table that a [header] or [[header]] names.
func (t *table) header(node *unstable.Node) (*table, *mistake) {
	for keys := node.Key(); keys.Next(); {
		key := keys.Node()
		name, at, last := string(key.Data), int(key.Raw.Offset), keys.IsLast()
		found := t.find(name)
		switch {
		case found == nil && last && node.Kind == unstable.ArrayTable:
			element := newTable(at, headed)
			t.put(name, at, &value{at: at, kind: unstable.Array, items: []*value{element}, open: true})
			return element.table, nil
		case found == nil && last:
			made := newTable(at, headed)
			t.put(name, at, made)
			return made.table, nil
		case found == nil:
			made := newTable(at, implied)
			t.put(name, at, made)
			t = made.table
		case last && node.Kind == unstable.ArrayTable:
			if !found.value.open {
				return nil, found.headedAgain(at)
			}
			element := newTable(at, headed)
			found.value.items = append(found.value.items, element)
			return element.table, nil
		case last:
			if found.value.table == nil || found.value.table.made != implied {
				return nil, found.headedAgain(at)
			}
			// Its own header comes after that of a table inside it.
			found.value.at, found.value.table.at, found.value.table.made = at, at, headed
			return found.value.table, nil
		case found.value.open:
			t = found.value.items[len(found.value.items)-1].table
		case found.value.table != nil && found.value.table.made != inline:
			t = found.value.table
		default:
			return nil, found.again(at)
		}
	}
	return t, nil
}

// add puts key = value into the table. The key can be dotted.
func (t *table) add(node *unstable.Node) *mistake {
	for keys := node.Key(); keys.Next(); {
		key := keys.Node()
		name, at := string(key.Data), int(key.Raw.Offset)
		found := t.find(name)
		switch {
		case keys.IsLast() && found != nil:
			return found.again(at)
		case keys.IsLast():
			v, wrong := newValue(node.Value(), at)
			if wrong != nil {
				return wrong
			}
			t.put(name, at, v)
		case found == nil:
			made := newTable(at, dotted)
			t.put(name, at, made)
			t = made.table
		case found.value.table != nil && found.value.table.made == dotted:
			t = found.value.table
		default:
			return found.again(at)
		}
	}
	return nil
}

func (t *table) put(name string, at int, v *value) {
	const many = 8
	e := &entry{name, at, v}
	t.fields = append(t.fields, e)
	switch {
	case t.named != nil:
		t.named[name] = e
	case len(t.fields) > many:
		t.named = make(map[string]*entry)
		for _, e := range t.fields {
			t.named[e.key] = e
		}
	}
}

// headedAgain is the mistake of a header that stands in the file for a second time.
// A table that a job can have several of needs double brackets.
func (e *entry) headedAgain(at int) *mistake {
	m := e.again(at)
	if slices.Contains([]string{"blank", "wheel", "motif"}, e.key) {
		m.accepted, m.hint = fmt.Sprintf("each key once in its table, or [[%s]] over each", e.key), fmt.Sprintf("write [[%s]] over each of them", e.key)
	}
	return m
}

// again is the mistake of a key that stands in the file for a second time.
func (e *entry) again(at int) *mistake {
	return &mistake{
		at: at, key: written(e.key), read: quoted(e.key) + " a second time",
		accepted: "each key once in its table", hint: "join the two, or delete one",
	}
}

func newTable(at int, made origin) *value {
	return &value{at: at, kind: unstable.InlineTable, table: &table{at: at, made: made}}
}

// newValue copies a value out of the parser, which forgets it at the next line.
// The place given is where the value begins, unless it knows better.
func newValue(node *unstable.Node, at int) (*value, *mistake) {
	if node.Raw.Length > 0 {
		at = int(node.Raw.Offset)
	}
	switch node.Kind {
	case unstable.Array:
		v := &value{at: at, kind: node.Kind}
		for children := node.Children(); children.Next(); {
			item, wrong := newValue(children.Node(), at)
			if wrong != nil {
				return nil, wrong
			}
			v.items = append(v.items, item)
		}
		return v, nil
	case unstable.InlineTable:
		v := newTable(at, inline)
		for children := node.Children(); children.Next(); {
			if wrong := v.table.add(children.Node()); wrong != nil {
				return nil, wrong
			}
		}
		return v, nil
	}
	return &value{at: at, kind: node.Kind, text: string(node.Data)}, nil
}

// number returns the number a scalar is.
func (v *value) number() (float64, error) {
	var one struct{ N any }
	if err := toml.Unmarshal([]byte("N = "+v.text), &one); err != nil {
		return 0, err
	}
	if whole, ok := one.N.(int64); ok {
		return float64(whole), nil
	}
	decimal, ok := one.N.(float64)
	if !ok {
		return 0, errors.New("not a number")
	}
	return decimal, nil
}

// shown is how a message shows the value.
func (v *value) shown() string {
	switch v.kind {
	case unstable.String:
		return quoted(v.text)
	case unstable.Array:
		return fmt.Sprintf("a list of %d", len(v.items))
	case unstable.InlineTable:
		return "a table"
	}
	return oneLine(v.text, 60)
}

// The key before a place in a line, and the name in a line's header.
var (
	keyBefore  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`([A-Za-z0-9_.-]+)\s*=[^=]*$`) })
	headerName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\s*\[+\s*([A-Za-z0-9_.-]+)`) })
)

// badSyntax puts the parser's error into words for someone who has not read TOML's
// specification.
func (d *document) badSyntax(data []byte, p *unstable.Parser, err error) *mistake {
	m := &mistake{}
	var at *unstable.ParserError
	if errors.As(err, &at) {
		m.at = int(p.Range(at.Highlight).Offset)
	}
	const wide = 1000 // bytes of a very long line to look at
	start := d.lines[d.line(m.at)-1]
	before := string(data[max(start, m.at-wide):m.at])
	here, _, _ := strings.Cut(string(data[m.at:min(len(data), m.at+wide)]), "\n")
	line := before + here
	if found := keyBefore().FindStringSubmatch(before); found != nil {
		m.key = found[1]
	} else if found := headerName().FindStringSubmatch(line); found != nil {
		m.key = found[1]
	}
	m.read = around(before, strings.TrimRight(here, " \t\r"))
	m.accepted = "key = value, as TOML has it"
	if m.hint = slip(before, here); m.hint == "" {
		m.accepted += " (" + saying(err) + ")"
	}
	if noComma(data[:m.at], before, here, saying(err)) {
		m.accepted, m.hint = "a comma between two of a list", "a comma is missing before "+firstOf(here)
	}
	// This is what the parser says of a text that has no closing quote on its line.
	if words := saying(err); strings.HasSuffix(words, "strings cannot have new lines") {
		m.accepted, m.hint = "text with a quote at each end", "the closing quote is missing"
	}
	return m
}

// around shows the end of what stands before a place, and the beginning of what
// stands after it.
func around(before, after string) string {
	const most = 30
	runes := []rune(strings.TrimLeft(before, " \t"))
	if len(runes) <= most {
		return quoted(string(runes) + after)
	}
	return "…" + quoted(string(runes[len(runes)-most:])+after)
}
