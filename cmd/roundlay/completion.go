package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// shells are those that completion is written for.
var shells = []string{"bash", "zsh", "fish"}

// completion prints what a shell needs to complete commands, flags and job files.
func completion(s *session, args []string) error {
	shell, err := s.parse(args)
	if err != nil {
		return err
	}
	write := map[string]func(io.Writer, []offered){"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion}[shell]
	if write == nil {
		if near := job.Nearest(shell, shells); near != "" && shell != "" {
			return fmt.Errorf("completion: read %q; accepted: %s; the nearest is %s", shell, strings.Join(shells, ", "), near)
		}
		return fmt.Errorf("completion: read %q for SHELL; accepted: %s", shell, strings.Join(shells, ", "))
	}
	write(s.stdout, offers())
	return nil
}

// offered is a command as a person is offered it: its flags, and the words its argument can
// be, where these are few.
type offered struct {
	command
	flags []*pflag.Flag
	words []string
}

// offers returns all commands, with the flags that they themselves define.
func offers() []offered {
	var all []offered
	for _, c := range commands() {
		o := offered{command: c}
		s := &session{stdout: io.Discard, stderr: io.Discard, flags: pflag.NewFlagSet(c.name, pflag.ContinueOnError)}
		s.flags.SetOutput(io.Discard)
		s.flags.SortFlags = false
		c.do(s, []string{"--help"}) // defines them, and stops before it does anything
		s.flags.VisitAll(func(f *pflag.Flag) { o.flags = append(o.flags, f) })
		switch c.args {
		case "[MOTIF]":
			for _, kind := range motifs.Listed() {
				o.words = append(o.words, kind.Name)
			}
		case "SHELL":
			o.words = shells
		}
		all = append(all, o)
	}
	return all
}

// takesFile reports whether a command's argument is a job file.
func (o offered) takesFile() bool {
	return o.args == "[JOB]" || o.args == "[FILE]" || o.takesFiles()
}

// takesFiles reports whether a command takes several job files.
func (o offered) takesFiles() bool { return o.args == "[JOB...]" }

// takesPath reports whether a flag's value is a file or a folder.
func takesPath(f *pflag.Flag) bool {
	return slices.Contains([]string{"out", "write", "save"}, f.Name)
}

// bare reports whether a flag needs no value.
func bare(f *pflag.Flag) bool { return f.NoOptDefVal != "" }

// summary is a flag's usage in one line.
func summary(f *pflag.Flag) string {
	_, usage := pflag.UnquoteUsage(f)
	return strings.Join(strings.Fields(usage), " ")
}

func names(flags []*pflag.Flag, keep func(*pflag.Flag) bool) []string {
	var out []string
	for _, f := range flags {
		if keep(f) {
			out = append(out, "--"+f.Name)
		}
	}
	return out
}
