//go:build unix

package main

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// What any run of the program may take.
const (
	maxSeconds = 10.0      // of a processor
	maxKiB     = 500 << 10 // of memory
)

// Good jobs are spoilt at random, with lines deleted, doubled and swapped, kinds
// changed and figures put at their limits and past them, and handed to every
// command. Whatever comes of it, a run ends with a status it may have, with one
// line on standard error where nothing was done, and within its bounds.
// ROUNDLAY_MUTANTS says how many are tried.
func TestMutants(t *testing.T) {
	count := 60
	if given := os.Getenv("ROUNDLAY_MUTANTS"); given != "" {
		var err error
		if count, err = strconv.Atoi(given); err != nil {
			t.Fatal(err)
		}
	}
	good := goodJobs(t)
	ended := map[int]int{}
	for seed := range count {
		rnd := rand.New(rand.NewPCG(uint64(seed), 13))
		text := mutant(rnd, good[rnd.IntN(len(good))])
		args := mutantCommands()[rnd.IntN(len(mutantCommands()))]
		if seed%5 == 0 { // the only command that says by its status what it found
			args = []string{"check"}
		}
		status, wrong := runMutant(t, text, args)
		ended[status]++
		if wrong != "" {
			t.Errorf("seed %d, roundlay %s: %s\n%s", seed, strings.Join(args, " "), wrong, text)
		}
	}
	if count >= 60 && (ended[exitClear] == 0 || ended[exitFindings] == 0 || ended[exitNotDone] == 0) {
		t.Errorf("exit statuses %v: the mutants are all of one sort", ended)
	}
}

// goodJobs returns the jobs of the gallery, the demo, and a set of curved glasses.
func goodJobs(t *testing.T) []string {
	t.Helper()
	_, demo := job.Demo()
	all := []string{string(demo), curvedSet, included(string(demo))}
	files, err := filepath.Glob("../../testdata/gallery/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal("no jobs in the gallery: ", err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, string(text))
	}
	return all
}

const curvedSet = `title = "Two barrels"
length = "mm"
[[blank]]
name = "one"
floor = 10
station = [{height=0, across=70, wall=7}, {height=30, across=84, wall=5}, {height=60, across=88, wall=4}, {height=100, across=78, wall=3}]
[[blank]]
name = "two"
floor = 11
station = [{height=0, across=71, wall=7}, {height=30, across=85, wall=5}, {height=60, across=88, wall=4}, {height=104, across=77, wall=3}]
[limits]
land = 0.8
polish = 0.1
[[wheel]]
name = "mitre"
edge = "mitre"
across = 80
thick = 6
angle = 90
[[wheel]]
name = "gang"
edge = "gang"
across = 60
thick = 12
angle = 90
mitres = 5
spacing = 2
[[wheel]]
name = "flat"
edge = "flat"
across = 90
thick = 5
[layout]
repeats = 6
[[motif]]
kind = "leaf"
wheel = "mitre"
depth = 0.6
at = [-0.2, 0.5]
width = 0.5
height = 0.8
fronds = 7
[[motif]]
kind = "ring"
wheel = "gang"
depth = 0.4
at = [0, 0.05]
height = 0.05
rings = 1
lines = 1
[[motif]]
kind = "flute"
wheel = "flat"
depth = 0.5
at = [0.3, 0.5]
width = 0.2
height = 0.5
panels = 1
`

// besideMark divides a job from the file that lies beside it, and that it includes.
const besideMark = "\n# beside.toml\n"

// included returns a job whose limits, rack, layout and motifs stand in such a file. A line
// that is swapped may come to stand in the other one.
func included(text string) string {
	i := strings.Index(text, "[limits]")
	return strings.Replace(text[:i], "[blank]", "include = [\"beside.toml\"]\n[blank]", 1) + "[[motif]]\nname = \"first\"\nturn = 3\n" +
		besideMark + "length = \"in\"\n" + strings.Replace(text[i:], "[[motif]]", "[[motif]]\nname = \"first\"", 1)
}

// mutantCommands lists the commands that read a job, {} being a folder to write to.
func mutantCommands() [][]string {
	return [][]string{
		{"check"}, {"check", "--json"}, {"plan"}, {"plan", "--csv"}, {"wrap", "--out", "{}"}, {"wrap", "--side", "inside", "--out", "{}"},
		{"wrap", "--side", "patches", "--out", "{}"}, {"sheet", "--out", "{}"}, {"view", "--out", "{}"},
		{"view", "--round", "--findings", "--out", "{}"}, {"fit"}, {"fit", "--rack"}, {"divide"},
		{"groove"}, {"groove", "--slant", "30", "--depth", "1/32in"}, {"groove", "--like", "--length", "12mm", "--width", "2mm"},
	}
}

var figure = regexp.MustCompile(`[0-9]+(\.[0-9]+)?(/[0-9]+)?`)

// mutant spoils a job in one way, or in up to four.
func mutant(rnd *rand.Rand, text string) string {
	lines := strings.Split(text, "\n")
	for range 1 + rnd.IntN(2)*rnd.IntN(4) {
		i, k := rnd.IntN(len(lines)), rnd.IntN(len(lines))
		switch rnd.IntN(12) {
		case 0:
			lines = slices.Delete(slices.Clone(lines), i, i+1)
		case 1:
			lines = slices.Insert(slices.Clone(lines), k, lines[i])
		case 2:
			lines[i], lines[k] = lines[k], lines[i]
		case 3, 4:
			setKind(rnd, lines)
		case 5, 6, 7, 8:
			lines = setParam(rnd, lines)
		default:
			respell(rnd, lines)
		}
	}
	return strings.Join(lines, "\n")
}

// pick returns the number of a line that a pattern fits, -1 where none does.
func pick(rnd *rand.Rand, lines []string, fits func(string) bool) int {
	var all []int
	for i, line := range lines {
		if !strings.HasPrefix(strings.TrimSpace(line), "#") && fits(line) {
			all = append(all, i)
		}
	}
	if all == nil {
		return -1
	}
	return all[rnd.IntN(len(all))]
}

// respell puts another figure in place of one.
func respell(rnd *rand.Rand, lines []string) {
	i := pick(rnd, lines, figure.MatchString)
	if i < 0 {
		return
	}
	places := figure.FindAllStringIndex(lines[i], -1)
	at := places[rnd.IntN(len(places))]
	figures := []string{"0", "0.001", "0.01", "0.1", "0.5", "1", "2", "3", "5", "8", "20", "40", "50", "64", "90", "170", "180", "256",
		"360", "500", "999", "1000", "1001", "3141", "1e300", "1/64", "-1"}
	lines[i] = lines[i][:at[0]] + figures[rnd.IntN(len(figures))] + lines[i][at[1]:]
}

// setKind makes a motif one of another kind.
func setKind(rnd *rand.Rand, lines []string) {
	if i := pick(rnd, lines, func(line string) bool { return strings.HasPrefix(line, "kind") }); i >= 0 {
		kinds := motifs.All()
		lines[i] = fmt.Sprintf("kind = %q", kinds[rnd.IntN(len(kinds))].Name)
	}
}

// setParam gives a motif a few of its kind's parameters, each at an end of its range
// or, of a count, the most that clears.
func setParam(rnd *rand.Rand, lines []string) []string {
	i := pick(rnd, lines, func(line string) bool { return strings.HasPrefix(line, "kind = ") })
	if i < 0 {
		return lines
	}
	name, _ := strconv.Unquote(strings.TrimPrefix(lines[i], "kind = "))
	kind, ok := motifs.Find(name)
	if !ok {
		return lines
	}
	end := i + 1
	for end < len(lines) && !strings.HasPrefix(lines[end], "[") {
		end++
	}
	if len(kind.Params) == 0 {
		return lines
	}
	own := slices.Clone(lines[i:end])
	for range 1 + rnd.IntN(3) {
		p := kind.Params[rnd.IntN(len(kind.Params))]
		value := fmt.Sprint([]float64{p.Min, p.Max}[rnd.IntN(2)])
		if p.Sort == motifs.Switch {
			value = []string{"true", "false"}[rnd.IntN(2)]
		}
		if p.Sort == motifs.Count && rnd.IntN(4) == 0 {
			value = `"most"`
		}
		own = slices.DeleteFunc(own, func(line string) bool { return strings.HasPrefix(line, p.Name+" =") })
		own = slices.Insert(own, 1, p.Name+" = "+value)
	}
	return slices.Concat(lines[:i], own, lines[end:])
}

// runMutant runs the program on a job from standard input, as a process of its own.
// It returns its exit status, and what is wrong with how it ended.
func runMutant(t *testing.T, text string, args []string) (status int, wrong string) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	// Many times what it may take of a processor: there may be others at work.
	ctx, cancel := context.WithTimeout(t.Context(), 20*maxSeconds*time.Second)
	defer cancel()
	own, beside, _ := strings.Cut(text, besideMark)
	args = slices.Insert(slices.Clone(args), 1, withFiles(t, own, beside))
	if i := slices.Index(args, "{}"); i >= 0 {
		args[i] = t.TempDir() + string(filepath.Separator)
	}
	cmd := exec.CommandContext(ctx, self)
	cmd.Args = append([]string{"measured"}, args...) // TestMain runs it as the program
	peakFrom, peakTo, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer peakFrom.Close()
	cmd.ExtraFiles = []*os.File{peakTo}
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	err = cmd.Run()
	peakTo.Close()
	if cmd.ProcessState == nil {
		t.Fatal(err)
	}
	status = cmd.ProcessState.ExitCode()
	said := stderr.String()
	took := (cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Seconds()
	switch {
	case ctx.Err() != nil:
		return status, "did not end"
	case strings.Contains(said, "panic") || strings.Contains(said, "goroutine "):
		return status, "panicked: " + said[:min(len(said), 600)]
	case status < exitClear || status > exitNotDone || status == exitFindings && args[0] != "check":
		return status, fmt.Sprintf("exit status %d, %s", status, said)
	case status == exitNotDone && (strings.Count(said, "\n") != 1 || !strings.HasPrefix(said, "roundlay: ") || len(said) > 1000):
		return status, fmt.Sprintf("not one line on standard error: %q", said)
	case took > maxSeconds:
		return status, fmt.Sprintf("took %.1f seconds of a processor", took)
	}
	switch memory := peak(peakFrom); {
	case memory == 0 && runtime.GOOS == "linux":
		return status, "did not say what memory it took"
	case memory > maxKiB:
		return status, fmt.Sprintf("took %d MiB", memory>>10)
	}
	return status, ""
}

// withFiles writes a job into a folder with what it may need: the file it includes, and
// those of the gallery's drawings that it names. It returns where the job is.
func withFiles(t *testing.T, own, beside string) string {
	t.Helper()
	folder := t.TempDir()
	files := map[string]string{"job.toml": own, "beside.toml": beside}
	drawings, err := filepath.Glob("../../testdata/gallery/*.svg")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range drawings {
		if name := filepath.Base(path); strings.Contains(own, name) {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			files[name] = string(text)
		}
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(folder, "job.toml")
}

// The job with a file beside it is a good one, before anything is spoilt.
func TestMutantsIncluded(t *testing.T) {
	_, demo := job.Demo()
	if status, wrong := runMutant(t, included(string(demo)), []string{"check"}); wrong != "" || status == exitNotDone {
		t.Errorf("status %d: %s", status, wrong)
	}
}
