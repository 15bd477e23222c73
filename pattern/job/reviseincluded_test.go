package job

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// The paths of a form count through what is included, as messages and plans do.
func TestFormIncluding(t *testing.T) {
	f, err := NewFormWith([]byte(including+`[[wheel]]
name = "small"
edge = "flat"
across = 2
thick = "1/8"
[[wheel]]
name = "olive"
edge = "flat"
across = 2
thick = "1/8"
[[motif]]
name = "fern"
depth = "1/16"
`+ownMotif), files(shelf()))
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, table := range f.Tables {
		if table.Table == "wheel" || table.Table == "motif" {
			paths = append(paths, table.Path)
		}
	}
	if want := []string{"wheel[3]", "wheel[2]", "motif[1]", "motif[3]"}; !slices.Equal(paths, want) {
		t.Errorf("%q, wanted %q", paths, want)
	}
}

// Where the job doesn't give a key, the form has what an included file says, in a unit that is
// plain.
func TestFormFromIncluded(t *testing.T) {
	f, err := NewFormWith([]byte(including+"[limits]\nfoot = \"1/4\"\n[[motif]]\nname = \"fern\"\ndepth = \"1/16\"\n"+ownMotif), files(shelf()))
	if err != nil {
		t.Fatal(err)
	}
	all := f.fields()
	mm, err := NewFormWith([]byte("length = \"mm\"\ninclude = [\"fern.toml\"]\n[[motif]]\nname = \"fern\"\n"), files(shelf()))
	if err != nil || mm.fields()["motif[1].width"].Text != "1 mm" {
		t.Errorf("%v: a width of %q", err, mm.fields()["motif[1].width"].Text)
	}
	mm, err = NewFormWith([]byte("length = \"mm\"\ninclude = [\"fern.toml\"]\n[[motif]]\nname = \"fern\"\n"),
		files(map[string]string{"fern.toml": "length = \"in\"\n[[motif]]\nname = \"fern\"\nwidth = \"1 1/2\"\nheight = 0.5\nat = [\"1/4\", 0.5]\n"}))
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{"motif[1].width": "1 1/2 in", "motif[1].height": "0.5", "motif[1].at": "1/4 in, 0.5"} {
		if got := mm.fields()[path].Text; got != want {
			t.Errorf("%s in inches, in a job in mm: %q, wanted %q", path, got, want)
		}
	}
	for path, want := range map[string]FormField{
		"limits.land":     {Text: "0.7 mm", From: "shop.toml"},
		"limits.foot":     {Text: "1/4", Given: true},
		"limits.leave":    {Text: "1/16 in"},
		"shop.rate":       {Text: "40 mm", From: "shop.toml"},
		"shop.order":      {Text: "olive", From: "shop.toml"},
		"layout.repeats":  {Text: "5", From: "shop.toml"},
		"motif[1].depth":  {Text: "1/16", Given: true},
		"motif[1].kind":   {Text: "leaf", From: "fern.toml"},
		"motif[1].fronds": {Text: "9", From: "fern.toml"},
		"motif[1].turn":   {Text: "0"},
		"motif[3].kind":   {Text: "fan", Given: true},
	} {
		if got, ok := all[path]; !ok || got.Text != want.Text || got.From != want.From || got.Given != want.Given {
			t.Errorf("%s: %+v, wanted %+v", path, got, want)
		}
	}
}

// What stands in an included file is changed in the job, by a table that wins over it; the
// numbers are those of the whole job.
func TestReviseIncluding(t *testing.T) {
	for _, c := range []struct {
		name, more string
		edits      []Revision
		has        string // in the text afterwards
		says       func(j *Job) bool
	}{
		{"limits", "", []Revision{{Op: "set", Path: "limits.land", Value: "1 mm"}}, "[limits]\nland = \"1 mm\"\n",
			func(j *Job) bool { return j.Limits.Land == 1 && j.Limits.Polish == 0.1 }},
		{"shop", "", []Revision{{Op: "set", Path: "shop.rate", Value: "30 mm"}}, "[shop]\nrate = \"30 mm\"\n",
			func(j *Job) bool { return j.Shop.Rate == 30 && len(j.Shop.Order) == 1 }},
		{"layout", "", []Revision{{Op: "set", Path: "layout.repeats", Value: "7"}}, "[layout]\nrepeats = 7\n",
			func(j *Job) bool { return j.Layout.Repeats == 7 }},
		{"a motif", "", []Revision{{Op: "set", Path: "motif[1].fronds", Value: "5"}}, "[[motif]]\nname = \"fern\"\nfronds = 5\n",
			func(j *Job) bool { return len(j.Motifs) == 3 && j.Motifs[0].Values["fronds"] == 5 }},
		{"a part", "", []Revision{{Op: "set", Path: "motif[1].parts.frond.depth", Value: "1/50 in"}}, "",
			nil}, // no rule has 1/50
		{"a part of it", "", []Revision{{Op: "set", Path: "motif[1].parts.frond.depth", Value: "0.5 mm"}}, "[[motif]]\nname = \"fern\"\n[motif.parts.frond]\ndepth = \"0.5 mm\"\n",
			func(j *Job) bool { return j.Motifs[0].DepthOf("frond") == 0.5 && j.Motifs[0].LandOf("frond") != nil }},
		{"a part that it has not", "", []Revision{{Op: "set", Path: "motif[1].parts.stem.depth", Value: "0.5 mm"}}, "[motif.parts.stem]\ndepth = \"0.5 mm\"\n",
			func(j *Job) bool { return j.Motifs[0].DepthOf("stem") == 0.5 && j.Motifs[0].DepthOf("frond") < 0.5 }},
		{"twice", "", []Revision{{Op: "set", Path: "motif[1].fronds", Value: "5"}, {Op: "set", Path: "motif[1].fronds", Value: "6"}, {Op: "set", Path: "motif[1].depth", Value: "1/64"}},
			"name = \"fern\"\nfronds = 6\ndepth = \"1/64\"\n", func(j *Job) bool { return j.Motifs[0].Values["fronds"] == 6 }},
		{"its own", "", []Revision{{Op: "set", Path: "motif[3].depth", Value: "1/64"}}, "kind = \"fan\"\nwheel = \"mitre\"\ndepth = \"1/64\"\n",
			func(j *Job) bool { return j.Motifs[2].Depth < 0.5 }},
		{"a new motif", "", []Revision{{Op: "add", Path: "motif", Value: map[string]any{"kind": "ring"}}, {Op: "set", Path: "motif[4].wheel", Value: "olive"}}, "kind = \"ring\"\nwheel = \"olive\"\n",
			func(j *Job) bool { return len(j.Motifs) == 4 && j.Motifs[3].Wheel == 1 }},
		{"a new wheel", "", []Revision{{Op: "add", Path: "wheel", Value: map[string]any{"edge": "mitre"}}}, "[[wheel]]\nname = \"mitre 2\"\n",
			func(j *Job) bool { return len(j.Rack) == 3 && j.Rack[0].Radius == 37.5 }},
		{"a copy", "[[motif]]\nname = \"top\"\nkind = \"star\"\nwheel = \"mitre\"\ndepth = \"1/64\"\n", []Revision{{Op: "copy", Path: "motif[4]"}}, "",
			func(j *Job) bool { return len(j.Motifs) == 5 && j.Motifs[4].Kind.Name == "star" }},
		{"dropped", "[[motif]]\nkind = \"star\"\nwheel = \"mitre\"\ndepth = \"1/64\"\ninside = 3\n", []Revision{{Op: "drop", Path: "motif[3]"}}, "",
			func(j *Job) bool { return len(j.Motifs) == 3 && j.Motifs[2].Inside == 2 }},
		{"its only one dropped", "", []Revision{{Op: "drop", Path: "motif[3]"}}, "", func(j *Job) bool { return len(j.Motifs) == 2 }},
		{"a change dropped", "[[motif]]\nname = \"fern\"\nfronds = 3\n[[motif]]\nkind = \"star\"\nwheel = \"mitre\"\ndepth = \"1/64\"\ninside = 3\n", []Revision{{Op: "drop", Path: "motif[1]"}}, "",
			func(j *Job) bool { return j.Motifs[0].Values["fronds"] == 9 && j.Motifs[3].Inside == 3 }},
		{"no more included", "", []Revision{{Op: "set", Path: "include", Value: []any{"shop.toml"}}, {Op: "set", Path: "motif[1].inside", Value: "1"}, {Op: "remove", Path: "motif[1].inside"}, {Op: "set", Path: "motif[1].depth", Value: "1/64"}}, "",
			func(j *Job) bool { return len(j.Motifs) == 1 && j.Motifs[0].Depth < 0.5 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			was := including + ownMotif + c.more
			out, err := ReviseWith([]byte(was), files(shelf()), c.edits...)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(string(out), c.has) {
				t.Errorf("no %q in\n%s", c.has, out)
			}
			j, err := ReadWith("x.toml", out, files(shelf()))
			if c.says == nil {
				if onlyError(t, err).Key != c.edits[0].Path {
					t.Error(err)
				}
				return
			}
			if err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			if !c.says(j) {
				t.Errorf("read as %+v from\n%s", j, out)
			}
		})
	}
}

// What can't be changed in the job is refused in words.
func TestReviseIncludingRefused(t *testing.T) {
	for _, c := range []struct {
		edit  Revision
		words string
	}{
		{Revision{Op: "set", Path: "motif[2].depth", Value: "1/64"}, `motif 2 stands in fern.toml and has no name: give it one there, such as name = "star", so that the job can change it`},
		{Revision{Op: "set", Path: "wheel[2].across", Value: "3"}, `wheel 2 (olive) stands in shop.toml: change it there, or write a whole [[wheel]] of that name into the job`},
		{Revision{Op: "remove", Path: "motif[1].fronds"}, "motif 1 stands in fern.toml: change it there"},
		{Revision{Op: "drop", Path: "motif[1]"}, "motif 1 stands in fern.toml: change it there"},
		{Revision{Op: "copy", Path: "wheel[1]"}, "wheel 1 stands in shop.toml: change it there"},
		{Revision{Op: "set", Path: "motif[4].depth", Value: "1/64"}, "the job has no motif[4]"},
		{Revision{Op: "drop", Path: "motif[4]"}, "the job has no such table"},
	} {
		_, err := ReviseWith([]byte(including+ownMotif), files(shelf()), c.edit)
		var refused *RevisionError
		if !errors.As(err, &refused) || refused.Words != c.words {
			t.Errorf("%s %s: %v", c.edit.Op, c.edit.Path, err)
		}
	}
	changing := including + "[[motif]]\nname = \"fern\"\nfronds = 3\n"
	if _, err := ReviseWith([]byte(changing), files(shelf()), Revision{Op: "copy", Path: "motif[1]"}); err == nil || !strings.Contains(err.Error(), "can't be copied by itself") {
		t.Error(err)
	}
	renamed := including + "[[wheel]]\nname = \"small\"\nedge = \"flat\"\nacross = 2\nthick = \"1/8\"\n"
	if _, err := ReviseWith([]byte(renamed), files(shelf()), Revision{Op: "set", Path: "wheel[3].name", Value: "olive"}); err == nil || !strings.Contains(err.Error(), `another wheel is called "olive"`) {
		t.Error(err)
	}
}

// A job read from files is rewritten with changes to what it includes in its own text.
func TestRewriteIncluding(t *testing.T) {
	text := []byte(including + ownMotif)
	j := readWith(t, string(text))
	out, err := j.Rewrite(text, []Edit{
		{Motif: 0, Key: "fronds", Value: "5", Note: "fit: fronds was 9"}, {Motif: 2, Key: "depth", Value: `"1/64"`},
		{Motif: OfShop, Key: "rate", Value: `"1 in"`}, {Motif: 0, Part: "frond", Key: "depth", Value: `"0.3 mm"`},
	})
	if err != nil {
		t.Fatal(err)
	}
	again, err := j.ReadAgain("x.toml", out)
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	if again.Motifs[0].Values["fronds"] != 5 || again.Motifs[0].DepthOf("frond") != 0.3 || again.Motifs[2].Depth > 0.5 || again.Shop.Rate != 25.4 {
		t.Errorf("%s", out)
	}
	if _, err := j.Rewrite(text, []Edit{{Motif: 1, Key: "depth", Value: `"1/64"`}}); err == nil || !strings.Contains(err.Error(), "has no name") {
		t.Error(err)
	}
}
