package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

func TestClicked(t *testing.T) {
	manager := surroundings{system: "linux", input: null, output: socket, desktop: true}
	for what, c := range map[string]struct {
		with func(s *surroundings)
		want bool
	}{
		"a file manager with a log":         {func(*surroundings) {}, true},
		"one that throws words away":        {func(s *surroundings) { s.output = null }, true},
		"a script that wants the words":     {func(s *surroundings) { s.output = other }, false},
		"a script that gives something":     {func(s *surroundings) { s.input = other }, false},
		"a terminal":                        {func(s *surroundings) { s.terminals, s.input, s.output = 3, other, other }, false},
		"a terminal for errors only":        {func(s *surroundings) { s.terminals = 1 }, false},
		"a job run at night":                {func(s *surroundings) { s.desktop = false }, false},
		"Windows, a console of its own":     {func(s *surroundings) { s.system, s.ownConsole, s.terminals = "windows", true, 3 }, true},
		"Windows, a shell's console":        {func(s *surroundings) { s.system, s.terminals = "windows", 3 }, false},
		"Windows, a script without console": {func(s *surroundings) { s.system = "windows" }, false},
		"a Mac's terminal, by its path":     {func(s *surroundings) { s.system, s.terminals, s.name = "darwin", 3, "/Users/a/roundlay" }, true},
		"a Mac's terminal, by its name":     {func(s *surroundings) { s.system, s.terminals, s.name = "darwin", 3, "roundlay" }, false},
		"a Mac's script":                    {func(s *surroundings) { s.system, s.name = "darwin", "/Users/a/roundlay" }, false},
	} {
		s := manager
		c.with(&s)
		if got := s.clicked(); got != c.want {
			t.Errorf("%s: clicked is %v, want %v", what, got, c.want)
		}
	}
}

// What a stream is, by streams of every sort that a test can have.
func TestKindOfStream(t *testing.T) {
	nothing, err := os.Open(os.DevNull)
	if err != nil {
		t.Fatal(err)
	}
	defer nothing.Close()
	file, err := os.Create(filepath.Join(t.TempDir(), "log"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	defer write.Close()
	for _, c := range []struct {
		what string
		way  any
		want stream
	}{{"nothing", nothing, null}, {"a file", file, other}, {"a pipe", write, other}, {"no file", &bytes.Buffer{}, other}} {
		if got := kindOf(c.way); got != c.want {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}
