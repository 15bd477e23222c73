package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
)

// roundJSON is a station that is out of round: its diameters, the chord that
// dividers are set to, the shortest and the longest real chord of an equal part,
// how far a step falls from its equal part, and the gap the last step leaves. The
// last two are left out with two repeats.
type roundJSON struct {
	Height     number    `json:"height"`
	Across     [2]number `json:"across"`
	OutOfRound number    `json:"out_of_round"`
	Chord      number    `json:"chord"`
	Parts      [2]number `json:"part_chords"`
	Off        *number   `json:"off,omitempty"`
	ClosingGap *number   `json:"closing_gap,omitempty"`
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
