package main

import (
	"errors"
	"fmt"

	"roundlay/cmd/desk/files"
	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/report"
	"roundlay/render/wrap"
)

// listMotifs reports the motifs there are, or the parameters of one; or draws
// them on a chart.
func listMotifs(s *session, args []string) error {
	asJSON := s.flags.Bool("json", false, "report in JSON")
	chart := s.flags.Bool("chart", false, "draw them: swatches on a page to print; of one motif, what each parameter does")
	out := s.flags.String("out", "", "where to write the chart: a folder, or a file ending in .pdf, .svg or .png (this folder if not given)")
	paper := s.flags.String("paper", "", "the printer's `PAPER` for the chart: "+page.PaperForms+" (letter if not given)")
	save := s.flags.String("save", "", "write the motif, with every key of it, to this `FILE` for jobs to include")
	unit := s.flags.String("unit", "in", "with --save: the unit the file is written in, in or mm")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	name, err := s.parse(args)
	if err != nil {
		return err
	}
	if s.flags.Changed("unit") && *save == "" {
		return errors.New("--unit is for a file of a motif: ask for it with --save")
	}
	for _, flag := range []string{"out", "paper", "force"} {
		if s.flags.Changed(flag) && !*chart && (flag != "force" || *save == "") {
			return fmt.Errorf("--%s is for a chart: ask for it with --chart", flag)
		}
	}
	kinds := motifs.Listed()
	if name != "" {
		kind, ok := motifs.Find(name)
		if !ok {
			return unknownMotif(name, kinds)
		}
		kinds = []motifs.Kind{kind}
	}
	if *save != "" {
		if *chart || *asJSON {
			return errors.New("--save goes with neither --chart nor --json")
		}
		return s.saveMotif(name, kinds[0], *save, *unit, *force)
	}
	if *chart && *asJSON {
		return errors.New("--json and --chart: one or the other")
	}
	if *chart {
		return s.chart(name, *out, *paper, *force)
	}
	if *asJSON {
		return report.MotifsJSON(s.stdout, kinds)
	}
	return report.Motifs(s.stdout, kinds)
}

// saveMotif writes one kind of motif to a file for jobs to include, or to standard output.
func (s *session) saveMotif(name string, kind motifs.Kind, file, unit string, force bool) error {
	if name == "" {
		return errors.New("--save writes one motif: name it, such as roundlay motifs leaf --save fern.toml")
	}
	u, err := geometry.ParseUnit(unit)
	if err != nil {
		return fmt.Errorf("--unit: %w", err)
	}
	text := job.MotifFile(nameOr(file, kind.Name+".toml"), kind, u)
	if file == "-" {
		_, err := s.stdout.Write(text)
		return err
	}
	return s.write(force, document{path: file, data: text})
}

// chart writes swatches of all the motifs, or of one of them.
func (s *session) chart(name, out, paper string, force bool) error {
	options := wrap.DefaultOptions(geometry.Inch) // as the built-in demo's
	if paper != "" {
		var err error
		if options.Paper, err = page.ParsePaper(paper); err != nil {
			return fmt.Errorf("--paper: %w", err)
		}
	}
	to := target{out: out, dpi: files.UsualDPI, paper: options.Options}
	if err := to.read(s.flags); err != nil {
		return err
	}
	of := name
	if of == "" {
		of = "motifs"
	}
	docs := to.files(of+"-chart", "--out")
	if err := mayWrite(force, docs...); err != nil {
		return err
	}
	var drawn *wrap.Wrap
	var err error
	if kind, ok := motifs.Find(name); ok {
		drawn, err = wrap.NewMotifChart(s.ctx, kind, options)
	} else {
		drawn, err = wrap.NewChart(s.ctx, motifs.All(), options)
	}
	if err != nil {
		return flagged(err)
	}
	if err := fill(docs, drawn, to); err != nil {
		return err
	}
	return s.write(force, docs...)
}

// unknownMotif returns the error of an unknown motif, with the nearest known one.
func unknownMotif(name string, kinds []motifs.Kind) error {
	err := fmt.Errorf("there is no motif %q; the motifs are %s", name, report.Names(kinds))
	names := make([]string, len(kinds))
	for i, kind := range kinds {
		names[i] = kind.Name
	}
	if near := job.Nearest(name, names); near != "" {
		err = fmt.Errorf("%w; the nearest is %s", err, near)
	}
	return err
}
