//go:build unix

package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// child is the program as a process of its own.
func child(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	t.Cleanup(cancel)
	cmd := exec.CommandContext(ctx, self)
	cmd.Args = append([]string{"roundlay"}, args...)
	return cmd
}

// papers writes the papers of a set of two and returns its job and the names and bytes of its papers.
func papers(t *testing.T) (job string, whole map[string][]byte) {
	t.Helper()
	folder := t.TempDir()
	job = filepath.Join(folder, "set.toml")
	if err := os.WriteFile(job, []byte(curvedSet), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := child(t, "wrap", job, "--out", folder+"/papers/").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return job, written(t, filepath.Join(folder, "papers"))
}

// written returns the files of a folder that aren't hidden.
func written(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".") {
			continue
		}
		if all[e.Name()], err = os.ReadFile(filepath.Join(folder, e.Name())); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// Killed at any moment of writing a set's papers, no file that has its name is half made, and
// the next run is not hindered by what lies about.
func TestKilledInASet(t *testing.T) {
	job, whole := papers(t)
	killed := 0
	for i := range 12 {
		folder := filepath.Join(t.TempDir(), "papers")
		cmd := child(t, "wrap", job, "--out", folder+"/")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(i*i) * 8 * time.Millisecond)
		if err := cmd.Process.Kill(); err == nil {
			killed++
		}
		_ = cmd.Wait() // it was killed
		for name, got := range written(t, folder) {
			if !bytes.Equal(got, whole[name]) {
				t.Errorf("killed after %d ms: %s has %d bytes, and not those of a whole run", i*i*8, name, len(got))
			}
		}
		if said, err := child(t, "wrap", job, "--out", folder+"/", "--force").CombinedOutput(); err != nil {
			t.Errorf("after a run that was killed: %v: %s", err, said)
		}
		for name, want := range whole {
			if got := written(t, folder)[name]; !bytes.Equal(got, want) {
				t.Errorf("%s is not made after a run that was killed", name)
			}
		}
	}
	if killed < 6 {
		t.Errorf("only %d of 12 runs were killed", killed)
	}
}

// Several processes that write the same papers at once leave them whole, with --force and
// without, and nothing else beside them.
func TestTwoOnOneFile(t *testing.T) {
	job, whole := papers(t)
	folder := filepath.Join(t.TempDir(), "papers")
	for _, force := range []string{"", "--force"} {
		var all sync.WaitGroup
		for range 4 {
			args := []string{"wrap", job, "--out", folder + "/"}
			if force != "" {
				args = append(args, force)
			}
			cmd := child(t, args...)
			all.Go(func() { _ = cmd.Run() }) // that it is refused is no fault
		}
		all.Wait()
		for name, got := range written(t, folder) {
			if !bytes.Equal(got, whole[name]) {
				t.Errorf("%q: %s is not whole", force, name)
			}
		}
		if len(written(t, folder)) != len(whole) {
			t.Errorf("%q: %d files, wanted %d", force, len(written(t, folder)), len(whole))
		}
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(whole) {
		t.Errorf("something is left behind: %v", entries)
	}
}

// A folder that can't be made, as its name is a file's, or that goes away while its papers
// are drawn, is an error in one line or no fault at all; what has the name is not lost.
func TestVanishingFolder(t *testing.T) {
	job, _ := papers(t)
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := child(t, "wrap", job, "--out", file+"/").CombinedOutput()
	if err == nil || bytes.Count(said, []byte("\n")) != 1 {
		t.Errorf("into a file's name: %v: %s", err, said)
	}
	if got, _ := os.ReadFile(file); string(got) != "mine" {
		t.Errorf("the file is lost: %q", got)
	}
	folder := filepath.Join(t.TempDir(), "papers")
	gone := make(chan struct{})
	go func() { // takes the folder away as often as it comes
		for range 400 {
			_ = os.RemoveAll(folder)
			time.Sleep(5 * time.Millisecond)
		}
		close(gone)
	}()
	said, err = child(t, "wrap", job, "--out", folder+"/").CombinedOutput()
	<-gone
	if err != nil && !bytes.HasPrefix(said, []byte("roundlay: ")) {
		t.Errorf("a folder that vanishes: %v: %s", err, said)
	}
	if bytes.Contains(said, []byte("goroutine ")) {
		t.Errorf("it panicked: %s", said)
	}
}

// What is written doesn't depend on the dates of files: with the job's file from the future and from
// long ago, the bytes are the same.
func TestFilesFromAnyDay(t *testing.T) {
	job, whole := papers(t)
	for _, at := range []time.Time{time.Unix(1, 0), time.Date(2090, 1, 1, 0, 0, 0, 0, time.UTC)} {
		if err := os.Chtimes(job, at, at); err != nil {
			t.Fatal(err)
		}
		folder := filepath.Join(t.TempDir(), "papers")
		if said, err := child(t, "wrap", job, "--out", folder+"/").CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		for name, want := range whole {
			if got := written(t, folder)[name]; !bytes.Equal(got, want) {
				t.Errorf("%v: %s differs", at, name)
			}
		}
	}
}
