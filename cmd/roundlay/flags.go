package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/pattern/job"
)

// parse reads the command's arguments and returns the one that is not a flag, "" if
// there is none. An empty argument is refused: it usually comes from a variable that
// is not set in the shell.
func (s *session) parse(args []string) (string, error) {
	files, err := s.parseAll(args)
	switch {
	case err != nil:
		return "", err
	case len(files) > 1:
		return "", fmt.Errorf("%s takes one argument, and was given %q", s.flags.Name(), files)
	case len(files) == 1:
		return files[0], nil
	}
	return "", nil
}

// parseAll is parse for a command that takes several arguments.
func (s *session) parseAll(args []string) ([]string, error) {
	if err := s.flags.Parse(args); err != nil {
		return nil, s.flagError(err)
	}
	var wrong error
	s.flags.Visit(func(f *pflag.Flag) {
		if wrong == nil {
			wrong = misgiven(f)
		}
	})
	switch {
	case wrong != nil:
		return nil, wrong
	case slices.Contains(s.flags.Args(), ""):
		return nil, fmt.Errorf("%s: read \"\" for %s; accepted: a name, or no argument at all", s.flags.Name(), s.argument)
	}
	return s.flags.Args(), nil
}

// misgiven returns the error of a flag that was given an empty text, or the next flag in
// place of a value.
func misgiven(f *pflag.Flag) error {
	given := []string{f.Value.String()}
	if all, ok := f.Value.(pflag.SliceValue); ok {
		given = all.GetSlice()
	}
	_, usage := pflag.UnquoteUsage(f)
	for _, text := range given {
		switch {
		case isBlank(text):
			return fmt.Errorf("--%s: read \"\"; accepted: %s", f.Name, usage)
		case strings.HasPrefix(text, "--"):
			return fmt.Errorf("--%s: read %q, which is a flag and no value; accepted: %s", f.Name, text, usage)
		}
	}
	return nil
}

func isBlank(text string) bool { return strings.TrimSpace(text) == "" }

// flagError rewords pflag's error in this program's form.
func (s *session) flagError(err error) error {
	var unknown *pflag.NotExistError
	var wrong *pflag.InvalidValueError
	var bare *pflag.ValueRequiredError
	switch {
	case errors.As(err, &unknown):
		return s.unknownFlag(unknown)
	case errors.As(err, &wrong):
		return fmt.Errorf("--%s: read %q; accepted: %s", wrong.GetFlag().Name, wrong.GetValue(), valueOf(wrong.GetFlag()))
	case errors.As(err, &bare):
		_, usage := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Errorf("--%s: nothing follows it; accepted: %s", bare.GetFlag().Name, usage)
	}
	return err
}

// valueOf says what a flag's value is.
func valueOf(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "bool":
		return "nothing after it, or =true or =false"
	case "int":
		return "a whole number"
	}
	return "a number"
}

// unknownFlag returns the error of an unknown flag, with the nearest known one.
func (s *session) unknownFlag(err *pflag.NotExistError) error {
	name, dashes := err.GetSpecifiedName(), "--"
	if one := err.GetSpecifiedShortnames(); one != "" {
		name, dashes = one, "-" // no flag here has a single letter
	}
	var names []string
	s.flags.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if near := job.Nearest(name, names); near != "" {
		return fmt.Errorf("unknown flag: %s%s; the nearest is --%s", dashes, name, near)
	}
	return fmt.Errorf("unknown flag: %s%s; accepted by %s: --%s", dashes, name, s.flags.Name(), strings.Join(names, ", --"))
}

// unknownCommand returns the error of an unknown command, with the nearest known one,
// or for a job file with the way to write it.
func unknownCommand(name string, names []string) error {
	all := strings.Join(names, ", ")
	if strings.HasSuffix(strings.ToLower(name), ".toml") {
		return fmt.Errorf("%s stands where a command does: write roundlay check %s, or another of the commands %s", name, name, all)
	}
	err := fmt.Errorf("there is no command %q; the commands are %s", name, all)
	if near := job.Nearest(strings.TrimLeft(name, "-"), names); near != "" {
		err = fmt.Errorf("%w; the nearest is %s", err, near)
	}
	return err
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
