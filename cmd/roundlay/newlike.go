package main

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// pieceFlags are what was counted and measured on a piece that a new job is to match.
type pieceFlags struct {
	set                       *pflag.FlagSet
	like                      *bool
	repeats                   *int
	motif, wide, land         *string
	length, markWidth, readTo *string
	wheel                     wheelFlags
	site                      siteFlags
}

// The tables of the starter that are changed.
const firstWheel, firstMotif = "wheel[1].", "motif[1]."

func addPieceFlags(f *pflag.FlagSet) pieceFlags {
	p := pieceFlags{
		set:       f,
		like:      f.Bool("like", false, "begin from a piece that is to be matched: what the flags below say of it"),
		repeats:   f.Int("repeats", 0, "how many repeats were counted round it"),
		motif:     f.String("motif", "", "the kind of motif it has: roundlay motifs lists them"),
		wide:      f.String("wide", "", "how wide one motif is, a `LENGTH`"),
		land:      f.String("land", "", "the least land between two of its grooves, a `LENGTH`"),
		length:    f.String("length", "", "how long one of its marks is that was pressed in once, a `LENGTH`"),
		markWidth: f.String("width", "", "how wide that mark is, a `LENGTH`; with its --edge it tells the wheel and the depth"),
		readTo:    f.String("read-to", "", "the step of the scale the mark was read on, a `LENGTH` (1/64 in or 0.1 mm if not given)"),
	}
	p.site = siteFlags{
		set: f, blank: new(string), height: new(string),
		across:  f.String("across", "", "the piece's diameter where it is decorated, a `LENGTH`"),
		around:  f.String("around", "", "its girth instead, a `LENGTH`"),
		leaning: f.String("slant", "upright", "how the mark lies: upright, level, or the `DEGREES` it leans to the right from upright"),
	}
	p.wheel = addWheelFlags(f)
	return p
}

// agree refuses flags that don't go with one another.
func (p pieceFlags) agree() error {
	if !*p.like {
		flags := []string{"repeats", "motif", "wide", "land", "length", "width", "read-to", "across", "around", "slant"}
		for _, key := range wheelKeys {
			flags = append(flags, wheelFlag(key))
		}
		if i := slices.IndexFunc(flags, p.set.Changed); i >= 0 {
			return fmt.Errorf("--%s is for a job that begins from a piece: add --like", flags[i])
		}
		return nil
	}
	marked := p.wheel.given() || *p.length != "" || *p.markWidth != ""
	switch {
	case !p.set.Changed("repeats"):
		return errors.New("--repeats: missing; say how many were counted round the piece, such as --repeats 12")
	case *p.across() == "":
		return errors.New("--across: missing; say how far the piece is across where it is decorated, or with --around its girth")
	case *p.site.across != "" && *p.site.around != "":
		return errors.New("new takes --across or --around, not both")
	case marked && (!p.wheel.has("edge") || *p.length == "" || *p.markWidth == ""):
		return errors.New("new --like takes a mark's --length, its --width and the --edge that made it together: they tell the wheel")
	case marked && p.wheel.has("across"):
		return errors.New("--wheel-across: leave it out; the mark tells it")
	}
	return nil
}

// across is the text of whichever flag gives the piece's size.
func (p pieceFlags) across() *string {
	if *p.site.around != "" {
		return p.site.around
	}
	return p.site.across
}

// starter returns a starter job changed to what is known of the piece, with notes of that at
// its head.
func (p pieceFlags) starter(unit geometry.Unit) ([]byte, error) {
	at, err := p.site.straight(unit)
	if err != nil {
		return nil, err
	}
	edits := []job.Revision{{Op: "set", Path: "layout.repeats", Value: float64(*p.repeats)}}
	set := func(path string, value any) { edits = append(edits, job.Revision{Op: "set", Path: path, Value: value}) }
	notes := fmt.Sprintf("Begun from a piece with %d repeats, %s across.\nMeasure your own blank: the stations below are not the piece's.\n",
		*p.repeats, unit.FormatChosen(at.Across))
	if *p.motif != "" {
		set(firstMotif+"kind", *p.motif)
	}
	if *p.wide != "" {
		pitch := math.Pi * at.Across / float64(max(*p.repeats, 1))
		wide, err := lengthFrom(unit, "--wide", *p.wide, unit.Step(), pitch)
		if err != nil {
			return nil, err
		}
		const fine = 1000 // of a repeat
		set(firstMotif+"width", math.Round(wide/pitch*fine)/fine)
		notes += fmt.Sprintf("One motif is %s wide, of a repeat of %s.\n", unit.FormatChosen(wide), unit.Format(pitch))
	}
	if *p.land != "" {
		set("limits.land", *p.land)
	}
	if *p.length != "" {
		old, err := p.mark(at)
		if err != nil {
			return nil, err
		}
		var words bytes.Buffer
		if err := report.OldMarkText(&words, old); err != nil {
			return nil, err
		}
		notes += words.String()
		p.matched(set, unit, old.Sizes)
	}
	text, err := job.Revise(job.Starter(unit), edits...)
	if err != nil {
		return nil, err
	}
	if _, err := job.Read("", text); err != nil {
		return nil, p.ofFlag(err)
	}
	return append([]byte(asNotes(notes)), text...), nil
}

// tryStarter says whether a job begun from a piece is clear as it stands: the counts and
// widths of a piece need not suit the starter's blank and wheel.
func (s *session) tryStarter(text []byte, file string) error {
	j, err := job.Read("", text)
	if err != nil {
		return err
	}
	plans, err := s.lay(j, "", "")
	if wrong := (*job.Error)(nil); errors.As(err, &wrong) {
		fmt.Fprintf(s.stderr, "As it stands it can't be laid out: %s. Measure your blank, then change the motif.\n", wrong.Accepted)
		return nil
	}
	if err != nil {
		return err
	}
	if n := len(plans[0].Groups()); n > 0 {
		command := strings.TrimSpace("roundlay check " + printable(file))
		fmt.Fprintf(s.stderr, "As it stands, on the starter's blank, it has findings (%d): %s lists them.\n", n, command)
	}
	return nil
}

// mark returns the mark that was read, and what may have made it.
func (p pieceFlags) mark(at report.Site) (report.OldMark, error) {
	edge, err := p.wheel.read(at.Unit)
	if err != nil {
		return report.OldMark{}, err
	}
	old, err := readOldMark(at, *p.length, *p.markWidth, *p.readTo)
	if err != nil {
		return old, err
	}
	old.OfAnySize(edge)
	if !old.Sizes.Fits {
		return old, errors.New("--width: no wheel with that edge makes such a mark by being pressed in once; read its length and width again, or another mark")
	}
	return old, nil
}

// matched sets the starter's first wheel to one that may have made the mark, and its
// motif's depth to the mark's: the middle of what the readings allow.
func (p pieceFlags) matched(set func(path string, value any), unit geometry.Unit, of groove.Sizes) {
	radius := math.Sqrt(of.Radius.Low * of.Radius.High)
	switch {
	case of.Largest:
		radius = of.Radius.Low
	case of.Smallest:
		radius = of.Radius.High
	}
	set(firstWheel+"name", "matched")
	for _, key := range wheelKeys {
		if key == "across" {
			set(firstWheel+key, unit.Format(2*radius))
		} else if p.wheel.has(key) {
			set(firstWheel+key, p.wheel.set.Lookup(wheelFlag(key)).Value.String())
		}
	}
	set(firstMotif+"depth", unit.FormatDecimal((of.Depth.Low+of.Depth.High)/2))
}

// ofFlag rewords what the job refuses as what is wrong with the flag that it comes from.
func (p pieceFlags) ofFlag(err error) error {
	var wrong *job.Error
	if !errors.As(err, &wrong) {
		return err
	}
	for path, flag := range map[string]string{
		"layout.repeats": "--repeats", firstMotif + "kind": "--motif", firstMotif + "width": "--wide", "limits.land": "--land",
	} {
		if wrong.Key == path || wrong.Key == strings.Replace(path, "[1]", "", 1) {
			return fmt.Errorf("%s: read %s; accepted: %s", flag, wrong.Read, wrong.Accepted)
		}
	}
	return p.wheel.ofFlag(wrong)
}

// asNotes writes text as a job's notes.
func asNotes(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" {
			b.WriteString("# " + line + "\n")
		}
	}
	return b.String() + "\n"
}
