package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"roundlay/pattern/job"
)

// Every line "key = value" of the demo is spoilt in every way a careless hand
// spoils it. Whatever comes of it, the program ends with a status, at most one
// line on standard error, and with nothing written where it is not done.
func TestCarelessJobs(t *testing.T) {
	_, demo := job.Demo()
	lines := strings.Split(string(demo), "\n")
	blank := slices.Index(lines, "[blank]")
	lines = slices.Insert(lines, blank+1, `paper = ["1/2", "rim"]`) // the demo does without
	small := slices.Index(lines, "rays = 4")                        // the motif of the fewest cuts: those by hand take long
	lines = slices.Insert(lines, small, `swell = [0.4, 1, 0.7]`, `rock = [0, 12]`)
	refused := 0
	// What spoils one key may suit another.
	good := map[string]bool{"arch = -1": true, "turn = -1": true, `name = "3 stone"`: true, `title = "3 stone"`: true}
	for i, line := range lines {
		key, _, assigns := strings.Cut(line, " = ")
		if !assigns || strings.HasPrefix(line, "#") {
			continue
		}
		for _, spoilt := range []string{
			"", // missing
			key + " = -1", key + " = nan", key + " = inf", key + " = 1e300",
			key + ` = "3 stone"`, key + " = [[[]]]", key + " = ", key + "x = 1", line + "\n" + line,
		} {
			changed := append([]string(nil), lines...)
			changed[i] = spoilt
			status, message := runCareless(t, strings.Join(changed, "\n"))
			if status == exitNotDone {
				refused++
				if !strings.HasPrefix(message, "roundlay: standard input:") {
					t.Errorf("%q for %q: %s does not name file and line", spoilt, line, message)
				}
			} else if !good[spoilt] && spoilt != "" {
				t.Errorf("%q for %q was taken", spoilt, line)
			}
		}
	}
	if refused < 200 {
		t.Errorf("only %d spoilt jobs were refused: is the demo still written a key a line?", refused)
	}
}

func TestUnreadableJobs(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "blank lines": "\n\n", "binary": "\x7fELF\x00\x01\x02", "not UTF-8": "title = \"\xff\"",
		"huge":     strings.Repeat("# much too long a job\n", 1<<17),
		"deep":     "a = " + strings.Repeat("[", 200000),
		"one line": strings.Repeat("x", 900000),
		"a poem":   "Roses are red\nViolets are blue\n",
	} {
		started := time.Now()
		status, message := runCareless(t, text)
		if status != exitNotDone {
			t.Errorf("%s: exit status %d, %s", name, status, message)
		}
		if len(message) > 400 {
			t.Errorf("%s: a message of %d letters is no line to read", name, len(message))
		}
		t.Logf("%s: %v: %s", name, time.Since(started), message)
	}
}

// runCareless asks for a wrap of a job on standard input, in an empty folder.
func runCareless(t *testing.T, text string) (status int, message string) {
	t.Helper()
	folder := t.TempDir()
	var stdout, stderr bytes.Buffer
	status = run([]string{"wrap", "-", "--out", filepath.Join(folder, "out")}, strings.NewReader(text), &stdout, &stderr)
	message = strings.TrimSuffix(stderr.String(), "\n")
	if status == exitNotDone {
		if strings.Contains(message, "\n") || message == "" || stdout.Len() > 0 {
			t.Errorf("not one line on standard error alone: %q, %q", message, stdout.String())
		}
		if left, err := os.ReadDir(folder); err != nil || len(left) > 0 {
			t.Errorf("something was written though nothing was done: %v, %v", left, err)
		}
	}
	return status, message
}
