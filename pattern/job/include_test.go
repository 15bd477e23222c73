package job

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"roundlay/geometry"
)

// The files of a shop, and a job in inches that includes them. Its own motif is the third.
const (
	shopFile = `length = "mm"
[shop]
rate = 40
order = ["olive"]
[limits]
land = 0.7
polish = 0.1
[[wheel]]
name = "mitre"
edge = "mitre"
across = 75
thick = 6
angle = 90
[[wheel]]
name = "olive"
edge = "round"
across = 100
thick = 10
radius = 6
[layout]
repeats = 5
`
	fernFile = `# a fern and what is in it
[[motif]]
name = "fern"
kind = "leaf"
wheel = "mitre"
depth = "1/32"
width = "1"
fronds = 9
[motif.parts.frond]
depth = "1/64"
land = 0.02

[[motif]]
kind = "star"
wheel = "olive"
depth = "0.3 mm"
inside = 1
`
	including = `length = "in"
include = ["shop.toml", "fern.toml"]
[blank]
station = [{height = 0, across = 3, wall = "5/16"}, {height = "3 1/2", across = 3.25, wall = "1/8"}]
`
	ownMotif = `[[motif]]
kind = "fan"
wheel = "mitre"
depth = "1/32"
inside = 2
`
)

// shelf is the folder in which those files lie.
func shelf() map[string]string {
	return map[string]string{"shop.toml": shopFile, "fern.toml": fernFile}
}

// readWith reads a job among the files of the shelf, with others in place of some.
func readWith(t *testing.T, text string, others ...string) *Job {
	t.Helper()
	folder := shelf()
	for i := 0; i < len(others); i += 2 {
		folder[others[i]] = others[i+1]
	}
	j, err := ReadWith("jobs/tumbler.toml", []byte(text), files(folder))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// What is included is read as if it stood in the job, each file in its own unit.
func TestInclude(t *testing.T) {
	j := readWith(t, including+ownMotif)
	const inch = geometry.MillimetresPerInch
	if j.Length != geometry.Inch || j.Limits.Land != 0.7 || j.Limits.Polish != 0.1 || j.Limits.Leave != inch/16 || j.Layout.Repeats != 5 {
		t.Errorf("%v %+v %+v", j.Length, j.Limits, j.Layout)
	}
	if len(j.Rack) != 2 || j.Rack[0].Radius != 37.5 || j.Shop.Rate != 40 || !slices.Equal(j.Shop.Order, []int{1}) {
		t.Errorf("%+v %+v", j.Rack, j.Shop)
	}
	if len(j.Motifs) != 3 {
		t.Fatalf("%d motifs", len(j.Motifs))
	}
	// fern.toml has no unit of its own: its bare numbers are in the job's.
	fern := j.Motifs[0]
	if fern.Kind.Name != "leaf" || fern.Depth != inch/32 || fern.Width != (Measure{inch, false}) || fern.Values["fronds"] != 9 || fern.DepthOf("frond") != inch/64 || *fern.LandOf("frond") != 0.02*inch {
		t.Errorf("%+v", fern)
	}
	if inner, own := j.Motifs[1], j.Motifs[2]; inner.Inside != 1 || inner.Depth != 0.3 || own.Inside != 2 || own.Kind.Name != "fan" {
		t.Errorf("inside %d and %d", inner.Inside, own.Inside)
	}
	if fern.Line != 2 || j.Motifs[2].Line != 5 {
		t.Errorf("motifs on the lines %d and %d", fern.Line, j.Motifs[2].Line)
	}
}

// It is the same job as one in which all of it is written out.
func TestIncludeWrittenOut(t *testing.T) {
	out, err := Read("x.toml", []byte(strings.Replace(including, `include = ["shop.toml", "fern.toml"]`, "", 1)+`
[shop]
rate = "40 mm"
order = ["olive"]
[limits]
land = "0.7 mm"
polish = "0.1 mm"
[[wheel]]
name = "mitre"
edge = "mitre"
across = "75 mm"
thick = "6 mm"
angle = 90
[[wheel]]
name = "olive"
edge = "round"
across = "100 mm"
thick = "10 mm"
radius = "6 mm"
[layout]
repeats = 5
`+fernFile+ownMotif))
	if err != nil {
		t.Fatal(err)
	}
	in := readWith(t, including+ownMotif)
	if !Alike(in, out) || fmt.Sprint(in.Limits, in.Rack, in.Shop, in.Layout) != fmt.Sprint(out.Limits, out.Rack, out.Shop, out.Layout) {
		t.Errorf("included:\n%+v\nwritten out:\n%+v", in, out)
	}
}

// The job's own win: limits, shop and layout key by key, wheels as a whole, and motifs of a
// name key by key.
func TestIncludeOverridden(t *testing.T) {
	const inch = geometry.MillimetresPerInch
	j := readWith(t, including+`[limits]
land = "1/32"
[shop]
order = ["mitre", "small"]
[layout]
repeats = 6
bare = [2]
[[wheel]]
name = "small"
edge = "flat"
across = 2
thick = "1/8"
[[wheel]]
name = "mitre"
edge = "round"
across = 3
thick = "1/4"
radius = "1/8"
[[motif]]
name = "fern"
depth = "1/16"
[motif.parts.frond]
depth = "1/10"
`+strings.Replace(ownMotif, "inside = 2\n", `name = "top"`+"\n", 1))
	if j.Limits.Land != inch/32 || j.Limits.Polish != 0.1 || j.Shop.Rate != 40 || !slices.Equal(j.Shop.Order, []int{0, 2}) || j.Layout.Repeats != 6 || len(j.Layout.Bare) != 1 {
		t.Errorf("%+v %+v %+v", j.Limits, j.Shop, j.Layout)
	}
	if len(j.Rack) != 3 || j.Rack[0].Name != "mitre" || math.Abs(j.Rack[0].Radius-1.5*inch) > 1e-9 || j.Rack[0].Angle != 0 || j.Rack[2].Name != "small" {
		t.Errorf("%+v", j.Rack)
	}
	fern := j.Motifs[0]
	if len(j.Motifs) != 3 || fern.Depth != inch/16 || fern.Values["fronds"] != 9 || fern.DepthOf("frond") != inch/10 || *fern.LandOf("frond") != 0.02*inch {
		t.Errorf("%+v", fern)
	}
	// Of two files the later one wins.
	j = readWith(t, strings.Replace(including, `"fern.toml"`, `"fern.toml", "more.toml"`, 1), "more.toml", "[limits]\nland = 0.05\n[[wheel]]\nname = \"olive\"\nedge = \"flat\"\nacross = 3\nthick = 0.2\n[[motif]]\nname = \"fern\"\nfronds = 3\n")
	if j.Limits.Land != 0.05*inch || j.Limits.Polish != 0.1 || len(j.Rack) != 2 || math.Abs(j.Rack[1].Radius-1.5*inch) > 1e-9 || j.Motifs[0].Values["fronds"] != 3 {
		t.Errorf("%+v %+v", j.Limits, j.Rack)
	}
}

// An included file counts its own motifs: it doesn't know what is read before it.
func TestIncludeInside(t *testing.T) {
	j := readWith(t, strings.Replace(including, `"shop.toml"`, `"shop.toml", "first.toml"`, 1)+ownMotif,
		"first.toml", "[[motif]]\nkind = \"ring\"\nwheel = \"mitre\"\ndepth = \"1/64\"\n")
	if got := []int{j.Motifs[0].Inside, j.Motifs[1].Inside, j.Motifs[2].Inside, j.Motifs[3].Inside}; !slices.Equal(got, []int{0, 0, 2, 2}) {
		t.Errorf("inside %v", got)
	}
	folder := shelf()
	folder["first.toml"] = "[[motif]]\nkind = \"ring\"\nwheel = \"mitre\"\ndepth = \"1/64\"\n"
	folder["fern.toml"] = strings.Replace(fernFile, "inside = 1", "inside = 2", 1)
	_, err := ReadWith("x.toml", []byte(strings.Replace(including, `"shop.toml"`, `"shop.toml", "first.toml"`, 1)), files(folder))
	e := onlyError(t, err)
	if e.File != "fern.toml" || e.Line != 17 || e.Key != "motif[3].inside" || e.Accepted != `the number of a motif before this one in "fern.toml", which is 1` {
		t.Error(e)
	}
}

// A drawing of an included motif lies beside the job too.
func TestIncludeDrawing(t *testing.T) {
	j := readWith(t, including, "fern.toml", "[[motif]]\nkind = \"drawing\"\nfile = \"blade.svg\"\nwheel = \"mitre\"\ndepth = 0.02\n", "blade.svg", bladeSVG)
	if got := len(j.Motifs[0].Kind.Draw(j.Motifs[0].Values, 1)); got != 2 {
		t.Errorf("%d cuts", got)
	}
}

// What only the layout finds is said of the file it stands in, too.
func TestIncludeRefused(t *testing.T) {
	j := readWith(t, including+ownMotif)
	for _, c := range []struct {
		key, file, read string
		line            int
	}{
		{"limits.land", "jobs/shop.toml", "0.7", 6},
		{"motif[1].fronds", "jobs/fern.toml", "9", 8},
		{"motif[1].parts.frond.depth", "jobs/fern.toml", `"1/64"`, 10},
		{"motif[2].width", "jobs/fern.toml", "x", 13},
		{"motif[3].depth", "jobs/tumbler.toml", `"1/32"`, 8},
		{"wheel[2].radius", "jobs/shop.toml", "6", 19},
		{"blank[1].floor", "jobs/tumbler.toml", "x", 3},
	} {
		e := j.Refuse(c.key, "x", "y", "z")
		if e.File != c.file || e.Line != c.line || e.Read != c.read {
			t.Errorf("%s: %v", c.key, e)
		}
		if j.Given(c.key) != (c.read != "x") {
			t.Errorf("%s is given: %t", c.key, j.Given(c.key))
		}
	}
}

// The mistakes one makes with includes, each said of the file it stands in.
func TestRefuseInclude(t *testing.T) {
	const list, plain = "a list of files in the job's own folder", "a plain name: no folder, no drive, no address"
	only := func(names string) string {
		return strings.Replace(including, `["shop.toml", "fern.toml"]`, names, 1) + ownMotif
	}
	many := strings.Repeat(`"shop.toml", `, 20)
	for _, c := range []struct {
		job                        string
		file, text                 string // beside it
		at                         string // the file of the mistake; "" is the job
		line                       int
		key, read, accepted, hints string
	}{
		{job: only(`"shop.toml"`), line: 2, key: "include", read: `"shop.toml"`, accepted: list, hints: "write it in brackets"},
		{job: only(`[]`), line: 2, key: "include", read: "a list of 0", accepted: list},
		{job: only(`3`), line: 2, key: "include", accepted: list},
		{job: only(`{}`), line: 2, key: "include", accepted: list},
		{job: only(`[3]`), line: 2, key: "include[1]", read: "3", accepted: "the name of a TOML file"},
		{job: only(`[["shop.toml"]]`), line: 2, key: "include[1]", accepted: "the name of a TOML file"},
		{job: only(`["shop.toml", "shop.toml"]`), line: 2, key: "include[2]", accepted: "each file once", hints: "it is in the list already"},
		{job: only(`["tumbler.toml"]`), line: 2, key: "include[1]", accepted: "files other than the job", hints: "that is the job itself"},
		{job: only(`["shop.tml"]`), line: 2, key: "include[1]", read: `"shop.tml"`, hints: "there is no such file"},
		{job: only(`["../shop.toml"]`), line: 2, key: "include[1]", hints: plain},
		{job: only(`["/etc/passwd"]`), line: 2, key: "include[1]", hints: plain},
		{job: only(`['C:\shop.toml']`), line: 2, key: "include[1]", hints: plain},
		{job: only(`["."]`), line: 2, key: "include[1]", hints: plain},
		{job: only(`[""]`), line: 2, key: "include[1]", hints: plain},
		{job: only(`["a\u0000b"]`), line: 2, key: "include[1]", hints: plain},
		{job: only("[" + many + "]"), line: 2, key: "include[17]", read: "20", accepted: "at most 16"},
		{job: only(`["shop.toml", "huge.toml"]`), file: "huge.toml", text: strings.Repeat(" ", MaxBytes+1), line: 2, key: "include[2]", accepted: "a file of at most 1 MiB"},
		{job: only(`["vast.toml"]`), file: "vast.toml", text: strings.Repeat(" ", MaxBeside+1), line: 2, key: "include[1]", hints: "16 MiB"},
		{job: strings.Replace(only(`["shop.toml"]`), "length", "lenght", 1), line: 1, key: "lenght", hints: `"length"`},

		{job: only(`["shop.toml", "x.toml"]`), file: "x.toml", text: "\n[limits\n", at: "x.toml", line: 2, key: "limits", accepted: "key = value, as TOML has it"},
		{job: only(`["x.toml"]`), file: "x.toml", text: "\x7fELF", at: "x.toml", line: 1, accepted: "a text file in UTF-8"},
		{job: only(`["x.toml"]`), file: "x.toml", text: "", at: "x.toml", line: 1, read: "a file without a table", accepted: "limits, wheel, shop, layout"},
		{job: only(`["x.toml"]`), file: "x.toml", text: "# none yet\nlength = \"mm\"\n", at: "x.toml", line: 1, read: "a file without a table"},
		{job: only(`["x.toml"]`), file: "x.toml", text: "length = \"cm\"\n[limits]\n", at: "x.toml", line: 1, key: "length", accepted: `"in" or "mm"`},
		{job: only(`["x.toml"]`), file: "x.toml", text: "title = \"x\"\n", at: "x.toml", line: 1, key: "title", read: `a key "title"`, accepted: "the keys of an included file, length, limits", hints: `"title" belongs in the job`},
		{job: only(`["x.toml"]`), file: "x.toml", text: including, at: "x.toml", line: 2, key: "include", hints: "an included file can't include others: list them all in the job"},
		{job: only(`["x.toml"]`), file: "x.toml", text: "[limits]\n[blank]\n", at: "x.toml", line: 2, key: "blank", hints: `"blank" belongs in the job`},
		{job: only(`["x.toml"]`), file: "x.toml", text: "[limit]\nland = 1\n", at: "x.toml", line: 1, key: "limit", hints: `the nearest is "limits"`},
		{job: only(`["x.toml"]`), file: "x.toml", text: "repeats = 3\n", at: "x.toml", line: 1, key: "repeats", hints: `"repeats" belongs to a layout`},
		{job: only(`["x.toml"]`), file: "x.toml", text: "limits = 3\n", at: "x.toml", line: 1, key: "limits", accepted: "one table [limits]"},
		{job: only(`["shop.toml", "x.toml"]`), file: "x.toml", text: "limits = 3\n", at: "x.toml", line: 1, key: "limits", accepted: "one table [limits]"},
		{job: only(`["x.toml", "shop.toml"]`), file: "x.toml", text: "limits = 3\n", at: "x.toml", line: 1, key: "limits", accepted: "one table [limits]"},
		{job: only(`["x.toml", "shop.toml"]`), file: "x.toml", text: "[wheel]\nname = \"w\"\n", at: "x.toml", line: 1, key: "wheel", hints: "write [[wheel]]"},
		{job: only(`["shop.toml", "x.toml"]`), file: "x.toml", text: "wheel = []\n", at: "x.toml", line: 1, key: "wheel", accepted: "a table [[wheel]]"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "land = 0.7", "land = 7e9", 1), at: "shop.toml", line: 6, key: "limits.land", accepted: "a length from 0 mm to 50 mm"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "land = 0.7", "lnad = 0.7", 1), at: "shop.toml", line: 6, key: "limits.lnad", hints: `"land"`},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "angle = 90", "angle = 90\nwears = [0.4, 30]", 1), at: "shop.toml", line: 14, key: "wheel[1].wears[2]", accepted: "from 100 mm to 100,000 m", hints: "a bare number is in millimetres"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "angle = 90", "angle = 90\nwears = [40, \"30 m\"]", 1), at: "shop.toml", line: 14, key: "wheel[1].wears[1]", accepted: "less than half of what the wheel is across, 37.5 mm"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "angle = 90", "angle = 90\nwears = 3", 1), at: "shop.toml", line: 14, key: "wheel[1].wears", accepted: `["0.4 mm", "30 m"]`},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: shopFile + "[base]\nrepeats = 5\nband = [10, 40]\n", at: "shop.toml", line: 24, key: "base.band[2]", accepted: "at most 38.1 mm"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: shopFile + "[base]\nrepeats = 5\nband = [10, 8]\n", at: "shop.toml", line: 24, key: "base.band[2]", accepted: "beginning, 10.0 mm"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, "radius = 6", "", 1), at: "shop.toml", line: 14, key: "wheel[2].radius", read: "nothing"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "shop.toml", text: strings.Replace(shopFile, `"olive"`, `"mitre"`, 2), at: "shop.toml", line: 15, key: "wheel[2].name", accepted: "a name no other wheel has"},
		{job: only(`["shop.toml", "fern.toml"]`), file: "fern.toml", text: strings.Replace(fernFile, "mitre", "miter", 1), at: "fern.toml", line: 5, key: "motif[1].wheel", hints: `"mitre"`},
		{job: only(`["shop.toml", "fern.toml"]`), file: "fern.toml", text: strings.Replace(fernFile, "inside = 1", "inside = 2", 1), at: "fern.toml", line: 17, key: "motif[2].inside", read: "2", accepted: `which is 1`},
		{job: only(`["shop.toml", "fern.toml"]`), file: "fern.toml", text: strings.Replace(fernFile, "fronds = 9", "inside = 1", 1), at: "fern.toml", line: 8, key: "motif[1].inside", accepted: `no such key in the first motif in "fern.toml"`},
		{job: only(`["shop.toml", "fern.toml"]`), file: "fern.toml", text: fernFile + "name = \"fern\"\n", at: "fern.toml", line: 18, key: "motif[2].name", accepted: "a name no other motif has"},
		{job: strings.Replace(including+ownMotif, "inside = 2", "inside = 3", 1), line: 9, key: "motif[3].inside", read: "3", accepted: "from 1 to 2"},
		{job: including + "[[motif]]\nname = \"fren\"\ndepth = 0.01\n", line: 5, key: "motif[3].kind", read: "nothing", hints: `no included motif is called "fren"; the nearest is "fern"`},
		{job: including + "[[motif]]\nname = \"fern\"\ndepht = 0.01\n", line: 7, key: "motif[1].depht", hints: `"depth"`},
		{job: including + "[[motif]]\nname = \"fern\"\n" + ownMotif + "name = \"fern\"\n", line: 12, key: "motif[3].name", accepted: "a name no other motif has"},
		{job: including + "[[motif]]\nname = \"fern\"\nrays = 5\n", line: 7, key: "motif[1].rays", hints: `"rays" belongs to a motif of the kind "fan"`},
		{job: including + "[[wheel]]\nname = \"mitre\"\nangle = 60\n", line: 5, key: "wheel[1].across", read: "nothing"},
		{job: only(`["shop.toml"]`), line: 9, key: "motif[1].inside", accepted: "no such key in the first motif"},
	} {
		folder := shelf()
		if c.file != "" {
			folder[c.file] = c.text
		}
		began := time.Now()
		_, err := ReadWith("tumbler.toml", []byte(c.job), files(folder))
		if err == nil {
			t.Errorf("is read: %q beside %q", c.job, c.text)
			continue
		}
		if took := time.Since(began); took > 5*time.Second {
			t.Errorf("%v to refuse it", took)
		}
		e := onlyError(t, err)
		at := c.at
		if at == "" {
			at = "tumbler.toml"
		}
		if e.File != at || e.Line != c.line || e.Key != c.key || !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) || !strings.Contains(e.Hint, c.hints) {
			t.Errorf("wanted %s:%d: %s: read %s; accepted %s; %s\ngot %v", at, c.line, c.key, c.read, c.accepted, c.hints, e)
		}
	}
	// Where the files beside a job can't be read, that is said.
	_, err := Read("tumbler.toml", []byte(including))
	if e := onlyError(t, err); e.Key != "include[1]" || !strings.Contains(e.Hint, "can't be read: write its tables into the job") {
		t.Error(e)
	}
}
