package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"
)

// opened is the program while it serves a page.
type opened struct {
	*exec.Cmd
	address string
	stderr  *bytes.Buffer
}

// open starts the program in a folder and waits for the line with its address.
func open(t *testing.T, folder string, args ...string) *opened {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("no program can press Ctrl-C for another there")
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	o := &opened{Cmd: &exec.Cmd{Path: program, Args: append([]string{"roundlay", "open"}, args...), Dir: folder}, stderr: new(bytes.Buffer)} // as TestMain has it
	o.Env = append(os.Environ(), "PATH="+folder+string(filepath.ListSeparator)+os.Getenv("PATH"))
	o.Stderr = o.stderr
	out, err := o.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := o.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { o.Process.Kill() })
	line, err := bufio.NewReader(out).ReadString('\n')
	found := regexp.MustCompile(`^The page is at (http://\S+/\S*) \(Ctrl-C ends it\)\n$`).FindStringSubmatch(line)
	if err != nil || found == nil {
		t.Fatalf("prints %q, %v, %s", line, err, o.stderr)
	}
	o.address = found[1]
	return o
}

// interrupt presses Ctrl-C and returns the exit status.
func (o *opened) interrupt(t *testing.T) int {
	t.Helper()
	o.Process.Signal(os.Interrupt)
	killed := time.AfterFunc(time.Minute, func() { o.Process.Kill() })
	defer killed.Stop()
	var status *exec.ExitError
	if err := o.Wait(); err != nil && !errors.As(err, &status) {
		t.Fatal(err)
	}
	return o.ProcessState.ExitCode()
}

// get asks for one thing and returns it.
func (o *opened) get(t *testing.T, path string) string {
	t.Helper()
	got, err := http.Get(o.address + path)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	data, err := io.ReadAll(got.Body)
	if err != nil || got.StatusCode != http.StatusOK {
		t.Errorf("%s: %s, %q, %v", path, got.Status, data, err)
	}
	return string(data)
}

// The page of a job with a mistake in it, from the first line to Ctrl-C.
func TestOpen(t *testing.T) {
	folder := t.TempDir()
	const text = "title = \"half a job\nlength = 7"
	if err := os.WriteFile(filepath.Join(folder, "half.toml"), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	o := open(t, folder, "--no-browser", "half.toml")
	if !strings.HasPrefix(o.address, "http://127.0.0.1:") || strings.Contains(o.address, "token") {
		t.Errorf("at %s", o.address)
	}
	if got := o.get(t, ""); !strings.Contains(got, "<!doctype html>") {
		t.Errorf("the page is %q", got)
	}
	var file struct{ Name, Text string }
	if err := json.Unmarshal([]byte(o.get(t, "file")), &file); err != nil || file.Name != "half.toml" || file.Text != text {
		t.Errorf("%+v, %v", file, err)
	}
	body, _ := json.Marshal(map[string]string{"job": text})
	got, err := http.Post(o.address+"ask/lay", "application/json", bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	var answer struct{ Mistake struct{ Line int } }
	if err := json.NewDecoder(got.Body).Decode(&answer); err != nil || answer.Mistake.Line != 1 {
		t.Errorf("%s, %+v, %v", got.Status, answer, err)
	}
	got.Body.Close()
	if status := o.interrupt(t); status != exitClear || o.stderr.Len() > 0 {
		t.Errorf("exit status %d, %q", status, o.stderr)
	}
	if _, err := http.Get(o.address); err == nil {
		t.Error("it still answers")
	}
}

// Without a job the demo is shown, and what is saved is a new file in the current folder.
func TestOpenDemo(t *testing.T) {
	folder := t.TempDir()
	o := open(t, folder, "--no-browser", "--listen", "localhost:0")
	got, err := http.Post(o.address+"file-as", "application/json", strings.NewReader(`{"name":"mine","text":"# mine"}`))
	if err != nil || got.StatusCode != http.StatusOK {
		t.Fatalf("%v, %v", got, err)
	}
	if data, err := os.ReadFile(filepath.Join(folder, "mine.toml")); err != nil || string(data) != "# mine" {
		t.Errorf("%q, %v", data, err)
	}
	if status := o.interrupt(t); status != exitClear || o.stderr.String() != "No job file was given: this is the built-in demo job.\n" {
		t.Errorf("exit status %d, %q", status, o.stderr)
	}
}

// Ctrl-C doesn't wait for a page that asks for changes.
func TestOpenInterrupted(t *testing.T) {
	o := open(t, t.TempDir(), "--no-browser")
	saved, err := http.Post(o.address+"file-as", "application/json", strings.NewReader(`{"name":"mine","text":"# mine"}`))
	if err != nil {
		t.Fatal(err)
	}
	var as struct{ Stamp string }
	if err := json.NewDecoder(saved.Body).Decode(&as); err != nil {
		t.Fatal(err)
	}
	go http.Get(o.address + "file/changes?stamp=" + as.Stamp)
	time.Sleep(300 * time.Millisecond)
	began := time.Now()
	if status := o.interrupt(t); status != exitClear || time.Since(began) > 10*time.Second {
		t.Errorf("exit status %d after %v, %s", status, time.Since(began), o.stderr)
	}
}

// The browser is opened by what the system has for it; where that fails, it is said.
func TestBrowser(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the name is that of Linux")
	}
	for fails, words := range map[int]string{0: "", 3: "roundlay: no browser could be opened (xdg-open: exit status 3): open the address in one yourself\n"} {
		folder := t.TempDir()
		shown := filepath.Join(folder, "shown")
		script := fmt.Sprintf("#!/bin/sh\necho \"$@\" $(($(cut -d' ' -f6 /proc/$$/stat) == $$)) > %s~ && mv %s~ %s\nexit %d\n", shown, shown, shown, fails)
		if err := os.WriteFile(filepath.Join(folder, "xdg-open"), []byte(script), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, "job.toml"), []byte("# a job"), 0o666); err != nil {
			t.Fatal(err)
		}
		o := open(t, folder, "job.toml")
		var data []byte
		for began := time.Now(); len(data) == 0 && time.Since(began) < 20*time.Second; time.Sleep(20 * time.Millisecond) {
			data, _ = os.ReadFile(shown)
		}
		if string(data) != o.address+" 1\n" { // 1: in a session of its own, which Ctrl-C doesn't reach
			t.Errorf("shown %q, not %q", data, o.address)
		}
		time.Sleep(300 * time.Millisecond) // until it has heard how that ended
		if status := o.interrupt(t); status != exitClear || o.stderr.String() != words {
			t.Errorf("exit status %d, %q", status, o.stderr)
		}
		// With a token, the address is for another machine, and in no list of programs.
		os.Remove(shown)
		o = open(t, folder, "job.toml", "--token", "--listen", "0.0.0.0:0")
		time.Sleep(300 * time.Millisecond)
		if _, err := os.Stat(shown); err == nil || !strings.Contains(o.address, "/?token=") {
			t.Errorf("with a token, %s is shown: %v", o.address, err)
		}
		o.interrupt(t)
	}
	for system, want := range map[string]string{"linux": "xdg-open", "freebsd": "xdg-open", "darwin": "open", "windows": "rundll32 url.dll,FileProtocolHandler"} {
		if got := strings.Join(browserCommand(system), " "); got != want {
			t.Errorf("on %s: %s", system, got)
		}
	}
}
