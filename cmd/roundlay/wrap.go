package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render"
)

// wrap writes the paper wrap of each blank.
func wrap(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a folder, or a file ending in .pdf or .svg (this folder if not given)")
	paper := s.flags.String("paper", "", "the printer's `PAPER`: "+render.PaperForms+" (letter for a job in inches, a4 for one in mm)")
	margin := s.flags.String("margin", "", "what the printer leaves white along the edges, a `LENGTH` (6 mm if not given)")
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
	options, err := printOptions(plans[0].Job.Length, *paper, *margin)
	if err != nil {
		return err
	}
	var docs []document
	for _, p := range plans {
		made, err := wrapDocuments(p, options, *out, len(plans) > 1)
		if err != nil {
			return err
		}
		docs = append(docs, made...)
	}
	if err := s.write(*force, docs...); err != nil {
		return err
	}
	for _, p := range plans {
		if n := len(p.Groups()); n > 0 {
			fmt.Fprintf(s.stderr, "Blank %q has findings (%d): they are ringed on the wrap; roundlay check tells them.\n", p.Blank.Name, n)
		}
	}
	return nil
}

// printOptions reads the flags that say how to print.
func printOptions(unit geometry.Unit, paper, margin string) (render.Options, error) {
	o := render.DefaultOptions(unit)
	var err error
	if paper != "" {
		if o.Paper, err = render.ParsePaper(paper); err != nil {
			return o, fmt.Errorf("--paper: %w", err)
		}
	}
	if margin != "" {
		if o.Margin, err = unit.Parse(margin); err != nil {
			return o, fmt.Errorf("--margin: %w; accepted: %s", err, geometry.LengthForms)
		}
	}
	if most := min(o.Paper.Width, o.Paper.Height) / 4; !(o.Margin >= 0 && o.Margin <= most) {
		return o, fmt.Errorf("--margin: read %q; accepted: from 0 to a quarter of the sheet, %s", margin, unit.Text(most))
	}
	return o, nil
}

// wrapDocuments makes the PDF and the SVG of one blank, or the one of them that
// --out names.
func wrapDocuments(p *pattern.Plan, o render.Options, out string, several bool) ([]document, error) {
	w, err := render.NewWrap(p, o)
	if err != nil {
		return nil, err
	}
	kinds := []struct {
		ending string
		make   func(io.Writer) error
	}{{".pdf", w.PDF}, {".svg", w.SVG}}
	name := fileName(p.Job.Title) + "-wrap"
	if several {
		name = fileName(p.Job.Title) + "-" + fileName(p.Blank.Name) + "-wrap"
	}
	folder, only := out, ""
	if ending := strings.ToLower(filepath.Ext(out)); (ending == ".pdf" || ending == ".svg") && !isFolder(out) {
		if several {
			return nil, errors.New("--out names one file, and the job has several blanks: name a folder, or one blank with --blank")
		}
		folder, only = "", ending
	}
	var docs []document
	for _, k := range kinds {
		path := filepath.Join(folder, name+k.ending)
		if only != "" {
			path = out
		}
		if only != "" && only != k.ending {
			continue
		}
		var data bytes.Buffer
		if err := k.make(&data); err != nil {
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
