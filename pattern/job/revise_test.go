package job

import (
	"errors"
	"strings"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
)

// small is a job with two wheels and three motifs, the third inside the second.
const small = `length = "in"
[blank]
name = "cup"
station = [
  {height = 0, across = 3, wall = "1/4"}, # the foot
  {height = 2, across = 3, wall = "1/4"}, # the waist
  {height = 4, across = 3, wall = "1/8"}  # the rim
]
[layout]
repeats = 4
[shop]
order = [ "fine",  "olive" ] # first these

# The rack.
[[wheel]]
name = "fine"
edge = "mitre" # sharp
across = 3
thick = "1/4"
angle = 90 # of the V

# for hollows
[[wheel]]
name = "olive"
edge = "round"
across = 4
thick = "3/8"
radius = "1/4"

# The design.
[[motif]]
kind = "leaf"
wheel = "fine"
depth = "1/32"
fronds = 5

# the frame
[[motif]]
kind = "diamond"
wheel = "fine"
depth = "1/32"
at = [0.5, 0.5]
width = 0.4
height = 0.5
on = "odd"

# in the frame
[[motif]]
kind = "star"
wheel = "fine"
depth = "1/32"
inside = 2
width = 0.5
height = 0.5
`

// what is one change of small: lines that go, and lines that come.
func TestRevise(t *testing.T) {
	for _, c := range []struct {
		name     string
		edit     Revision
		old, new string
	}{
		{"a length", Revision{Op: "set", Path: "motif[1].depth", Value: "1/64"}, "depth = \"1/32\"\nfronds", "depth = \"1/64\"\nfronds"},
		{"a length as a number", Revision{Op: "set", Path: "wheel[2].across", Value: 3.5}, "across = 4\n", "across = 3.5\n"},
		{"a length with an inch mark", Revision{Op: "set", Path: "wheel[2].across", Value: `3 1/2"`}, "across = 4\n", "across = '3 1/2\"'\n"},
		{"a count", Revision{Op: "set", Path: "motif[1].fronds", Value: "7"}, "fronds = 5", "fronds = 7"},
		{"a count that is most", Revision{Op: "set", Path: "motif[1].fronds", Value: "most"}, "fronds = 5", `fronds = "most"`},
		{"a number without a digit first", Revision{Op: "set", Path: "motif[2].width", Value: ".45"}, "width = 0.4\n", "width = 0.45\n"},
		{"a share without a digit first", Revision{Op: "set", Path: "motif[1].clear", Value: ".45"}, "fronds = 5\n", "fronds = 5\nclear = 0.45\n"},
		{"a share as a length", Revision{Op: "set", Path: "motif[2].width", Value: "1 1/4 in"}, "width = 0.4\n", "width = \"1 1/4 in\"\n"},
		{"a place", Revision{Op: "set", Path: "motif[2].at", Value: []any{0.25, "1 in"}}, "[0.5, 0.5]", `[0.25, "1 in"]`},
		{"a place in one text", Revision{Op: "set", Path: "motif[2].at", Value: "0.25; 1 in"}, "[0.5, 0.5]", `[0.25, "1 in"]`},
		{"a switch", Revision{Op: "set", Path: "motif[1].mirror", Value: true}, "fronds = 5\n", "fronds = 5\nmirror = true\n"},
		{"a word that is true", Revision{Op: "set", Path: "motif[1].shape", Value: "true"}, "fronds = 5\n", "fronds = 5\nshape = \"true\"\n"},
		{"a text with a quote, a stroke and a tab", Revision{Op: "set", Path: "title", Value: "'a\" \\\t"}, "length = \"in\"\n", "length = \"in\"\ntitle = \"'a\\\" \\\\\\u0009\"\n"},
		{"the only blank by its number", Revision{Op: "set", Path: "blank[1].floor", Value: "1/2"}, "]\n[layout]", "]\nfloor = \"1/2\"\n[layout]"},
		{"readings", Revision{Op: "set", Path: "blank.station[1].across", Value: []any{"3", "3 1/64"}}, "{height = 0, across = 3,", `{height = 0, across = [3, "3 1/64"],`},
		{"new in braces", Revision{Op: "set", Path: "blank.station[3].around", Value: "9 1/2"}, `wall = "1/8"}`, `wall = "1/8", around = "9 1/2"}`},
		{"a table that isn't there", Revision{Op: "set", Path: "limits.land", Value: "0.5 mm"}, "", "\n[limits]\nland = \"0.5 mm\"\n"},
		{"removed", Revision{Op: "remove", Path: "motif[2].on"}, "on = \"odd\"\n", ""},
		{"removed from braces", Revision{Op: "remove", Path: "blank.station[2].across"}, "{height = 2, across = 3,", "{height = 2,"},
		{"removed where it isn't", Revision{Op: "remove", Path: "motif[1].land"}, "", ""},
		{"a station between", Revision{Op: "add", Path: "blank.station", At: 3}, "# the waist\n", "# the waist\n  {height = 3, across = 3, wall = \"3/16\"},\n"},
		{"a station at a height", Revision{Op: "add", Path: "blank.station", Value: map[string]any{"height": "1/2"}}, "# the foot\n", "# the foot\n  {height = \"1/2\", across = 3, wall = \"1/4\"},\n"},
		{"a station above the rim", Revision{Op: "add", Path: "blank[1].station", At: 4}, "wall = \"1/8\"}  # the rim\n", "wall = \"1/8\"},  # the rim\n  {height = 5, across = 3, wall = \"1/8\"}\n"},
		{"a station dropped", Revision{Op: "drop", Path: "blank.station[2]"}, "  {height = 2, across = 3, wall = \"1/4\"}, # the waist\n", ""},
		{"a motif", Revision{Op: "add", Path: "motif", Value: map[string]any{"kind": "fan", "rays": 3, "at": []any{0, "1 in"}}}, "",
			"\n[[motif]]\nkind = \"fan\"\nwheel = \"fine\"\ndepth = \"1/32\"\nat = [0, \"1 in\"]\nwidth = 0.5\nheight = 0.5\nrays = 3\n"},
		{"a wheel", Revision{Op: "add", Path: "wheel"}, "radius = \"1/4\"\n",
			"radius = \"1/4\"\n\n[[wheel]]\nname = \"mitre\"\nedge = \"mitre\"\nacross = 3\nthick = \"1/4\"\nangle = 90\n"},
		{"a wheel's edge", Revision{Op: "set", Path: "wheel[2].edge", Value: "mitre"}, "edge = \"round\"\nacross = 4\nthick = \"3/8\"\nradius = \"1/4\"\n", "edge = \"mitre\"\nacross = 4\nthick = \"3/8\"\nangle = 90\n"},
		{"a kind", Revision{Op: "set", Path: "motif[1].kind", Value: "fan"}, "kind = \"leaf\"\nwheel = \"fine\"\ndepth = \"1/32\"\nfronds = 5\n", "kind = \"fan\"\nwheel = \"fine\"\ndepth = \"1/32\"\n"},
		{"put inside another", Revision{Op: "set", Path: "motif[2].inside", Value: 1}, "on = \"odd\"\n", "inside = 1\n"},
		{"a copy", Revision{Op: "copy", Path: "motif[3]"}, "",
			"\n[[motif]]\nkind = \"star\"\nwheel = \"fine\"\ndepth = \"1/32\"\ninside = 2\nwidth = 0.5\nheight = 0.5\nat = [0.05, 0.5]\n"},
		{"dropped with its comment", Revision{Op: "drop", Path: "motif[3]"}, small[strings.Index(small, "\n# in the frame"):], ""},
		{"the first dropped, and a number that follows", Revision{Op: "drop", Path: "motif[1]"},
			small[strings.Index(small, "[[motif]]"):],
			strings.Replace(small[strings.Index(small, "# the frame"):], "inside = 2", "inside = 1", 1)},
		{"dropped from under what is inside", Revision{Op: "drop", Path: "motif[2]"},
			small[strings.Index(small, "\n# the frame"):],
			"\n# in the frame\n[[motif]]\nkind = \"star\"\nwheel = \"fine\"\ndepth = \"1/32\"\nwidth = 0.2\nheight = 0.25\non = \"odd\"\nat = [0.5, 0.5]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := strings.Replace(small, c.old, c.new, 1)
			if c.old == "" {
				want = small + c.new
			}
			if !strings.Contains(small, c.old) {
				t.Fatal("the job has no such lines")
			}
			for ends, of := range map[string]func(string) string{
				"new lines":        func(text string) string { return text },
				"carriage returns": func(text string) string { return "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n") },
			} {
				if got := string(revised(t, []byte(of(small)), c.edit)); got != of(want) {
					t.Errorf("%s: wanted:\n%s\ngot:\n%s", ends, of(want), got)
				}
			}
		})
	}
}

// A wheel's new name goes wherever the old one is used.
func TestReviseWheelName(t *testing.T) {
	got := string(revised(t, []byte(small), Revision{Op: "set", Path: "wheel[1].name", Value: "sharp"}))
	if got != strings.ReplaceAll(small, `"fine"`, `"sharp"`) {
		t.Error(got)
	}
	// Of two with one name it isn't known whose the motifs are.
	twice := strings.Replace(small, `name = "olive"`, `name = "fine"`, 1)
	got = string(revised(t, []byte(twice), Revision{Op: "set", Path: "wheel[2].name", Value: "olive"}))
	if got != small {
		t.Error(got)
	}
}

// What can't be done is refused in words, with the line.
func TestReviseRefuses(t *testing.T) {
	for _, c := range []struct {
		edit Revision
		want string
	}{
		{Revision{Op: "drop", Path: "blank"}, "job:2: blank: it is the only blank, and a job needs one"},
		{Revision{Op: "drop", Path: "blank.station[1]"}, "job:5: blank.station[1]: it is the foot, from which every height is measured: change it instead"},
		{Revision{Op: "drop", Path: "blank.station[3]"}, "job:7: blank.station[3]: it is the rim, where the glass ends: change it instead"},
		{Revision{Op: "drop", Path: "wheel[1]"}, `job:15: wheel[1]: motif 1 (leaf), motif 2 (diamond) and motif 3 (star) are cut with "fine": give them another wheel first`},
		{Revision{Op: "drop", Path: "wheel[3]"}, "wheel[3]: the job has no such table"},
		{Revision{Op: "drop", Path: "layout"}, "job:9: layout: the job has no such table"},
		{Revision{Op: "copy", Path: "blank.station[2]"}, "job:6: blank.station[2]: a station is added and not copied: no two have the same height"},
		{Revision{Op: "add", Path: "blank.station", At: 1}, "job:4: blank.station: the first station is the foot, at height 0: a new one stands above it"},
		{Revision{Op: "add", Path: "blank.station", At: 9}, "job:4: blank.station: there are 3, so a new one can be number 1 to 4 and not 9"},
		{Revision{Op: "add", Path: "limits"}, "limits: nothing can be added here: add to motif, wheel, blank or blank.station"},
		{Revision{Op: "add", Path: "motif", Value: map[string]any{"kind": "fan", "fronds": 3}}, `job:31: motif: a new motif has no key "fronds"`},
		{Revision{Op: "add", Path: "motif", Value: 3}, "job:31: motif: a new motif has keys and values, and not int"},
		{Revision{Op: "set", Path: "motif[4].width", Value: 1}, "motif[4].width: the job has no motif[4]"},
		{Revision{Op: "set", Path: "motif[1].rays", Value: 1}, "job:31: motif[1].rays: motif[1] has no such key"},
		{Revision{Op: "set", Path: "nonsense", Value: 1}, "nonsense: a job has no such key"},
		{Revision{Op: "set", Path: "blank.station", Value: 1}, "job:4: blank.station: it has keys of its own: name one of them"},
		{Revision{Op: "set", Path: "title", Value: map[string]any{}}, "title: map[string]interface {} is no value for title"},
		{Revision{Op: "set", Path: "motif[1].at", Value: []any{[]any{1}}}, "job:31: motif[1].at: a list in a list is no value for at"},
		{Revision{Op: "set", Path: "wheel[1].name", Value: "olive"}, `job:16: wheel[1].name: another wheel is called "olive"`},
		{Revision{Op: "mend", Path: "title"}, `title: "mend" is no change that can be made: set, remove, add, drop or copy`},
	} {
		_, err := Revise([]byte(small), c.edit)
		var wrong *RevisionError
		if !errors.As(err, &wrong) || err.Error() != c.want {
			t.Errorf("%+v: %v\nwanted %s", c.edit, err, c.want)
		}
	}
	one := strings.Replace(small, `wheel = "fine"`, `wheel = "olive"`, 3)
	one = strings.Replace(one, `wheel = "olive"`, `wheel = "fine"`, 1)
	for name, text := range map[string]string{
		`motif 1 (leaf) is cut with "fine": give it another wheel first`: one,
		"array is incomplete": "a = [",
	} {
		if _, err := Revise([]byte(text), Revision{Op: "drop", Path: "wheel[1]"}); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A wheel that no motif is cut with goes, and from the order too.
func TestReviseDropWheel(t *testing.T) {
	got := string(revised(t, []byte(small), Revision{Op: "drop", Path: "wheel[2]"}))
	if !strings.Contains(got, `order = [ "fine" ] # first these`) || strings.Contains(got, "olive") || strings.Contains(got, "hollows") || !strings.Contains(got, "# The design.") {
		t.Error(got)
	}
	alone := strings.Replace(small, `[ "fine",  "olive" ]`, `["olive"]`, 1)
	got = string(revised(t, []byte(alone), Revision{Op: "drop", Path: "wheel[2]"}))
	if strings.Contains(got, "order") {
		t.Error(got)
	}
}

// Whatever is added reads, in either unit: every kind, every edge, and every edge in
// place of every other, on thin wheels and on thick ones.
func TestReviseReads(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		data := Starter(unit)
		reads := func(edits ...Revision) {
			t.Helper()
			if _, err := Read("x.toml", revised(t, data, edits...)); err != nil {
				t.Errorf("%s: %+v: %v", unit, edits, err)
			}
		}
		for _, kind := range motifs.All() {
			reads(Revision{Op: "add", Path: "motif", Value: map[string]any{"kind": kind.Name}},
				Revision{Op: "set", Path: "motif[1].kind", Value: kind.Name})
		}
		for _, thick := range []string{"0.2 mm", "3 mm", "5 mm", "1/4 in", "1/2 in", "1 in", "2 7/8 in"} {
			for _, edge := range groove.Edges() {
				reads(Revision{Op: "add", Path: "wheel", Value: map[string]any{"edge": edge, "thick": thick}})
				for _, other := range groove.Edges() {
					reads(Revision{Op: "set", Path: "wheel[2].thick", Value: thick},
						Revision{Op: "set", Path: "wheel[2].edge", Value: edge}, Revision{Op: "set", Path: "wheel[2].edge", Value: other})
				}
			}
		}
	}
}

// Names that are free.
func TestFree(t *testing.T) {
	taken := []string{"cup", "cup 2", "no 7", "m4"}
	for wanted, want := range map[string]string{"cup": "cup 3", "cup 2": "cup 3", "mug": "mug", "no 7": "no 2", "m4": "m4 2"} {
		if got := free(wanted, taken); got != want {
			t.Errorf("%s: %s", wanted, got)
		}
	}
}

// With the last motif of the base its table goes, however it is written; what stood inside a motif
// of the base stays on the base.
func TestReviseDropBase(t *testing.T) {
	motif := func(keys string) string {
		return "\n[[motif]]\nkind = \"star\"\nwheel = \"fine\"\ndepth = \"1/32\"\nwidth = 0.5\nheight = 0.5\n" + keys
	}
	first := strings.Index(small, "# The rack.")
	for _, base := range []string{"[base]\nrepeats = 8\n\n", "base.repeats = 8\n", "base = {repeats = 8}\n"} {
		at := first
		if base[0] != '[' {
			at = strings.Index(small, "[blank]")
		}
		text := small[:at] + base + small[at:] + motif("face = \"base\"\n")
		if got := string(revised(t, []byte(text), Revision{Op: "drop", Path: "motif[4]"})); got != small {
			t.Errorf("without the last motif of the base it is\n%s", got)
		}
		got := string(revised(t, []byte(text+motif("inside = 4\n")), Revision{Op: "drop", Path: "motif[4]"}))
		if !strings.Contains(got, base) || !strings.Contains(got[len(small):], "face = \"base\"") {
			t.Errorf("without the motif round one of the base it is\n%s", got)
		}
		two := text + motif("face = \"base\"\n")
		if got := string(revised(t, []byte(two), Revision{Op: "drop", Path: "motif[5]"})); got != text {
			t.Errorf("with a motif left on the base it is\n%s", got)
		}
	}
}

// A blank whose stations have headers goes with all of them, wherever they stand.
func TestReviseDropBlank(t *testing.T) {
	station := func(height string) string {
		return "[[blank.station]]\nheight = " + height + "\nacross = 3\nwall = 0.2\n"
	}
	rest := "\n" + strings.Replace(small[strings.Index(small, "# The rack."):], "inside = 2", "inside = 1", 1)
	first := "[[blank]]\nname = \"a\"\n\n" + station("0") + "\n# its rim\n" + station("4")
	second := "[[blank]]\nname = \"b\"\n\n# its foot\n" + station("0") + "\n" + station("3")
	head := "length = \"in\"\n\n# The set.\n"
	layout := "\n[layout]\nrepeats = 4\n"
	for _, c := range []struct{ name, before, drop, after string }{
		{"the first", head + first + "\n" + second + layout + rest, "blank[1]", head + second + layout + rest},
		{"the last", head + first + "\n" + second + layout + rest, "blank[2]", head + first + layout + rest},
		{"the last, in pieces", head + first + "\n" + second + layout + "\n# and higher\n" + station("5") + rest, "blank[2]", head + first + layout + rest},
	} {
		if got := string(revised(t, []byte(c.before), Revision{Op: "drop", Path: c.drop})); got != c.after {
			t.Errorf("%s: wanted:\n%s\ngot:\n%s", c.name, c.after, got)
		}
	}
}

// Where there is one table in single brackets and a job wants a list, a second one makes
// it so.
func TestReviseSingleBrackets(t *testing.T) {
	text := "length = \"in\"\n[motif] # mine\nkind = \"fan\"\ndepth = \"1/16\""
	want := "length = \"in\"\n[[motif]] # mine\nkind = \"fan\"\ndepth = \"1/16\"\n[[motif]]\nkind = \"leaf\"\nwheel = \"\"\ndepth = \"1/16\"\nat = [0, 0.5]\nwidth = 0.5\nheight = 0.5\nfronds = 3"
	got := string(revised(t, []byte(text), Revision{Op: "add", Path: "motif", Value: map[string]any{"fronds": 3.0}}))
	if got != want {
		t.Errorf("wanted:\n%s\ngot:\n%s", want, got)
	}
}
