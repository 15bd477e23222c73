package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// output is what a command writes with --json.
type output struct {
	name    string // in the schema
	command string
	value   any
}

// outputs are all there are.
func outputs() []output {
	return []output{
		{"plan", "plan --json", planJSON{}},
		{"check", "check --json", checkJSON{}},
		{"check_set", "check --json, of a set", checkSetJSON{}},
		{"check_jobs", "check --json, of several jobs", compareJSON{}},
		{"fit", "fit --json", fitJSON{}},
		{"fit_rack", "fit --rack --json", rackJSON{}},
		{"divide", "divide --json", divideJSON{}},
		{"groove", "groove --json", marksJSON{}},
		{"groove_like", "groove --like --json", oldMarkJSON{}},
		{"motifs", "motifs --json", []kindJSON{}},
	}
}

// wordLists are the lists of words that texts are from, as the code has them.
func wordLists() map[string][]string {
	var kinds []string
	for _, k := range motifs.Listed() {
		kinds = append(kinds, k.Name)
	}
	return map[string][]string{
		"units":      {geometry.Inch.String(), geometry.Millimetre.String()},
		"surfaces":   {"cylinder", "cone", "gores"},
		"base":       {job.Base.String()},
		"motifs":     kinds,
		"kinds":      named(func(i int) fmt.Stringer { return pattern.Kind(i) }),
		"bounds":     named(func(i int) fmt.Stringer { return pattern.Bound(i) }),
		"edges":      groove.Edges(),
		"matches":    job.Matches(),
		"parameters": {"number", "count", "switch"},
		"contents":   {"text", "texts", "switch"},
	}
}

// named lists the names of constants that count up from 0, until there are no more.
func named(constant func(int) fmt.Stringer) (all []string) {
	defer func() { _ = recover() }() // past the last one
	for i := 0; ; i++ {
		all = append(all, constant(i).String())
	}
}

// object is a JSON object whose keys stay in order.
type object []entry

type entry struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, e := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		key, _ := json.Marshal(e.key)
		b.Write(append(key, ':'))
		e2 := json.NewEncoder(&b)
		e2.SetEscapeHTML(false)
		if err := e2.Encode(e.value); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// schemaText is the schema of all outputs: JSON Schema 2020-12.
func schemaText(t *testing.T) []byte {
	d := newDescriber(t)
	var all []object
	defs := object{}
	for _, o := range outputs() {
		all = append(all, object{{"$ref", "#/$defs/" + o.name}})
		if is := reflect.TypeOf(o.value); is.Kind() == reflect.Slice {
			defs = append(defs, entry{o.name, object{{"description", "roundlay " + o.command}, {"type", "array"}, {"items", d.schema(member{is: is.Elem()})}}})
			continue
		}
		d.form(reflect.TypeOf(o.value))
	}
	d.form(reflect.TypeFor[kindJSON]())
	for _, f := range d.order {
		defs = append(defs, entry{f.name, d.object(f)})
	}
	whole := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"$id", fmt.Sprintf("urn:roundlay:json:%d", schema)},
		{"title", "What roundlay writes with --json"},
		{"description", "Lengths are in millimetres and angles in degrees, whatever the job's unit. What is not known is left out: nothing is null."},
		{"anyOf", all},
		{"$defs", defs},
	}
	var b bytes.Buffer
	if err := write(&b, whole); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// object is the schema of a form. It takes no key that isn't described.
func (d *describer) object(f *form) object {
	properties, required := object{}, []string{}
	for _, m := range f.members {
		about := m.about
		if m.unit != "" {
			about += " (" + m.unit + ")"
		}
		properties = append(properties, entry{m.key, append(object{{"description", about}}, d.schema(m)...)})
		if !m.optional {
			required = append(required, m.key)
		}
	}
	return object{
		{"description", f.about}, {"type", "object"}, {"properties", properties},
		{"required", required}, {"additionalProperties", false},
	}
}

// schema is the schema of a member's value.
func (d *describer) schema(m member) object {
	of := func(is reflect.Type) object { m.is = is; return d.schema(m) }
	switch {
	case m.key == "schema":
		return object{{"const", schema}}
	case m.word != "" && m.is.Kind() == reflect.String:
		return object{{"enum", wordLists()[m.word]}}
	}
	switch m.is.Kind() {
	case reflect.String:
		return object{{"type", "string"}}
	case reflect.Bool:
		return object{{"type", "boolean"}}
	case reflect.Int:
		return object{{"type", "integer"}}
	case reflect.Float64:
		return object{{"type", "number"}}
	case reflect.Slice:
		return object{{"type", "array"}, {"items", of(m.is.Elem())}}
	case reflect.Array:
		n := m.is.Len()
		return object{{"type", "array"}, {"items", of(m.is.Elem())}, {"minItems", n}, {"maxItems", n}}
	case reflect.Map:
		return object{{"type", "object"}, {"additionalProperties", of(m.is.Elem())}}
	case reflect.Struct:
		return object{{"$ref", "#/$defs/" + schemaName(m.is.Name())}}
	}
	d.t.Errorf("%s: a %s in JSON", m.key, m.is)
	return nil
}

// guide is the folder of the pages that explain the program.
const guide = "../../cmd/roundlay/guide"

// sameFile compares a file with what it is made of now, and remakes it where ROUNDLAY_UPDATE
// is set.
func sameFile(t *testing.T, name string, text []byte) {
	t.Helper()
	path := filepath.Join(guide, name)
	if os.Getenv("ROUNDLAY_UPDATE") != "" && !t.Failed() {
		if err := os.WriteFile(path, text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if was, err := os.ReadFile(path); err != nil || !bytes.Equal(was, text) {
		t.Errorf("%s is not what the types say now (%v); remake it with ROUNDLAY_UPDATE=1", path, err)
	}
}

// The schema that is published is that of the types.
func TestSchemaIsTheTypes(t *testing.T) { sameFile(t, "json.schema.json", schemaText(t)) }

// Every form has a name of its own in the schema.
func TestSchemaNames(t *testing.T) {
	d := newDescriber(t)
	for _, o := range outputs() {
		d.form(innermost(reflect.TypeOf(o.value)))
	}
	seen := map[string]bool{"motifs": true}
	for _, f := range d.order {
		if seen[f.name] {
			t.Errorf("two are named %q", f.name)
		}
		seen[f.name] = true
	}
	for _, o := range outputs() {
		if !seen[o.name] {
			t.Errorf("%s is named otherwise in the schema", o.name)
		}
	}
}
