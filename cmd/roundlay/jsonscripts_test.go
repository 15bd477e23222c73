package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"
)

// scriptsJSON runs the commands that report in JSON on the jobs of the gallery and on all jobs
// of the scripts that can be laid out.
func scriptsJSON(t *testing.T) []reported {
	t.Helper()
	var all []reported
	folders := []string{"../../testdata/gallery"}
	scripts, err := filepath.Glob("../../testdata/scripts/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for _, script := range scripts {
		archive, err := txtar.ParseFile(script)
		if err != nil {
			t.Fatal(err)
		}
		folder := t.TempDir()
		for _, file := range archive.Files {
			name := filepath.Join(folder, file.Name)
			if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, file.Data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		folders = append(folders, folder)
	}
	for _, folder := range folders {
		jobs, err := filepath.Glob(filepath.Join(folder, "*.toml"))
		if err != nil {
			t.Fatal(err)
		}
		for _, job := range jobs {
			all = append(all, jobJSON(t, job)...)
		}
	}
	if len(all) < 150 {
		t.Errorf("only %d outputs", len(all))
	}
	return all
}

// jobJSON is what is reported of one job; nothing where it is refused. A search takes long, and
// is done for some jobs alone.
func jobJSON(t *testing.T, job string) []reported {
	t.Helper()
	asked := [][]string{{"check", "--json", job}, {"plan", "--json", job}, {"divide", "--json", job}}
	if slices.Contains([]string{"bought.toml", "deep.toml"}, filepath.Base(job)) {
		asked = append(asked, []string{"fit", "--json", job}, []string{"fit", "--rack", "--json", job})
	}
	var all []reported
	for _, args := range asked {
		var out, wrong bytes.Buffer
		if run(args, strings.NewReader(""), &out, &wrong) != exitNotDone {
			all = append(all, reported{strings.Join(args, " "), schemaOf(t, args), out.Bytes()})
		}
	}
	return all
}
