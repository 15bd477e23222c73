package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/report"
)

// markFlags are what is given of one mark.
type markFlags struct {
	length, depth, width, readTo *string
	like                         *bool
}

// oneGroove reports what one mark comes to under a wheel, or which wheel made one.
func oneGroove(s *session, args []string) error {
	f := markFlags{
		length: s.flags.String("length", "", "the mark's length along the glass, a `LENGTH`; gives its depth and width"),
		depth:  s.flags.String("depth", "", "its depth instead, a `LENGTH`"),
		width:  s.flags.String("width", "", "its width instead, a `LENGTH`"),
		like:   s.flags.Bool("like", false, "which wheel made an old mark, of its --length and --width"),
		readTo: s.flags.String("read-to", "", "with --like: the step of the scale they were read on, a `LENGTH` (1/64 in or 0.1 mm if not given)"),
	}
	name := s.flags.String("wheel", "", "the job's wheel of this name; without it and --edge, every wheel of the rack")
	wheel, site := addWheelFlags(s.flags), addSiteFlags(s.flags)
	asJSON := s.flags.Bool("json", false, "report in JSON")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	if err := f.agree(wheel, site, file, *name); err != nil {
		return err
	}
	at, wheels, err := s.bench(file, *name, wheel, site)
	if err != nil {
		return err
	}
	if *f.like {
		err = s.likeMark(f, at, wheels, wheel.sizeless(), *asJSON)
	} else {
		err = s.newMark(f, at, wheels, *asJSON)
	}
	if err == nil && !s.flags.Changed("slant") {
		fmt.Fprintln(s.stderr, "It is taken to lie upright. One that lies level or slants comes out otherwise, mostly deeper: say so with --slant.")
	}
	return err
}

// agree refuses flags that don't go with one another.
func (f markFlags) agree(wheel wheelFlags, site siteFlags, file, name string) error {
	given := f.given()
	switch {
	case *f.like && (*f.length == "" || *f.width == "" || *f.depth != ""):
		return errors.New("--like takes the --length and the --width of an old mark, and no --depth: that is what it tells")
	case !*f.like && *f.readTo != "":
		return errors.New("--read-to is for --like: leave it out")
	case !*f.like && len(given) > 1:
		return fmt.Errorf("groove takes one of --length, --depth and --width, and was given --%s; --like takes --length and --width and tells the wheel", strings.Join(given, ", --"))
	case name != "" && wheel.given():
		return errors.New("groove takes a --wheel of the job or a wheel by its --edge and measures, not both")
	case !*f.like && wheel.sizeless():
		return errors.New("--wheel-across: missing; say how far the wheel is across, such as --wheel-across 4in" + wheel.missingToo("across"))
	case wheel.given() && !wheel.has("edge"):
		return fmt.Errorf("--edge: missing; accepted: %s%s", strings.Join(groove.Edges(), ", "), wheel.missingToo("edge"))
	case wheel.given() && !slices.Contains(groove.Edges(), wheel.edge()):
		return fmt.Errorf("--edge: read %q; accepted: %s", wheel.edge(), strings.Join(groove.Edges(), ", "))
	case site.bare() && file == "" && name == "" && !wheel.given():
		return errors.New("groove needs a wheel: --edge, --wheel-across, --thick and, of a mitre, --angle; or a job with its rack")
	}
	return nil
}

// given lists which of length, depth and width were given.
func (f markFlags) given() []string {
	var names []string
	for _, one := range []struct {
		name string
		text *string
	}{{"length", f.length}, {"depth", f.depth}, {"width", f.width}} {
		if *one.text != "" {
			names = append(names, one.name)
		}
	}
	return names
}

// bench returns the place on the glass and the wheels that are asked about. It reads a job
// only where one is needed.
func (s *session) bench(file, name string, wheel wheelFlags, site siteFlags) (at report.Site, wheels []groove.Wheel, err error) {
	var j *job.Job
	var unit geometry.Unit
	if site.bare() {
		if unit, err = site.unit(); err != nil {
			return at, nil, err
		}
	}
	if file != "" || !site.bare() || !wheel.given() {
		if j, _, err = s.readJob(file); err != nil {
			return at, nil, err
		}
	}
	if site.bare() {
		at, err = site.straight(unit)
	} else {
		at, err = site.onBlank(j)
	}
	if err != nil {
		return at, nil, err
	}
	if wheel.given() {
		one, err := wheel.read(at.Unit)
		return at, []groove.Wheel{one}, err
	}
	wheels, err = inRack(j, name)
	return at, wheels, err
}

// inRack returns the rack's wheels, or the one named.
func inRack(j *job.Job, name string) ([]groove.Wheel, error) {
	if name == "" {
		return j.Rack, nil
	}
	var names []string
	for _, w := range j.Rack {
		if w.Name == name {
			return []groove.Wheel{w}, nil
		}
		names = append(names, fmt.Sprintf("%q", w.Name))
	}
	return nil, fmt.Errorf("--wheel: there is no wheel %q in the job; it has %s", name, strings.Join(names, ", "))
}

// newMark reports the marks that are asked for, or a table of marks.
func (s *session) newMark(f markFlags, at report.Site, wheels []groove.Wheel, asJSON bool) error {
	var asked groove.Asked
	const least = 0.01 // mm: what is finer, no one cuts
	for _, one := range []struct {
		flag, text string
		to         *float64
	}{{"--length", *f.length, &asked.Length}, {"--depth", *f.depth, &asked.Depth}, {"--width", *f.width, &asked.Width}} {
		if one.text == "" {
			continue
		}
		length, err := parseLength(at.Unit, one.flag, one.text)
		if err == nil && !(length >= least && length <= maxSizeAcross) {
			err = fmt.Errorf("%s: read %q; accepted: a length above zero and up to %s", one.flag, one.text, at.Unit.Format(maxSizeAcross))
		}
		if err != nil {
			return err
		}
		*one.to = length
	}
	marks := report.Marks{Site: at, Asked: asked}
	for _, w := range wheels {
		if asked != (groove.Asked{}) {
			marks.Rows = append(marks.Rows, report.Mark{Wheel: w, Made: at.At.Make(w, asked)})
			continue
		}
		for _, length := range report.MarkLengths(at.Unit) {
			made := at.At.Make(w, groove.Asked{Length: length})
			if !made.None || made.Bridges {
				marks.Rows = append(marks.Rows, report.Mark{Wheel: w, Made: made})
			}
			if made.None || made.Bridges {
				break // a longer one finds no room either
			}
		}
	}
	if asJSON {
		return report.MarksJSON(s.stdout, marks)
	}
	if err := report.MarksText(s.stdout, marks); err != nil {
		return err
	}
	_, err := fmt.Fprintf(s.stdout, "\n%s\n", page.CautionLine())
	return err
}

// likeMark reports which wheels may have made an old mark.
func (s *session) likeMark(f markFlags, at report.Site, wheels []groove.Wheel, sizeless, asJSON bool) error {
	old, err := readOldMark(at, *f.length, *f.width, *f.readTo)
	if err != nil {
		return err
	}
	for _, w := range wheels {
		if sizeless {
			old.OfAnySize(w)
		} else {
			old.Of(w)
		}
	}
	if asJSON {
		return report.OldMarkJSON(s.stdout, old)
	}
	if err := report.OldMarkText(s.stdout, old); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.stdout, "\n%s\n", page.CautionLine())
	return err
}

// readOldMark reads the length and the width of an old mark, and the step of the scale they
// were read on.
func readOldMark(at report.Site, length, width, readTo string) (old report.OldMark, err error) {
	old = report.OldMark{Site: at, Step: at.Unit.Step()}
	if readTo != "" {
		const finest, coarsest = 0.001, 10 // mm
		if old.Step, err = lengthFrom(at.Unit, "--read-to", readTo, finest, coarsest); err != nil {
			return old, err
		}
	}
	if old.Length, err = lengthFrom(at.Unit, "--length", length, old.Step, maxSizeAcross); err != nil {
		return old, err
	}
	old.Width, err = lengthFrom(at.Unit, "--width", width, old.Step, maxSizeAcross)
	return old, err
}
