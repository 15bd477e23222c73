package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// What the guide's page about the page sets in bold stands in the page's own files, as a text
// in quotes or the whole of an element.
func TestGuideLabels(t *testing.T) {
	files, err := filepath.Glob("../desk/page/*")
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, file := range files {
		if ext := filepath.Ext(file); ext != ".js" && ext != ".html" {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	page, err := os.ReadFile("guide/page.md")
	if err != nil {
		t.Fatal(err)
	}
	labels := regexp.MustCompile(`\*\*([^*]+)\*\*`).FindAllStringSubmatch(string(page), -1)
	for _, l := range labels {
		if text := all.String(); !strings.Contains(text, `"`+l[1]+`"`) && !strings.Contains(text, ">"+l[1]+"<") {
			t.Errorf("the page has no %q", l[1])
		}
	}
	if len(labels) < 10 {
		t.Errorf("only %d are named", len(labels))
	}
}
