package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"roundlay/cmd/desk"
	"roundlay/pattern/job"
)

// setOfTwo is two blanks, one of them curved, with findings to list on paper.
const setOfTwo = `title = "Two of a kind"
length = "mm"
[[blank]]
name = "barrel"
floor = 10
station = [{height=0, across=62, wall=6}, {height=50, across=84, wall=4}, {height=100, across=70, wall=3}]
[[blank]]
name = "other"
floor = 9
station = [{height=0, across=63, wall=6}, {height=50, across=84.5, wall=3.9}, {height=101, across=70, wall=3}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 70
thick = 8
angle = 110
[layout]
repeats = 4
band = [25, 80]
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 0.9
width = 0.8
height = 0.9
fronds = 12
`

// download is a file that the page can ask for, and how the command makes it.
type download struct {
	ask     map[string]any
	command []string
	prints  bool // on standard output, so that it has no name
}

func takings() []download {
	return []download{
		{ask: map[string]any{"what": "wrap", "ending": "pdf"}, command: []string{"wrap"}},
		{ask: map[string]any{"what": "wrap", "ending": "svg"}, command: []string{"wrap"}},
		{
			ask: map[string]any{"what": "wrap", "ending": "pdf", "paper": "a3", "margin": "8 mm", "seam": "butt", "seam_at": 2, "mirror": true, "no_rings": true,
				"printed_across": "99.2 mm", "printed_up": "100.4 mm", "thickness": "0.2 mm"},
			command: []string{"wrap", "--paper", "a3", "--margin", "8 mm", "--seam", "butt", "--seam-at", "2", "--mirror", "--no-rings",
				"--printed-across", "99.2 mm", "--printed-up", "100.4 mm", "--thickness", "0.2 mm"},
		},
		{ask: map[string]any{"what": "wrap", "ending": "svg", "side": "inside"}, command: []string{"wrap", "--side", "inside"}},
		{ask: map[string]any{"what": "wrap", "ending": "pdf", "side": "patches"}, command: []string{"wrap", "--side", "patches"}},
		{ask: map[string]any{"what": "wrap", "ending": "png", "dpi": 40}, command: []string{"wrap", "--dpi", "40", "--out", "@.png"}},
		{ask: map[string]any{"what": "wrap", "ending": "svg", "page": 1}, command: []string{"wrap", "--page", "1", "--out", "@.svg"}},
		{ask: map[string]any{"what": "test-page", "ending": "pdf"}, command: []string{"wrap", "--test-page"}},
		{ask: map[string]any{"what": "sheet", "ending": "pdf"}, command: []string{"sheet"}},
		{ask: map[string]any{"what": "view", "ending": "svg"}, command: []string{"view"}},
		{ask: map[string]any{"what": "view", "ending": "pdf", "turn": 30, "tilt": "12.5", "round": true, "findings": true}, command: []string{"view", "--turn", "30", "--tilt", "12.5", "--round", "--findings", "--out", "@.pdf"}},
		{ask: map[string]any{"what": "view", "ending": "png"}, command: []string{"view", "--out", "@.png"}},
		{ask: map[string]any{"what": "cuts", "ending": "csv"}, command: []string{"plan", "--csv"}, prints: true},
		{ask: map[string]any{"what": "plan", "ending": "txt"}, command: []string{"plan"}, prints: true},
		{ask: map[string]any{"what": "plan", "ending": "json"}, command: []string{"plan", "--json"}, prints: true},
	}
}

// What the page hands out is, byte for byte and by name, what the command writes.
func TestDeskFiles(t *testing.T) {
	_, demo := job.Demo()
	trellis, err := os.ReadFile("../../testdata/gallery/trellis-beaker.toml")
	if err != nil {
		t.Fatal(err)
	}
	d := desk.New()
	for _, of := range []struct{ name, text, blank string }{
		{"demo", string(demo), ""}, {"gallery", string(trellis), ""}, {"set", setOfTwo, ""}, {"curved", setOfTwo, "barrel"},
	} {
		for _, take := range takings() {
			what, ending := take.ask["what"], take.ask["ending"]
			if of.name == "set" && what != "sheet" && what != "cuts" && ending != "txt" {
				continue // a paper or a picture is of one blank
			}
			if of.name == "gallery" && (ending != "svg" || len(take.ask) > 2) {
				continue // the demo and the barrel try them all
			}
			take.same(t, d, of.name, of.text, of.blank)
		}
	}
}

// same asks a desk and the command, and compares what they make.
func (take download) same(t *testing.T, d *desk.Desk, name, text, blank string) {
	t.Helper()
	dir := t.TempDir()
	in, out := filepath.Join(dir, "job.toml"), filepath.Join(dir, "out")
	if err := os.WriteFile(in, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(out, 0o777); err != nil {
		t.Fatal(err)
	}
	args := append(append([]string{}, take.command...), in)
	named := false
	for i, arg := range args {
		if strings.HasPrefix(arg, "@") {
			args[i], named = filepath.Join(out, "it"+arg[1:]), true
		}
	}
	if !take.prints && !named {
		args = append(args, "--out", out)
	}
	if blank != "" {
		args = append(args, "--blank", blank)
	}
	var stdout, stderr bytes.Buffer
	if status := run(args, nil, &stdout, &stderr); status == exitNotDone {
		t.Fatalf("%s: %v: %s", name, args, stderr.String())
	}
	body := map[string]any{"job": text, "blank": blank}
	for key, value := range take.ask {
		body[key] = value
	}
	asked, err := json.Marshal(body)
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Answer(t.Context(), "download", asked)
	if err != nil {
		t.Fatalf("%s: %v: %v", name, take.ask, err)
	}
	want := stdout.Bytes()
	if !take.prints {
		file := filepath.Join(out, got.Name)
		if named {
			file = filepath.Join(out, "it"+filepath.Ext(got.Name))
		}
		if want, err = os.ReadFile(file); err != nil {
			t.Fatalf("%s: %v is called otherwise than the command's: %v", name, take.ask, err)
		}
	}
	if !bytes.Equal(got.Data, want) {
		t.Errorf("%s: %v: %d bytes are not the command's %d", name, take.ask, len(got.Data), len(want))
	}
}
