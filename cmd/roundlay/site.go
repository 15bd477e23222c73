package main

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// siteFlags are the flags that say where on a glass a mark is made.
type siteFlags struct {
	set                                    *pflag.FlagSet
	across, around, blank, height, leaning *string
}

func addSiteFlags(f *pflag.FlagSet) siteFlags {
	return siteFlags{
		set:     f,
		across:  f.String("across", "", "the diameter of a straight glass, a `LENGTH` such as 3 1/8 in"),
		around:  f.String("around", "", "its girth instead, a `LENGTH`"),
		blank:   f.String("blank", "", "the job's blank of this name, where it has several"),
		height:  f.String("height", "", "how high on the job's blank the mark's middle is, a `LENGTH` above the table; halfway up if not given"),
		leaning: f.String("slant", "upright", "how the mark lies: upright, level, or the `DEGREES` it leans to the right from upright"),
	}
}

// bare reports whether the glass is given by its measure alone.
func (f siteFlags) bare() bool { return *f.across != "" || *f.around != "" }

// slant returns the angle by which the mark leans from upright.
func (f siteFlags) slant() (geometry.Angle, error) {
	switch text := strings.TrimSpace(*f.leaning); text {
	case "upright":
		return 0, nil
	case "level":
		return geometry.Degrees(90), nil
	default:
		degrees, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "°")), 64)
		if err != nil || !(math.Abs(degrees) <= 90) {
			return 0, fmt.Errorf("--slant: read %q; accepted: upright, level, or a number of degrees from -90 to 90", *f.leaning)
		}
		return geometry.Degrees(degrees), nil
	}
}

// unit returns the unit in which a bare glass is given.
func (f siteFlags) unit() (geometry.Unit, error) {
	for _, flag := range []string{"blank", "height"} {
		if f.set.Changed(flag) {
			return 0, fmt.Errorf("--%s is for a job's blank: leave out --across and --around, or leave out --%s", flag, flag)
		}
	}
	if *f.across != "" && *f.around != "" {
		return 0, errors.New("groove takes --across or --around, not both")
	}
	unit, err := writtenIn(*f.across + *f.around)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", f.measure(), err)
	}
	return unit, nil
}

// measure is the flag that gives a bare glass.
func (f siteFlags) measure() string {
	if *f.around != "" {
		return "--around"
	}
	return "--across"
}

// straight returns the site on a bare glass.
func (f siteFlags) straight(unit geometry.Unit) (report.Site, error) {
	lean, err := f.slant()
	if err != nil {
		return report.Site{}, err
	}
	text, per := *f.across, 1.0
	if *f.around != "" {
		text, per = *f.around, math.Pi
	}
	const least = 1 // mm
	across, err := lengthFrom(unit, f.measure(), text, least*per, maxSizeAcross*per)
	if err != nil {
		return report.Site{}, err
	}
	across /= per
	at, err := groove.NewStraightSite(across/2, lean.Radians())
	return report.Site{At: at, Unit: unit, Across: across, Lean: lean}, err
}

// maxSizeAcross is the widest that a glass and a wheel may be, as in a job.
const maxSizeAcross = 1000 // mm

// onBlank returns the site on a job's blank.
func (f siteFlags) onBlank(j *job.Job) (report.Site, error) {
	lean, err := f.slant()
	if err != nil {
		return report.Site{}, err
	}
	chosen, err := blanks(j, *f.blank)
	if err != nil {
		return report.Site{}, err
	}
	if len(chosen) > 1 {
		return report.Site{}, fmt.Errorf("groove is for one blank, and the job has %d: name one with --blank", len(chosen))
	}
	b := chosen[0]
	height := b.Height() / 2
	if *f.height != "" {
		if height, err = lengthFrom(j.Length, "--height", *f.height, 0, b.Height()); err != nil {
			return report.Site{}, err
		}
	}
	return report.Site{
		At:   siteOn(b, height, lean),
		Unit: j.Length, Blank: b.Name, Height: height, Across: 2 * b.Profile().Radius(height), Lean: lean,
	}, nil
}

// siteOn returns the site at a height of a blank.
func siteOn(b *glass.Blank, height float64, lean geometry.Angle) *groove.Site {
	chart, _ := b.Profile().FitCone(0, b.Height())
	outside := b.Meridian().Charted(chart)
	return groove.NewSite(&outside, b.Beneath(), height, lean.Radians())
}

// lengthFrom reads a flag's length within bounds, in millimetres.
func lengthFrom(unit geometry.Unit, flag, text string, least, most float64) (float64, error) {
	length, err := parseLength(unit, flag, text)
	if err != nil {
		return 0, err
	}
	if !(length >= least && length <= most) {
		return 0, fmt.Errorf("%s: read %q; accepted: a length from %s to %s", flag, text, unit.FormatUp(least), unit.FormatDown(most))
	}
	return length, nil
}
