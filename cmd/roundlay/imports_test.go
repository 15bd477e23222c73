package main

import (
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "roundlay"

// rooms are the module's folders; each may import those before it, and itself.
var rooms = []string{"geometry", "motifs", "pattern", "render", "cmd"}

// room returns the place in rooms of a package given by its path in the module,
// -1 if it stands in none of them.
func room(pkg string) int {
	top, _, _ := strings.Cut(pkg, "/")
	return slices.Index(rooms, top)
}

// wrongWay says what is wrong with one package of the module importing another,
// or "" if nothing is.
func wrongWay(from, to string) string {
	a, b := room(from), room(to)
	switch {
	case b < 0:
		return fmt.Sprintf("%s imports %s, which stands outside %s", from, to, strings.Join(rooms, ", "))
	case b > a && a >= 0:
		return fmt.Sprintf("%s imports %s: imports point from %s to %s", from, to, rooms[b], rooms[a])
	case rooms[b] == "cmd" && !within(to, desks) && !within(to, disks):
		return fmt.Sprintf("%s imports the command %s", from, to)
	case within(from, desks) && !within(from, served) && (within(to, served) || within(to, disks)):
		return fmt.Sprintf("%s imports %s: what answers the page knows nothing of how it is served, or of disks", from, to)
	case within(from, disks) && within(to, desks):
		return fmt.Sprintf("%s imports %s: what writes files knows nothing of the page", from, to)
	}
	return ""
}

// desks is the room of what answers the page, which is no command: commands import it. What
// serves it on a machine is served, in that room. Both that and the commands write files by
// what is in disks.
const desks, served, disks = "cmd/desk", "cmd/desk/serve", "cmd/disk"

// within reports whether a package is one of a folder's.
func within(pkg, folder string) bool { return pkg == folder || strings.HasPrefix(pkg, folder+"/") }

// atHome are the parts of the standard library that a page in a browser has not: disks,
// networks and other programs.
var atHome = []string{"os", "os/exec", "os/signal", "io/fs", "path/filepath", "net", "net/http", "syscall"}

// TestAnywhere keeps what answers the page, and what draws for it, from anything that would
// tie it to a machine: it can be built for a browser.
func TestAnywhere(t *testing.T) {
	for _, room := range []string{desks, "render/screen"} {
		err := filepath.WalkDir(filepath.Join("../..", room), func(name string, entry fs.DirEntry, err error) error {
			if err != nil || path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") {
				return err
			}
			folder, _ := filepath.Rel("../..", filepath.Dir(name))
			if within(filepath.ToSlash(folder), served) {
				return nil
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
			if err != nil {
				return err
			}
			for _, spec := range file.Imports {
				if to, _ := strconv.Unquote(spec.Path.Value); slices.Contains(atHome, to) {
					t.Errorf("%s imports %s", name, to)
				}
			}
			return nil
		})
		if err != nil {
			t.Error(err)
		}
	}
}

// wrongImports returns what is wrong with the imports of all Go files below a
// folder, tests included: its own packages are those of the module.
func wrongImports(root string) ([]string, error) {
	var wrong []string
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if hidden := strings.HasPrefix(entry.Name(), ".") && name != root; entry.IsDir() && (hidden || entry.Name() == "testdata") {
			return fs.SkipDir
		}
		if entry.IsDir() || path.Ext(name) != ".go" {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		folder, err := filepath.Rel(root, filepath.Dir(name))
		if err != nil {
			return err
		}
		from := filepath.ToSlash(folder)
		if room(from) < 0 {
			wrong = append(wrong, fmt.Sprintf("%s stands outside %s", name, strings.Join(rooms, ", ")))
		}
		for _, spec := range file.Imports {
			to, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if to == module {
				to += "/."
			}
			if own, ok := strings.CutPrefix(to, module+"/"); ok {
				if what := wrongWay(from, own); what != "" {
					wrong = append(wrong, what)
				}
			}
		}
		return nil
	})
	return wrong, err
}

// TestImports holds the module to the order that DEVELOPERS.md gives: geometry ←
// motifs ← pattern ← render ← cmd, and no other folder.
func TestImports(t *testing.T) {
	const root = "../.."
	if _, err := os.Stat(filepath.Join(root, "go.mod")); err != nil {
		t.Fatal(err)
	}
	wrong, err := wrongImports(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, what := range wrong {
		t.Error(what)
	}
}

// TestWrongImports draws every arrow there can be between two rooms, to and from
// the room itself and a package in it, in a module of its own.
func TestWrongImports(t *testing.T) {
	right := map[string]bool{ // from a room to another
		"motifs geometry": true, "pattern geometry": true, "pattern motifs": true,
		"render geometry": true, "render motifs": true, "render pattern": true,
		"cmd geometry": true, "cmd motifs": true, "cmd pattern": true, "cmd render": true,
		// Within a room; but no one imports a command.
		"geometry geometry": true, "motifs motifs": true, "pattern pattern": true, "render render": true,
	}
	for _, from := range append(rooms, "extra") {
		for _, to := range append(rooms, "extra") {
			for _, inFrom := range []string{"", "/inner"} {
				for _, inTo := range []string{"", "/other"} {
					a, b := from+inFrom, to+inTo
					wrong := arrow(t, a, b)
					if ok := right[from+" "+to]; ok != (len(wrong) == 0) {
						t.Errorf("%s imports %s: found %q", a, b, wrong)
					}
					if len(wrong) > 0 && !strings.Contains(strings.Join(wrong, "\n"), a) {
						t.Errorf("%s imports %s: it isn't named in %q", a, b, wrong)
					}
				}
			}
		}
	}
	for _, c := range []struct {
		from, to string
		ok       bool
	}{
		{"cmd/roundlay", "cmd/desk", true}, {"cmd/roundlay", "cmd/desk/serve", true}, {"cmd/desk/serve", "cmd/desk", true},
		{"cmd/desk", "cmd/desk/serve", false}, {"cmd/desk/page", "cmd/desk/serve", false}, {"cmd/desk", "cmd/roundlay", false},
		{"cmd/roundlay", "cmd/disk", true}, {"cmd/desk/serve", "cmd/disk", true}, {"cmd/desk", "cmd/disk", false}, {"cmd/disk", "cmd/desk", false}, {"render", "cmd/disk", false},
		{"render/screen", "cmd/desk", false}, {"cmd/desk", "cmd/deskside", false},
	} {
		if wrong := arrow(t, c.from, c.to); c.ok != (len(wrong) == 0) {
			t.Errorf("%s imports %s: found %q", c.from, c.to, wrong)
		}
	}
	if wrong := arrow(t, "pattern", "."); len(wrong) == 0 {
		t.Error("a package at the root is let pass")
	}
}

// arrow returns what is wrong with a module in which a package imports another,
// from one of its files in two, and a library that looks like one of its rooms.
func arrow(t *testing.T, from, to string) []string {
	t.Helper()
	root := t.TempDir()
	folder := filepath.Join(root, filepath.FromSlash(from))
	if err := os.MkdirAll(folder, 0o777); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"a.go":      "package x\n\nimport _ \"example.org/roundlay/render\"\n",
		"b_test.go": fmt.Sprintf("package x\n\nimport (\n\t\"fmt\"\n\t. %q\n)\n", path.Join(module, to)),
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	wrong, err := wrongImports(root)
	if err != nil {
		t.Fatal(err)
	}
	return wrong
}
