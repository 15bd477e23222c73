package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
)

var (
	code      = regexp.MustCompile("`([^`]+)`")
	wordFlag  = regexp.MustCompile(`(?:^|[\s\[(])--([a-z][a-z-]*)`)
	onCommand = regexp.MustCompile(`^roundlay ([a-z-]+)`)
)

// Every command and every flag that the guide names is there.
func TestGuideNamesWhatIs(t *testing.T) {
	of, all := flagsOf(t)
	named := 0
	for _, p := range guidePages(t) {
		for i, line := range p.prose() {
			for _, m := range code.FindAllStringSubmatch(line, -1) {
				flags := all
				if c := onCommand.FindStringSubmatch(m[1]); c != nil {
					if of[c[1]] == nil && c[1] != "help" {
						t.Errorf("%s:%d: there is no command %q", p.name, i+1, c[1])
						continue
					}
					flags = of[c[1]]
				}
				for _, f := range wordFlag.FindAllStringSubmatch(m[1], -1) {
					named++
					if !flags[f[1]] {
						t.Errorf("%s:%d: `%s`: there is no --%s", p.name, i+1, m[1], f[1])
					}
				}
			}
		}
	}
	if named < 50 {
		t.Errorf("only %d flags are named", named)
	}
}

// The page of commands names every command, and with it every flag that it has.
func TestGuideNamesAll(t *testing.T) {
	text, err := os.ReadFile("guide/commands.md")
	if err != nil {
		t.Fatal(err)
	}
	of, _ := flagsOf(t)
	for _, c := range commands() {
		_, section, found := strings.Cut(string(text), fmt.Sprintf("\n$ roundlay %s --help\n", c.name))
		if !found {
			t.Errorf("the page lacks %s", c.name)
		}
		section, _, _ = strings.Cut(section, "\n```")
		for f := range of[c.name] {
			if f != "help" && !strings.Contains(section, "--"+f) {
				t.Errorf("the page lacks --%s of %s", f, c.name)
			}
		}
	}
}

// flagsOf returns each command's flags, and those of all.
func flagsOf(t *testing.T) (of map[string]map[string]bool, all map[string]bool) {
	t.Helper()
	of, all = map[string]map[string]bool{}, map[string]bool{"help": true, "version": true}
	for _, c := range commands() {
		of[c.name] = map[string]bool{"help": true}
		for _, m := range helped.FindAllStringSubmatch(printed(t, c.name, "--help"), -1) {
			of[c.name][m[1]], all[m[1]] = true, true
		}
	}
	return of, all
}
