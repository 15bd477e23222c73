package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// printed returns what a command prints.
func printed(t *testing.T, args ...string) string {
	t.Helper()
	var out, failed bytes.Buffer
	if status := run(args, strings.NewReader(""), &out, &failed); status != exitClear {
		t.Fatalf("%q: status %d, %s", args, status, failed.String())
	}
	return out.String()
}

// program returns where a program is, or skips the test.
func program(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not here", name)
	}
	return path
}

// helped is a flag in a command's help, which is read apart from the code that completes.
var helped = regexp.MustCompile(`(?m)^ +--([a-z-]+)`)

// Every command and every flag in a command's help is in its manual page and in what each
// shell is given.
func TestEveryFlagIsOffered(t *testing.T) {
	texts := map[string]string{"man": strings.ReplaceAll(printed(t, "man"), `\-`, "-")}
	for _, shell := range shells {
		texts[shell] = printed(t, "completion", shell)
	}
	n := 0
	for _, c := range commands() {
		for _, m := range helped.FindAllStringSubmatch(printed(t, c.name, "--help"), -1) {
			n++
			for what, pattern := range map[string]string{
				"man":  `(?s)\.SS "roundlay %s[ "](?:[^.]|\.[^S])*\n\.B --%s\b`,
				"bash": `(?m)^\t%s\)\n.*flags="[^"]*--%s `,
				"zsh":  `\n\t%s\)\n\t\t_arguments(?:[^\n]|\n\t\t\t)*\n\t\t\t'--%s=?\[`,
				"fish": `(?m)^complete .*from %s' -l %s `,
			} {
				if !regexp.MustCompile(fmt.Sprintf(pattern, c.name, m[1])).MatchString(texts[what]) {
					t.Errorf("%s lacks --%s of %s", what, m[1], c.name)
				}
			}
		}
	}
	if n < 50 {
		t.Errorf("only %d flags were found", n)
	}
}

// Every command whose help names several job files is offered several in zsh, which counts
// arguments; bash and fish don't.
func TestSeveralFilesAreOffered(t *testing.T) {
	zsh := printed(t, "completion", "zsh")
	n := 0
	for _, m := range regexp.MustCompile(`(?m)^ +roundlay ([a-z]+) +\[JOB\.\.\.\]`).FindAllStringSubmatch(printed(t, "help"), -1) {
		n++
		if !regexp.MustCompile(`\n\t` + m[1] + `\)\n\t\t_arguments(?:[^\n]|\n\t\t\t)*'\*:job file:`).MatchString(zsh) {
			t.Errorf("zsh is offered one file for %s", m[1])
		}
	}
	if n < 2 {
		t.Errorf("only %d commands take several", n)
	}
}

// Bash itself completes a line, as it would when Tab is pressed at its end.
func TestBashCompletes(t *testing.T) {
	bash := program(t, "bash")
	folder := t.TempDir()
	for _, name := range []string{"tumbler.toml", "two words.toml", "tumbler.txt", "wraps/a.pdf"} {
		file := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	script := filepath.Join(folder, ".completion")
	if err := os.WriteFile(script, []byte(printed(t, "completion", "bash")), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		line []string
		want []string
	}{
		{[]string{"ch"}, []string{"check"}},
		{[]string{"check", "--b"}, []string{"--blank"}},
		{[]string{"check", "tu"}, []string{"tumbler.toml"}},
		{[]string{"wrap", "tw"}, []string{"two words.toml"}},
		{[]string{"check", "--blank", "t"}, nil}, // a name, which is the person's own
		{[]string{"view", "--out", "tu"}, []string{"tumbler.toml", "tumbler.txt"}},
		{[]string{"view", "w"}, []string{"wraps"}},
		{[]string{"check", "tumbler.toml", "tw"}, []string{"two words.toml"}},
		{[]string{"fit", "--write", "tu"}, []string{"tumbler.toml", "tumbler.txt"}},
		{[]string{"motifs", "leaf", "--save", "tu"}, []string{"tumbler.toml", "tumbler.txt"}},
		{[]string{"motifs", "le"}, []string{"leaf"}},
		{[]string{"completion", ""}, []string{"bash", "fish", "zsh"}},
	} {
		words := append([]string{"roundlay"}, c.line...)
		ask := `. ./.completion; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _roundlay; [ ${#COMPREPLY[@]} = 0 ] || printf '%s\n' "${COMPREPLY[@]}"`
		run := exec.Command(bash, append([]string{"--norc", "-c", ask, "bash"}, words...)...)
		run.Dir = folder
		out, err := run.CombinedOutput()
		if err != nil {
			t.Errorf("%q: %v, %s", c.line, err, out)
			continue
		}
		var got []string
		if len(out) > 0 {
			got = strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: got %q, want %q", c.line, got, c.want)
		}
	}
}

// The other shells at least read what they are given, where they are here.
func TestShellsReadIt(t *testing.T) {
	for _, shell := range shells {
		t.Run(shell, func(t *testing.T) {
			c := exec.Command(program(t, shell), "-n")
			c.Stdin = strings.NewReader(printed(t, "completion", shell))
			if out, err := c.CombinedOutput(); err != nil || len(out) > 0 {
				t.Errorf("%v: %s", err, out)
			}
		})
	}
}

// groff sets the manual page without a complaint, and what it sets has the flags.
func TestManualIsSet(t *testing.T) {
	groff := program(t, "groff")
	c := exec.Command(groff, "-man", "-Tutf8", "-ww", "-P-c")
	c.Stdin = strings.NewReader(printed(t, "man"))
	var complaints bytes.Buffer
	c.Stderr = &complaints
	out, err := c.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%v: %s", err, complaints.String())
	}
	text := regexp.MustCompile(".\b").ReplaceAllString(string(out), "")
	for _, want := range []string{"roundlay wrap [JOB]", "--paper PAPER", "NAME", "EXIT STATUS", `such as "3 1/8"`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in the page", want)
		}
	}
}
