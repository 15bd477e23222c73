// Command roundlay lays out a cut decoration on a drinking glass and prints it
// as a paper wrap true to size.
//
// Each command lives in a file of its own. It reads a job, asks the packages
// below for a plan or a picture of it, and writes what they return; errors come
// back to run, the only place that speaks to standard error and picks the exit
// status: 0 done and clear, 1 done with findings, 2 not done.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"
)

func main() {
	collectLate()
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// collectLate lets the heap grow to 16 MiB before garbage is collected for the
// first time: most runs are over by then. From there on it is collected as ever,
// so that a large job takes no more memory than it would have.
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
}

func commands() []command {
	return []command{
		{"wrap", "print the paper wrap: a PDF to print and an SVG to look at", "[JOB]", wrap},
		{"divide", "divider settings for equal parts", "[JOB]", divide},
		{"check", "say whether the pattern can be cut: land, wall, margins", "[JOB]", check},
		{"fit", "the changes with which a job clears; or what it has room for", "[JOB]", fit},
		{"plan", "the whole plan: every cut with its place, depth and width", "[JOB]", plan},
		{"sheet", "the bench sheet: settings, cuts to tick in their order, cautions", "[JOB]", sheet},
		{"view", "a picture of the cut glass from the side", "[JOB]", view},
		{"motifs", "the motifs there are, and their parameters", "[MOTIF]", listMotifs},
		{"new", "write a starter job, with every key explained", "[FILE]", newJob},
	}
}

// session is one run of a command: its flags and its streams.
type session struct {
	flags          *pflag.FlagSet
	stdin          io.Reader
	stdout, stderr io.Writer
	demo           bool // whether it read the built-in demo for want of a job
}

// errFindings is returned by a command that did its work and has findings to report.
var errFindings = errors.New("findings")

const (
	exitClear    = 0
	exitFindings = 1
	exitNotDone  = 2
)

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	err := dispatch(args, stdin, stdout, stderr)
	switch {
	case err == nil:
		return exitClear
	case errors.Is(err, errFindings):
		return exitFindings
	}
	fmt.Fprintf(stderr, "roundlay: %s\n", oneLine(err.Error()))
	return exitNotDone
}

func dispatch(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		usage(stdout)
		return nil
	}
	for _, c := range commands() {
		if c.name != args[0] {
			continue
		}
		s := &session{flags: pflag.NewFlagSet(c.name, pflag.ContinueOnError), stdin: stdin, stdout: stdout, stderr: stderr}
		s.flags.SetOutput(io.Discard)
		s.flags.SortFlags = false
		err := c.do(s, glue(args[1:]))
		if errors.Is(err, pflag.ErrHelp) {
			fmt.Fprintf(stdout, "roundlay %s %s: %s\n\n%s", c.name, c.args, c.about, s.flags.FlagUsages())
			return nil
		}
		if s.demo && (err == nil || errors.Is(err, errFindings)) {
			fmt.Fprintln(stderr, "No job file was given: this is the built-in demo job.")
		}
		return err
	}
	names := make([]string, 0, len(commands()))
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return fmt.Errorf("there is no command %q; the commands are %s", args[0], strings.Join(names, ", "))
}

func usage(w io.Writer) {
	fmt.Fprint(w, "roundlay lays out a cut decoration on a drinking glass and prints it as a paper wrap true to size.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(w, "  roundlay %-8s %-8s %s\n", c.name, c.args, c.about)
	}
	fmt.Fprint(w, `
JOB is a job file; - is standard input; without one the built-in demo is used.
"roundlay COMMAND --help" lists a command's flags.
`)
}

// parse reads the command's arguments and returns the one that is not a flag,
// or "" without one.
func (s *session) parse(args []string) (string, error) {
	if err := s.flags.Parse(args); err != nil {
		return "", err
	}
	if s.flags.NArg() > 1 {
		return "", fmt.Errorf("%s takes one argument, and was given %q", s.flags.Name(), s.flags.Args())
	}
	return s.flags.Arg(0), nil
}

// glue joins a length that the shell split back together, so that
// --across 3 1/8 in reads as --across "3 1/8 in".
func glue(args []string) []string {
	var out []string
	for i, arg := range args {
		if i > 0 && len(out) > 0 && continuesLength(out[len(out)-1], arg) {
			out[len(out)-1] += " " + arg
		} else {
			out = append(out, arg)
		}
	}
	return out
}

// continuesLength reports whether next goes on with the length that before
// ends in: a digit, and then a fraction or a unit.
func continuesLength(before, next string) bool {
	if before == "" || !strings.ContainsAny(before[len(before)-1:], "0123456789") {
		return false
	}
	over, under, fraction := strings.Cut(strings.TrimSuffix(next, `"`), "/")
	digits := func(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
	if fraction && digits(over) && digits(under) {
		return true
	}
	switch strings.ToLower(next) {
	case "in", "in.", "inch", "inches", "mm", "cm", `"`:
		return true
	}
	return false
}

// oneLine keeps a message on one line, whatever a file or a library put in it.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
