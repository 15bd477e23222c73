package report

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// guideHead begins the guide's page on JSON.
const guideHead = `# What --json writes

` + "`plan`, `check`, `fit`, `divide`, `groove` and `motifs` report in JSON with `--json`." + ` Whatever the job's unit, lengths are in
millimetres and angles in degrees. Glass ground away is in cubic millimetres or grams, what a glass holds in millilitres, weights
in grams, times in minutes; a share goes from 0 to 1. Heights are above the table, on the base distances from its middle. ` + "`theta`" + ` is
the angle round the glass, to the right from the middle of repeat 1.

A key whose value is not known is left out: nothing is ` + "`null`. An empty list is `[]`." + ` Numbers have at most six decimals.
[json.schema.json](json.schema.json) says the same as a JSON Schema (2020-12), under the same names. This page and the schema are
made from the program's own types.
`

// The guide's page on JSON is what the types say.
func TestJSONGuideIsTheTypes(t *testing.T) { sameFile(t, "json.md", []byte(jsonGuide(t))) }

// jsonGuide writes the page: each output, and after it what it holds that was not explained
// before.
func jsonGuide(t *testing.T) string {
	d := newDescriber(t)
	var b strings.Builder
	b.WriteString(guideHead + "\n| command | it writes |\n|---|---|\n")
	for _, o := range outputs() {
		about := d.form(innermost(reflect.TypeOf(o.value))).about
		if reflect.TypeOf(o.value).Kind() == reflect.Slice {
			about = "a list: of each, " + about
		}
		fmt.Fprintf(&b, "| [%s](#%s) | %s |\n", o.command, anchor(o.command), about)
	}
	top := map[string]string{}
	for _, o := range outputs() {
		top[schemaName(innermost(reflect.TypeOf(o.value)).Name())] = o.command
	}
	links := func(name string) string {
		if command, ok := top[name]; ok {
			return anchor(command)
		}
		return name
	}
	for _, f := range d.order {
		heading := "### " + f.name
		if command, ok := top[f.name]; ok {
			heading = "## " + command
		}
		fmt.Fprintf(&b, "\n%s\n\n%s.\n\n| key | value | what it is |\n|---|---|---|\n", heading, upper(f.about))
		for _, m := range f.members {
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", m.key, valueWords(m, links), m.about)
		}
	}
	return b.String()
}

// valueWords says what a value is.
func valueWords(m member, link func(string) string) string {
	of := func(is reflect.Type) string { m.is = is; return valueWords(m, link) }
	switch m.is.Kind() {
	case reflect.String:
		if m.word == "" {
			return "text"
		}
		list := wordLists()[m.word]
		return "`" + strings.Join(list, "`, `") + "`"
	case reflect.Bool:
		return "true or false"
	case reflect.Int:
		return "whole number"
	case reflect.Float64:
		return m.unit
	case reflect.Slice:
		return "list: " + of(m.is.Elem())
	case reflect.Array:
		return fmt.Sprintf("list of %d: ", m.is.Len()) + of(m.is.Elem())
	case reflect.Map:
		return "by name: " + of(m.is.Elem())
	}
	name := schemaName(m.is.Name())
	return fmt.Sprintf("[%s](#%s)", name, link(name))
}

// anchor is what a link to a heading ends with.
func anchor(heading string) string {
	return strings.ReplaceAll(regexp.MustCompile(`[^a-z0-9 _-]`).ReplaceAllString(strings.ToLower(heading), ""), " ", "-")
}

// Every link within the page leads to a heading of it.
func TestJSONGuideLinks(t *testing.T) {
	page := jsonGuide(t)
	headings := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^#+ (.*)$`).FindAllStringSubmatch(page, -1) {
		headings[anchor(m[1])]++
	}
	for heading, n := range headings {
		if n > 1 {
			t.Errorf("%d headings are %s", n, heading)
		}
	}
	links := regexp.MustCompile(`\(#([^)]*)\)`).FindAllStringSubmatch(page, -1)
	for _, m := range links {
		if headings[m[1]] == 0 {
			t.Errorf("#%s leads nowhere", m[1])
		}
	}
	if len(links) < 50 {
		t.Errorf("%d links", len(links))
	}
}
