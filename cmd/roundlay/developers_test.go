package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// developers returns a section of DEVELOPERS.md.
func developers(t *testing.T, heading string) string {
	t.Helper()
	text, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, found := strings.Cut(string(text), "\n## "+heading+"\n")
	if !found {
		t.Fatalf("DEVELOPERS.md has no section %q", heading)
	}
	section, _, _ = strings.Cut(section, "\n## ")
	return section
}

// ownPackages returns the module's packages with what each imports of the module's own, tests
// left out.
func ownPackages(t *testing.T) map[string][]string {
	t.Helper()
	imports := map[string][]string{}
	const root = "../.."
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			_, other := os.Stat(filepath.Join(name, "go.mod")) // a module of its own
			if name != root && (other == nil || strings.HasPrefix(entry.Name(), ".") || entry.Name() == "testdata") {
				return fs.SkipDir
			}
			return nil
		}
		if path.Ext(name) != ".go" {
			return nil
		}
		folder, err := filepath.Rel(root, filepath.Dir(name))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(folder)
		imports[pkg] = append([]string{}, imports[pkg]...) // there, if it is of tests alone
		if strings.HasSuffix(name, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			to, err := strconv.Unquote(spec.Path.Value)
			if own, ok := strings.CutPrefix(to, module+"/"); ok && err == nil {
				imports[pkg] = append(imports[pkg], own)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return imports
}

// The house is drawn with all its packages, a line each, and each imports only what is drawn
// above it.
func TestHouseIsDrawn(t *testing.T) {
	imports := ownPackages(t)
	drawn := map[string]int{}
	for i, m := range regexp.MustCompile(`(?m)^    ([a-z][a-z/]*) {2,}(\S.*)$`).FindAllStringSubmatch(developers(t, "Where things are"), -1) {
		if _, twice := drawn[m[1]]; twice {
			t.Errorf("%s is drawn twice", m[1])
		}
		drawn[m[1]] = i
	}
	for pkg, uses := range imports {
		at, ok := drawn[pkg]
		if !ok {
			t.Errorf("%s isn't drawn", pkg)
			continue
		}
		for _, of := range uses {
			if above, ok := drawn[of]; ok && above >= at {
				t.Errorf("%s imports %s, which is drawn below it", pkg, of)
			}
		}
	}
	for pkg := range drawn {
		if _, ok := imports[pkg]; !ok {
			t.Errorf("%s is drawn, and isn't there", pkg)
		}
	}
}

// sourceRow is an outside source and the tests that are named for it.
type sourceRow struct {
	source string
	tests  []string
}

// sourceRows reads the table of outside sources.
func sourceRows(t *testing.T) []sourceRow {
	t.Helper()
	var rows []sourceRow
	for _, m := range regexp.MustCompile(`(?m)^\| (.*) \| (.*) \| (.*) \|$`).FindAllStringSubmatch(developers(t, "What is checked against what"), -1) {
		if m[1] == "source" {
			continue
		}
		row := sourceRow{source: m[1]}
		for _, name := range strings.Split(m[3], ", ") {
			row.tests = append(row.tests, strings.Trim(name, "`"))
		}
		rows = append(rows, row)
	}
	if len(rows) < 20 {
		t.Fatalf("%d sources", len(rows))
	}
	return rows
}

// filesOfTests returns the text of every file of tests, by its path.
func filesOfTests(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir("../..", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(name, "_test.go") {
			return err
		}
		text, err := os.ReadFile(name)
		all[filepath.ToSlash(name)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

var testFunction = regexp.MustCompile(`(?m)^func ((?:Test|Fuzz)\w*)\(`)

// Every test that the table of outside sources names is there, and a file of tests that names
// one of these sources has a test in its row.
func TestSourcesAreTested(t *testing.T) {
	const here = "/developers_test.go"
	files, rows := filesOfTests(t), sourceRows(t)
	in := map[string][]string{} // files by the names of their tests
	for name, text := range files {
		for _, m := range testFunction.FindAllStringSubmatch(text, -1) {
			in[m[1]] = append(in[m[1]], name)
		}
	}
	for _, row := range rows {
		for _, name := range row.tests {
			if in[name] == nil {
				t.Errorf("%s: there is no %s", row.source, name)
			}
		}
	}
	for _, source := range []string{
		"Handbook", "MathWorld", "do Carmo", "Directive 69", "ISO 216", "ISO 32000", "simplefeatures", "Stack Exchange", "ceemrr",
		"NCERT", "NIST", "SVG 1.1", "SVG 2", "CSS 2.1", "CSS Values", "Pappus", "go-toml", "axe-core",
	} {
		told := map[string]bool{}
		for _, row := range rows {
			if strings.Contains(row.source, source) {
				for _, name := range row.tests {
					for _, file := range in[name] {
						told[file] = true
					}
				}
			}
		}
		for file, text := range files {
			named := strings.Contains(strings.ReplaceAll(text, "DTD SVG 1.1", ""), source) && testFunction.MatchString(text)
			if named && !told[file] && !strings.HasSuffix(file, here) {
				t.Errorf("%s names %s; DEVELOPERS.md has no test of it in that row", file, source)
			}
		}
	}
}

// direct returns the modules that go.mod requires directly.
func direct(t *testing.T) []string {
	t.Helper()
	text, err := os.ReadFile("../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, block := range regexp.MustCompile(`(?ms)^require \((.*?)^\)`).FindAllStringSubmatch(string(text), -1) {
		for _, m := range regexp.MustCompile(`(?m)^\t(\S+) \S+$`).FindAllStringSubmatch(block[1], -1) {
			all = append(all, m[1])
		}
	}
	return all
}

// Every module that go.mod requires directly stands in the table, with a reason and the licence
// that its text is.
func TestWhatItLeansOn(t *testing.T) {
	marks := map[string]string{
		"MIT": "Permission is hereby granted, free of charge", "BSD-3-Clause": "Neither the name of", "Apache-2.0": "Apache License",
	}
	licences := map[string]string{}
	for _, m := range regexp.MustCompile("(?m)^\\| `(\\S+)` \\| (.{10,}) \\| (.+) \\|$").FindAllStringSubmatch(developers(t, "What it leans on"), -1) {
		licences[m[1]] = m[3]
	}
	required := direct(t)
	if told := slices.Sorted(maps.Keys(licences)); !slices.Equal(told, slices.Sorted(slices.Values(required))) {
		t.Fatalf("told %q\nrequired %q", told, required)
	}
	for _, name := range required {
		out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", name).Output()
		if err != nil {
			t.Fatal(err)
		}
		texts, err := filepath.Glob(filepath.Join(strings.TrimSpace(string(out)), "[Ll][Ii][Cc][Ee][Nn][Ss][Ee]*"))
		if err != nil || len(texts) == 0 {
			t.Errorf("%s has no licence: %v", name, err)
			continue
		}
		text, err := os.ReadFile(texts[0])
		if mark := marks[licences[name]]; err != nil || mark == "" || !strings.Contains(strings.Join(strings.Fields(string(text)), " "), mark) {
			t.Errorf("%s is told to be under %s: %v", name, licences[name], err)
		}
	}
}
