package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/creack/pty"
)

const twoBlanks = `title = "Two"
length = "mm"
[[blank]]
name = "a"
station = [{height=0, across=80, wall=5}, {height=100, across=80, wall=5}]
[[blank]]
name = "b"
station = [{height=0, across=81, wall=5}, {height=100, across=81, wall=5}]
[[wheel]]
name = "mitre"
edge = "mitre"
across = 100
thick = 6
angle = 90
[layout]
repeats = 4
[[motif]]
kind = "ring"
wheel = "mitre"
depth = 0.5
height = 0.2
width = 1
rings = 1
lines = 1
`

// On a terminal a line shows how many blanks are done, and is gone at the
// end; nothing of it comes to a file.
func TestProgress(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "two.toml")
	if err := os.WriteFile(file, []byte(twoBlanks), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, command := range []string{"sheet", "wrap"} {
		screen, terminal, err := pty.Open()
		if err != nil {
			t.Skip("no terminal can be opened here: ", err)
		}
		seen := make(chan string)
		go func() {
			var all bytes.Buffer
			all.ReadFrom(screen) // ends with an error when the terminal is closed
			seen <- all.String()
		}()
		var out bytes.Buffer
		status := run([]string{command, file, "--out", filepath.Join(dir, command) + "/"}, strings.NewReader(""), &out, terminal)
		terminal.Close()
		told := <-seen
		screen.Close()
		if status != exitClear {
			t.Errorf("%s: status %d: %s", command, status, told)
		}
		first, rest, found := strings.Cut(told, ": 1 of 2, ")
		if !found || !strings.Contains(rest, ": 2 of 2, ") || !strings.HasPrefix(first, home) {
			t.Errorf("%s: a terminal was told %q", command, told)
		}
		if lines := strings.Split(strings.TrimRight(told, "\r\n"), home); !strings.HasSuffix(told, home+erase) {
			t.Errorf("%s: the line stays: %q", command, lines)
		}

		log, err := os.Create(filepath.Join(dir, command+".log"))
		if err != nil {
			t.Fatal(err)
		}
		run([]string{command, file, "--out", filepath.Join(dir, command) + "/", "--force"}, strings.NewReader(""), &out, log)
		log.Close()
		if text, _ := os.ReadFile(log.Name()); len(text) > 0 {
			t.Errorf("%s: a file was told %q", command, text)
		}
	}
}
