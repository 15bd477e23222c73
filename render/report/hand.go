package report

import (
	"fmt"
	"math"
	"strings"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// Hand says what the hand does along a cut, in a cutter's words; "" where it is even. A
// touch is pressed in once, so it has no depths along it, only a roll. Where a roll takes a
// broad edge deeper than the wheel is set, both depths are said: the list has the greater.
func Hand(unit geometry.Unit, c pattern.Cut) string {
	var all []string
	if !c.Touch {
		if words := swelling(*c.Hand); words != "" {
			all = append(all, words)
		}
	}
	if words := rocking(c.Hand.Rock); words != "" {
		all = append(all, words)
	}
	if setsLess(unit, c) {
		all = append(all, fmt.Sprintf("set the wheel %s deep: the roll makes it %s at one side", unit.FormatDecimal(DepthToSet(c)), unit.FormatDecimal(c.Depth)))
	}
	return strings.Join(all, "; ")
}

// rocking says how far the glass is rolled to the sides of a cut.
func rocking(rock [2]float64) string {
	side := func(i int) string { return job.InDegrees(geometry.Angle(rock[i])) + "°" }
	switch left, right := rock[0], rock[1]; {
	case left == 0 && right == 0:
		return ""
	case left == 0:
		return "rock " + side(1) + " to the right"
	case right == 0:
		return "rock " + side(0) + " to the left"
	case side(0) == side(1):
		return "rock " + side(0) + " to both sides"
	}
	return "rock " + side(0) + " to the left and " + side(1) + " to the right"
}

// rollWords and shareWords say what a gesture asks of the hand, as a job has it.
func rollWords(g motifs.Gesture) string {
	words := rocking([2]float64{g.Rock[0].Radians(), g.Rock[1].Radians()})
	if words == "" {
		return "to neither side"
	}
	return strings.TrimPrefix(words, "rock ")
}

func shareWords(g motifs.Gesture) string {
	shares := make([]string, len(g.Swell))
	for i, share := range g.Swell {
		shares[i] = fmt.Sprintf("%.4g", share)
	}
	switch len(shares) {
	case 0:
		return "evenly"
	case 1:
		return "evenly at " + shares[0]
	}
	return strings.Join(shares, "–") + " from root to tip"
}

// swelling says how the depth goes along a cut: at its root, where it turns, and at its tip,
// as shares of its greatest depth.
func swelling(h groove.Hand) string {
	shares := turning(h)
	if len(shares) < 2 {
		return ""
	}
	words := make([]string, len(shares))
	last := len(shares) - 1
	for i, s := range shares {
		falls := i > 0 && s.share < shares[i-1].share
		switch deep := asFraction(s.share); {
		case s.share > full:
			words[i] = "full"
		case i == 0 && s.share < nothing:
			words[i] = "from nothing"
		case i == 0:
			words[i] = deep + " of its depth"
		case i == last && s.share < nothing:
			words[i] = "lifting out"
		case i == last && falls:
			words[i] = "lifting to " + deep + " of it"
		case falls:
			words[i] = "easing to " + deep + " of it"
		default:
			words[i] = "swelling to " + deep + " of it"
		}
		words[i] += " " + s.where()
	}
	return strings.Join(words, ", ")
}

// What counts as a whole depth and as none.
const (
	full    = 0.97
	nothing = 0.04
)

// turn is a place along a cut where its depth is greatest or least, and its ends.
type turn struct{ at, share float64 }

// where says on which part of the cut it is.
func (t turn) where() string {
	switch {
	case t.at == 0:
		return "at the root"
	case t.at == 1:
		return "at the tip"
	case t.at < 0.36:
		return "near the root"
	case t.at <= 0.64:
		return "in the middle"
	}
	return "towards the tip"
}

// turning returns the ends of a cut and the places between them where its depth turns, with
// shares of the greatest depth; none where it is even.
func turning(h groove.Hand) []turn {
	last := len(h.Swell) - 1
	var all []turn
	for i, share := range h.Swell {
		t := turn{float64(i) / float64(max(last, 1)), share / h.Greatest()}
		n := len(all)
		switch {
		case n > 0 && all[n-1].share == t.share && i < last: // level from there on
			continue
		case n > 1 && (t.share-all[n-1].share)*(all[n-1].share-all[n-2].share) > 0:
			all[n-1] = t // it goes on the same way
		case n > 1 && all[n-1].share == t.share:
			all[n-1] = t // the tip, as deep as the last turn
		default:
			all = append(all, t)
		}
	}
	if len(all) == 2 && all[0].share == all[1].share {
		return nil
	}
	return all
}

// asFraction writes a share of a depth as a cutter thinks of it.
func asFraction(share float64) string {
	fractions := []struct {
		share float64
		words string
	}{{1.0 / 8, "1/8"}, {1.0 / 4, "1/4"}, {1.0 / 3, "1/3"}, {3.0 / 8, "3/8"}, {1.0 / 2, "1/2"}, {5.0 / 8, "5/8"}, {2.0 / 3, "2/3"}, {3.0 / 4, "3/4"}, {7.0 / 8, "7/8"}}
	best := fractions[0]
	for _, f := range fractions {
		if math.Abs(f.share-share) < math.Abs(best.share-share) {
			best = f
		}
	}
	return best.words
}

// byHand lists the cuts of a plan that aren't even, those together that are cut alike.
func byHand(b *strings.Builder, p *pattern.Plan) {
	var said []string
	cuts := map[string][]pattern.Chain{}
	for _, c := range p.Cuts {
		words := Hand(p.Job.Length, c)
		if words == "" {
			continue
		}
		if cuts[words] == nil {
			said = append(said, words)
		}
		cuts[words] = append(cuts[words], pattern.Chain{Cuts: []int{c.ID}})
	}
	if len(said) == 0 {
		return
	}
	b.WriteString("\nBy hand, each from its root to its tip as seen from outside:\n")
	for _, words := range said {
		fmt.Fprintf(b, "  %s\n", wrap(runs(cuts[words])+": "+words, 77, "    "))
	}
}

// swellJSON and rockJSON return what a cut has of either, nil where it is even.
func swellJSON(h groove.Hand) []number {
	var all []number
	for _, share := range h.Swell {
		all = append(all, number(share))
	}
	return all
}

func rockJSON(h groove.Hand) *[2]number {
	if h.Rock == [2]float64{} {
		return nil
	}
	return &[2]number{degrees(h.Rock[0]), degrees(h.Rock[1])}
}
