package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// docLink is a link to a name of the same package, as go doc has them: [Blank.Wall].
var docLink = regexp.MustCompile(`\[\*?([A-Z]\w*(?:\.[A-Z]\w*)?)\]`)

// Every link in a doc comment leads to a name that is there.
func TestDocLinks(t *testing.T) {
	links := 0
	err := filepath.WalkDir("../..", func(dir string, entry fs.DirEntry, err error) error {
		if err != nil || !entry.IsDir() {
			return err
		}
		if name := entry.Name(); name == "testdata" || len(name) > 2 && name[0] == '.' {
			return fs.SkipDir
		}
		names, docs := map[string]bool{}, map[string]string{}
		files, err := os.ReadDir(dir)
		if err != nil {
			return err
		}
		for _, f := range files {
			if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
				continue
			}
			path := filepath.Join(dir, f.Name())
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
			if err != nil {
				return err
			}
			declared(file, names)
			for _, c := range file.Comments {
				docs[path] += c.Text()
			}
		}
		for path, text := range docs {
			for _, link := range docLink.FindAllStringSubmatch(text, -1) {
				links++
				if !names[link[1]] {
					t.Errorf("%s: [%s] leads nowhere", path, link[1])
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if links < 50 {
		t.Errorf("only %d links", links)
	}
}

// declared adds the names that a file declares at its top, methods and fields after
// their types'.
func declared(file *ast.File, names map[string]bool) {
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Recv == nil {
				names[d.Name.Name] = true
				continue
			}
			of := d.Recv.List[0].Type
			if p, ok := of.(*ast.StarExpr); ok {
				of = p.X
			}
			if id, ok := of.(*ast.Ident); ok {
				names[id.Name+"."+d.Name.Name] = true
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.ValueSpec:
					for _, n := range s.Names {
						names[n.Name] = true
					}
				case *ast.TypeSpec:
					names[s.Name.Name] = true
					if st, ok := s.Type.(*ast.StructType); ok {
						for _, f := range st.Fields.List {
							for _, n := range f.Names {
								names[s.Name.Name+"."+n.Name] = true
							}
						}
					}
				}
			}
		}
	}
}
