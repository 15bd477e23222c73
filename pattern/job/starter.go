package job

import (
	"bytes"
	_ "embed" // for starter.toml
	"fmt"
	"slices"
	"strings"
	"text/template"

	"roundlay/geometry"
	"roundlay/motifs"
)

//go:embed starter.toml
var starter string

// Starter returns a job to start from, in inches or in millimetres, with a note
// on every key there is.
func Starter(unit geometry.Unit) []byte {
	return started(unit, described())
}

// started fills in the starter for some tables.
func started(unit geometry.Unit, tables []Table) []byte {
	return begun(unit, tables, "", motifs.Listed())
}

// begun fills in a text to start from, which may use parts of the starter; of no text, the
// starter itself.
func begun(unit geometry.Unit, tables []Table, text string, about any) []byte {
	s := starting{unit: unit, tables: tables, noted: make(map[string]bool)}
	words := template.FuncMap{
		"key":       func(table, key string) string { return s.line(table, key, "") },
		"off":       func(table, key string) string { return s.line(table, key, "# ") },
		"under":     s.under,
		"rest":      s.rest,
		"about":     func(table string) string { return s.table(table).About },
		"inches":    func() bool { return unit == geometry.Inch },
		"either":    func(inch, mm string) string { return Key{inches: inch, mm: mm}.start(unit) },
		"default":   defaultNote,
		"content":   contentNote,
		"parameter": parameterNote,
		"fixed":     s.fixed,
		"quoted":    quoted,
	}
	var b bytes.Buffer
	// The text is our own: a test fills it in for either unit.
	t := template.Must(template.New("starter").Funcs(words).Parse(starter))
	if text != "" {
		t = template.Must(t.New("text").Parse(text))
	}
	if err := t.Execute(&b, about); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// starting is a starter while it is filled in.
type starting struct {
	unit   geometry.Unit
	tables []Table
	noted  map[string]bool // the keys that have been explained, in full
}

func (s starting) table(name string) Table {
	i := slices.IndexFunc(s.tables, func(t Table) bool { return t.Name == name })
	return s.tables[i]
}

// line is a key with its note. With a # before it, it is a key once that is taken away.
func (s starting) line(table, key, off string) string {
	k, _ := s.table(table).key(key)
	s.noted[table+"."+key] = true
	return noted(off+key+" = "+k.start(s.unit), k.note())
}

// fixed is a key with a value that isn't the starter's, and with a note of its own.
func (s starting) fixed(table, key, value, note string) string {
	s.noted[table+"."+key] = true
	return noted(key+" = "+value, note)
}

// noted puts a note behind a key.
func noted(line, note string) string { return fmt.Sprintf("%-30s # %s", line, note) }

// under explains a key in lines of their own.
func (s starting) under(table, key string) string {
	const wide, aside = 105, 12
	k, _ := s.table(table).key(key)
	s.noted[table+"."+key] = true
	line := fmt.Sprintf("#   %-8s", key)
	var lines []string
	for _, word := range strings.Fields(k.note()) {
		if len(line)+1+len(word) > wide {
			lines = append(lines, line)
			line = "#" + strings.Repeat(" ", aside-1)
		}
		line += " " + word
	}
	return strings.Join(append(lines, line), "\n")
}

// rest explains the keys of a table that haven't been explained before.
func (s starting) rest(table string) string {
	var text strings.Builder
	for _, k := range s.table(table).Keys {
		switch {
		case s.noted[table+"."+k.Name] || k.Sort == OfTables:
		case k.start(s.unit) == "":
			text.WriteString("\n" + s.under(table, k.Name))
		default:
			text.WriteString("\n" + s.line(table, k.Name, "# "))
		}
	}
	return text.String()
}

// note explains a key to someone who writes it: for which wheels it is, what it is, and
// the words it takes.
func (k Key) note() string {
	note := k.About
	if len(k.Words) > 0 && !strings.Contains(k.About, quoted(k.Words[0])) {
		what, more, both := strings.Cut(k.About, "; ")
		note = what + ": " + list(k.Words)
		if both {
			note += "; " + more
		}
	}
	switch k.Sort {
	case OfMeasure, OfPlace:
		note += " in quotes" // what it says last is that it may be a length
	case OfLengths:
		note += `: ["3 1/8", "3 5/32"]`
	}
	if len(k.For) > 0 {
		note = strings.Join(k.For, " and ") + ": " + note
	}
	return note
}

// start is how the starter job writes the key.
func (k Key) start(u geometry.Unit) string {
	if u == geometry.Inch {
		return k.inches
	}
	return k.mm
}

// contentNote is a key of a kind's contents with an example, as a note.
func contentNote(c motifs.ContentKey) string {
	return noted("# "+c.Name+" = "+c.Example, c.About)
}

// defaultNote is a parameter of a kind with its default, as a note. It becomes a key when
// the # is taken away.
func defaultNote(p motifs.Param) string {
	k := ofParameter(p)
	return noted("# "+k.Name+" = "+k.Default, p.About+"; "+p.Range())
}
