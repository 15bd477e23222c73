package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/cmd/desk/files"
	"roundlay/render/page"
)

// The endings a file may be asked for with.
const pdfEnding, svgEnding, pngEnding = files.PDF, files.SVG, files.PNG

// errSeveral refuses one file for the papers or pictures of several blanks.
var errSeveral = errors.New("--out names one file, and the job has several blanks: name a folder, or one blank with --blank")

// outTarget reads --out of a command that writes files of the given endings:
// whether it names a folder, and the ending, the first of them in a folder.
func outTarget(out string, endings ...string) (folder bool, ending string, err error) {
	ending = strings.ToLower(filepath.Ext(out))
	switch {
	case out == "" || isFolder(out) || strings.HasSuffix(out, "/") || ending == "":
		return true, endings[0], nil
	case !slices.Contains(endings, ending):
		last := len(endings) - 1
		named := endings[last]
		if last > 0 {
			named = strings.Join(endings[:last], ", ") + " or " + named
		}
		return false, "", fmt.Errorf("--out: read %q; accepted: a file ending in %s, or a folder", out, named)
	}
	return false, ending, nil
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// target says where and in what form papers are written.
type target struct {
	out     string
	page    int  // 0 where none is asked for
	first   bool // page 1 is taken, as none was asked for
	dpi     float64
	paper   page.Options
	several bool // whether more than one paper is to be written

	folder, only string // the folder, or the one ending that out names
}

// read finds out whether a folder or a file is named, and whether the flags
// suit it.
func (t *target) read(flags *pflag.FlagSet) error {
	t.folder = t.out
	ending := strings.ToLower(filepath.Ext(t.out))
	if slices.Contains([]string{pdfEnding, svgEnding, pngEnding}, ending) && !isFolder(t.out) {
		if t.several {
			return errSeveral
		}
		t.folder, t.only = "", ending
	}
	switch {
	case t.only == "" && ending != "" && !isFolder(t.out) && !strings.HasSuffix(t.out, "/"):
		return fmt.Errorf("--out: read %q; accepted: a file ending in .pdf, .svg or .png, or a folder (a new one whose name has a dot ends in /)", t.out)
	case flags.Changed("page") && t.only != pngEnding && t.only != svgEnding:
		return errors.New("--page is for a picture of one page: name it too, such as --out page.png")
	case flags.Changed("page") && t.page < 1:
		return fmt.Errorf("--page: read %d; accepted: a page of the paper, from 1", t.page)
	case flags.Changed("dpi") && t.only != pngEnding:
		return errors.New("--dpi is for a .png: name it too, such as --out page.png")
	}
	if err := files.FitsDPI(t.dpi, t.paper); err != nil {
		return flagged(err)
	}
	if t.page == 0 && t.only == pngEnding {
		t.page, t.first = 1, true
	}
	return nil
}

// others says how to come to the other pages of a paper, where a picture shows the first
// and no page was asked for.
func (t target) others(pages int) []string {
	switch {
	case !t.first || pages < 2:
		return nil
	case pages == 2:
		return []string{fmt.Sprintf("%s is page 1 of 2; --page 2 shows the other, and a .pdf has both.", t.out)}
	default:
		return []string{fmt.Sprintf("%s is page 1 of %d; --page 2 to --page %d show the others, and a .pdf has them all.", t.out, pages, pages)}
	}
}

// files are the documents of one paper that are asked for, not made yet.
func (t target) files(name, as string) []document {
	if t.only != "" {
		return []document{{path: t.out, as: as}}
	}
	var docs []document
	for _, ending := range []string{pdfEnding, svgEnding} {
		docs = append(docs, document{path: filepath.Join(t.folder, name+ending), as: as})
	}
	return docs
}
