package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
)

// Stepped is the result of stepping a circle at the bench, round after round.
type Stepped struct {
	// Used is what the dividers were set to in the first round, 0 for the setting
	// that divide printed.
	Used float64
	// Gaps is what each round left along the arc, positive where it stopped short.
	// The first round used Used, each further one the setting printed for it.
	Gaps []float64
	// On is which of the circles was stepped; Chosen says that it was asked for.
	On     int
	Chosen bool
}

// asked reports whether there is a result at all.
func (s Stepped) asked() bool { return s.Used > 0 || len(s.Gaps) > 0 }

// round is one round of stepping, and the chord that would have closed it.
type round struct{ used, gap, mended float64 }

// rounds follows the setting from round to round.
func (s Stepped) rounds(unit geometry.Unit, c Circle) []round {
	used := s.start(unit, c)
	out := make([]round, len(s.Gaps))
	for i, gap := range s.Gaps {
		out[i] = round{used, gap, c.division().Mend(geometry.Round{Setting: used, Gap: gap})}
		// The next round uses the caliper's setting. Where a caliper doesn't show
		// the difference, the dividers are opened by a hair instead.
		if used = unit.Setting(out[i].mended).Length; unit.Format(out[i].used) == unit.Format(out[i].mended) {
			used = out[i].mended
		}
		used = math.Min(used, 2*c.Radius)
	}
	return out
}

// start returns the setting of the first round.
func (s Stepped) start(unit geometry.Unit, c Circle) float64 {
	if s.Used > 0 {
		return s.Used
	}
	return math.Min(unit.Setting(c.division().Chord()).Length, 2*c.Radius)
}

// readingOff is the error of a diameter or a setting that was read with care: a
// 64th of an inch. A gap that this can't explain means that something was misread.
const readingOff = geometry.MillimetresPerInch / 64

// misread explains a gap that the setting can't have left: the gap that the setting
// leaves on the circle, the circle on which it would leave the gap found (NaN where
// none does), and the setting that leaves the gap found on this circle.
type misread struct{ gap, radius, setting float64 }

func (s Stepped) misread(unit geometry.Unit, c Circle) (m misread, ok bool) {
	if len(s.Gaps) == 0 {
		return m, false
	}
	used, gap := s.start(unit, c), s.Gaps[0]
	narrow, wide := c.Radius-readingOff/2, c.Radius+readingOff/2
	least := geometry.Division{Radius: narrow, Parts: c.Parts}.ClosingGap(min(used+readingOff, 2*narrow))
	most := geometry.Division{Radius: wide, Parts: c.Parts}.ClosingGap(used - readingOff)
	return misread{
		c.division().ClosingGap(used), geometry.Round{Setting: used, Gap: gap}.Radius(c.Parts),
		c.division().SettingFor(gap),
	}, gap < least || gap > most
}

// words says so, and what to measure again.
func (m misread) words(unit geometry.Unit, used float64) string {
	text := fmt.Sprintf("does not go with a setting of %s, with which the last step would %s: "+
		"the gap, the diameter or the setting was probably misread.", unit.FormatWithRest(used), Closing(unit, m.gap))
	var means []string
	if !math.IsNaN(m.radius) {
		means = append(means, fmt.Sprintf("a circle %s across", unit.Format(2*m.radius)))
	}
	if !math.IsNaN(m.setting) {
		means = append(means, "dividers set to "+unit.Format(m.setting))
	}
	if means == nil {
		return text + " No circle and no setting would leave that gap."
	}
	return text + " The gap would mean " + strings.Join(means, ", or ") + "."
}

// json returns it in millimetres, without the circle or setting that doesn't exist.
func (m misread) json() *misreadJSON {
	return &misreadJSON{number(m.gap), known(2 * m.radius), known(m.setting)}
}

// misreadJSON is what a gap would mean that doesn't go with its setting.
type misreadJSON struct {
	Expected number  `json:"expected_gap" unit:"mm"`      // what the setting would leave on the circle
	Across   *number `json:"across,omitempty" unit:"mm"`  // the diameter of a circle on which the setting leaves the gap; left out where there is none
	Setting  *number `json:"setting,omitempty" unit:"mm"` // the setting that leaves the gap on this circle; left out where there is none
}

// usedJSON is a setting that was used.
type usedJSON struct {
	Chord      number `json:"chord" unit:"mm"`       // the setting
	ClosingGap number `json:"closing_gap" unit:"mm"` // what stepping it leaves on a true circle, below zero where it passes the start
}

// mendedJSON is one round of stepping, and what closes it.
type mendedJSON struct {
	Used    number      `json:"used" unit:"mm"`  // the setting of that round
	Gap     number      `json:"gap" unit:"mm"`   // what it left along the arc, below zero where it passed the start
	Chord   number      `json:"chord" unit:"mm"` // the chord that closes it
	Setting settingJSON `json:"setting"`         // what dividers are set to for that
}

func (s Stepped) json(unit geometry.Unit, c Circle) (used *usedJSON, mended []mendedJSON) {
	if s.Used > 0 {
		used = &usedJSON{number(s.Used), number(c.division().ClosingGap(s.Used))}
	}
	mended = []mendedJSON{}
	for _, r := range s.rounds(unit, c) {
		mended = append(mended, mendedJSON{number(r.used), number(r.gap), number(r.mended), setting(unit, r.mended)})
	}
	return used, mended
}

// words writes the rounds, the last one first: it says what to set the dividers to
// now.
func (s Stepped) words(b *strings.Builder, unit geometry.Unit, c Circle) {
	if name := c.heading(); c.Name != "" {
		if !s.Chosen {
			name += " (--at and --blank choose another circle)"
		}
		fmt.Fprintf(b, "%s:\n", name)
	}
	m, misread := s.misread(unit, c)
	if misread { // nobody is to set dividers by a gap before they have read that it can't be
		what := "A gap"
		if len(s.Gaps) > 1 {
			what = "Round 1: a gap"
		}
		fmt.Fprintf(b, "%s\n", wrap(fmt.Sprintf("%s of %s %s", what, unit.FormatDecimal(s.Gaps[0]), m.words(unit, s.start(unit, c))), 76, ""))
	}
	for i, r := range slices.Backward(s.rounds(unit, c)) {
		with := "With"
		switch {
		case len(s.Gaps) > 1 && i == 0 && misread:
			with = "Round 1: if all was read right, with"
		case len(s.Gaps) > 1:
			with = fmt.Sprintf("Round %d: with", i+1)
		case misread:
			with = "If all was read right, with"
		}
		fmt.Fprintf(b, "%s a gap of %s left, %s.\n", with, unit.FormatDecimal(r.gap), opened(unit, r))
	}
	if s.Used > 0 {
		fmt.Fprintf(b, "Set to %s, %d steps %s.\n", unit.FormatWithRest(s.Used), c.Parts,
			Closing(unit, c.division().ClosingGap(s.Used)))
	}
	b.WriteByte('\n')
}

// opened says how to get from one setting to the next.
func opened(unit geometry.Unit, r round) string {
	by, mark := r.mended-r.used, unit.Setting(r.mended)
	how := "open"
	if by < 0 {
		how = "close"
	}
	move := fmt.Sprintf("%s the dividers by %s", how, unit.FormatDecimal(math.Abs(by)))
	switch {
	case Closing(unit, by) == "close":
		return "the dividers are right"
	case unit.Format(r.used) != mark.Text:
		return fmt.Sprintf("set %s instead (%s): %s", mark.Text, unit.FormatDecimal(r.mended), move)
	}
	// The caliper would be set to the same mark once more.
	stand := "just at it"
	if past := unit.FormatDecimal(math.Abs(r.mended - mark.Length)); strings.ContainsAny(past, "123456789") {
		stand = past + " past it"
		if r.mended < mark.Length {
			stand = past + " short of it"
		}
	}
	return fmt.Sprintf("keep the caliper at %s and %s, to stand %s (%s): a hair that no caliper shows", mark.Text, move, stand, unit.FormatDecimal(r.mended))
}
