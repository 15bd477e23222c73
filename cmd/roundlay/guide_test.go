package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// Every page of the guide does what it shows: its files are written and its commands run,
// in order and in a folder of its own, and what they print is what stands there. The
// pictures it shows are those that its commands make. All is made anew under
// ROUNDLAY_UPDATE=1.
//
// A page's blocks are of these kinds:
//
//	console            "$ roundlay …", each with what it prints
//	LANGUAGE file=NAME a file
//	LANGUAGE add=NAME  lines at the end of a file
//	diff file=NAME     lines of a file, and those that take their place
func TestGuide(t *testing.T) {
	sh := program(t, "sh")
	if runtime.GOOS == "windows" {
		t.Skip("no program can press Ctrl-C for another there")
	}
	made, done := map[string]bool{}, 0
	pages := guidePages(t)
	for _, p := range pages {
		t.Run(filepath.Base(p.name), func(t *testing.T) {
			r := &reader{T: t, page: p, folder: t.TempDir(), sh: sh}
			r.read()
			if filepath.Base(p.name) == "worked-set.md" {
				r.sheetPicture("cups-sheet.svg", "wider.toml")
			}
			r.pictures(made)
			done++
		})
	}
	kept, err := filepath.Glob("guide/*.svg")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range kept {
		if done == len(pages) && !made[filepath.Base(path)] {
			t.Errorf("%s: no page makes it", path)
		}
	}
}

// reader does what a page says.
type reader struct {
	*testing.T
	page   *guidePage
	folder string
	sh     string
}

// read goes through the page's blocks, and writes it anew where that is asked for.
func (r *reader) read() {
	var now []string // the page as it is to be
	done := 0
	for _, b := range r.page.blocks {
		now = append(now, r.page.lines[done:b.from]...)
		now = append(now, r.block(b)...)
		done = b.to
	}
	now = append(now, r.page.lines[done:]...)
	if slices.Equal(now, r.page.lines) || r.Failed() {
		return
	}
	if err := os.WriteFile(r.page.name, []byte(strings.Join(now, "\n")+"\n"), 0o666); err != nil {
		r.Fatal(err)
	}
}

// block does what one block says, and returns what it is to be.
func (r *reader) block(b fenced) []string {
	text := r.page.text(b)
	language, name, _ := strings.Cut(b.info, " ")
	verb, name, _ := strings.Cut(name, "=")
	at := fmt.Sprintf("%s:%d", r.page.name, b.from)
	path := filepath.Join(r.folder, filepath.Base(name))
	switch {
	case language == "console":
		return r.console(at, text)
	case language == "diff" && verb == "file":
		r.change(at, path, text)
	case verb == "file":
		r.write(path, strings.Join(text, "\n")+"\n")
	case verb == "add":
		r.write(path, r.has(path)+"\n"+strings.Join(text, "\n")+"\n")
	case language == "toml" || language == "":
		r.Errorf("%s: this block is neither commands nor a file", at)
	}
	return text
}

func (r *reader) has(path string) string {
	text, err := os.ReadFile(path)
	if err != nil {
		r.Fatal(err)
	}
	return string(text)
}

func (r *reader) write(path, text string) {
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		r.Fatal(err)
	}
}

// change puts lines with a plus in the place of those with a minus.
func (r *reader) change(at, path string, text []string) {
	var from, to strings.Builder
	for _, line := range text {
		old, gone := strings.CutPrefix(line, "-")
		added, come := strings.CutPrefix(line, "+")
		switch {
		case gone:
			from.WriteString(old + "\n")
		case come:
			to.WriteString(added + "\n")
		default: // a line that stays
			from.WriteString(line[1:] + "\n")
			to.WriteString(line[1:] + "\n")
		}
	}
	was := r.has(path)
	if n := strings.Count(was, from.String()); n != 1 {
		r.Fatalf("%s: %d times in the file", at, n)
	}
	r.write(path, strings.Replace(was, from.String(), to.String(), 1))
}

// console runs the commands of a block and returns what it is to be.
func (r *reader) console(at string, text []string) []string {
	var now []string
	for i := 0; i < len(text); {
		command, ok := strings.CutPrefix(text[i], "$ ")
		if !ok {
			r.Fatalf("%s: %q is no command", at, text[i])
		}
		end := i + 1
		for end < len(text) && !strings.HasPrefix(text[end], "$ ") {
			end++
		}
		shown := text[i+1 : end]
		printed, ran := r.run(at, command)
		refused := strings.HasPrefix(strings.Join(shown, "\n"), "roundlay: ")
		switch {
		case !ran:
			printed = shown
		case slices.Equal(shown, []string{omitted}):
			r.Errorf("%s: %s: nothing is shown of what it prints", at, command)
		case refused != strings.HasPrefix(strings.Join(printed, "\n"), "roundlay: "):
			r.Errorf("%s: %s: printed %q", at, command, printed)
		case says(shown, printed):
			printed = shown
		case os.Getenv("ROUNDLAY_UPDATE") != "":
			printed = remade(shown, printed)
		default:
			r.Errorf("%s: %s\nprinted:\n%s\nshown:\n%s", at, command, strings.Join(printed, "\n"), strings.Join(shown, "\n"))
		}
		now = append(append(now, text[i]), printed...)
		i = end
	}
	return now
}

// run runs one line in a shell, as a person would, and returns what it prints. A page is
// served until its address is printed. The tests don't run themselves.
func (r *reader) run(at, command string) (printed []string, ran bool) {
	if command == "go test ./..." || command == "go install ./cmd/roundlay" {
		return nil, false
	}
	command = strings.Replace(command, "go run ./cmd/roundlay", "roundlay", 1)
	if !strings.HasPrefix(command, "roundlay ") || strings.ContainsAny(command, "';|&$`") {
		r.Fatalf("%s: %s: no command that any system's shell takes", at, command)
	}
	var out bytes.Buffer
	serves := strings.HasPrefix(command, "roundlay open")
	if serves {
		command += " --no-browser"
	}
	c := exec.Command(r.sh, "-c", "exec "+command)
	c.Dir, c.Stdout = r.folder, &out
	if serves {
		c.Stdout = &servedPage{printed: &out, stop: func() { c.Process.Signal(os.Interrupt) }}
	}
	c.Stderr = c.Stdout
	err := c.Run()
	var status *exec.ExitError
	if err != nil && !errors.As(err, &status) {
		r.Fatalf("%s: %s: %v", at, command, err)
	}
	printed = strings.Split(strings.TrimRight(out.String(), "\n"), "\n")
	for i := range printed {
		printed[i] = strings.TrimRight(printed[i], " ")
	}
	if out.Len() == 0 {
		printed = nil
	}
	if c.ProcessState.ExitCode() == exitNotDone && !strings.HasPrefix(printed[0], "roundlay: ") {
		r.Errorf("%s: %s: %s", at, command, out.String())
	}
	return printed, true
}

// servedPage is what a command prints that goes on until it is stopped.
type servedPage struct {
	printed *bytes.Buffer
	stop    func()
}

func (s *servedPage) Write(p []byte) (int, error) {
	n, err := s.printed.Write(p)
	if strings.Contains(s.printed.String(), "Ctrl-C ends it") {
		s.stop()
	}
	return n, err
}
