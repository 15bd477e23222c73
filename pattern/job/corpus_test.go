package job

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"roundlay/geometry"
)

// corpus is every good job there is in the repository, and some in strange shapes, by
// name.
func corpus(t testing.TB) map[string][]byte {
	t.Helper()
	_, demo := Demo()
	all := map[string][]byte{
		"demo": demo, "base": base().bytes(), "starter in": Starter(geometry.Inch), "starter mm": Starter(geometry.Millimetre),
		"demo with carriage returns": []byte("\ufeff" + strings.ReplaceAll(string(demo), "\n", "\r\n")),
		"demo without a last line":   []byte(strings.TrimRight(string(demo), "\n")),
	}
	for name, text := range shapes {
		all[name] = []byte(text)
	}
	jobs, err := filepath.Glob("../../testdata/gallery/*.toml")
	if err != nil || len(jobs) < 3 {
		t.Fatal(jobs, err)
	}
	for _, file := range jobs {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		// Those made of files beside them are read by themselves nowhere.
		if !bytes.Contains(data, []byte("\nfile = ")) {
			all[file] = data
		}
	}
	scripts, err := filepath.Glob("../../testdata/scripts/*.txtar")
	if err != nil || len(scripts) < 20 {
		t.Fatal(scripts, err)
	}
	for _, file := range scripts {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range archive.Files {
			if _, err := Read(f.Name, f.Data); err == nil {
				all[filepath.Base(file)+"/"+f.Name] = f.Data
			}
		}
	}
	for name, data := range all {
		if _, err := Read(name, data); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	return all
}

// shapes are jobs written in ways that few people write them.
var shapes = map[string]string{
	"inline": `title = 'x' # the "title"
length = "mm"
blank = {name = "a", station = [{height = 0, across = [70, 71], wall = 8}, {height = 96, across = 82, wall = 2.4}], floor = 9}
limits = {}
wheel = [{name = "m", edge = "mitre", across = 75, thick = 6, angle = 90},]
layout = { repeats = 5 }
motif = [
  # the first
  {kind = "leaf", wheel = "m", depth = 0.8}, # one
  { kind = "star", wheel = "m", depth = 0.8, inside = 1, # inside it
    width = 0.5 }
]
`,
	"dotted": `length = "in"
blank.name = "x"
blank.station = [
  {height=0, across=3, wall="3/8"} # foot
  , {height="3 1/2", around='10"', wall="2.5 mm"},
]
layout.repeats = 4
layout.band = [ "1/2",
  3 ] # band
shop.order = ["m"]
  [[ wheel ]] # mine
  name = """m"""
  "edge" = "mitre"
  across = 4
  thick = 0.25
  angle = 9e1

  # a motif
  [[ motif ]]
    kind = "leaf"
    wheel = "m"
    depth = '1/32"'
    # lean = 3
  # of the next
  [[ motif ]]
    kind = "fan"
    wheel = "m"
    width = "2"
    depth = "1/32"`,
	"headers": `length = "in"
[[blank]]
[[blank.station]]
height = 0
across = 3
wall = 0.3

# the rim
[[blank.station]]
height = 3
across = 3
wall = 0.2
[layout]
repeats = 3
[[motif]]
wheel = "m"
kind = "leaf"
depth = "1/32"
[[wheel]]
name = "m"
edge = "flat"
across = 3
thick = "1/4"
[[motif]]
wheel = "m"
kind = "star"
depth = "1/32"
`,
	"unnamed": `length = "in"
[[blank.station]]
height = 0
across = 3
wall = 0.3
[[blank.station]]
height = 3
across = 3
wall = 0.2
[layout]
repeats = 3
[[motif]]
wheel = "m"
kind = "leaf"
depth = "1/32"
[[wheel]]
name = "m"
edge = "flat"
across = 3
thick = "1/4"
`,
}
