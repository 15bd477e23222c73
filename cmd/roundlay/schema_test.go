package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

const schemaFile = "guide/json.schema.json"

// published is the schema that is published, and which of its keys were seen in outputs.
type published struct {
	whole    map[string]any
	compiler *jsonschema.Compiler
	seen     map[string]bool
}

// readSchema reads it. That it is a schema of 2020-12 is looked at when it is compiled.
func readSchema(t *testing.T) published {
	t.Helper()
	text, err := os.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	whole := doc.(map[string]any)
	if whole["$schema"] != "https://json-schema.org/draft/2020-12/schema" {
		t.Fatalf("a schema of %v", whole["$schema"])
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource(whole["$id"].(string), doc); err != nil {
		t.Fatal(err)
	}
	if _, err := compiler.Compile(whole["$id"].(string)); err != nil {
		t.Fatal(err)
	}
	return published{whole, compiler, map[string]bool{}}
}

// verdict says what is wrong with a value of a named output, nil if nothing is.
func (s published) verdict(t *testing.T, name string, value any) error {
	t.Helper()
	compiled, err := s.compiler.Compile(s.whole["$id"].(string) + "#/$defs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return compiled.Validate(value)
}

// holds fails where an output isn't as the schema says, and notes which keys it has.
func (s published) holds(t *testing.T, r reported) {
	t.Helper()
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(r.text))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.verdict(t, r.schema, value); err != nil {
		t.Errorf("%s: %v", r.what, err)
	}
	s.note(s.definition(r.schema), r.schema, value)
}

func (s published) definition(name string) map[string]any {
	return s.whole["$defs"].(map[string]any)[name].(map[string]any)
}

// note follows a value along its schema, in the definition of a name.
func (s published) note(schema map[string]any, name string, value any) {
	if ref, ok := schema["$ref"].(string); ok {
		name = strings.TrimPrefix(ref, "#/$defs/")
		schema = s.definition(name)
	}
	switch value := value.(type) {
	case []any:
		for _, item := range value {
			s.note(schema["items"].(map[string]any), name, item)
		}
	case map[string]any:
		properties, _ := schema["properties"].(map[string]any)
		for key, inner := range value {
			if of, ok := properties[key].(map[string]any); ok {
				s.seen[name+"."+key] = true
				s.note(of, name, inner)
			} else if of, ok := schema["additionalProperties"].(map[string]any); ok { // its keys are names
				s.note(of, name, inner)
			}
		}
	}
}

// allSeen fails where a key is described that no output had.
func (s published) allSeen(t *testing.T) {
	t.Helper()
	for name := range s.whole["$defs"].(map[string]any) {
		properties, _ := s.definition(name)["properties"].(map[string]any)
		for key := range properties {
			if !s.seen[name+"."+key] {
				t.Errorf("no output has %s of %s", key, name)
			}
		}
	}
}

// schemaOf names the output of a command in the schema.
func schemaOf(t *testing.T, args []string) string {
	t.Helper()
	name, files := args[0], 0
	for _, arg := range args[1:] {
		if strings.HasSuffix(arg, ".toml") {
			files++
		}
	}
	has := func(flag string) bool { return slices.Contains(args, flag) }
	switch {
	case name == "fit" && has("--rack"):
		return "fit_rack"
	case name == "groove" && has("--like"):
		return "groove_like"
	case name == "check" && files > 1:
		return "check_jobs"
	case name == "check" && files == 1:
		text, err := os.ReadFile(args[len(args)-1])
		if err != nil {
			t.Fatal(err)
		}
		if strings.Count(string(text), "[[blank]]") > 1 {
			return "check_set"
		}
	}
	return name
}

// Every object that the schema describes takes no other key, and every key and object of it
// is explained.
func TestSchemaIsStrict(t *testing.T) {
	s := readSchema(t)
	objects := 0
	walk(map[string]any(s.whole), "", func(path string, v any) {
		of, _ := v.(map[string]any)
		if _, described := of["properties"].(map[string]any); described && of["type"] == "object" {
			objects++
			if of["additionalProperties"] != false {
				t.Errorf("%s takes other keys", path)
			}
			for key, one := range of["properties"].(map[string]any) {
				if about, _ := one.(map[string]any)["description"].(string); about == "" {
					t.Errorf("%s: %s is not explained", path, key)
				}
			}
			if about, _ := of["description"].(string); about == "" {
				t.Errorf("%s is not explained", path)
			}
		}
	})
	if objects < 40 {
		t.Errorf("%d objects", objects)
	}
}

// An output that is not as described is told: with a key more or less, null, or of another
// sort, at any depth.
func TestSchemaRefuses(t *testing.T) {
	s := readSchema(t)
	const gallery = "../../testdata/gallery/"
	set := filepath.Join(t.TempDir(), "set.toml")
	if err := os.WriteFile(set, []byte(jobsForJSON()["three"]), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"plan", "--json"}, {"check", "--json"}, {"divide", "--json"}, {"motifs", "--json"}, {"groove", "--json", "--length=12mm"},
		{"groove", "--json", "--like", "--length=12mm", "--width=2mm"}, {"fit", "--json"}, {"fit", "--rack", "--json"},
		{"check", "--json", set}, {"check", "--json", gallery + "hand-leaf.toml", gallery + "hand-fan.toml"},
	} {
		var out, wrong bytes.Buffer
		run(args, strings.NewReader(""), &out, &wrong)
		name, small := schemaOf(t, args), shortened(t, out.Bytes())
		fresh := func() any {
			value, err := jsonschema.UnmarshalJSON(bytes.NewReader(small))
			if err != nil {
				t.Fatal(err)
			}
			return value
		}
		if err := s.verdict(t, name, fresh()); err != nil {
			t.Fatalf("%s as it is: %v", name, err)
		}
		told := 0
		for _, spoil := range spoilers(s, name, fresh()) {
			value := fresh()
			spoil.do(value)
			if s.verdict(t, name, value) == nil {
				t.Errorf("%s with %s passes", name, spoil.what)
			}
			told++
		}
		if told < 25 {
			t.Errorf("%s: only %d changes tried", name, told)
		}
	}
}

// shortened is an output with no more than two items in each list.
func shortened(t *testing.T, text []byte) []byte {
	t.Helper()
	var short func(v any) any
	short = func(v any) any {
		switch v := v.(type) {
		case []any:
			v = v[:min(len(v), 2)]
			for i := range v {
				v[i] = short(v[i])
			}
			return v
		case map[string]any:
			for key := range v {
				v[key] = short(v[key])
			}
		}
		return v
	}
	var value any
	if err := json.Unmarshal(text, &value); err != nil {
		t.Fatal(err)
	}
	out, err := json.Marshal(short(value))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// spoiler makes an output wrong.
type spoiler struct {
	what string
	do   func(whole any)
}

// spoilers are wrong changes to every object of an output: of objects that are described
// alike, to the first.
func spoilers(s published, name string, whole any) []spoiler {
	var all []spoiler
	done := map[string]bool{}
	var visit func(schema map[string]any, at []any, value any)
	visit = func(schema map[string]any, at []any, value any) {
		if ref, ok := schema["$ref"].(string); ok {
			if done[ref] {
				return
			}
			done[ref] = true
			schema = s.definition(strings.TrimPrefix(ref, "#/$defs/"))
		}
		switch value := value.(type) {
		case []any:
			if items, ok := schema["items"].(map[string]any); ok && len(value) > 0 {
				visit(items, append(slices.Clone(at), 0), value[0])
			}
		case map[string]any:
			properties, ok := schema["properties"].(map[string]any)
			if !ok {
				return
			}
			all = append(all, spoilt(at, "another key", func(o map[string]any) { o["another"] = json.Number("1") }))
			for key, inner := range value {
				visit(properties[key].(map[string]any), append(slices.Clone(at), key), inner)
				all = append(all,
					spoilt(at, key+" null", func(o map[string]any) { o[key] = nil }),
					spoilt(at, key+" of another sort", func(o map[string]any) { o[key] = otherSort(o[key]) }))
			}
			for _, key := range schema["required"].([]any) {
				all = append(all, spoilt(at, "no "+key.(string), func(o map[string]any) { delete(o, key.(string)) }))
			}
		}
	}
	visit(s.definition(name), nil, whole)
	return all
}

// spoilt changes the object at a place.
func spoilt(at []any, what string, change func(map[string]any)) spoiler {
	return spoiler{what, func(whole any) {
		for _, step := range at {
			if i, ok := step.(int); ok {
				whole = whole.([]any)[i]
			} else {
				whole = whole.(map[string]any)[step.(string)]
			}
		}
		change(whole.(map[string]any))
	}}
}

// otherSort returns a value that is of another sort.
func otherSort(value any) any {
	if _, is := value.(bool); is {
		return "true"
	}
	return true
}
