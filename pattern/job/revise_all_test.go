package job

import (
	"slices"
	"strings"
	"testing"
)

// revised makes changes that have to succeed.
func revised(t *testing.T, data []byte, edits ...Revision) []byte {
	t.Helper()
	out, err := Revise(data, edits...)
	if err != nil {
		t.Fatalf("%+v: %v\n%s", edits, err, data)
	}
	return out
}

// formOf returns the fields of a job.
func formOf(t *testing.T, data []byte) *Form {
	t.Helper()
	f, err := NewForm(data)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// fields returns the fields by their paths.
func (f *Form) fields() map[string]FormField {
	all := make(map[string]FormField)
	for _, table := range f.Tables {
		for _, field := range table.Fields {
			all[field.Path] = field
		}
	}
	return all
}

// values returns what every field says, given or not.
func values(t *testing.T, data []byte) map[string]string {
	all := make(map[string]string)
	for path, field := range formOf(t, data).fields() {
		all[path] = field.Text
	}
	return all
}

// typedIn is what a person leaves in a field.
func (f FormField) typedIn() any {
	if f.List != nil {
		items := make([]any, len(f.List))
		for i, text := range f.List {
			items[i] = text
		}
		return items
	}
	return f.Text
}

// leads reports whether other keys follow from one.
func leads(path string) bool {
	_, key := parent(path)
	return slices.Contains([]string{"edge", "kind", "inside", "face", "middle", "tip", "tip_radius", "length"}, key) || strings.HasPrefix(path, "wheel") && key == "name"
}

// eachJob runs a test on every job of the corpus.
func eachJob(t *testing.T, test func(t *testing.T, data []byte)) {
	for name, data := range corpus(t) {
		t.Run(name, func(t *testing.T) { test(t, data) })
	}
}

// What the form shows, typed again, changes nothing.
func TestSetOwnText(t *testing.T) {
	eachJob(t, func(t *testing.T, data []byte) {
		for path, field := range formOf(t, data).fields() {
			if !field.Given {
				continue
			}
			for _, typed := range []any{field.Text, field.typedIn()} {
				if out := revised(t, data, Revision{Op: "set", Path: path, Value: typed}); string(out) != string(data) {
					t.Errorf("%s: %q became\n%s", path, typed, out)
				}
			}
		}
	})
}

// Another value and then the first again leave the job as it was, and every line but
// the key's own.
func TestSetAndSetBack(t *testing.T) {
	seen := make(map[string]bool)
	eachJob(t, func(t *testing.T, data []byte) {
		was := values(t, data)
		for path, field := range formOf(t, data).fields() {
			if !field.Given || leads(path) || tried(seen, data, field) {
				continue
			}
			set := revised(t, data, Revision{Op: "set", Path: path, Value: "1.375 zz"})
			if string(set) == string(data) {
				t.Errorf("%s was not set", path)
			}
			out := revised(t, set, Revision{Op: "set", Path: path, Value: field.typedIn()})
			alike(t, path, data, out)
			sameBut(t, path, was, values(t, out), "")
			if n := differing(string(data), string(set)); n > 1+strings.Count(lines(data, field), "\n") {
				t.Errorf("%s: %d lines differ", path, n)
			}
		}
	})
}

// lines returns the text of a field's value in a file, over however many lines.
func lines(data []byte, field FormField) string {
	r, err := newRevising(data, nil)
	if err != nil {
		return ""
	}
	table, key := parent(field.Path)
	p, _ := r.place(table)
	return r.raw(p.find(key))
}

// tried reports whether a key of another job was written in the same line, and notes
// this one: many jobs of the scripts are nearly the same.
func tried(seen map[string]bool, data []byte, field FormField) bool {
	table, key := parent(field.Path)
	_, step := parent(table)
	step, _ = numbered(step)
	line := strings.Split(string(data), "\n")[field.Line-1]
	this := step + "." + key + " in " + line
	again := seen[this]
	seen[this] = true
	return again
}

// differing counts the lines of a text that another lacks.
func differing(a, b string) int {
	there := make(map[string]int)
	for line := range strings.Lines(b) {
		there[line]++
	}
	n := 0
	for line := range strings.Lines(a) {
		if there[line]--; there[line] < 0 {
			n++
		}
	}
	return n
}

// A key that is removed has its default, and set again it is as it was.
func TestRemoveAndSet(t *testing.T) {
	seen := make(map[string]bool)
	eachJob(t, func(t *testing.T, data []byte) {
		was := values(t, data)
		for path, field := range formOf(t, data).fields() {
			if !field.Given || leads(path) || tried(seen, data, field) {
				continue
			}
			removed := revised(t, data, Revision{Op: "remove", Path: path})
			left := formOf(t, removed).fields()[path]
			if left.Given {
				t.Errorf("%s is still there", path)
			}
			sameBut(t, path, was, values(t, removed), path)
			out := revised(t, removed, Revision{Op: "set", Path: path, Value: field.typedIn()})
			alike(t, path, data, out)
			sameBut(t, path, was, values(t, out), "")
		}
	})
}

// alike compares jobs as they are decoded.
func alike(t *testing.T, what string, a, b []byte) {
	t.Helper()
	before, err := Read("a.toml", a)
	if err != nil {
		t.Fatal(err)
	}
	after, err := Read("b.toml", b)
	if err != nil {
		t.Errorf("%s: %v\n%s", what, err, b)
	} else if !Alike(before, after) {
		t.Errorf("%s: the job differs:\n%s", what, b)
	}
}

// sameBut compares what fields say, all but one.
func sameBut(t *testing.T, what string, a, b map[string]string, but string) {
	t.Helper()
	for path, text := range a {
		if other, ok := b[path]; path != but && (!ok || other != text) {
			t.Errorf("%s: %s was %q, is %q", what, path, text, other)
		}
	}
	if len(a) != len(b) {
		t.Errorf("%s: %d fields, and then %d", what, len(a), len(b))
	}
}

// What is added or copied leaves a job that can be read, and dropped again nothing.
func TestAddAndDrop(t *testing.T) {
	eachJob(t, func(t *testing.T, data []byte) {
		r, err := newRevising(data, nil)
		if err != nil {
			t.Fatal(err)
		}
		top, count := place{table: r.doc.root}, 0
		blanks := top.places("blank")
		for _, name := range []string{"motif", "wheel"} {
			there := top.places(name)
			added := Item(name, len(there))
			count++
			andBack(t, data, Revision{Op: "add", Path: name}, added)
			for _, p := range there {
				andBack(t, data, Revision{Op: "copy", Path: p.path}, added)
			}
		}
		for _, b := range blanks {
			andBack(t, data, Revision{Op: "add", Path: b.path + ".station"}, "")
			for i := range len(b.places("station")) - 1 {
				andBack(t, data, Revision{Op: "add", Path: b.path + ".station", At: i + 2}, joined(b.path, Item("station", i+1)))
			}
		}
		if top.find("blank").value.table == nil && blanks[0].find("name") != nil { // a name stays
			andBack(t, data, Revision{Op: "add", Path: "blank"}, Item("blank", len(blanks)))
		}
	})
}

// andBack makes a change, reads the job, and drops what was added.
func andBack(t *testing.T, data []byte, e Revision, added string) {
	t.Helper()
	out, err := Revise(data, e)
	if err != nil {
		t.Errorf("%+v: %v", e, err)
		return
	}
	if _, err := Read("added.toml", out); err != nil {
		t.Errorf("%+v: %v\n%s", e, err, out)
	}
	if differing(string(data), string(out)) > 1 { // the line that gets a comma
		t.Errorf("%+v changed more than it added:\n%s", e, out)
	}
	if added == "" {
		return
	}
	back, err := Revise(out, Revision{Op: "drop", Path: added})
	if err != nil {
		t.Errorf("%+v: dropped: %v", e, err)
	} else if string(back) != string(data) {
		t.Errorf("%+v and back:\n%s", e, back)
	}
}

// A job with one blank can have a second, in whatever way that one is written.
func TestAddBlank(t *testing.T) {
	eachJob(t, func(t *testing.T, data []byte) {
		j, err := Read("x.toml", data)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range []Revision{{Op: "add", Path: "blank"}, {Op: "copy", Path: "blank[1]"}} {
			out, err := Revise(data, e)
			if err != nil {
				t.Fatal(err)
			}
			k, err := Read("x.toml", out)
			if err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			if len(k.Blanks) != len(j.Blanks)+1 || !Alike(j, k) || k.Blanks[0].Name != j.Blanks[0].Name {
				t.Errorf("after %s:\n%s", e.Op, out)
			}
		}
	})
}
