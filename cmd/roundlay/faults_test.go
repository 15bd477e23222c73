//go:build unix

package main

import (
	"bytes"
	"context"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
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

// papers writes the papers of two sets, whose files have the same names and other bytes, and
// returns the jobs and what was written of each.
func papers(t *testing.T) (jobs [2]string, whole [2]map[string][]byte) {
	t.Helper()
	deeper := strings.Replace(twoBlanks, "depth = 0.5", "depth = 0.6", 1)
	for i, text := range []string{twoBlanks, deeper} {
		folder := t.TempDir()
		jobs[i] = filepath.Join(folder, "set.toml")
		if err := os.WriteFile(jobs[i], []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := child(t, "wrap", jobs[i], "--out", folder+"/papers/").CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		whole[i] = written(t, filepath.Join(folder, "papers"))
	}
	for name, of := range whole[0] {
		if other := whole[1][name]; other == nil || bytes.Equal(of, other) || len(whole[0]) != len(whole[1]) {
			t.Fatalf("%s can't be told apart", name)
		}
	}
	return jobs, whole
}

// fillFolder puts papers into a folder.
func fillFolder(t *testing.T, folder string, all map[string][]byte) {
	t.Helper()
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	for name, data := range all {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
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

// killed runs a command, and kills it as soon as something is so.
func killed(t *testing.T, cmd *exec.Cmd, now func() bool) {
	t.Helper()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() {
		_ = cmd.Wait() // it was killed
		close(ended)
	}()
	for !now() {
		select {
		case <-ended:
			return
		default:
		}
	}
	_ = cmd.Process.Kill() // it may have ended
	<-ended
}

// hidden returns the hidden files that writing has in a folder.
func hidden(t *testing.T, folder string) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(folder, ".roundlay-*"))
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// Killed while it writes a set's papers, into a new folder or with --force over those of
// another job, every file that has its name is whole, as it was or as it was to be; and the
// next run is not hindered by what lies about.
func TestKilledInASet(t *testing.T) {
	jobs, whole := papers(t)
	first := slices.Min(slices.Collect(maps.Keys(whole[0])))
	const kills = 5
	waiting, between := 0, 0 // killed before the first paper had its name; between the first and the last
	for i := 0; waiting < kills || between < kills; i++ {
		if i == 200 {
			t.Fatalf("of %d runs, %d were killed before papers got their names and %d while they did", i, waiting, between)
		}
		folder := filepath.Join(t.TempDir(), "papers")
		var was map[string][]byte
		if i%2 == 1 {
			was = whole[0]
			fillFolder(t, folder, was)
		}
		old, _ := os.Stat(filepath.Join(folder, first)) // none in a new folder
		now := func() bool {
			if waiting < kills {
				return len(hidden(t, folder)) > i%len(whole[0])
			}
			info, err := os.Stat(filepath.Join(folder, first))
			return err == nil && !os.SameFile(info, old)
		}
		args := []string{"wrap", jobs[1], "--out", folder + "/", "--force"}
		killed(t, child(t, args...), now)
		made := 0
		for name, got := range written(t, folder) {
			switch {
			case bytes.Equal(got, whole[1][name]):
				made++
			case !bytes.Equal(got, was[name]):
				t.Errorf("%s has %d bytes, neither the old nor the new", name, len(got))
			}
		}
		if n := len(written(t, folder)); n < len(was) {
			t.Errorf("%d files of %d are left", n, len(was))
		}
		switch left := len(hidden(t, folder)); {
		case left > 0 && made == 0:
			waiting++
		case made > 0 && made < len(whole[1]):
			between++
		}
		if said, err := child(t, args...).CombinedOutput(); err != nil {
			t.Errorf("after a run that was killed: %v: %s", err, said)
		}
		if !maps.EqualFunc(written(t, folder), whole[1], bytes.Equal) {
			t.Error("the papers are not made after a run that was killed")
		}
	}
}

// Several processes write papers of two jobs to the same names at once. Without --force one
// of them writes, and the others are refused; with it every file is whole, of one of the two
// jobs. Nothing else is left beside them.
func TestTwoOnOneFile(t *testing.T) {
	jobs, whole := papers(t)
	for range 4 {
		folder := filepath.Join(t.TempDir(), "papers")
		if wrote := together(t, jobs, folder); len(wrote) != 1 {
			t.Errorf("%d wrote, of jobs %v", len(wrote), wrote)
		} else if !maps.EqualFunc(written(t, folder), whole[wrote[0]], bytes.Equal) {
			t.Error("the papers are not those of the one that wrote")
		}
		for _, into := range []string{folder, filepath.Join(t.TempDir(), "papers")} {
			if wrote := together(t, jobs, into, "--force"); len(wrote) != 4 {
				t.Errorf("by force only %d wrote", len(wrote))
			}
			for name, got := range written(t, into) {
				if !bytes.Equal(got, whole[0][name]) && !bytes.Equal(got, whole[1][name]) {
					t.Errorf("by force: %s is of neither job", name)
				}
			}
			if left := contents(t, into); len(left) != len(whole[0]) {
				t.Errorf("%d files, wanted %d", len(left), len(whole[0]))
			}
		}
	}
}

// together has four processes write papers at once, of one job and of the other in turn. It
// returns the jobs of those that did.
func together(t *testing.T, jobs [2]string, folder string, more ...string) (wrote []int) {
	t.Helper()
	var all sync.WaitGroup
	var done [4]bool
	for i := range done {
		cmd := child(t, append([]string{"wrap", jobs[i%2], "--out", folder + "/"}, more...)...)
		all.Go(func() {
			said, err := cmd.CombinedOutput()
			done[i] = err == nil
			if err != nil && (!bytes.HasPrefix(said, []byte("roundlay: ")) || bytes.Count(said, []byte("\n")) != 1) {
				t.Errorf("%v: %s", err, said)
			}
		})
	}
	all.Wait()
	for i, is := range done {
		if is {
			wrote = append(wrote, i%2)
		}
	}
	return wrote
}

// A folder that can't be made, as its name is a file's, is an error in one line, and the file
// is not lost.
func TestFolderIsAFile(t *testing.T) {
	jobs, _ := papers(t)
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := child(t, "wrap", jobs[0], "--out", file+"/").CombinedOutput()
	if err == nil || bytes.Count(said, []byte("\n")) != 1 {
		t.Errorf("into a file's name: %v: %s", err, said)
	}
	if got, _ := os.ReadFile(file); string(got) != "mine" {
		t.Errorf("the file is lost: %q", got)
	}
}

// A folder that is taken away while papers get their names there is told in one line, which
// names no file that went with it, and isn't made again.
func TestVanishingFolder(t *testing.T) {
	jobs, whole := papers(t)
	for _, last := range []int{1, 2, len(whole[0])} {
		for _, old := range []map[string][]byte{nil, whole[1]} {
			above := t.TempDir()
			folder := filepath.Join(above, "papers")
			if old != nil {
				fillFolder(t, folder, old)
			}
			renames := 0
			d := &badDisk{noLinks: old == nil, onRename: func() { // new files get their names by links, where there are any
				if renames++; renames == last {
					_ = os.RemoveAll(folder)
				}
			}}
			var stderr bytes.Buffer
			status := start(t.Context(), d, []string{"wrap", jobs[0], "--out", folder + "/", "--force"}, nil, new(bytes.Buffer), &stderr)
			told := stderr.String()
			if status != exitNotDone || !strings.HasPrefix(told, "roundlay: "+folder) || strings.Count(told, "\n") != 1 || strings.Contains(told, ".roundlay-") {
				t.Errorf("gone before rename %d: status %d, %q", last, status, told)
			}
			if gone := strings.Count(told, " was is no longer there"); old != nil && gone != min(last, len(old)-1) || old == nil && gone > 0 {
				t.Errorf("gone before rename %d: %d old files are told to be gone: %q", last, gone, told)
			}
			if left := contents(t, above); len(left) > 0 {
				t.Errorf("gone before rename %d: left %q", last, left)
			}
		}
	}
}

// What is written doesn't depend on the dates of files: with the job's file from the future and from
// long ago, the bytes are the same.
func TestFilesFromAnyDay(t *testing.T) {
	jobs, whole := papers(t)
	for _, at := range []time.Time{time.Unix(1, 0), time.Date(2090, 1, 1, 0, 0, 0, 0, time.UTC)} {
		if err := os.Chtimes(jobs[0], at, at); err != nil {
			t.Fatal(err)
		}
		folder := filepath.Join(t.TempDir(), "papers")
		if said, err := child(t, "wrap", jobs[0], "--out", folder+"/").CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		for name, want := range whole[0] {
			if got := written(t, folder)[name]; !bytes.Equal(got, want) {
				t.Errorf("%v: %s differs", at, name)
			}
		}
	}
}
