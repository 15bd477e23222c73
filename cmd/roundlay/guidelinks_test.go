package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"
)

// linked is where a page leads: [words](there) or a picture's source.
var linked = regexp.MustCompile(`\]\(([^)\s]+)\)|src="([^"]+)"`)

// Every link on a page leads to a file that is there and, where it names one, to a heading
// of it. Every page can be come to from the README.
func TestGuideLinks(t *testing.T) {
	links, come := 0, map[string]bool{}
	for _, p := range guidePages(t) {
		for i, line := range p.prose() {
			for _, m := range linked.FindAllStringSubmatch(line, -1) {
				to, heading, _ := strings.Cut(m[1]+m[2], "#")
				if strings.Contains(to, ":") {
					continue
				}
				links++
				path := filepath.Join(filepath.Dir(p.name), filepath.FromSlash(to))
				if to == "" {
					path = p.name
				}
				if p.name == readme {
					come[filepath.Base(path)] = true
				}
				text, err := os.ReadFile(path)
				if info, _ := os.Stat(path); err != nil && (info == nil || !info.IsDir()) {
					t.Errorf("%s:%d: there is no %s", p.name, i+1, to)
				} else if heading != "" && !headings(string(text))[heading] {
					t.Errorf("%s:%d: %s has no heading #%s", p.name, i+1, path, heading)
				}
			}
		}
	}
	if links < 50 {
		t.Errorf("only %d links", links)
	}
	for _, p := range guidePages(t)[1:] {
		if !come[filepath.Base(p.name)] {
			t.Errorf("the README doesn't lead to %s", p.name)
		}
	}
}

// headings returns the headings of a page as links name them: in small letters, with
// hyphens for spaces and without signs. So do the common readers of Markdown (from memory).
func headings(text string) map[string]bool {
	named := map[string]bool{}
	for _, line := range strings.Split(text, "\n") {
		words, ok := strings.CutPrefix(strings.TrimLeft(line, "#"), " ")
		if !ok || !strings.HasPrefix(line, "#") {
			continue
		}
		named[strings.Map(func(r rune) rune {
			switch {
			case r == ' ':
				return '-'
			case unicode.IsLetter(r), unicode.IsDigit(r), r == '-', r == '_':
				return unicode.ToLower(r)
			}
			return -1
		}, words)] = true
	}
	return named
}

// A page is short enough to be read at a sitting. What is made from the code's own
// descriptions is as long as they are.
func TestGuideLength(t *testing.T) {
	for _, p := range guidePages(t) {
		most := 250
		switch filepath.Base(p.name) {
		case "README.md":
			most = 150
		case "job.md", "json.md":
			continue
		}
		if n := len(p.lines); n >= most {
			t.Errorf("%s has %d lines, %d are too many", p.name, n, most)
		}
	}
}

// Whoever goes to the wheel by a page has read the cautions on it.
func TestCautions(t *testing.T) {
	for _, name := range []string{readme, "guide/worked-set.md", "guide/paper.md", "guide/bench.md", "guide/groove.md", "guide/hand.md", "guide/base.md", "guide/curved.md", "guide/sets.md", "guide/drawings.md"} {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Error(err)
			continue
		}
		text := strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(string(data), "\n> ", " ")), " "))
		for _, caution := range []string{"wet", "dust", "eye protection", "electricity", "annealed", "local rules", "qualified advice", "geometry", "promise of strength"} {
			if !strings.Contains(text, caution) {
				t.Errorf("%s: no word of %q", name, caution)
			}
		}
	}
}
