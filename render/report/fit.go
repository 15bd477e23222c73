package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// fitJSON is what makes a job clear, or what a job that clears has room for.
type fitJSON struct {
	Schema int            `json:"schema"`           // the version of this form, 1
	Title  string         `json:"title"`            // the job's title
	Clear  bool           `json:"clear"`            // whether the job clears as it is; the offers are then what it has room for
	OnlyIf []string       `json:"only_if"`          // the readings in doubt on which clear and the offers depend, in words
	Short  bool           `json:"short"`            // whether there was too much to try everything
	Offers []offerJSON    `json:"offers"`           // the changes with which it clears, the least loss first
	Wheels []newWheelJSON `json:"wheels,omitempty"` // wheels the rack lacks, with all of which it would clear; left out where there are offers, or no such wheels
}

// newWheelJSON is a wheel that the rack lacks.
type newWheelJSON struct {
	Motif int    `json:"motif"`                 // the number of the motif it is for, from 1
	Like  string `json:"like"`                  // the wheel of the rack that it is otherwise like
	Most  number `json:"across_most" unit:"mm"` // the largest diameter that would do
}

// offerJSON is one way to clear: changes that go together, and what they cost in look.
type offerJSON struct {
	Changes []changeJSON `json:"changes"` // to be made together
	Cost    costJSON     `json:"cost"`    // what is lost by them
}

// changeJSON is one key of the job with another value.
type changeJSON struct {
	Motif int    `json:"motif,omitempty"` // the motif's number, from 1; left out where it is the layout's
	Part  string `json:"part,omitempty"`  // the part of the motif; left out where it is all of the motif's
	Key   string `json:"key"`             // the key
	From  string `json:"from,omitempty"`  // its value, as a job file has it; left out where the job doesn't say
	To    string `json:"to"`              // its value with the change, as a job file has it
}

// costJSON is what is lost in look; below zero, what is won. A length is that of the motif that
// loses or gains most.
type costJSON struct {
	Cuts    int     `json:"cuts"`                         // cuts round the glass
	Depth   number  `json:"depth" unit:"mm"`              // the depth of the motif's cuts as they come out, on average
	Groove  number  `json:"groove" unit:"mm"`             // the width of the motif's grooves as they come out, on average
	Width   number  `json:"width" unit:"mm"`              // of a motif
	Height  number  `json:"height" unit:"mm"`             // of a motif
	Moved   number  `json:"moved" unit:"mm"`              // how far a motif is moved
	Bent    number  `json:"bent" unit:"share"`            // how far a number that bends a motif's lines is changed, of its range
	Redrawn number  `json:"redrawn" unit:"share"`         // how far another number of a motif is changed, of its range; 0.1 where its shape is another
	Score   *number `json:"score,omitempty" unit:"share"` // what offers are ranked by, the shares lost added up; left out where it could not be worked out
}

// FitJSON writes what can be done about a job.
func FitJSON(w io.Writer, f *search.Fit) error {
	out := fitJSON{Schema: schema, Title: f.Job.Title, Clear: f.Clear, OnlyIf: doubtedIn(f.Job), Short: f.Short, Offers: []offerJSON{}}
	for _, o := range f.Offers {
		one := offerJSON{Changes: []changeJSON{}, Cost: costJSON{
			o.Cuts, number(o.Depth), number(o.Groove), number(o.Width), number(o.Height), number(o.Moved), number(o.Bent), number(o.Redrawn), known(o.Score),
		}}
		for _, c := range o.Changes {
			// The layout is motif -1, and so left out.
			one.Changes = append(one.Changes, changeJSON{c.Motif + 1, c.Part, c.Key, c.Says(f.Job), c.Says(o.Job)})
		}
		out.Offers = append(out.Offers, one)
	}
	for _, wheel := range f.Wheels {
		like := f.Job.Rack[wheel.Like].Name
		out.Wheels = append(out.Wheels, newWheelJSON{wheel.Motif + 1, like, number(wheel.Diameter)})
	}
	return write(w, out)
}

// FitWords says whether a job clears and what its fit has to offer, in one paragraph.
func FitWords(f *search.Fit) string {
	var b strings.Builder
	fitAbout(&b, f)
	return strings.Join(strings.Fields(b.String()), " ")
}

// fitAbout writes what comes before the offers.
func fitAbout(b *strings.Builder, f *search.Fit) {
	questioned(b, f.Job)
	fitHead(b, f)
	if f.Short {
		b.WriteString("With so many cuts not everything could be tried: there may be other changes.\n")
	}
}

// CostWords says how an offer changes the look.
func CostWords(f *search.Fit, o search.Offer) string { return costs(f.Job.Length, o.Cost) }

// Fit writes it for reading.
func Fit(w io.Writer, f *search.Fit) error {
	var b strings.Builder
	u := f.Job.Length
	fitAbout(&b, f)
	for i, o := range f.Offers {
		fmt.Fprintf(&b, "\n%d  %s\n", i+1, strings.Join(offered(f.Job, o), "\n   "))
		fmt.Fprintf(&b, "   %s\n", wrap(costs(u, o.Cost), 76, "   "))
	}
	if slices.ContainsFunc(f.Offers, func(o search.Offer) bool { return strings.Contains(costs(u, o.Cost), "average") }) {
		fmt.Fprintf(&b, "\n%s\n", wrap(averages(f.Job), 79, ""))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// fitHead writes whether a job clears, and what the offers are for. Where a reading is
// in doubt, neither is said without the condition that it is right.
func fitHead(b *strings.Builder, f *search.Fit) {
	title, none := f.Job.Title, len(f.Offers) == 0
	only := ""
	if all := doubtedIn(f.Job); len(all) > 0 {
		only = areRight(all)
	}
	say := func(words string) { fmt.Fprintf(b, "%s\n", wrap(words, 79, "")) }
	switch {
	case f.Clear && only != "" && none:
		say(title + " clears " + only + " It has no room for more.")
	case f.Clear && only != "":
		say(title + " clears " + only + " It has room for any one of these:")
	case f.Clear && none:
		fmt.Fprintf(b, "%s clears, and has no room for more.\n", title)
	case f.Clear:
		fmt.Fprintf(b, "%s clears. It has room for any one of these:\n", title)
	case len(f.Wheels) > 0:
		fmt.Fprintf(b, "%s does not clear, and no change was found with which it does on the wheels of the rack.\n", title)
		say("All else as it is, it clears with " + strings.Join(NewWheels(f), ", and ") + but(only))
	case none:
		fmt.Fprintf(b, "%s does not clear, and no change was found with which it does: check says what is wrong.\n", title)
	case only != "":
		say(title + " does not clear. With any one of these it does" + but(only) + " The least loss comes first:")
	default:
		fmt.Fprintf(b, "%s does not clear. With any one of these it does, the least loss first:\n", title)
	}
}

// but ends a sentence with a condition, where there is one.
func but(only string) string {
	if only == "" {
		return "."
	}
	return ", but " + only
}

// averages explains the depth and the width that an offer loses or gains.
func averages(j *job.Job) string {
	words := "Depth and groove width are averages over all the cuts of a motif, as they come out and not as asked, " +
		"so they change too when cuts are added or left out. They are of the motif that changes most"
	if len(j.Blanks) > 1 {
		words += fmt.Sprintf(", on blank %q", j.Blanks[0].Name)
	}
	return words + "."
}

// NewWheels names wheels that would do and that the rack lacks: all of them together.
func NewWheels(f *search.Fit) []string {
	all := make([]string, len(f.Wheels))
	for i, w := range f.Wheels {
		all[i] = fmt.Sprintf("a wheel up to %s across, otherwise like %q, for %s", f.Job.Length.FormatDown(w.Diameter),
			f.Job.Rack[w.Like].Name, job.Change{Motif: w.Motif}.Name(f.Job))
	}
	return all
}

// costs says how an offer changes the look: what is lost, then what is gained.
func costs(u geometry.Unit, c search.Cost) string {
	var lost, won []string
	add := func(by float64, text string) {
		switch {
		case by > 0:
			lost = append(lost, text)
		case by < 0:
			won = append(won, text)
		}
	}
	length := func(by float64, what string, text func(float64) string) {
		if size := text(math.Abs(by)); strings.ContainsAny(size, "123456789") {
			add(by, size+" of "+what)
		}
	}
	if c.Cuts != 0 {
		add(float64(c.Cuts), count(max(c.Cuts, -c.Cuts), "cut"))
	}
	length(c.Depth, "depth on average", u.FormatDecimal)
	length(c.Groove, "groove width on average", u.FormatDecimal)
	length(c.Width, "a motif's width", u.Format)
	length(c.Height, "a motif's height", u.Format)
	var parts []string
	if len(lost) > 0 {
		parts = append(parts, "loses "+strings.Join(lost, ", "))
	}
	if len(won) > 0 {
		parts = append(parts, "gains "+strings.Join(won, ", "))
	}
	if c.Moved > 0 {
		parts = append(parts, "moves a motif by "+u.Format(max(c.Moved, u.Step())))
	}
	if c.Bent > 0 {
		parts = append(parts, "bends a motif's lines less")
	}
	if c.Redrawn > 0 {
		parts = append(parts, "draws a motif a little otherwise")
	}
	if len(parts) == 0 {
		return "looks the same"
	}
	return strings.Join(parts, "; ")
}

// offered says what an offer changes, one change an item: "motif 1 (leaf): fronds = 15, now 20".
func offered(j *job.Job, o search.Offer) []string {
	words := make([]string, len(o.Changes))
	for i, c := range o.Changes {
		was := ""
		if now := c.Says(j); now != "" {
			was = ", now " + now
		}
		words[i] = fmt.Sprintf("%s: %s = %s%s", c.Name(j), c.Key, c.Says(o.Job), was)
	}
	return words
}
