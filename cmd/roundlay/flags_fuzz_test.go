package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"roundlay/cmd/disk"
)

// tinyJob is laid out in no time.
const tinyJob = `length = "mm"
blank = {name="tumbler", floor=12, station=[{height=0, across=66, wall=9}, {height=60, across=70, wall=3}]}
layout.repeats = 4
wheel = [{name="small", edge="mitre", across=40, thick=4, angle=90}]
motif = [{kind="fan", wheel="small", depth=0.5, rays=3, width=0.6, height=0.6}]
`

// Whatever follows a command, it ends with a status it may have; where nothing was done, with
// one line on standard error that begins with the program's name, and nothing written.
func FuzzFlags(f *testing.F) {
	for _, words := range []string{
		"wrap job.toml --side inside --paper a4 --out paper.pdf", "wrap job.toml --printed-across 99mm --printed-up 100.4mm --seam butt --seam-at 2 --mirror --no-rings",
		"wrap --test-page --dpi 20 --out t.png --page 1", "divide --across 3in --parts 7 --gap 1/16in --json", "divide job.toml --around 200mm --parts 5", "check job.toml --json --blank tumbler",
		"fit job.toml --rack", "fit job.toml --write fitted.toml --force", "plan job.toml --json", "sheet job.toml --took 80 --write timed.toml", "view job.toml --tilt 20 --out v.svg --findings",
		"view job.toml job.toml --out two.svg", "motifs leaf --json", "motifs fan --chart --out c.svg", "groove job.toml --length 12mm --slant level", "groove --edge round --radius 3mm --wheel-across 80mm --thick 6mm --across 70mm --width 2mm",
		"groove job.toml --like --length 12mm --width 2mm --read-to 0.1mm", "groove job.toml --like --length 12mm --width 2mm --read-to x", "new a.toml --unit mm", "new --like --repeats 6 --across 70mm --motif star --wide 20mm", "new --shop", "completion bash", "man", "--version", "help wrap", "chekc job.toml", "wrap --sdie base",
	} {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		args := strings.Fields(words)
		if len(args) == 0 || len(args) > 16 || args[0] == "open" || slices.ContainsFunc(args, outside) {
			t.Skip("it lasts, or writes elsewhere")
		}
		folder := t.TempDir()
		t.Chdir(folder)
		if err := os.WriteFile("job.toml", []byte(tinyJob), 0o600); err != nil {
			t.Fatal(err)
		}
		ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
		defer cancel()
		var stdout, stderr bytes.Buffer
		status := start(ctx, disk.Real{}, args, strings.NewReader(""), &stdout, &stderr)
		said := stderr.String()
		switch {
		case ctx.Err() != nil:
			t.Fatal("it didn't end")
		case status == exitFindings && !slices.Contains(args, "check"), status < exitClear, status > exitNotDone:
			t.Fatalf("exit status %d: %s", status, said)
		case status != exitNotDone:
			return
		case strings.Count(said, "\n") != 1 || !strings.HasPrefix(said, "roundlay: "):
			t.Fatalf("not one line on standard error: %q", said)
		}
		if left, _ := filepath.Glob("*"); len(left) != 1 {
			t.Fatalf("it wasn't done, and there are files %q", left)
		}
		if text, _ := os.ReadFile("job.toml"); string(text) != tinyJob {
			t.Fatalf("the job isn't what it was: %s", text)
		}
	})
}

// outside reports whether a word may name a place that isn't in this folder, or the page, which
// goes on until it is stopped.
func outside(word string) bool {
	return word == "open" || strings.Contains(word, "..") || strings.HasPrefix(word, "/") || strings.Contains(word, "=/")
}
