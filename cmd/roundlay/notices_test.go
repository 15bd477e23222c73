package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// notices runs .ci/notices for a package of a module.
func notices(t *testing.T, root, of string) (string, error) {
	t.Helper()
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("bash is not here")
	}
	script, err := filepath.Abs("../../.ci/notices")
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(bash, script, "linux/amd64:"+of)
	c.Env = append(os.Environ(), "GOFLAGS=-tags=latex", "ROUNDLAY_ROOT="+root)
	out, err := c.CombinedOutput()
	return string(out), err
}

// What a binary holds can be passed on: every module has its licence, and none that asks for
// more than to be named.
func TestNotices(t *testing.T) {
	out, err := notices(t, "../..", "./cmd/roundlay")
	if err != nil {
		t.Fatalf("%v:\n%s", err, out)
	}
	for _, want := range []string{
		"\ngithub.com/tdewolff/canvas v", "\ngonum.org/v1/gonum v", "\ngithub.com/golang/freetype v", "\nGo, its standard library and runtime go1.",
		"Copyright 2009 The Go Authors", "Bigelow & Holmes", "copyright © 2010 The FreeType Project",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("the notices lack %q", want)
		}
	}
	for _, module := range []string{"scanx", "textprocessing", "star-tex", "latin-modern", "xgb"} {
		if strings.Contains(out, module) {
			t.Errorf("the binary holds %s", module)
		}
	}
}

// A module without a licence, or under one that asks for more, stops the release.
func TestNoticesRefuse(t *testing.T) {
	for what, c := range map[string]struct{ licence, want string }{
		"none":       {"", "has no licence file"},
		"a GNU one":  {"GNU LESSER GENERAL PUBLIC LICENSE\nVersion 2.1\n", "is under a GNU licence"},
		"a free one": {"Permission is hereby granted, free of charge\n", ""},
	} {
		root := t.TempDir()
		for name, text := range map[string]string{
			"own/go.mod":    "module own\n\ngo 1.26\n\nrequire example.org/dep v1.0.0\n\nreplace example.org/dep => ../dep\n",
			"own/own.go":    "package main\n\nimport _ \"example.org/dep\"\n\nfunc main() {}\n",
			"dep/go.mod":    "module example.org/dep\n\ngo 1.26\n",
			"dep/dep.go":    "package dep\n",
			"dep/COPYING.x": c.licence,
		} {
			if name == "dep/COPYING.x" && c.licence == "" {
				continue
			}
			file := filepath.Join(root, filepath.FromSlash(name))
			if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		out, err := notices(t, filepath.Join(root, "own"), ".")
		if (err == nil) != (c.want == "") || !strings.Contains(out, c.want) {
			t.Errorf("%s: %v, and it says\n%.300s", what, err, out)
		}
	}
}
