package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// roundJSON is a station that is out of round, and what that does to equal steps.
type roundJSON struct {
	Height     number    `json:"height" unit:"mm"`                // above the table
	Across     [2]number `json:"across" unit:"mm"`                // the smallest and the largest diameter
	OutOfRound number    `json:"out_of_round" unit:"mm"`          // their difference
	Chord      number    `json:"chord" unit:"mm"`                 // what dividers are set to
	Parts      [2]number `json:"part_chords" unit:"mm"`           // the shortest and the longest chord of an equal part of the girth
	Off        *number   `json:"off,omitempty" unit:"mm"`         // how far a step falls from its equal part; left out for two repeats
	ClosingGap *number   `json:"closing_gap,omitempty" unit:"mm"` // what the last step leaves, below zero where it passes the start; left out for two repeats
}

func rounds(p *pattern.Plan) []roundJSON {
	out := []roundJSON{}
	for _, r := range p.Roundness() {
		out = append(out, roundJSON{
			Height: number(r.Height), Across: [2]number{number(r.Min), number(r.Max)},
			OutOfRound: number(r.OutOfRound()), Chord: number(r.Chord),
			Parts: [2]number{number(r.Shortest), number(r.Longest)},
			Off:   known(r.Off), ClosingGap: where(!math.IsNaN(r.Off), r.Gap),
		})
	}
	return out
}

// Rounds says, station by station, how being out of round upsets equal steps. It
// writes nothing for a round glass.
func Rounds(b *strings.Builder, u geometry.Unit, p *pattern.Plan) {
	for _, r := range p.Roundness() {
		if r.OutOfRound() < 0.01 {
			continue // no caliper shows it
		}
		where := ""
		if len(p.Job.Blanks) > 1 {
			where = fmt.Sprintf(": blank %q,", p.Blank.Name)
		}
		text := fmt.Sprintf("Out of round%s %s above the table: from %s to %s across. Equal parts of its girth have chords from %s to %s",
			where, u.Format(r.Height), u.FormatWithRest(r.Min), u.FormatWithRest(r.Max), u.FormatDecimal(r.Shortest), u.FormatDecimal(r.Longest))
		if math.IsNaN(r.Off) {
			text += "."
		} else {
			text += fmt.Sprintf("; dividers set to %s put a mark up to %s off its place, and the last step would %s.",
				u.FormatDecimal(r.Chord), u.FormatDecimal(r.Off), Closing(u, r.Gap))
		}
		fmt.Fprintf(b, "%s\n", wrap(text, 76, ""))
	}
}
