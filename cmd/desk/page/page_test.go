package page

import (
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing"

	"roundlay/pattern/job"
)

// files returns the page's files by name.
func files(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := fs.WalkDir(Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(Files, name)
		out[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var (
	imported = regexp.MustCompile(`(?m)^(?:import|export)\b[^;]*?from "([^"]+)"`)
	linked   = regexp.MustCompile(`(?:href|src)="([^"]+)"`)
	exported = regexp.MustCompile(`(?m)^export (?:async )?(?:function|class|const) (\w+)`)
	named    = regexp.MustCompile(`(?m)^import \{([^}]*)\} from "\./([^"]+)"`)
)

// TestLinks checks that every file that the page or a module names is there.
func TestLinks(t *testing.T) {
	all := files(t)
	for name, text := range all {
		found := imported
		if name == "index.html" {
			found = linked
		}
		for _, m := range found.FindAllStringSubmatch(text, -1) {
			to := m[1]
			if strings.HasPrefix(to, "#") || to == "data:," {
				continue
			}
			if _, ok := all[path.Clean(to)]; !ok {
				t.Errorf("%s names %q, which is not there", name, to)
			}
		}
	}
}

// TestImports checks that a module exports what another one imports from it: without a
// build step nothing else says so before the page is opened.
func TestImports(t *testing.T) {
	all := files(t)
	has := map[string]bool{}
	for name, text := range all {
		for _, m := range exported.FindAllStringSubmatch(text, -1) {
			has[name+" "+m[1]] = true
		}
	}
	n := 0
	for name, text := range all {
		for _, m := range named.FindAllStringSubmatch(text, -1) {
			for _, what := range strings.Split(m[1], ",") {
				what, _, _ = strings.Cut(strings.TrimSpace(what), " as ")
				if what != "" && !has[m[2]+" "+what] {
					t.Errorf("%s imports %s from %s, which does not export it", name, what, m[2])
				}
				n++
			}
		}
	}
	if n == 0 {
		t.Error("no import was found")
	}
}

// TestReached checks that no module lies about that nothing loads.
func TestReached(t *testing.T) {
	all := files(t)
	loads := map[string]bool{"index.html": true}
	for name, text := range all {
		found := imported
		if name == "index.html" {
			found = linked
		}
		for _, m := range found.FindAllStringSubmatch(text, -1) {
			loads[path.Clean(m[1])] = true
		}
	}
	for name := range all {
		if !loads[name] {
			t.Errorf("%s is loaded by nothing", name)
		}
	}
}

// TestSelfContained checks what the server's policy and the page's promise ask: no
// address but the page's own, no script or style in a document or an attribute, and no
// text put in as HTML.
func TestSelfContained(t *testing.T) {
	for name, text := range files(t) {
		text = strings.ReplaceAll(text, `"http://www.w3.org/2000/svg"`, "")
		text = strings.ReplaceAll(text, `"http://www.w3.org/1999/xlink"`, "")
		for what, bad := range map[string]*regexp.Regexp{
			"an address":           regexp.MustCompile(`(?i)\b(?:https?|wss?):/|["'(]//\w`),
			"an import of a style": regexp.MustCompile(`@import`),
			"text as HTML":         regexp.MustCompile(`\b(?:innerHTML|outerHTML|insertAdjacentHTML|document\.write)\b`),
			"script from text":     regexp.MustCompile(`\beval\(|\bnew Function\b`),
			"a style attribute":    regexp.MustCompile(`\sstyle="|[{,]\s*style: |setAttribute\("style"`),
			"a style element":      regexp.MustCompile(`<style`),
			"an inline listener":   regexp.MustCompile(`<[^>]+\son\w+="`),
		} {
			if m := bad.FindString(text); m != "" {
				t.Errorf("%s has %s: %q", name, what, m)
			}
		}
		if name == "index.html" && regexp.MustCompile(`<script[^>]*>[^<]`).MatchString(text) {
			t.Errorf("%s has an inline script", name)
		}
	}
}

// TestSize holds the files to the length that the rest of the code keeps.
func TestSize(t *testing.T) {
	const most = 400
	for name, text := range files(t) {
		if n := strings.Count(text, "\n"); n > most {
			t.Errorf("%s has %d lines; %d are the most", name, n, most)
		}
	}
}

// TestControls checks that every sort of key that a job's tables have is given a control by
// its name: one that isn't would be a box to type in, which is right for few.
func TestControls(t *testing.T) {
	text := files(t)["controls.js"]
	_, list, _ := strings.Cut(text, "const controls = {")
	list, _, _ = strings.Cut(list, "};")
	named := map[string]bool{}
	for _, m := range regexp.MustCompile(`(\w+)(?::|,)`).FindAllStringSubmatch(list, -1) {
		named[m[1]] = true
	}
	for _, table := range job.Tables() {
		for _, key := range table.Keys {
			if key.Sort != job.OfTables && !named[string(key.Sort)] {
				t.Errorf("%s.%s is of the sort %s, which controls.js doesn't name", table.Name, key.Name, key.Sort)
			}
		}
	}
	if len(named) < 10 {
		t.Errorf("only %d sorts were found", len(named))
	}
}
