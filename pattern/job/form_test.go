package job

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// A form has every table in the file's order, and then those that the file lacks.
func TestForm(t *testing.T) {
	f := formOf(t, []byte(small))
	var all []string
	for _, table := range f.Tables {
		all = append(all, table.Path+" "+table.Title)
	}
	want := []string{" Untitled", "blank cup", "blank.station[1] 0", "blank.station[2] 2", "blank.station[3] 4", "layout layout", "shop shop",
		"wheel[1] fine", "wheel[2] olive", "motif[1] leaf", "motif[2] diamond", "motif[3] star", "limits limits", "base base"}
	if !slices.Equal(all, want) {
		t.Errorf("got  %q\nwant %q", all, want)
	}
	fields := f.fields()
	for _, want := range []FormField{
		{Key: "title", Path: "title", Text: "Untitled"},
		{Key: "across", Path: "blank.station[2].across", Text: "3", Given: true, Understood: "3 in = 76.2 mm", Line: 6},
		{Key: "land", Path: "limits.land", Text: "1/32 in", Understood: "1/32 in = 0.79 mm"},
		{Key: "order", Path: "shop.order", Text: "fine, olive", List: []string{"fine", "olive"}, Given: true, Line: 12},
		{Key: "at", Path: "motif[1].at", Text: "0, 0.5", List: []string{"0", "0.5"}},
		{Key: "fronds", Path: "motif[1].fronds", Text: "5", Given: true, Line: 35},
		{Key: "lean", Path: "motif[1].lean", Text: "62"},
		{Key: "terminal", Path: "motif[1].terminal", Text: "true"},
		{Key: "radius", Path: "wheel[2].radius", Text: "1/4", Given: true, Understood: "1/4 in = 6.35 mm", Line: 28},
	} {
		got := fields[want.Path]
		if got.Key != want.Key || got.Path != want.Path || got.Text != want.Text || !slices.Equal(got.List, want.List) ||
			got.Given != want.Given || got.Understood != want.Understood || got.Line != want.Line {
			t.Errorf("got  %+v\nwant %+v", got, want)
		}
	}
	for _, none := range []string{"wheel[2].angle", "motif[1].rays", "motif[3].on", "motif[3].shape", "blank.station", "motif"} {
		if _, ok := fields[none]; ok {
			t.Errorf("%s doesn't apply", none)
		}
	}
}

// A form shows what a job doesn't take. What no job has it leaves out, and changes leave
// it where it is.
func TestFormOfRefused(t *testing.T) {
	text := `length = "furlong"
nonsense = 1979-05-27 07:32:00
[[motif]]
kind = "tulip"
depth = [1]
width = "2"
height = "0.5 in"
at = 7
repeats = "5"
turn = "90"
mirror = "true"
[motif.more]
a = 1
[[wheel]]
edge = "serrated"
name = 5
across = {a = 1}
`
	fields := formOf(t, []byte(text)).fields()
	for path, want := range map[string]string{
		"length": "furlong", "motif[1].kind": "tulip", "motif[1].depth": "1", "motif[1].width": "2 in", "motif[1].height": "0.5 in",
		"motif[1].at": "7", "motif[1].turn": `"90"`, "motif[1].mirror": `"true"`, "wheel[1].name": "5", "wheel[1].across": "{a = 1}",
		"wheel[1].spacing": "", "layout.match": "set",
	} {
		if got, ok := fields[path]; !ok || got.Text != want {
			t.Errorf("%s is %q, wanted %q", path, got.Text, want)
		}
	}
	for _, none := range []string{"nonsense", "motif[1].repeats", "motif[1].more", "motif[1].more.a"} {
		if _, ok := fields[none]; ok {
			t.Errorf("%s is there", none)
		}
	}
	// A number in quotes is put right by typing it.
	for path, typed := range map[string]string{"motif[1].turn": "90", "motif[1].mirror": "true", "wheel[1].name": "5"} {
		out := string(revised(t, []byte(text), Revision{Op: "set", Path: path, Value: typed}))
		if differing(text, out) != 1 || !strings.Contains(out, "nonsense = 1979") {
			t.Errorf("%s:\n%s", path, out)
		}
	}
	_, err := NewForm([]byte("title = \"a\"\nlength = in\n"))
	var wrong *Error
	if !errors.As(err, &wrong) || wrong.Line != 2 {
		t.Error(err)
	}
}

func TestUnderstood(t *testing.T) {
	for _, c := range []struct{ unit, text, want string }{
		{"in", "3 1/8", "3 1/8 in = 79.4 mm"}, {"in", `3-1/8"`, "3 1/8 in = 79.4 mm"}, {"in", "3⅛", "3 1/8 in = 79.4 mm"},
		{"in", "79.4 mm", "79.4 mm = 3 1/8 in"}, {"in", "7.94 cm", "79.4 mm = 3 1/8 in"}, {"in", "0.1 mm", "0.1 mm = 0.004 in"},
		{"in", "0.02", "0.020 in = 0.51 mm"}, {"in", "0", ""}, {"in", "0 mm", ""}, {"in", "three", ""}, {"in", "", ""}, {"in", "1/64", "1/64 in = 0.40 mm"},
		{"mm", "79.4", ""}, {"mm", "79.4 mm", ""}, {"mm", "3 1/8 in", "3 1/8 in = 79.4 mm"}, {"mm", "3 1/8 inches", "3 1/8 in = 79.4 mm"}, {"mm", "2 cm", ""},
	} {
		text := "length = \"" + c.unit + "\"\nlimits.land = " + inTOML(c.text)
		if got := formOf(t, []byte(text)).fields()["limits.land"].Understood; got != c.want {
			t.Errorf("%s in %s: %q, wanted %q", c.text, c.unit, got, c.want)
		}
	}
	text := "length = \"in\"\nlayout.band = [\"1/2\", 3]\n[[motif]]\nat = [0.25, \"1\"]\nwidth = 0.5\nheight = \"1/2\""
	fields := formOf(t, []byte(text)).fields()
	for path, want := range map[string]string{
		"layout.band": "1/2 in = 12.7 mm; 3 in = 76.2 mm", "motif[1].at": "1 in = 25.4 mm", "motif[1].width": "", "motif[1].height": "1/2 in = 12.7 mm",
	} {
		if got := fields[path].Understood; got != want {
			t.Errorf("%s: %q, wanted %q", path, got, want)
		}
	}
}

func BenchmarkForm(b *testing.B) {
	_, demo := Demo()
	for b.Loop() {
		if _, err := NewForm(demo); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRevise(b *testing.B) {
	_, demo := Demo()
	for _, e := range []Revision{
		{Op: "set", Path: "motif[2].width", Value: "1 1/4 in"}, {Op: "add", Path: "motif"}, {Op: "copy", Path: "blank"},
		{Op: "drop", Path: "motif[1]"}, {Op: "set", Path: "wheel[1].name", Value: "fine"}, {Op: "add", Path: "blank.station"},
	} {
		b.Run(e.Op+" "+e.Path, func(b *testing.B) {
			for b.Loop() {
				if _, err := Revise(demo, e); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
