package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/report"
)

// maxAcross is the widest circle divide answers for, far beyond any glass.
const maxAcross = 10000 // mm

// divide reports divider settings, for a job's circles or for one given bare.
func divide(s *session, args []string) error {
	across := s.flags.String("across", "", "the circle's diameter, a `LENGTH` such as 3 1/8 in")
	around := s.flags.String("around", "", "the circle's girth instead, a `LENGTH`")
	parts := s.flags.Int("parts", 0, "how many equal parts; a job's repeats if not given")
	set := s.flags.String("set", "", "what the dividers were set to, a `LENGTH`, if not to the setting that was printed")
	gaps := s.flags.StringArray("gap", nil, "the gap a round left on the glass, a `LENGTH`; negative if it passed the start; again for each further round")
	blank := s.flags.String("blank", "", "only the blank of this name, where the job has several")
	at := s.flags.String("at", "", "only the job's `CIRCLE` of this name: foot, paper-edge (where the paper begins above the table), band-foot or band-top; of a base: base-edge, base-band-outside or base-band-inside")
	asJSON := s.flags.Bool("json", false, "report in JSON")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	if s.flags.Changed("parts") && (*parts < 2 || *parts > 3600) {
		return fmt.Errorf("--parts: read %d; accepted: a whole number from 2 to 3600", *parts)
	}
	if *at != "" && !slices.Contains(circleNames, circleName(*at)) {
		return fmt.Errorf("--at: read %q; accepted: foot, paper-edge, band-foot or band-top, or of a base: base-edge, base-band-outside or base-band-inside", *at)
	}
	bare := *across != "" || *around != ""
	for _, flag := range []string{"at", "blank"} {
		if bare && s.flags.Changed(flag) {
			return fmt.Errorf("--%s is for a job's circles: leave out --across and --around, or leave out --%s", flag, flag)
		}
	}
	var circles []report.Circle
	var plans []*pattern.Plan
	var unit geometry.Unit
	var stepped report.Stepped
	if bare {
		if circles, unit, err = bareCircle(file, *across, *around, *parts); err != nil {
			return err
		}
		stepped, err = readStepped(unit, *set, *gaps)
	} else {
		j, _, wrong := s.readJob(file)
		if wrong != nil {
			return wrong
		}
		unit = j.Length
		if stepped, err = readStepped(unit, *set, *gaps); err == nil {
			plans, err = s.lay(j, file, *blank)
		}
		if err == nil {
			circles, err = jobCircles(plans, *parts, *at)
		}
	}
	if err != nil {
		return err
	}
	stepped.On = marked(circles)
	if err := fits(stepped, unit, circles[stepped.On], *set, *gaps); err != nil {
		return err
	}
	stepped.Chosen = len(circles) == 1
	if *asJSON {
		return report.DivideJSON(s.stdout, unit, circles, stepped, plans)
	}
	return report.Divide(s.stdout, unit, circles, stepped, plans)
}

// bareCircle returns the circle given on the command line, and the unit its length
// was written in.
func bareCircle(file, across, around string, parts int) ([]report.Circle, geometry.Unit, error) {
	switch {
	case file != "":
		return nil, 0, fmt.Errorf("divide takes a job or --across or --around, not both: %q", file)
	case across != "" && around != "":
		return nil, 0, errors.New("divide takes --across or --around, not both")
	case parts == 0:
		return nil, 0, errors.New("--parts: missing; say how many equal parts, such as --parts 3")
	}
	flag, text, perRadius := "--across", across, 2.0
	if around != "" {
		flag, text, perRadius = "--around", around, 2*math.Pi
	}
	unit, err := writtenIn(text)
	if err != nil {
		return nil, 0, fmt.Errorf("%s: %w", flag, err)
	}
	length, err := parseLength(unit, flag, text)
	if err != nil {
		return nil, 0, err
	}
	if !(length > 0 && length <= maxAcross) {
		return nil, 0, fmt.Errorf("%s: read %q; accepted: a length above zero and up to %s", flag, text, unit.Format(maxAcross))
	}
	return []report.Circle{{Radius: length / perRadius, Parts: parts}}, unit, nil
}

// writtenIn returns the unit a length is written in: a fraction is inches.
func writtenIn(text string) (geometry.Unit, error) {
	lower := strings.ToLower(text)
	switch {
	case strings.Contains(lower, "mm"), strings.Contains(lower, "cm"),
		strings.Contains(lower, "millim"), strings.Contains(lower, "centim"):
		return geometry.Millimetre, nil
	case strings.ContainsAny(lower, `n"″”/⅛¼⅜½⅝¾⅞'`):
		return geometry.Inch, nil
	}
	if _, err := geometry.Millimetre.Parse(text); err != nil {
		return 0, err
	}
	return 0, fmt.Errorf("read %q; say the unit too: %s in, or %s mm", text, text, text)
}

// circleNames are the circles that a job marks on a blank.
var circleNames = []string{"foot", paperEdge, "band foot", "band top", pattern.BaseEdge, pattern.BaseOuter, pattern.BaseInner}

const paperEdge = "paper edge"

// circleName is a circle's name, which may be written with a hyphen so that it
// needs no quotes.
func circleName(at string) string { return strings.ReplaceAll(at, "-", " ") }

// jobCircles returns the circles that the job marks on its blanks, or those of one
// name.
func jobCircles(plans []*pattern.Plan, parts int, at string) ([]report.Circle, error) {
	var circles []report.Circle
	var faces []*pattern.Plan
	for _, p := range plans {
		faces = append(faces, p.Faces()...)
	}
	for _, p := range faces {
		for _, c := range p.Circles() {
			if at != "" && c.Name != circleName(at) {
				continue
			}
			circle := report.Circle{Name: c.Name, Radius: c.Radius, Parts: p.Repeats}
			if len(p.Job.Blanks) > 1 {
				circle.Blank = p.Blank.Name
			}
			if parts != 0 {
				circle.Parts = parts
			}
			circles = append(circles, circle)
		}
	}
	if len(circles) == 0 {
		var names []string
		for _, face := range plans[0].Faces() {
			for _, c := range face.Circles() {
				names = append(names, strings.ReplaceAll(c.Name, " ", "-"))
			}
		}
		last := len(names) - 1
		return nil, fmt.Errorf("--at: read %q; accepted: %s or %s", at, strings.Join(names[:last], ", "), names[last])
	}
	return divided(circles), nil
}

// divided leaves out circles that nothing divides where others are stepped.
func divided(circles []report.Circle) []report.Circle {
	stepped := slices.DeleteFunc(slices.Clone(circles), func(c report.Circle) bool { return c.Parts < 2 })
	if len(stepped) == 0 {
		return circles
	}
	return stepped
}

// marked returns which circle the marks of the first blank are stepped on: the
// paper's edge where that begins above the table, or else the first.
func marked(circles []report.Circle) int {
	return max(0, slices.IndexFunc(circles, func(c report.Circle) bool {
		return c.Name == paperEdge && c.Blank == circles[0].Blank
	}))
}

// readStepped reads what the dividers were set to, and the gap that each round
// of stepping a circle left.
func readStepped(unit geometry.Unit, set string, gaps []string) (report.Stepped, error) {
	var stepped report.Stepped
	var err error
	if set != "" {
		if stepped.Used, err = parseLength(unit, "--set", set); err != nil {
			return stepped, err
		}
	}
	for _, gap := range gaps {
		length, err := parseLength(unit, "--gap", gap)
		if err != nil {
			return stepped, err
		}
		stepped.Gaps = append(stepped.Gaps, length)
	}
	return stepped, nil
}

// fits refuses a setting or a gap that is too large for a circle, or any for a circle
// that is not stepped.
func fits(stepped report.Stepped, unit geometry.Unit, c report.Circle, set string, gaps []string) error {
	if c.Parts < 2 && (set != "" || len(gaps) > 0) {
		return errors.New("--gap and --set are for circles that are stepped, and the job has one repeat: say with --parts in how many parts")
	}
	if used := stepped.Used; set != "" && !(used > 0 && used < 2*c.Radius) {
		return fmt.Errorf("--set: read %q; accepted: above zero and less than the circle is across, %s", set, unit.FormatDown(2*c.Radius))
	}
	arc := 2 * math.Pi * c.Radius / float64(c.Parts)
	for i, length := range stepped.Gaps {
		if math.Abs(length) >= arc {
			return fmt.Errorf("--gap: read %q; accepted: less than one part, which is %s round", gaps[i], unit.Format(arc))
		}
	}
	return nil
}
