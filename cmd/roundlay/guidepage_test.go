package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// guidePage is one page of the guide, or the README.
type guidePage struct {
	name   string // its path from here
	lines  []string
	blocks []fenced
}

// fenced is a block between two lines of three backticks.
type fenced struct {
	info     string // what stands behind the first three backticks
	from, to int    // its lines within the page, without those two
}

// readme is where the README lies.
const readme = "../../README.md"

// guidePages reads the README and every page of the guide.
func guidePages(t *testing.T) []*guidePage {
	t.Helper()
	names, err := filepath.Glob("guide/*.md")
	if err != nil {
		t.Fatal(err)
	}
	var pages []*guidePage
	for _, name := range append([]string{readme}, names...) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		p := &guidePage{name: filepath.ToSlash(name), lines: strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")}
		if !p.findBlocks() {
			t.Errorf("%s: a block has no end", p.name)
		}
		pages = append(pages, p)
	}
	return pages
}

// findBlocks finds the page's fenced blocks, and says whether the last of them ends.
func (p *guidePage) findBlocks() bool {
	p.blocks = nil
	open := false
	for i, line := range p.lines {
		info, fence := strings.CutPrefix(line, "```")
		switch {
		case fence && open:
			p.blocks[len(p.blocks)-1].to = i
			open = false
		case fence:
			p.blocks = append(p.blocks, fenced{info: info, from: i + 1})
			open = true
		}
	}
	return !open
}

// text returns a block's lines.
func (p *guidePage) text(b fenced) []string { return p.lines[b.from:b.to] }

// prose returns the page's lines with those of its blocks emptied.
func (p *guidePage) prose() []string {
	prose := append([]string(nil), p.lines...)
	for _, b := range p.blocks {
		for i := b.from - 1; i <= b.to; i++ {
			prose[i] = ""
		}
	}
	return prose
}
