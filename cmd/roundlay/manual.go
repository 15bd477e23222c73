package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// manual prints the manual page, for man.
func manual(s *session, args []string) error {
	if extra, err := s.parse(args); err != nil {
		return err
	} else if extra != "" {
		return errors.New("man takes no argument: it prints the manual page, as with roundlay man > roundlay.1")
	}
	w := s.stdout
	fmt.Fprintf(w, ".TH ROUNDLAY 1 \"\" \"%s\" \"roundlay\"\n", roff(strings.SplitN(thisVersion(), ",", 2)[0]))
	fmt.Fprint(w, ".SH NAME\nroundlay \\- lay out a cut decoration on a drinking glass, and print it true to size\n")
	fmt.Fprint(w, ".SH SYNOPSIS\n.B roundlay\n.I COMMAND\n.RI [ FLAGS ]\n.RI [ ARGUMENT ]\n")
	fmt.Fprint(w, ".SH DESCRIPTION\nJOB is a job file; \\- is standard input; without one the built-in demo is used.\n"+
		"A length is written as it is read, such as \"3 1/8\" or \"79.4 mm\".\n.SH COMMANDS\n")
	for _, o := range offers() {
		fmt.Fprintf(w, ".SS \"%s\"\n%s.\n", roff(strings.TrimSpace("roundlay "+o.name+" "+o.args)), roff(o.about))
		for _, f := range o.flags {
			fmt.Fprintf(w, ".TP\n.B %s\n%s\n", roff(flagName(f)), roff(flagWords(f)))
		}
	}
	fmt.Fprint(w, ".SH EXIT STATUS\n.TP\n.B 0\ndone, and clear\n.TP\n.B 1\ndone, with findings\n.TP\n.B 2\nnot done: standard error says why\n"+
		".SH EXAMPLES\n.nf\nroundlay new tumbler.toml\nroundlay check tumbler.toml\nroundlay wrap tumbler.toml \\-\\-paper letter\n.fi\n")
	return nil
}

// flagName is a flag and the name of its value.
func flagName(f *pflag.Flag) string {
	if value, _ := pflag.UnquoteUsage(f); value != "" && !bare(f) {
		return "--" + f.Name + " " + value
	}
	return "--" + f.Name
}

// flagWords says what a flag is for, and what it is where it isn't given.
func flagWords(f *pflag.Flag) string {
	switch f.DefValue {
	case "", "0", "false", "[]":
		return summary(f)
	}
	return fmt.Sprintf("%s (%s if not given)", summary(f), f.DefValue)
}

// roff is text as man sets it: hyphens that can be copied, and no line that begins as a
// request.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, `"`, `\(dq`).Replace(text)
	if strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'") {
		text = `\&` + text
	}
	return text
}
