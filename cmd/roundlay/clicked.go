package main

import (
	"io"
	"os"
	"path/filepath"
	"runtime"

	"golang.org/x/term"
)

// surroundings is what a run without arguments sees of where it was started.
type surroundings struct {
	system     string // as GOOS says it
	name       string // by which it was called
	terminals  int    // of its three streams, how many are a terminal
	input      stream
	output     stream
	desktop    bool // whether there is a desktop to show a window on
	ownConsole bool // on Windows, whether its console was opened for it alone
}

// stream is what sort of thing a standard stream is.
type stream int

const (
	other  stream = iota
	null          // the null device
	socket        // as of a desktop's log
)

// clicked reports whether the program was double-clicked. Where that can't be told from
// being called by hand or by a script, it says no: the help is then the better answer.
//
//   - Windows opens a console for it alone.
//   - macOS opens a terminal and types the whole path into it (from memory, no source).
//   - Elsewhere a file manager gives it no terminal, nothing to read, and at most a log to
//     write to. A script that wants its words gives it a pipe or a file.
//
// This is tried on Linux, with streams as a file manager gives them
// (clickedrun_linux_test.go). On Windows it hasn't been tried that GetConsoleProcessList counts one
// process after a double click in the Explorer and two below a shell, as its documentation has it; nor on
// macOS what the Finder gives a program. There a run by its whole path in a terminal opens the page too.
func (s surroundings) clicked() bool {
	switch s.system {
	case "windows":
		return s.ownConsole
	case "darwin":
		return s.terminals == 3 && filepath.IsAbs(s.name)
	}
	return s.desktop && s.terminals == 0 && s.input == null && s.output != other
}

// look returns this run's surroundings.
func look(stdin io.Reader, stdout, stderr io.Writer) surroundings {
	s := surroundings{system: runtime.GOOS, name: os.Args[0], ownConsole: ownConsole()}
	for _, way := range []any{stdin, stdout, stderr} {
		if file, ok := way.(*os.File); ok && term.IsTerminal(int(file.Fd())) {
			s.terminals++
		}
	}
	s.input, s.output = kindOf(stdin), kindOf(stdout)
	for _, name := range []string{"DISPLAY", "WAYLAND_DISPLAY"} {
		s.desktop = s.desktop || os.Getenv(name) != ""
	}
	return s
}

// kindOf says what a stream is.
func kindOf(way any) stream {
	file, ok := way.(*os.File)
	if !ok {
		return other
	}
	is, err := file.Stat()
	if err != nil {
		return other
	}
	nothing, err := os.Stat(os.DevNull)
	switch {
	case err == nil && os.SameFile(is, nothing):
		return null
	case is.Mode()&os.ModeSocket != 0:
		return socket
	}
	return other
}
