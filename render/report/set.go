package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// setJSON is how the blanks of a set compare.
type setJSON struct {
	Match    string         `json:"match" word:"matches"` // how they match
	Band     [2]number      `json:"band" unit:"mm"`       // what their bands share, from which height to which
	Blanks   []memberJSON   `json:"blanks"`               // blank by blank
	Holds    []holdJSON     `json:"limited_by"`           // the blanks that limit the set
	Practice []standingJSON `json:"practice"`             // the blanks, the one to practise on first
}

// memberJSON is one blank of a set.
type memberJSON struct {
	Name       string    `json:"name"`                             // what the job calls it
	Height     number    `json:"height" unit:"mm"`                 // of the rim above the table
	Across     number    `json:"across" unit:"mm"`                 // at the middle of the band
	Wall       number    `json:"wall" unit:"mm"`                   // the thinnest in the band
	OutOfRound number    `json:"out_of_round" unit:"mm"`           // the greatest difference of its diameters
	OwnBand    [2]number `json:"own_band" unit:"mm"`               // from where to where its band could reach by itself
	OwnBandBy  string    `json:"own_band_by" word:"bounds"`        // what ends that
	HoldsToRim *number   `json:"holds_to_rim,omitempty" unit:"ml"` // filled to the rim; left out where the floor wasn't measured
	Weight     *number   `json:"weight,omitempty" unit:"g"`        // uncut; left out where the floor wasn't measured
	Findings   int       `json:"findings"`                         // how many letters
}

// holdJSON is a blank that limits the set, and what the set would be without it.
type holdJSON struct {
	Blank    string `json:"blank"`               // its name
	By       string `json:"by" word:"bounds"`    // what of it limits the set
	Next     string `json:"next,omitempty"`      // the blank that would limit the set then; left out where none would
	Taller   number `json:"taller" unit:"mm"`    // how much higher the band would reach
	Wider    number `json:"wider" unit:"factor"` // how many times as wide the motifs would be
	Findings int    `json:"findings"`            // how many letters the others would have
	Before   int    `json:"findings_before"`     // how many letters the others have now
}

// standingJSON is how a blank differs from the middle of its set.
type standingJSON struct {
	Blank      string  `json:"blank"`                         // its name
	Apart      number  `json:"apart" unit:"shares"`           // how far it is apart from the set in all, each difference as a share of one that shows
	Height     number  `json:"height" unit:"mm"`              // how much taller, below zero shorter
	Across     number  `json:"across" unit:"mm"`              // how much wider where that is most, below zero narrower
	AcrossAt   *number `json:"across_at,omitempty" unit:"mm"` // the height where that is; left out where it is much the same all the way up
	Wall       number  `json:"wall" unit:"mm"`                // how much thicker where that is most, below zero thinner
	WallAt     *number `json:"wall_at,omitempty" unit:"mm"`   // the height where that is; left out where it is much the same all the way up
	OutOfRound number  `json:"out_of_round" unit:"mm"`        // how much further out of round, below zero rounder
}

// somewhere is a height, left out where it is everywhere.
func somewhere(height float64) *number { return where(height >= 0, height) }

func set(s *pattern.Set) *setJSON {
	out := &setJSON{
		Match: s.Job.Layout.Match.String(), Band: [2]number{number(s.Band.Foot), number(s.Band.Top)},
		Blanks: []memberJSON{}, Holds: []holdJSON{}, Practice: []standingJSON{},
	}
	for _, m := range s.Members {
		glass := glassware(m.Plan)
		out.Blanks = append(out.Blanks, memberJSON{
			m.Blank.Name, number(m.Blank.Height()), number(m.Diameter), number(m.Wall), number(m.OutOfRound),
			[2]number{number(m.Own.Foot), number(m.Own.Top)}, m.By.String(),
			glass.HoldsToRim, glass.Weight, m.Lettered(),
		})
	}
	for _, h := range s.Limits {
		one := holdJSON{
			Blank: h.Member.Blank.Name, By: h.By.String(),
			Taller: number(h.Taller), Wider: number(h.Wider), Findings: h.Findings, Before: h.Before,
		}
		if h.Next != nil {
			one.Next = h.Next.Blank.Name
		}
		out.Holds = append(out.Holds, one)
	}
	for _, d := range s.Standings() {
		out.Practice = append(out.Practice, standingJSON{
			d.Member.Blank.Name, number(d.Apart), number(d.Height), number(d.Width), somewhere(d.WidthAt),
			number(d.Wall), somewhere(d.WallAt), number(d.OutOfRound),
		})
	}
	return out
}

// shared says what the blanks of a set share.
func shared(s *pattern.Set) string {
	u := s.Job.Length
	band := fmt.Sprintf("from %s to %s above the table", u.Format(s.Band.Foot), u.Format(s.Band.Top))
	if s.Job.Layout.Match == job.Set {
		return fmt.Sprintf("The set, %d blanks that match: one band, %s, and one size of motif.", len(s.Members), band)
	}
	return fmt.Sprintf("The set, %d blanks, each to its own limits; what their bands share goes %s.", len(s.Members), band)
}

// SetWords says, in paragraphs, how many of a set's blanks clear, what they share, what
// limits them, and which to practise on.
func SetWords(s *pattern.Set) []string {
	plans := make([]*pattern.Plan, len(s.Members))
	for i, m := range s.Members {
		plans[i] = m.Plan
	}
	said := []string{howManyClear(plans), shared(s)}
	for _, h := range s.Limits {
		said = append(said, held(s, h))
	}
	return append(said, practice(s))
}

// Set compares the blanks of a set in text: what differs, what limits the set, and
// which blank to practise on.
func Set(w io.Writer, s *pattern.Set) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", shared(s))
	members(&b, s)
	if len(s.Limits) > 0 {
		b.WriteByte('\n')
	}
	for _, h := range s.Limits {
		fmt.Fprintf(&b, "%s\n", wrap(held(s, h), 76, ""))
	}
	fmt.Fprintf(&b, "\n%s\n", wrap(practice(s), 76, ""))
	_, err := io.WriteString(w, b.String())
	return err
}

// members writes what differs, a row a blank.
func members(b *strings.Builder, s *pattern.Set) {
	u := s.Job.Length
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "  blank\theight\tacross\tthinnest\tout of round\tband may reach\tthen comes\tholds\tweighs\tfindings")
	for _, m := range s.Members {
		ends := map[pattern.Bound]string{pattern.ByWall: "thin wall", pattern.ByRim: "rim margin", pattern.ByPaper: "end of paper"}[m.By]
		holds, weighs, round := "-", "-", "-"
		if m.Blank.FloorKnown() {
			ml, g := m.Blank.Capacity(m.Blank.Height())/1000, m.Blank.Weight()
			holds, weighs = fmt.Sprintf("%.0f ml", ml), fmt.Sprintf("%.0f g", g)
			if u == geometry.Inch {
				holds = fmt.Sprintf("%.1f fl oz (%s)", ml/millilitresPerOunce, holds)
				weighs = fmt.Sprintf("%.2f oz (%s)", g/gramsPerOunce, weighs)
			}
		}
		if m.OutOfRound >= 0.01 {
			round = u.FormatDecimal(m.OutOfRound)
		}
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%d\n", m.Blank.Name, u.Format(m.Blank.Height()), u.Format(m.Diameter),
			u.FormatDecimal(m.Wall), round, u.FormatDown(m.Own.Top), ends, holds, weighs, m.Lettered())
	}
	t.Flush()
	b.WriteString("  (across: at the middle of the band; thinnest: its wall in the band; band may reach: by itself)\n")
}

// held says how a blank holds the set back, and what leaving it out would win.
func held(s *pattern.Set, h pattern.Limit) string {
	name := h.Member.Blank.Name
	var text string
	switch h.By {
	case pattern.ByFindings:
		text = fmt.Sprintf("Only %q has findings.", name)
		if h.Findings == 0 {
			return text + " Without it the set is clear."
		}
		return text + fmt.Sprintf(" Without it the others have %s, for they would be laid out anew.", count(h.Findings, "finding"))
	case pattern.ByGirth:
		text = fmt.Sprintf("%q holds the motifs small: it is the narrowest of the set.", name)
		if h.Wider < 1.0005 {
			text += fmt.Sprintf(" Leaving it out gains nothing: %q is as narrow.", h.Next.Blank.Name)
			break
		}
		text += fmt.Sprintf(" Without it they would be %.1f %% wider", 100*(h.Wider-1))
		if h.Next != nil {
			text += fmt.Sprintf(", as %q allows", h.Next.Blank.Name)
		}
		text += "."
	default:
		text = fmt.Sprintf("%q %s", name, lowered(s, h))
	}
	if h.Findings != h.Before {
		text += fmt.Sprintf(" The others would have %s, and have %d now.", count(h.Findings, "finding"), h.Before)
	}
	return text
}

// lowered says how a blank holds the band down.
func lowered(s *pattern.Set, h pattern.Limit) string {
	u, top := s.Job.Length, s.Band.Top
	if s.Job.Layout.Band != nil {
		top = h.Member.Own.Top
	}
	ends := fmt.Sprintf("above %s its rim's margin begins", u.FormatDown(top))
	switch h.By {
	case pattern.ByPaper:
		ends = fmt.Sprintf("above %s the job has no paper on it", u.FormatDown(top))
	case pattern.ByWall:
		m := h.End.Motif
		ends = fmt.Sprintf("above %s its wall is too thin for motif %d (%s)", u.FormatDown(h.End.Thin), m+1, s.Job.Motifs[m].Called())
		if h.End.Thin < top-u.Step()/2 {
			ends += fmt.Sprintf(", which a band that reached above %s would bring there", u.FormatDown(top))
		}
	}
	switch {
	case s.Job.Layout.Band != nil:
		return fmt.Sprintf("is asked for too tall a band: %s.", ends)
	case h.Taller < u.Step()/2:
		return fmt.Sprintf("holds the band down: %s. Leaving it out gains nothing: %q ends no higher.", ends, h.Next.Blank.Name)
	}
	return fmt.Sprintf("holds the band down: %s. Without it the band would reach %s, %s higher, where %q would end it.",
		ends, u.Format(s.Band.Top+h.Taller), u.Format(h.Taller), h.Next.Blank.Name)
}

// practice says which blank to practise on, and why.
func practice(s *pattern.Set) string {
	u := s.Job.Length
	all := s.Standings()
	if all[0].Apart < 0.01 {
		return "Practise on any: the blanks are much alike."
	}
	text := fmt.Sprintf("Practise on %q first: it differs most from the set, %s.", all[0].Member.Blank.Name, Why(u, all[0]))
	if len(all[0].Member.Doubts()) > 0 {
		text += " But measure it again before: a reading of it is questioned."
	}
	const listed = 3 // more is in the JSON
	for i, d := range all[1:min(len(all), listed)] {
		text += [2]string{" Then ", "; then "}[min(i, 1)] + fmt.Sprintf("%q, %s", d.Member.Blank.Name, Why(u, d))
	}
	text += "."
	if len(all) > listed {
		text += fmt.Sprintf(" Keep %q for last: it is nearest the middle.", all[len(all)-1].Member.Blank.Name)
	}
	return text
}

// Why says by what a blank differs from the middle of its set.
func Why(u geometry.Unit, d pattern.Standing) string {
	height, width, wall, round := d.Shows()
	var words []string
	add := func(shows bool, by, at float64, more, less string) {
		if !shows {
			return
		}
		how := more
		if by < 0 {
			how = less
		}
		if at >= 0 {
			how += " at " + u.Format(at)
		}
		words = append(words, difference(u, math.Abs(by))+" "+how)
	}
	add(height, d.Height, -1, "taller", "shorter")
	add(width, d.Width, d.WidthAt, "wider", "narrower")
	add(wall, d.Wall, d.WallAt, "thicker in the wall", "thinner in the wall")
	add(round, d.OutOfRound, -1, "further out of round", "rounder")
	if words == nil {
		return "close to the middle of the set"
	}
	last := len(words) - 1
	if last == 0 {
		return words[0]
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// difference writes a length to the caliper's step, or finer where it is less.
func difference(u geometry.Unit, mm float64) string {
	if mm < 2*u.Step() {
		return u.FormatDecimal(mm)
	}
	return u.Format(mm)
}
