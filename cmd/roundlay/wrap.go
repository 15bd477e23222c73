package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/pflag"
	"golang.org/x/sync/errgroup"

	"roundlay/pattern"
	"roundlay/render"
)

// wrap writes the paper of each blank: a wrap for outside or inside, or patches.
func wrap(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a folder, or a file ending in .pdf, .svg or .png (this folder if not given)")
	print := addPrintFlags(s.flags)
	test := s.flags.Bool("test-page", false, "one page to learn what the printer does, and no wrap")
	page := s.flags.Int("page", 0, "the `PAGE` to show in a .png (1 if not given) or a .svg (the whole in one picture if not given)")
	dpi := s.flags.Float64("dpi", 150, "dots to the inch of a .png")
	blank := s.flags.String("blank", "", "only the blank of this name")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	plans, err := s.plans(file, *blank)
	if err != nil {
		return err
	}
	options, err := print.options(plans[0])
	if err != nil {
		return err
	}
	to := target{out: *out, page: *page, dpi: *dpi, several: len(plans) > 1 && !*test}
	if err := to.read(s.flags); err != nil {
		return err
	}
	if *test {
		docs, err := testDocuments(plans[0], options, to)
		if err != nil {
			return err
		}
		return s.write(*force, docs...)
	}
	docs, remarks, err := s.wraps(plans, options, to)
	if err != nil {
		return err
	}
	if err := s.write(*force, docs...); err != nil {
		return err
	}
	for _, words := range remarks {
		fmt.Fprintln(s.stderr, words)
	}
	return nil
}

// wraps makes the files of every blank, on all processors, and what there is to
// say of them.
func (s *session) wraps(plans []*pattern.Plan, o render.Options, to target) ([]document, []string, error) {
	docs, remarks := make([][]document, len(plans)), make([][]string, len(plans))
	progress := s.progress("wraps", len(plans))
	defer progress.done()
	var shares errgroup.Group
	shares.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range plans {
		shares.Go(func() (err error) {
			docs[i], remarks[i], err = wrapDocuments(p, o, to)
			progress.step(p)
			return err
		})
	}
	if err := shares.Wait(); err != nil {
		return nil, nil, err
	}
	return slices.Concat(docs...), slices.Concat(remarks...), nil
}

// target is where and in what form files are to be written.
type target struct {
	out     string
	page    int // 0 where none is asked for
	dpi     float64
	several bool // whether more than one paper is to be written

	folder, only string // the folder, or the one ending that out names
}

// The endings a file may be asked for with.
const pdfEnding, svgEnding, pngEnding = ".pdf", ".svg", ".png"

// read finds out whether a folder or a file is named, and whether the flags
// suit it.
func (t *target) read(flags *pflag.FlagSet) error {
	t.folder = t.out
	ending := strings.ToLower(filepath.Ext(t.out))
	if slices.Contains([]string{pdfEnding, svgEnding, pngEnding}, ending) && !isFolder(t.out) {
		if t.several {
			return errors.New("--out names one file, and the job has several blanks: name a folder, or one blank with --blank")
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
	case !(t.dpi >= 10 && t.dpi <= 2400):
		return fmt.Errorf("--dpi: read %g; accepted: dots to the inch, from 10 to 2400", t.dpi)
	}
	if t.page == 0 && t.only == pngEnding {
		t.page = 1
	}
	return nil
}

// path returns where a file of a name and an ending goes; ok is false if it is
// not asked for.
func (t target) path(name, ending string) (path string, ok bool) {
	switch t.only {
	case "":
		return filepath.Join(t.folder, name+ending), ending != pngEnding
	case ending:
		return t.out, true
	}
	return "", false
}

// wrapDocuments makes the files of one blank, and what there is to say of them.
func wrapDocuments(p *pattern.Plan, o render.Options, to target) ([]document, []string, error) {
	w, err := render.NewWrap(p, o)
	if err != nil {
		return nil, nil, err
	}
	name := planName(p) + "-" + [...]string{"wrap", "inside-wrap", "patches"}[o.Side]
	docs, err := documents(w, name, to)
	if err != nil {
		return nil, nil, err
	}
	var said []string
	prefix := ""
	if len(p.Job.Blanks) > 1 {
		prefix = fmt.Sprintf("Blank %q: ", p.Blank.Name)
	}
	for _, words := range w.Remarks {
		said = append(said, prefix+words)
	}
	if n := len(p.Groups()); n > 0 {
		said = append(said, fmt.Sprintf("Blank %q has findings (%d): the paper tells them, and rings those that have a place; roundlay check tells them too.", p.Blank.Name, n))
	}
	return docs, said, nil
}

// testDocuments makes the page that tries a printer.
func testDocuments(p *pattern.Plan, o render.Options, to target) ([]document, error) {
	w, err := render.NewTestPage(p, o)
	if err != nil {
		return nil, err
	}
	if to.only == "" {
		to.only, to.out = pdfEnding, filepath.Join(to.folder, "test-page"+pdfEnding)
	}
	return documents(w, "", to)
}

// documents makes the files of one paper, those that are asked for.
func documents(w *render.Wrap, name string, to target) ([]document, error) {
	if to.page > len(w.Pages) {
		return nil, fmt.Errorf("--page: read %d; accepted: a page of the paper, from 1 to %d", to.page, len(w.Pages))
	}
	svg := w.SVG
	if to.page > 0 {
		svg = func(out io.Writer) error { return w.PageSVG(out, to.page) }
	}
	var docs []document
	for _, kind := range []struct {
		ending string
		make   func(io.Writer) error
	}{
		{pdfEnding, w.PDF},
		{svgEnding, svg},
		{pngEnding, func(out io.Writer) error { return w.PagePNG(out, to.page, to.dpi) }},
	} {
		path, ok := to.path(name, kind.ending)
		if !ok {
			continue
		}
		var data bytes.Buffer
		if err := kind.make(&data); err != nil {
			return nil, err
		}
		docs = append(docs, document{path, data.Bytes()})
	}
	return docs, nil
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// planName is what the files of a plan are called by: the job's title and, where
// the job has several blanks, the blank's name, whether or not the others are
// asked for too. Blanks whose names come out alike are numbered.
func planName(p *pattern.Plan) string {
	name := fileName(p.Job.Title)
	if len(p.Job.Blanks) < 2 {
		return name
	}
	own, alike, number := fileName(p.Blank.Name), 0, 0
	for _, b := range p.Job.Blanks {
		if fileName(b.Name) == own {
			alike++
		}
		if b == p.Blank {
			number = alike
		}
	}
	if alike > 1 {
		own += fmt.Sprintf("-%d", number)
	}
	return name + "-" + own
}

// fileName turns a title into a name any system takes for a file.
func fileName(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if name := strings.Trim(b.String(), "-"); name != "" {
		return name
	}
	return "untitled"
}
