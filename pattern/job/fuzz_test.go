package job

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// seeds are files to start from for the tests that make files up.
func seeds(f *testing.F) {
	f.Add(base().bytes())
	_, demo := Demo()
	f.Add(demo)
	f.Add(Starter(0))
	for _, text := range []string{
		"", "\ufeff", "a.b=1\n[a]", "[[a.b]]\n[a]\n[a.b.c]", "a=[{b.c=1},[1]]\n[a]", "x=07:32:00", "x=1979-05-27 1", "x=-nan", "x=0x_", "x=1_0", "\"\"=''''''", "[a]\nb.c=1\n[a.b]\n[a.b.d]",
		"length=\"mm\"\n[[blank]]\n[[blank.station]]\n[[blank]]\nstation=[]", "x={a=1,\n\n a.b=2}", "[a.b]\n[a]\nb.c=1",
	} {
		f.Add([]byte(text))
	}
}

func FuzzRead(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Read("fuzz.toml", data)
		if err != nil {
			e := onlyError(t, err)
			if lines := 1 + strings.Count(string(data), "\n"); e.Line > lines {
				t.Errorf("line %d of %d", e.Line, lines)
			}
			return
		}
		if len(j.Blanks) == 0 || len(j.Rack) == 0 || len(j.Motifs) == 0 || j.Layout.Repeats < 1 {
			t.Errorf("half a job: %+v", j)
		}
		for _, m := range j.Motifs {
			if m.Wheel < 0 || m.Wheel >= len(j.Rack) || m.Kind.Name == "" || len(m.Values) != len(m.Kind.Params) || m.Line < 1 {
				t.Errorf("half a motif: %+v", m)
			}
		}
	})
}

// Any value on any line of a good job is read, or refused on that line or in
// one that depends on it.
func FuzzValue(f *testing.F) {
	for name, rule := range rules() {
		for _, wrong := range rule.wrong {
			f.Add(name, wrong)
		}
	}
	f.Add("shop.rate", "14") // one that is taken
	f.Fuzz(func(t *testing.T, name, text string) {
		if rules()[name].accepted == "" || strings.Contains(text, "\n") {
			return
		}
		_, key := split(name)
		j, err := Read("fuzz.toml", base().with(t, name, key+" = "+text).bytes())
		if err != nil {
			onlyError(t, err)
			return
		}
		if j.Layout.Repeats < 1 || len(j.Rack) != 4 || len(j.Motifs) != 4 {
			t.Errorf("half a job: %+v", j)
		}
		for _, length := range []float64{j.Limits.Land, j.Limits.Rim, j.Rack[0].Radius, j.Rack[0].Thick, j.Motifs[0].Depth} {
			if !(length >= 0 && length <= 1000) {
				t.Errorf("%s = %s gives %g", key, text, length)
			}
		}
		if round := j.Motifs[0].Width.Value; !(round >= 0 && round <= 3142) { // round the widest glass, which is 1 m across
			t.Errorf("%s = %s gives %g", key, text, round)
		}
	})
}

// The tree is the one go-toml builds, and is refused where go-toml refuses it.
func FuzzDocument(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if !utf8.Valid(data) || notText(data) != nil || strings.HasPrefix(string(data), "\ufeff") {
			return
		}
		var want map[string]any
		err := toml.Unmarshal(data, &want)
		doc, wrong := newDocument(data)
		if wrong != nil {
			if err == nil {
				t.Errorf("refused, though it is TOML: %+v", *wrong)
			}
			return
		}
		got, odd := plain(doc.root)
		switch {
		case errors.Is(odd, errDate): // no key takes one, so nothing reads it
		case err != nil && odd == nil:
			t.Errorf("taken, though it isn't TOML: %v", err)
		case err == nil && odd != nil:
			t.Errorf("a number is refused, though it is TOML: %v", odd)
		case err == nil:
			if diff := cmp.Diff(floats(want), any(got), cmpopts.EquateNaNs()); diff != "" {
				t.Errorf("wanted -, read +:\n%s", diff)
			}
		}
	})
}

var errDate = errors.New("a date")

// plain returns a table as go-toml would, except for whole numbers, which are
// floats too. The error is the first of its numbers', which are read late.
func plain(t *table) (map[string]any, error) {
	all := make(map[string]any)
	var odd error
	var walk func(v *value) any
	walk = func(v *value) any {
		switch {
		case v.table != nil:
			inner, err := plain(v.table)
			odd = errors.Join(odd, err)
			return inner
		case v.kind == unstable.Array:
			list := []any{}
			for _, item := range v.items {
				list = append(list, walk(item))
			}
			return list
		case v.kind == unstable.String:
			return v.text
		case v.kind == unstable.Bool:
			return v.text == "true"
		case v.isNumber():
			x, err := v.number()
			odd = errors.Join(odd, err)
			return x
		}
		odd = errors.Join(odd, errDate)
		return nil
	}
	for _, e := range t.fields {
		all[e.key] = walk(e.value)
	}
	return all, odd
}

// floats returns what go-toml read with its whole numbers made floats.
func floats(v any) any {
	switch v := v.(type) {
	case map[string]any:
		all := make(map[string]any, len(v))
		for key, inner := range v {
			all[key] = floats(inner)
		}
		return all
	case []any:
		list := make([]any, len(v))
		for i := range v {
			list[i] = floats(v[i])
		}
		return list
	case int64:
		return float64(v)
	}
	return v
}
