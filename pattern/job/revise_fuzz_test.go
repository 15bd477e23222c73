package job

import (
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pelletier/go-toml/v2"
)

// Whatever is asked of whatever text, the answer is a text that TOML takes or an error in
// words, and a key that is set or removed leaves all others as they were.
func FuzzRevise(f *testing.F) {
	_, demo := Demo()
	texts := []string{string(demo), small, "", "\ufeff", "blank = {}", "[blank]", "motif = [{}]\nwheel=[ ]", "[[motif]]", "limits.a = 1\n[shop]#", "[a.b]\n[[blank.station]]\n[limits]"}
	for _, text := range shapes {
		texts = append(texts, text)
	}
	for _, text := range texts {
		for _, e := range []struct{ op, path, value string }{
			{"set", "motif[1].width", "1/2"}, {"set", "limits.land", "3"}, {"set", "blank.station[2].across", "3, 4"},
			{"set", "wheel[1].edge", "gang"}, {"set", "wheel[1].name", "\"'"}, {"set", "motif[1].kind", "fan"}, {"set", "motif[2].inside", "1"},
			{"set", "blank.name", "a\nb"}, {"set", "lay\xedy\n\x1b[2].x", "1"}, {"set", "shop.order", "m; n"}, {"set", "layout.band", "1, 2"},
			{"remove", "motif[1].depth", ""}, {"remove", "layout.repeats", ""}, {"remove", "blank.station[1].wall", ""},
			{"add", "motif", "star"}, {"add", "wheel", "gang"}, {"add", "blank", "x"}, {"add", "blank.station", "1"},
			{"copy", "motif[1]", ""}, {"copy", "blank", ""}, {"drop", "motif[1]", ""}, {"drop", "blank.station[2]", ""}, {"drop", "wheel[2]", ""},
		} {
			f.Add([]byte(text), e.op, e.path, e.value, 0)
		}
		f.Add([]byte(text), "add", "blank.station", "", 2)
	}
	f.Fuzz(func(t *testing.T, data []byte, op, path, value string, at int) {
		e := Revision{Op: op, Path: path, Value: value, At: at}
		if op == "add" {
			_, name := parent(path)
			key := map[string]string{"motif": "kind", "wheel": "edge", "blank": "name", "station": "height"}[name]
			if e.Value = nil; value != "" {
				e.Value = map[string]any{key: value}
			}
		}
		out, err := Revise(data, e)
		if err != nil {
			if strings.ContainsFunc(err.Error(), func(r rune) bool { return !unicode.IsPrint(r) }) {
				t.Errorf("%q", err)
			}
			return
		}
		after, err := newRevising(out, nil)
		if err != nil {
			t.Fatalf("%s\nbecame\n%s", data, out)
		}
		var tree map[string]any
		if toml.Unmarshal(data, &tree) == nil && toml.Unmarshal(out, &tree) != nil {
			t.Errorf("%s\nbecame\n%s", data, out)
		}
		if _, err := NewForm(out); err != nil {
			t.Error(err)
		}
		if leads(path) || op != "set" && op != "remove" {
			return
		}
		before, _ := newRevising(data, nil)
		if diff := cmp.Diff(before.rest(path), after.rest(path), cmpopts.EquateNaNs()); diff != "" {
			t.Errorf("%s %s in\n%s\nchanged more:\n%s", op, path, data, diff)
		}
	})
}

// rest is what a document says but for one key, and for tables that have none.
func (r *revising) rest(path string) any {
	root, _ := plain(r.doc.root)
	table, key := parent(path)
	if p, ok := r.place(table); ok {
		table = p.path
	}
	var prune func(v any, path string) any
	prune = func(v any, path string) any {
		switch v := v.(type) {
		case map[string]any:
			for name, inner := range v {
				if path == table && name == key {
					delete(v, name)
				} else if v[name] = prune(inner, joined(path, name)); v[name] == nil {
					delete(v, name)
				}
			}
			if len(v) == 0 {
				return nil
			}
		case []any:
			for i := range v {
				v[i] = prune(v[i], Item(path, i))
			}
		}
		return v
	}
	return prune(root, "")
}
