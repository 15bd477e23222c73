package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/pattern/job"
)

// rewriteFlags say where a changed job is saved.
type rewriteFlags struct {
	to       *string
	included *bool
}

func addRewriteFlags(f *pflag.FlagSet, write string) rewriteFlags {
	return rewriteFlags{
		to:       f.String("write", "", write),
		included: f.Bool("included", false, "with --write: change a value that stands in an included file there, and not in the job (with --force, for that file is there)"),
	}
}

// agree refuses what can't be saved as asked. j is the job that was read from file.
func (f rewriteFlags) agree(j *job.Job, file string) error {
	switch {
	case *f.to == "":
		return nil
	case besideJob(file) && sameFolder(file, *f.to) && slices.Contains(j.Needs(), filepath.Base(*f.to)):
		return fmt.Errorf("--write: %s is one of the files that the job reads; give the changed job another name", *f.to)
	case !*f.included:
		return nil
	case len(j.Included()) == 0:
		return errors.New("--included is for a job that includes files, and this one includes none")
	case !sameFolder(file, *f.to):
		return fmt.Errorf("--included changes files beside %s: --write has to name a file in that folder too", file)
	}
	return nil
}

// given refuses flags that ask for a change of files without saying where the job goes.
func (f rewriteFlags) given() error {
	if *f.included && *f.to == "" {
		return errors.New("--included says where a changed value goes: give --write FILE too")
	}
	return nil
}

// rewrite returns the changed job as documents, with the included files that are changed for
// it, and as it reads then.
func (f rewriteFlags) rewrite(j *job.Job, file string, text []byte, edits []job.Edit) ([]document, *job.Job, error) {
	var files []job.File
	var err error
	if *f.included {
		text, files, err = j.RewriteIncluded(text, edits)
	} else {
		text, err = j.Rewrite(text, edits)
	}
	if err != nil {
		return nil, nil, inWords(err)
	}
	again, err := j.ReadAgain("the changed job", text, files...)
	docs := []document{{path: *f.to, as: "--write", data: text}}
	for _, changed := range files {
		docs = append(docs, document{path: filepath.Join(filepath.Dir(file), changed.Name), as: "--included", data: changed.Data})
	}
	return docs, again, err
}

// inWords leaves of an error that says why a text can't be changed what a person can use.
func inWords(err error) error {
	var refused *job.RevisionError
	if errors.As(err, &refused) {
		return fmt.Errorf("the change can't be written: %s", refused.Words)
	}
	return err
}

// apart says which files the changed job needs beside it, where it is saved in another folder
// than the job it comes from. It is "" where there are none.
func (f rewriteFlags) apart(j *job.Job, file string) string {
	needs := j.Needs()
	if *f.to == "" || len(needs) == 0 || sameFolder(file, *f.to) {
		return ""
	}
	for i := range needs {
		needs[i] = printable(needs[i])
	}
	last := len(needs) - 1
	words := needs[last]
	if last > 0 {
		words = strings.Join(needs[:last], ", ") + " and " + words
	}
	return fmt.Sprintf("%s reads %s beside it: put a copy in its folder too.\n", printable(*f.to), words)
}

// besideJob reports whether a job can have files beside it.
func besideJob(file string) bool { return file != "" && file != "-" }

// sameFolder reports whether two files are in one folder, as far as their names say.
func sameFolder(a, b string) bool {
	one, err1 := filepath.Abs(filepath.Dir(a))
	other, err2 := filepath.Abs(filepath.Dir(b))
	return err1 == nil && err2 == nil && one == other
}
