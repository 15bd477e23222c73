package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
)

// Stepped is what stepping a circle came to at the bench, round after round.
type Stepped struct {
	// Used is what the dividers were set to the first time, 0 for the setting
	// that was told.
	Used float64
	// Gaps is what each round left along the arc, positive where it stopped short:
	// the first by the setting used, each further one by the one told for it.
	Gaps []float64
}

// round is one round of stepping, and the chord that would have closed it.
type round struct{ used, gap, mended float64 }

// rounds follows the setting from round to round.
func (s Stepped) rounds(unit geometry.Unit, c Circle) []round {
	used := s.start(unit, c)
	out := make([]round, len(s.Gaps))
	for i, gap := range s.Gaps {
		out[i] = round{used, gap, geometry.Mend(c.Radius, used, c.Parts, gap)}
		// A caliper's setting is what the next round is stepped with, but where it
		// doesn't show the difference: then the dividers are opened by a hair.
		if used = unit.Setting(out[i].mended).Length; unit.Text(out[i].used) == unit.Text(out[i].mended) {
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
	return math.Min(unit.Setting(geometry.Chord(c.Radius, c.Parts)).Length, 2*c.Radius)
}

// usedJSON is a setting that was used, and what stepping it leaves on a true circle.
type usedJSON struct {
	Chord      number `json:"chord"`
	ClosingGap number `json:"closing_gap"`
}

// mendedJSON is one round: what it was stepped with, what gap it left, and the
// chord and the setting that mend it.
type mendedJSON struct {
	Used    number      `json:"used"`
	Gap     number      `json:"gap"`
	Chord   number      `json:"chord"`
	Setting settingJSON `json:"setting"`
}

func (s Stepped) json(unit geometry.Unit, c Circle) (used *usedJSON, mended []mendedJSON) {
	if s.Used > 0 {
		used = &usedJSON{number(s.Used), number(geometry.ClosingGap(c.Radius, s.Used, c.Parts))}
	}
	for _, r := range s.rounds(unit, c) {
		mended = append(mended, mendedJSON{number(r.used), number(r.gap), number(r.mended), setting(unit, r.mended)})
	}
	return used, mended
}

func (s Stepped) words(b *strings.Builder, unit geometry.Unit, c Circle) {
	if s.Used > 0 {
		fmt.Fprintf(b, "Set to %s, %d steps %s.\n", unit.Exact(s.Used), c.Parts,
			Closing(unit, geometry.ClosingGap(c.Radius, s.Used, c.Parts)))
	}
	for i, r := range s.rounds(unit, c) {
		if len(s.Gaps) > 1 {
			fmt.Fprintf(b, "Round %d: with", i+1)
		} else {
			b.WriteString("With")
		}
		fmt.Fprintf(b, " a gap of %s left, set %s instead (%s): %s.\n",
			unit.Fine(r.gap), unit.Text(r.mended), unit.Fine(r.mended), opened(unit, r))
	}
	if s.Used > 0 || len(s.Gaps) > 0 {
		b.WriteByte('\n')
	}
}

// opened says how to get from one setting to the next.
func opened(unit geometry.Unit, r round) string {
	by := r.mended - r.used
	how := "open"
	if by < 0 {
		how = "close"
	}
	text := fmt.Sprintf("%s the dividers by %s", how, unit.Fine(math.Abs(by)))
	switch {
	case math.Abs(by) < 1e-9:
		return "the dividers are right"
	case unit.Text(r.used) == unit.Text(r.mended):
		return text + ", a hair that no caliper shows"
	}
	return text
}
