package main

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"roundlay/cmd/desk/files"
	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/wrap"
)

// paperFlags are the flags that say what paper the printer has.
type paperFlags struct{ paper, margin *string }

func addPaperFlags(f *pflag.FlagSet) paperFlags {
	return paperFlags{
		paper:  f.String("paper", "", "the printer's `PAPER`: "+page.PaperForms+" (letter for a job in inches, a4 for one in mm)"),
		margin: f.String("margin", "", "what the printer leaves white along the edges, a `LENGTH` (6 mm if not given)"),
	}
}

func (p paperFlags) words() files.Paper { return files.Paper{Paper: *p.paper, Margin: *p.margin} }

// options reads the flags.
func (p paperFlags) options(unit geometry.Unit) (page.Options, error) {
	o, err := p.words().Options(unit)
	return o, flagged(err)
}

// flagged writes the option that an error is about as a flag.
func flagged(err error) error {
	var wrong *files.OptionError
	if errors.As(files.Refused(err), &wrong) {
		return fmt.Errorf("--%s: %w", wrong.Option, wrong.Err)
	}
	return err
}

// parseLength reads a flag's length.
func parseLength(unit geometry.Unit, flag, text string) (float64, error) {
	length, err := files.Length(unit, text)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", flag, err)
	}
	return length, nil
}

// printFlags are the flags that say how paper is made and printed.
type printFlags struct {
	paperFlags
	side, thickness, seam, barAcross, up *string
	seamAt                               *int
	mirror, noRings                      *bool
}

func addPrintFlags(f *pflag.FlagSet) printFlags {
	return printFlags{
		side:       f.String("side", "outside", "outside or inside the glass, patches: one to a repeat, or base: the underside"),
		paperFlags: addPaperFlags(f),
		barAcross:  f.String("printed-across", "", "what a ruler says of the 100 mm bar across a test page, along the paper's short side, a `LENGTH`"),
		up:         f.String("printed-up", "", "what it says of the bar up that page, along the long side, a `LENGTH`"),
		thickness:  f.String("thickness", "", "how thick the paper is, a `LENGTH` (0.1 mm if not given)"),
		seam:       f.String("seam", "tab", "how the wrap's ends meet: on a tab, or butt, edge to edge"),
		seamAt:     f.Int("seam-at", 1, "the `REPEAT` on whose left edge the seam falls"),
		mirror:     f.Bool("mirror", false, "right and left changed, to trace through from the back"),
		noRings:    f.Bool("no-rings", false, "no rings round what check finds: the paper lists it all the same"),
	}
}

// options reads the flags for a job.
func (p printFlags) options(j *job.Job) (wrap.Options, error) {
	o, err := files.Print{
		Paper: p.words(), Side: *p.side, Thickness: *p.thickness, Seam: *p.seam,
		PrintedAcross: *p.barAcross, PrintedUp: *p.up, SeamAt: p.seamAt, Mirror: *p.mirror, NoRings: *p.noRings,
	}.Options(j)
	return o, flagged(err)
}
