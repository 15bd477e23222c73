// Command roundlay lays out a cut decoration on a drinking glass and prints it
// as a paper wrap true to size.
//
// Run it without arguments for its commands (a double click opens the page), or start with
//
//	roundlay check          # the built-in demo job
//	roundlay new job.toml   # a job of your own, to edit
//	roundlay check job.toml
//	roundlay wrap job.toml
//
// In the code, start with main.go. Each command is a function in a file of its own. It
// reads a job, asks the packages below for a plan or a picture of it, and writes what
// they return. Errors go back to start, which prints them and picks the exit status: 0
// done and clear, 1 done with findings, 2 not done.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strings"
	"sync"

	"github.com/spf13/pflag"

	"roundlay/cmd/disk"
)

func main() {
	args := os.Args[1:]
	s := &session{disk: disk.Real{}, stdin: os.Stdin, stderr: os.Stderr}
	if len(args) == 0 {
		if around := look(os.Stdin, os.Stdout, os.Stderr); around.clicked() {
			args, s.clicked, s.unseen = []string{"open"}, true, around.terminals == 0
		}
	}
	ctx, stop := context.Background(), func() {}
	if !brief(args) {
		collectLate()
		ctx, stop = stoppable()
	}
	s.ctx = ctx
	status := s.start(args, os.Stdout)
	stop()
	os.Exit(status)
}

// brief reports whether arguments ask for a few words only, and no work: that needs none
// of what readies a process for work, which takes longer than the words.
func brief(args []string) bool {
	if len(args) == 0 {
		return true
	}
	switch args[0] {
	case "help", "-h", "--help", "version", "--version":
		return true
	}
	return false
}

// collectLate lets the heap grow to 16 MiB before the first garbage collection: most
// runs are over by then. After that collection is as usual, so that a large job takes
// no more memory than otherwise.
func collectLate() {
	const early = 4 << 20 // bytes: what the runtime collects at first
	before := debug.SetGCPercent(100 * (16 << 20) / early)
	runtime.AddCleanup(new([64]byte), func(percent int) { debug.SetGCPercent(percent) }, before)
}

// command is one thing roundlay does.
type command struct {
	name  string
	about string
	args  string // how its arguments are written, for its help
	do    func(s *session, args []string) error
	lasts bool // whether it goes on until it is stopped, which it heeds itself
}

func commands() []command {
	return []command{
		{"open", "lay a job out on a page in the browser", "[JOB]", openPage, true},
		{"wrap", "print the paper wrap: a PDF to print and an SVG to look at", "[JOB]", printWraps, false},
		{"divide", "divider settings for equal parts", "[JOB]", divide, false},
		{"check", "say whether the pattern can be cut: land, wall, margins", "[JOB...]", check, false},
		{"fit", "the changes with which a job clears; or what it has room for", "[JOB]", fit, false},
		{"plan", "the whole plan: every cut with its place, depth and width", "[JOB]", plan, false},
		{"sheet", "the bench sheet: settings, cuts to tick in their order, cautions", "[JOB]", sheet, false},
		{"view", "a picture of the cut glass from the side", "[JOB...]", view, false},
		{"motifs", "the motifs there are, and their parameters", "[MOTIF]", listMotifs, false},
		{"groove", "one mark: its depth and width by its length, or the wheel that made it", "[JOB]", oneGroove, false},
		{"new", "write a starter job, with every key explained", "[FILE]", newJob, false},
		{"completion", "what a shell needs to complete commands and flags: bash, zsh or fish", "SHELL", completion, false},
		{"man", "the manual page", "", manual, false},
	}
}

// session is one run of a command: its flags, its streams, and the disk it writes to.
type session struct {
	ctx            context.Context // done when the person stops the run
	disk           disk.Disk
	flags          *pflag.FlagSet
	argument       string // the name of the argument that is not a flag
	stdin          io.Reader
	stdout, stderr io.Writer
	demo           bool      // whether it read the built-in demo because no job was given
	counting       *progress // the last line of progress, or nil
	clicked        bool      // whether it was double-clicked
	unseen         bool      // and nobody sees what it prints

	writing sync.Mutex // held while files are put on disk
	wrote   []string   // what has been put there
}

// errFindings is returned by a command that did its work and has findings to report.
var errFindings = errors.New("findings")

const (
	exitClear    = 0
	exitFindings = 1
	exitNotDone  = 2
)

// start runs a command on a disk and streams.
func start(ctx context.Context, d disk.Disk, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	s := &session{ctx: ctx, disk: d, stdin: stdin, stderr: stderr}
	return s.start(args, stdout)
}

// start runs a command until it is done or stopped, and returns its exit status.
func (s *session) start(args []string, stdout io.Writer) int {
	out, told := &printer{to: stdout}, s.stderr
	s.stdout, s.stderr = out, &remarks{to: told}
	err := dispatch(s, args)
	if lost := out.failed(); lost != nil && (err == nil || errors.Is(err, errFindings) || errors.Is(err, lost)) {
		err = fmt.Errorf("standard output: %w", disk.Bare(lost))
	}
	switch {
	case err == nil:
		return exitClear
	case errors.Is(err, errFindings):
		return exitFindings
	}
	fmt.Fprintf(told, "roundlay: %s\n", oneLine(err.Error()))
	return exitNotDone
}

func dispatch(s *session, args []string) error {
	if brief(args) {
		if len(args) > 0 && strings.HasSuffix(args[0], "version") {
			_, err := fmt.Fprintln(s.stdout, thisVersion())
			return err
		}
		usage(s.stdout)
		return nil
	}
	var names []string
	for _, c := range commands() {
		if c.name == args[0] {
			return s.perform(c, args[1:])
		}
		names = append(names, c.name)
	}
	return unknownCommand(args[0], names)
}

// perform runs one command.
func (s *session) perform(c command, args []string) error {
	s.flags = pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	s.argument = strings.Trim(c.args, "[].")
	s.flags.SetOutput(io.Discard)
	s.flags.SortFlags = false
	heed := s.heed
	if c.lasts {
		heed = func(work func() error) error { return work() }
	}
	err := heed(func() error { return c.do(s, glue(args)) })
	if errors.Is(err, pflag.ErrHelp) {
		fmt.Fprintf(s.stdout, "roundlay %s %s: %s\n\n%s", c.name, c.args, c.about, s.flags.FlagUsages())
		return nil
	}
	if s.demo && (err == nil || errors.Is(err, errFindings)) {
		fmt.Fprintln(s.stderr, "No job file was given: this is the built-in demo job.")
	}
	return err
}

func usage(w io.Writer) {
	fmt.Fprint(w, "roundlay lays out a cut decoration on a drinking glass and prints it as a paper wrap true to size.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(w, "  roundlay %-10s %-8s %s\n", c.name, c.args, c.about)
	}
	fmt.Fprint(w, `
JOB is a job file; - is standard input; without one the built-in demo is used.
check and view take several, to compare them.
"roundlay COMMAND --help" lists a command's flags; "roundlay --version" says which roundlay this is.
`)
}
