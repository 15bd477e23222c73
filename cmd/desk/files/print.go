package files

import (
	"errors"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/wrap"
)

// Paper is what paper the printer has, in words; empty ones leave what is usual.
type Paper struct{ Paper, Margin string }

// Options reads the words, for a job in a unit.
func (p Paper) Options(unit geometry.Unit) (page.Options, error) {
	o := page.DefaultOptions(unit)
	var err error
	if p.Paper != "" {
		if o.Paper, err = page.ParsePaper(p.Paper); err != nil {
			return o, wrong("paper", err)
		}
	}
	most := min(o.Paper.Width, o.Paper.Height) / 4
	return o, readLength(unit, "margin", p.Margin, &o.Margin, limit{most, "a quarter of the sheet"})
}

// Refused names the option of a refusal of paper, which only shows when it is drawn on.
func Refused(err error) error {
	var refused *page.PaperError
	var named *OptionError
	if errors.As(err, &refused) && !errors.As(err, &named) {
		return wrong("paper", err)
	}
	return err
}

// Print is how paper is made and printed, in words; empty ones leave what is usual.
type Print struct {
	Paper
	Side, Thickness, Seam    string
	PrintedAcross, PrintedUp string
	SeamAt                   *int // nil for what is usual
	Mirror, NoRings          bool
}

// Options reads the words for a job.
func (p Print) Options(j *job.Job) (wrap.Options, error) {
	unit := j.Length
	o := wrap.DefaultOptions(unit)
	var err error
	if o.Options, err = p.Paper.Options(unit); err != nil {
		return o, err
	}
	if p.Side != "" {
		if o.Side, err = wrap.ParseSide(p.Side); err != nil {
			return o, wrong("side", err)
		}
	}
	if p.Seam != "" {
		if o.Seam, err = wrap.ParseSeam(p.Seam); err != nil {
			return o, wrong("seam", err)
		}
	}
	if err := readLength(unit, "thickness", p.Thickness, &o.Thickness, limit{wrap.MaxThickness, "thin card"}); err != nil {
		return o, err
	}
	if o.Printed, err = p.printed(unit); err != nil {
		return o, err
	}
	if p.SeamAt != nil {
		o.SeamAt = *p.SeamAt
	}
	if o.SeamAt < 1 || o.SeamAt > j.Layout.Repeats {
		return o, wrongf("seam-at", "read %d; accepted: a repeat, from 1 to %d", o.SeamAt, j.Layout.Repeats)
	}
	o.Mirror, o.NoRings = p.Mirror, p.NoRings
	return o, nil
}

// printed reads what a ruler said of the check bars.
func (p Print) printed(unit geometry.Unit) (page.Printed, error) {
	printed := page.TruePrinter()
	for _, bar := range []struct {
		option, text string
		into         *float64
	}{{"printed-across", p.PrintedAcross, &printed.Short}, {"printed-up", p.PrintedUp, &printed.Long}} {
		if bar.text == "" {
			continue
		}
		length, err := page.ParsePrinted(unit, bar.text)
		if hint := otherUnit(unit, bar.text, isPrinted); err != nil && hint != "" {
			return printed, wrongf(bar.option, "read %q; accepted: what a ruler says of the 100 mm bar%s", bar.text, hint)
		}
		if err != nil {
			return printed, wrong(bar.option, err)
		}
		*bar.into = length
	}
	return printed, nil
}

// isPrinted reports whether a 100 mm bar could measure this on any printer, even one
// that fits pages to the paper.
func isPrinted(mm float64) bool { return mm > 50 && mm < 200 }
