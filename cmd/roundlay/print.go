package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

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

// options reads the flags.
func (p paperFlags) options(unit geometry.Unit) (page.Options, error) {
	o := page.DefaultOptions(unit)
	var err error
	if *p.paper != "" {
		if o.Paper, err = page.ParsePaper(*p.paper); err != nil {
			return o, fmt.Errorf("--paper: %w", err)
		}
	}
	most := min(o.Paper.Width, o.Paper.Height) / 4
	return o, readLength(unit, "--margin", *p.margin, &o.Margin, most, "a quarter of the sheet")
}

// flagged adds to a refusal of paper the flag it is about.
func flagged(err error) error {
	var refused *page.PaperError
	if errors.As(err, &refused) {
		return fmt.Errorf("--paper: %w", err)
	}
	return err
}

// readLength reads a flag's length, if it is given, and checks that it is not too
// long.
func readLength(unit geometry.Unit, flag, text string, into *float64, most float64, means string) error {
	if text != "" {
		length, err := parseLength(unit, flag, text)
		if err != nil {
			return err
		}
		*into = length
	}
	accepts := func(mm float64) bool { return mm >= 0 && mm <= most }
	if !accepts(*into) {
		return fmt.Errorf("%s: read %q; accepted: from 0 to %s, %s%s", flag, text, means, unit.FormatDown(most), otherUnit(unit, text, accepts))
	}
	return nil
}

// parseLength reads a flag's length.
func parseLength(unit geometry.Unit, flag, text string) (float64, error) {
	length, err := unit.Parse(text)
	if err != nil {
		return 0, fmt.Errorf("%s: %w; accepted: %s", flag, err, geometry.LengthForms)
	}
	if unit == geometry.Millimetre && geometry.IsInchFraction(text) {
		return 0, fmt.Errorf("%s: read %q for a job in mm; give the unit: %s in", flag, text, strings.TrimSpace(text))
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
		side:       f.String("side", "outside", "outside or inside the glass, or patches: one to a repeat"),
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
	unit := j.Length
	o := wrap.DefaultOptions(unit)
	var err error
	if o.Options, err = p.paperFlags.options(unit); err != nil {
		return o, err
	}
	if o.Side, err = wrap.ParseSide(*p.side); err != nil {
		return o, fmt.Errorf("--side: %w", err)
	}
	if o.Seam, err = wrap.ParseSeam(*p.seam); err != nil {
		return o, fmt.Errorf("--seam: %w", err)
	}
	if err := readLength(unit, "--thickness", *p.thickness, &o.Thickness, wrap.MaxThickness, "thin card"); err != nil {
		return o, err
	}
	if o.Printed, err = p.printed(unit); err != nil {
		return o, err
	}
	if o.SeamAt = *p.seamAt; o.SeamAt < 1 || o.SeamAt > j.Layout.Repeats {
		return o, fmt.Errorf("--seam-at: read %d; accepted: a repeat, from 1 to %d", o.SeamAt, j.Layout.Repeats)
	}
	o.Mirror, o.NoRings = *p.mirror, *p.noRings
	return o, nil
}

// printed reads what a ruler said of the check bars.
func (p printFlags) printed(unit geometry.Unit) (page.Printed, error) {
	printed := page.TruePrinter()
	for _, bar := range []struct {
		flag, text string
		into       *float64
	}{{"--printed-across", *p.barAcross, &printed.Short}, {"--printed-up", *p.up, &printed.Long}} {
		if bar.text == "" {
			continue
		}
		length, err := page.ParsePrinted(unit, bar.text)
		if hint := otherUnit(unit, bar.text, isPrinted); err != nil && hint != "" {
			return printed, fmt.Errorf("%s: read %q; accepted: what a ruler says of the 100 mm bar%s", bar.flag, bar.text, hint)
		}
		if err != nil {
			return printed, fmt.Errorf("%s: %w", bar.flag, err)
		}
		*bar.into = length
	}
	return printed, nil
}

// isPrinted reports whether a 100 mm bar could measure this on any printer, even one
// that fits pages to the paper.
func isPrinted(mm float64) bool { return mm > 50 && mm < 200 }

// otherUnit returns a hint for a refused bare number that would be accepted in the
// other unit, "" otherwise.
func otherUnit(unit geometry.Unit, text string, accepts func(mm float64) bool) string {
	other := geometry.Inch
	if unit == geometry.Inch {
		other = geometry.Millimetre
	}
	// Only a bare number comes out differently in the two.
	mm, err := other.Parse(text)
	if was, _ := unit.Parse(text); err != nil || mm == was || !accepts(mm) {
		return ""
	}
	return fmt.Sprintf("; give the unit: %s %s", strings.TrimSpace(text), other)
}
