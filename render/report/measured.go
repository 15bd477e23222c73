package report

import (
	"fmt"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Measured says what was measured for a finding and what was wanted.
func Measured(p *pattern.Plan, f pattern.Finding) string {
	measured, wanted := figures(p.Job.Length, f)
	if f.Share {
		return fmt.Sprintf("only %s of the cut lies clear of the one it joins; at least %s is wanted", measured, wanted)
	}
	switch f.Kind {
	case pattern.Crowded, pattern.Off:
		if words := overlapping(p, f); words != "" {
			return words
		}
		if f.Kind == pattern.Crowded && p.Face == job.Base && f.BetweenCopies() && f.Measured == 0 {
			return fmt.Sprintf("the grooves of neighbouring copies run together; a land of %s is the least", wanted)
		}
		if ofLand(f) {
			return fmt.Sprintf("land of %s where %s is the least", measured, wanted)
		}
		return fmt.Sprintf("reaches %s %s; the band ends at %s", measured, p.From(), wanted)
	case pattern.Thin:
		if f.Measured <= 0 {
			return fmt.Sprintf("%s where %s of glass is the least", measured, wanted)
		}
		return fmt.Sprintf("leaves %s of glass where %s is the least", measured, wanted)
	case pattern.Rim, pattern.Foot, pattern.AtEdge:
		return fmt.Sprintf("the groove reaches %s %s; the margin begins at %s", measured, p.From(), wanted)
	case pattern.Buried:
		return fmt.Sprintf("a cut %s deep buries the wheel's shoulders; %s is the most for this edge", measured, wanted)
	case pattern.Tight:
		return fmt.Sprintf("the wheel deviates %s from the bent line at the ends of its contact; %s is the most", measured, wanted)
	case pattern.Uneven:
		return fmt.Sprintf("the glass is too curved for its paper: gores as narrow as can be handled are %s out at their edges; %s is the most",
			measured, wanted)
	case pattern.Bridged:
		return bridged(p, f, p.Job.Length)
	case pattern.Shallow:
		return fmt.Sprintf("the mark is too short: it comes out %s deep, and at least %s is wanted", measured, wanted)
	}
	return fmt.Sprintf("%s, wanted %s", measured, wanted)
}

// ofLand reports whether a finding is of the land between two cuts, or between two
// copies of a motif.
func ofLand(f pattern.Finding) bool {
	return f.Kind == pattern.Crowded || f.Kind == pattern.Off && len(f.Cuts) == 2
}

// figures writes what was measured and what was wanted, with enough digits that
// the two differ in print.
func figures(u geometry.Unit, f pattern.Finding) (measured, wanted string) {
	switch {
	case f.Share:
		both := shares(f)
		return both[0], both[1]
	case f.Kind == pattern.Thin && f.Measured <= 0:
		return "breaks through", u.Format(f.Wanted)
	case ofLand(f) || f.Kind == pattern.Thin:
		return limited(u, f)
	case f.Kind == pattern.Off || f.Kind == pattern.Rim || f.Kind == pattern.Foot || f.Kind == pattern.AtEdge:
		return heights(u, f)
	}
	return u.FormatAgainst(geometry.Breach{Measured: f.Measured, Bound: f.Wanted})
}

// limited writes a measured length and the job's limit as fractions, the limit as
// its owner wrote it, or both as decimals where the fractions would be the same.
func limited(u geometry.Unit, f pattern.Finding) (measured, wanted string) {
	if u.FormatDecimal(f.Measured) == u.FormatDecimal(f.Wanted) || u.Setting(f.Wanted).Length <= f.Measured {
		return u.FormatAgainst(geometry.Breach{Measured: f.Measured, Bound: f.Wanted})
	}
	return u.FormatDecimal(f.Measured), u.Format(f.Wanted)
}

// heights writes two heights to the caliper's step, or as decimals where those
// would be the same.
func heights(u geometry.Unit, f pattern.Finding) (measured, wanted string) {
	if u.Format(f.Measured) == u.Format(f.Wanted) {
		return u.FormatAgainst(geometry.Breach{Measured: f.Measured, Bound: f.Wanted})
	}
	return u.Format(f.Measured), u.Format(f.Wanted)
}

// shares writes the measured and the wanted share in per cent, with as many
// digits as it takes for them to differ.
func shares(f pattern.Finding) (both [2]string) {
	for digits := range 6 {
		both = [2]string{fmt.Sprintf("%.*f %%", digits, 100*f.Measured), fmt.Sprintf("%.*f %%", digits, 100*f.Wanted)}
		if both[0] != both[1] {
			break
		}
	}
	return both
}
