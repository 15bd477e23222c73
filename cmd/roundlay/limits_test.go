package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// limitName is how a bound is called in the code.
var limitName = regexp.MustCompile(`^(max|most|Max|Most)[A-Z]`)

// bounds returns the constants of the code that are named as bounds, by folder and name.
func bounds(t *testing.T) []string {
	t.Helper()
	var all []string
	err := filepath.WalkDir("../..", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, decl := range file.Decls {
			of, ok := decl.(*ast.GenDecl)
			if !ok || of.Tok != token.CONST {
				continue
			}
			for _, spec := range of.Specs {
				for _, id := range spec.(*ast.ValueSpec).Names {
					if limitName.MatchString(id.Name) {
						folder := filepath.ToSlash(strings.TrimPrefix(filepath.Dir(name), filepath.Join("..", "..")+string(filepath.Separator)))
						all = append(all, folder+"."+id.Name)
					}
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// tick is a name in a table.
var tick = regexp.MustCompile("`([^`]+)`")

// Every constant named as a bound stands in one of the two tables of limits, once, and nothing else does;
// and every test that the first one names is there.
func TestLimitsAreListed(t *testing.T) {
	text, err := os.ReadFile("limits.md")
	if err != nil {
		t.Fatal(err)
	}
	var listed []string
	tests := map[string]bool{}
	for _, file := range filesOfTests(t) {
		for _, m := range testFunction.FindAllStringSubmatch(file, -1) {
			tests[m[1]] = true
		}
	}
	for _, m := range regexp.MustCompile("(?m)^\\| (`.*`) \\| (.+) \\| (.+) \\| (.+) \\|$").FindAllStringSubmatch(string(text), -1) {
		for _, name := range tick.FindAllStringSubmatch(m[1], -1) {
			listed = append(listed, name[1])
		}
		for _, name := range tick.FindAllStringSubmatch(m[4], -1) {
			if !tests[name[1]] {
				t.Errorf("%s: there is no %s", m[1], name[1])
			}
		}
	}
	for _, m := range regexp.MustCompile("(?m)^\\| (`.*`) \\| ([^|]+) \\|$").FindAllStringSubmatch(string(text), -1) {
		for _, name := range tick.FindAllStringSubmatch(m[1], -1) {
			listed = append(listed, name[1])
		}
	}
	there := bounds(t)
	if len(there) < 60 {
		t.Fatalf("%d bounds", len(there))
	}
	for _, name := range there {
		if n := len(slices.DeleteFunc(slices.Clone(listed), func(other string) bool { return other != name })); n != 1 {
			t.Errorf("%s stands in the tables %d times", name, n)
		}
	}
	for _, name := range listed {
		if !slices.Contains(there, name) {
			t.Errorf("%s is listed, and isn't there", name)
		}
	}
}
