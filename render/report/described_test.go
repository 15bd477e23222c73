package report

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// form is an object of the JSON, as its Go type describes it: the schema and the guide's page
// are made of forms.
type form struct {
	name    string // in the schema
	about   string // a sentence without its subject and its full stop
	members []member
}

// member is one key of a form. Its unit is that of a number, its word the list that a text
// is from.
type member struct {
	key, about, unit, word string
	optional               bool
	is                     reflect.Type // without a pointer
}

// describer reads forms from types and from the comments in their source.
type describer struct {
	t        *testing.T
	comments map[string]string // of types, and of fields as type.field
	forms    map[reflect.Type]*form
	order    []*form // as they are come to
}

func newDescriber(t *testing.T) *describer {
	t.Helper()
	d := &describer{t, map[string]string{}, map[reflect.Type]*form{}, nil}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, decl := range file.Decls {
			d.read(decl)
		}
	}
	return d
}

// read takes up the comments of the structs that a declaration has.
func (d *describer) read(decl ast.Decl) {
	gen, ok := decl.(*ast.GenDecl)
	if !ok {
		return
	}
	for _, spec := range gen.Specs {
		named, ok := spec.(*ast.TypeSpec)
		if !ok {
			continue
		}
		fields, ok := named.Type.(*ast.StructType)
		if !ok {
			continue
		}
		d.comments[named.Name.Name] = gen.Doc.Text()
		for _, field := range fields.Fields.List {
			for _, name := range field.Names {
				d.comments[named.Name.Name+"."+name.Name] = field.Doc.Text() + field.Comment.Text()
			}
		}
	}
}

// comment returns a comment in one line.
func (d *describer) comment(of string) string {
	return strings.TrimSuffix(strings.Join(strings.Fields(d.comments[of]), " "), ".")
}

// form describes a struct, and all that it holds.
func (d *describer) form(is reflect.Type) *form {
	if f := d.forms[is]; f != nil {
		return f
	}
	about, found := strings.CutPrefix(d.comment(is.Name()), is.Name()+" is ")
	if !found {
		d.t.Errorf("%s: its comment doesn't say what it is", is.Name())
	}
	f := &form{name: schemaName(is.Name()), about: about}
	d.forms[is] = f
	d.order = append(d.order, f)
	d.fill(f, is, false)
	return f
}

// fill adds the members of a struct to a form; those of an embedded one may be left out where
// it is behind a pointer.
func (d *describer) fill(f *form, is reflect.Type, optional bool) {
	for i := range is.NumField() {
		field := is.Field(i)
		if field.Anonymous {
			inner, behind := bare(field.Type)
			d.fill(f, inner, behind)
			continue
		}
		d.add(f, is, field, optional)
	}
}

func (d *describer) add(f *form, is reflect.Type, field reflect.StructField, optional bool) {
	key, options, _ := strings.Cut(field.Tag.Get("json"), ",")
	m := member{key: key, about: d.comment(is.Name() + "." + field.Name), unit: field.Tag.Get("unit"), word: field.Tag.Get("word")}
	m.is, _ = bare(field.Type)
	m.optional = options != "" || optional
	where := is.Name() + "." + field.Name
	if key == "" || m.about == "" {
		d.t.Errorf("%s: no key, or no comment that says what it is", where)
	}
	if options != "" && !strings.Contains(m.about, "left out") {
		d.t.Errorf("%s: it doesn't say where it is left out: %q", where, m.about)
	}
	if figure := innermost(m.is) == reflect.TypeFor[number](); figure != (m.unit != "") {
		d.t.Errorf("%s: unit %q of %s", where, m.unit, m.is)
	}
	if m.word != "" && wordLists()[m.word] == nil {
		d.t.Errorf("%s: no list %q", where, m.word)
	}
	f.members = append(f.members, m)
	if in := innermost(m.is); in.Kind() == reflect.Struct {
		d.form(in)
	}
}

// bare takes the pointer off a type.
func bare(is reflect.Type) (_ reflect.Type, behind bool) {
	if is.Kind() == reflect.Pointer {
		return is.Elem(), true
	}
	return is, false
}

// innermost is what lists and maps hold.
func innermost(is reflect.Type) reflect.Type {
	switch is.Kind() {
	case reflect.Slice, reflect.Array, reflect.Map, reflect.Pointer:
		return innermost(is.Elem())
	}
	return is
}

var capital = regexp.MustCompile(`[A-Z]`)

// schemaName is the name in the schema of what a type is written as.
func schemaName(name string) string {
	if is, ok := map[string]string{
		"compareJSON": "check_jobs", "rackJSON": "fit_rack", "marksJSON": "groove", "oldMarkJSON": "groove_like", "bareWheelJSON": "wheel",
	}[name]; ok {
		return is
	}
	return capital.ReplaceAllStringFunc(strings.TrimSuffix(name, "JSON"), func(c string) string { return "_" + strings.ToLower(c) })
}
