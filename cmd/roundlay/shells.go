package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

func every(*pflag.Flag) bool { return true }

// needsValue reports whether a flag has a value that is no path.
func needsValue(f *pflag.Flag) bool { return !bare(f) && !takesPath(f) }

// bashCompletion writes a function for bash, which is in plain bash: nothing else has to be
// installed.
func bashCompletion(w io.Writer, all []offered) {
	var commands []string
	for _, o := range all {
		commands = append(commands, o.name)
	}
	fmt.Fprint(w, `# roundlay completion bash > ~/.local/share/bash-completion/completions/roundlay
_roundlay_files() {
	local found
	compopt -o filenames 2>/dev/null
	while IFS= read -r found; do
		if [ -d "$found" ] || [ -z "$1" ] || [[ $found == *$1 ]]; then COMPREPLY+=("$found"); fi
	done < <(compgen -f -- "$word")
}
_roundlay() {
	local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} flags= valued= paths= words= files=
	COMPREPLY=()
	if [ "$COMP_CWORD" = 1 ]; then
`)
	fmt.Fprintf(w, "\t\tCOMPREPLY=($(compgen -W %q -- \"$word\"))\n\t\treturn\n\tfi\n\tcase ${COMP_WORDS[1]} in\n", strings.Join(commands, " ")+" help --version")
	for _, o := range all {
		fmt.Fprintf(w, "\t%s)\n\t\tflags=%q valued=%q paths=%q\n", o.name,
			strings.Join(append(names(o.flags, every), "--help"), " "), strings.Join(names(o.flags, needsValue), " "), strings.Join(names(o.flags, takesPath), " "))
		if len(o.words) > 0 {
			fmt.Fprintf(w, "\t\twords=%q\n", strings.Join(o.words, " "))
		}
		if o.takesFile() {
			fmt.Fprint(w, "\t\tfiles=.toml\n")
		}
		fmt.Fprint(w, "\t\t;;\n")
	}
	fmt.Fprint(w, `	*) return ;;
	esac
	case " $valued " in *" $before "*) return ;; esac
	case " $paths " in *" $before "*) _roundlay_files; return ;; esac
	case $word in
	-*) COMPREPLY=($(compgen -W "$flags" -- "$word")) ;;
	*)
		[ -z "$words" ] || COMPREPLY=($(compgen -W "$words" -- "$word"))
		[ -z "$files" ] || _roundlay_files "$files"
		;;
	esac
}
complete -F _roundlay roundlay
`)
}

// zshCompletion writes a completion function for zsh.
func zshCompletion(w io.Writer, all []offered) {
	fmt.Fprint(w, "#compdef roundlay\n# roundlay completion zsh > a folder of $fpath/_roundlay\n_roundlay() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, o := range all {
		fmt.Fprintf(w, "\t\t%s\n", quote(o.name+":"+strings.ReplaceAll(o.about, ":", `\:`)))
	}
	fmt.Fprint(w, "\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe command commands\n\t\treturn\n\tfi\n\tlocal command=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $command in\n")
	for _, o := range all {
		fmt.Fprintf(w, "\t%s)\n\t\t_arguments", o.name)
		for _, f := range o.flags {
			fmt.Fprintf(w, " \\\n\t\t\t%s", quote(zshFlag(f)))
		}
		fmt.Fprint(w, " \\\n\t\t\t'--help[list the flags]'")
		switch {
		case len(o.words) > 0:
			fmt.Fprintf(w, " \\\n\t\t\t%s", quote("1:word:("+strings.Join(o.words, " ")+")"))
		case o.takesFiles():
			fmt.Fprintf(w, " \\\n\t\t\t%s", quote(`*:job file:_files -g "*.toml"`))
		case o.takesFile():
			fmt.Fprintf(w, " \\\n\t\t\t%s", quote(`1:job file:_files -g "*.toml"`))
		}
		fmt.Fprint(w, "\n\t\t;;\n")
	}
	fmt.Fprint(w, "\tesac\n}\nif [ \"$funcstack[1]\" = _roundlay ]; then _roundlay \"$@\"; else compdef _roundlay roundlay; fi\n")
}

// zshFlag is a flag as _arguments takes it.
func zshFlag(f *pflag.Flag) string {
	about := strings.NewReplacer("[", "(", "]", ")", ":", " ").Replace(summary(f))
	switch {
	case bare(f):
		return fmt.Sprintf("--%s[%s]", f.Name, about)
	case takesPath(f):
		return fmt.Sprintf("--%s=[%s]:path:_files", f.Name, about)
	}
	return fmt.Sprintf("--%s=[%s]:value:", f.Name, about)
}

// fishCompletion writes a line for each thing that fish can offer.
func fishCompletion(w io.Writer, all []offered) {
	fmt.Fprint(w, "# roundlay completion fish > ~/.config/fish/completions/roundlay.fish\ncomplete -c roundlay -f\n")
	for _, o := range all {
		fmt.Fprintf(w, "complete -c roundlay -n __fish_use_subcommand -a %s -d %s\n", o.name, fishQuote(o.about))
		within := fmt.Sprintf("complete -c roundlay -n '__fish_seen_subcommand_from %s'", o.name)
		for _, f := range o.flags {
			switch {
			case bare(f):
				fmt.Fprintf(w, "%s -l %s -d %s\n", within, f.Name, fishQuote(summary(f)))
			case takesPath(f):
				fmt.Fprintf(w, "%s -l %s -r -F -d %s\n", within, f.Name, fishQuote(summary(f)))
			default:
				fmt.Fprintf(w, "%s -l %s -x -d %s\n", within, f.Name, fishQuote(summary(f)))
			}
		}
		if len(o.words) > 0 {
			fmt.Fprintf(w, "%s -a %s\n", within, fishQuote(strings.Join(o.words, " ")))
		}
		if o.takesFile() {
			fmt.Fprintf(w, "%s -k -a '(__fish_complete_suffix .toml)'\n", within)
		}
	}
}

// quote is a word as zsh and bash read it whole.
func quote(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

// fishQuote is a word as fish reads it whole.
func fishQuote(text string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(text) + "'"
}
