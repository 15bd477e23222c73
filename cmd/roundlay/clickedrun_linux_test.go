package main

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

// startedByClick is the program without arguments, as a file manager starts it: in a session of its own,
// with nothing to read and nobody who reads what it writes.
type startedByClick struct {
	*exec.Cmd
	shown string // the file that the browser writes what it is asked to show into
	ended chan error
}

// click starts the program, with a script for a browser that ends with the given status.
func click(t *testing.T, browser int, change func(c *exec.Cmd)) *startedByClick {
	t.Helper()
	folder := t.TempDir()
	s := &startedByClick{shown: filepath.Join(folder, "shown"), ended: make(chan error, 1)}
	script := fmt.Sprintf("#!/bin/sh\necho \"$@\" > %s~ && mv %s~ %s\nexit %d\n", s.shown, s.shown, s.shown, browser)
	if err := os.WriteFile(filepath.Join(folder, "xdg-open"), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	s.Cmd = &exec.Cmd{Path: program, Args: []string{"roundlay"}, Dir: folder, SysProcAttr: &syscall.SysProcAttr{Setsid: true}}
	s.Env = append(os.Environ(), "PATH="+folder+":"+os.Getenv("PATH"), "DISPLAY=:7")
	if change != nil {
		change(s.Cmd)
	}
	if err := s.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Process.Kill() })
	go func() { s.ended <- s.Wait() }()
	return s
}

// address waits for what the browser is asked to show.
func (s *startedByClick) address(t *testing.T) string {
	t.Helper()
	for began := time.Now(); time.Since(began) < time.Minute; time.Sleep(20 * time.Millisecond) {
		if data, err := os.ReadFile(s.shown); err == nil {
			return strings.TrimSpace(string(data))
		}
	}
	t.Fatal("no browser was opened")
	return ""
}

// end waits until the program has ended, and returns its exit status.
func (s *startedByClick) end(t *testing.T) int {
	t.Helper()
	select {
	case <-s.ended:
		return s.ProcessState.ExitCode()
	case <-time.After(time.Minute):
		t.Fatal("it goes on")
		return 0
	}
}

// A double click opens the page, which answers, and the program ends when its page is closed.
func TestDoubleClick(t *testing.T) {
	t.Parallel()
	s := click(t, 0, nil)
	address := s.address(t)
	got, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	page, _ := io.ReadAll(got.Body)
	got.Body.Close()
	if !strings.Contains(string(page), "<!doctype html>") {
		t.Errorf("the page is %.300q", page)
	}
	for _, here := range []string{"true", "false"} {
		got, err := http.Post(address+"visit", "application/json", strings.NewReader(`{"page": "a", "here": `+here+`}`))
		if err != nil || got.StatusCode != http.StatusOK {
			t.Fatalf("%v, %v", got, err)
		}
		got.Body.Close()
	}
	if status := s.end(t); status != exitClear {
		t.Errorf("exit status %d", status)
	}
	if _, err := http.Get(address); err == nil {
		t.Error("it still answers")
	}
}

// Logging out ends it too.
func TestDoubleClickEndedBySystem(t *testing.T) {
	t.Parallel()
	s := click(t, 0, nil)
	s.address(t)
	s.Process.Signal(syscall.SIGTERM)
	if status := s.end(t); status != exitClear {
		t.Errorf("exit status %d", status)
	}
}

// Where no browser can be opened, nobody would ever come: it ends, and says why in the desktop's log.
func TestDoubleClickWithoutBrowser(t *testing.T) {
	t.Parallel()
	log, theirs := aLog(t)
	s := click(t, 3, func(c *exec.Cmd) { c.Stdout, c.Stderr = theirs, theirs })
	theirs.Close()
	if status := s.end(t); status != exitNotDone {
		t.Errorf("exit status %d", status)
	}
	said, _ := io.ReadAll(log)
	if !strings.Contains(string(said), "no browser could be opened (xdg-open: exit status 3)") {
		t.Errorf("the log has %q", said)
	}
}

// Without arguments in a terminal, in a script and without a desktop there is the help.
func TestNoDoubleClick(t *testing.T) {
	t.Parallel()
	check := func(what string, said []byte, s *startedByClick) {
		t.Helper()
		if _, err := os.Stat(s.shown); err == nil || !bytes.Contains(said, []byte("roundlay wrap")) {
			t.Errorf("%s: a browser is opened: %v; said is %.200q", what, err == nil, said)
		}
	}
	own, theirs, err := pty.Open()
	if err != nil {
		t.Fatal(err)
	}
	defer own.Close()
	s := click(t, 0, func(c *exec.Cmd) {
		c.Stdin, c.Stdout, c.Stderr = theirs, theirs, theirs
		c.SysProcAttr.Setctty = true
	})
	theirs.Close()
	said, _ := io.ReadAll(own) // ends with an error when the program has
	s.end(t)
	check("in a terminal", said, s)

	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	s = click(t, 0, func(c *exec.Cmd) { c.Stdout = write })
	write.Close()
	said, _ = io.ReadAll(read)
	s.end(t)
	check("in a script", said, s)

	log, theirs := aLog(t)
	s = click(t, 0, func(c *exec.Cmd) { c.Stdout, c.Env = theirs, append(c.Env, "DISPLAY=", "WAYLAND_DISPLAY=") })
	theirs.Close()
	said, _ = io.ReadAll(log)
	s.end(t)
	check("without a desktop", said, s)
}

// aLog is a socket such as a desktop's log has: what is read, and what a program writes to.
func aLog(t *testing.T) (log, theirs *os.File) {
	t.Helper()
	pair, err := syscall.Socketpair(syscall.AF_UNIX, syscall.SOCK_STREAM|syscall.SOCK_CLOEXEC, 0)
	if err != nil {
		t.Fatal(err)
	}
	log, theirs = os.NewFile(uintptr(pair[0]), "log"), os.NewFile(uintptr(pair[1]), "log")
	t.Cleanup(func() { log.Close() })
	return log, theirs
}
