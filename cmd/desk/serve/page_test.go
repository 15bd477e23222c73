package serve

import (
	"io/fs"
	"path"
	"regexp"
	"strings"
	"testing"

	"roundlay/cmd/desk/page"
)

// elsewhere is an address that is not the page's own: of a scheme that is fetched, or
// without one, in quotes or brackets.
var elsewhere = regexp.MustCompile(`(?i)\b(https?|wss?|ftp)://[^\s"'<>)]*|["'(=]\s*//[a-z0-9][^\s"'<>)]*`)

// names are addresses that name a kind of document, and are never fetched.
var names = regexp.MustCompile(`^http://www\.w3\.org/(2000/svg|1999/xhtml|1999/xlink|1998/Math/MathML)$`)

// inline is what the policy forbids in a document.
var inline = regexp.MustCompile(`(?i)<script(\s[^>]*)?>\s*[^<\s]|<style|<[^>]*\sstyle\s*=|<[^>]*\son[a-z]+\s*=|<(iframe|object|embed|base)\b|javascript:`)

// faults returns what in a file of the page leads elsewhere, or the policy forbids.
func faults(name, text string) []string {
	var found []string
	for _, address := range elsewhere.FindAllString(text, -1) {
		if !names.MatchString(address) {
			found = append(found, address)
		}
	}
	if path.Ext(name) == ".html" {
		found = append(found, inline.FindAllString(text, -1)...)
	}
	if _, known := contentTypes()[path.Ext(name)]; !known {
		found = append(found, "an ending that is not served")
	}
	return found
}

// The page takes nothing from elsewhere, and nothing in it is forbidden by its policy.
func TestNoExternalAddress(t *testing.T) {
	count := 0
	err := fs.WalkDir(page.Files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := fs.ReadFile(page.Files, name)
		for _, what := range faults(name, string(data)) {
			t.Errorf("%s has %q", name, what)
		}
		count++
		return err
	})
	if err != nil || count == 0 {
		t.Errorf("%d files, %v", count, err)
	}
	s := open(t, func(c *Config) { c.Page = page.Files })
	if got := s.ask("GET", "/", ""); got.status != 200 || !strings.HasPrefix(got.header.Get("Content-Type"), "text/html") || !strings.Contains(got.text, "<!doctype html>") {
		t.Errorf("%d, %q", got.status, got.text)
	}
}

// The scan finds what it is for.
func TestFaults(t *testing.T) {
	for _, text := range []string{
		`import x from "https://cdn.example/x.js"`, `fetch('//evil.example/')`, `url(http://fonts.example/a.woff)`, `<img src=//evil.example/a.png>`, `new WebSocket("ws://x.example")`,
		`<script>run()</script>`, `<p style="color: red">`, `<button onclick="go()">`, `<style>p {}</style>`, `<a href="javascript:go()">`, `<base href="/x">`, `http://www.w3.org/2000/svg.evil.example/`,
	} {
		if len(faults("a.html", text)) == 0 {
			t.Errorf("nothing is found in %s", text)
		}
	}
	for _, text := range []string{`<script type="module" src="main.js"></script>`, `createElementNS("http://www.w3.org/2000/svg", "path")`, "// a comment\nlet a = 1 // another", `<link rel="stylesheet" href="look.css">`, `a //b`} {
		if found := faults("a.html", text); len(found) > 0 {
			t.Errorf("%q is found in %s", found, text)
		}
	}
}
