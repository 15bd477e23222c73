package report

import (
	"fmt"
	"slices"
	"strings"

	"roundlay/pattern"
)

// NothingFound is said of a plan that clears, whatever its readings.
const NothingFound = "nothing is crowded, thin, shallow or out of place."

// Verdict says that plans clear, after a word of how that is known: "Checked" on
// paper. Where readings of theirs are questioned it says on which that hangs.
func Verdict(how string, plans ...*pattern.Plan) string {
	if words := OnlyIf(plans...); words != "" {
		return words
	}
	return how + ": " + NothingFound
}

// OnlyIf says on which readings it hangs that plans clear, "" where none of theirs is
// questioned.
func OnlyIf(plans ...*pattern.Plan) string {
	if all := doubted(plans...); len(all) > 0 {
		return "Clear " + areRight(all)
	}
	return ""
}

// areRight is the condition that readings in doubt, of which there are some, are right.
func areRight(all []string) string {
	const named = 3 // more of them only make a sentence that nobody reads to its end
	switch n := len(all); {
	case n == 1:
		return fmt.Sprintf("only if %s is right: measure it again first.", all[0])
	case n <= named:
		return fmt.Sprintf("only if %s and %s are right: measure them again first.", strings.Join(all[:n-1], ", "), all[n-1])
	default:
		return fmt.Sprintf("only if the %d readings that are questioned are right: measure them again first.", n)
	}
}

// doubted names the readings in doubt of some plans.
func doubted(plans ...*pattern.Plan) []string {
	all := []string{}
	for _, p := range plans {
		for _, d := range p.Doubts() {
			all = append(all, reading(p.Job, d))
		}
	}
	return all
}

// hangsOn names the readings on which it hangs that plans clear: none where one of them
// doesn't.
func hangsOn(plans ...*pattern.Plan) []string {
	if slices.ContainsFunc(plans, func(p *pattern.Plan) bool { return !p.Clear() }) {
		return []string{}
	}
	return doubted(plans...)
}

// Remeasure says, as sentences, what is to be measured again on a blank before it is
// cut and, if it is clear, that this hangs on it.
func Remeasure(p *pattern.Plan) []string {
	said := Doubts(p)
	for i, words := range said {
		said[i] = upper(words)
	}
	if len(said) > 0 && p.Clear() {
		said = append(said, OnlyIf(p))
	}
	return said
}

// clearing counts the plans that clear, and which of these do only if a reading in
// doubt is right.
func clearing(plans []*pattern.Plan) (all, onlyIf int) {
	for _, p := range plans {
		switch {
		case !p.Clear():
		case len(p.Doubts()) > 0:
			onlyIf++
			fallthrough
		default:
			all++
		}
	}
	return all, onlyIf
}

// howManyClear says how many of a set's blanks clear, and on what that hangs.
func howManyClear(plans []*pattern.Plan) string {
	all, onlyIf := clearing(plans)
	const hangs = "only if what is questioned below is right: measure it again first."
	switch {
	case all == 0:
		return "None clears."
	case all == len(plans) && onlyIf > 0:
		return "Clear " + hangs
	case all == len(plans):
		return "All clear."
	case onlyIf == all:
		return fmt.Sprintf("%d of %d clear, %s", all, len(plans), hangs)
	case onlyIf > 0:
		return fmt.Sprintf("%d of %d clear, %d of these %s", all, len(plans), onlyIf, hangs)
	}
	return fmt.Sprintf("%d of %d clear.", all, len(plans))
}

// Short verdicts on one blank of a set.
const (
	isClear    = "clear"
	isNotClear = "NOT CLEAR"
	ifRight    = "clear only if right"
)

// shortVerdict says in a word or a few whether a blank clears.
func shortVerdict(p *pattern.Plan) string {
	switch {
	case !p.Clear():
		return isNotClear
	case len(p.Doubts()) > 0:
		return ifRight
	}
	return isClear
}

// anyOnlyIf reports whether one of the plans clears only if a reading is right.
func anyOnlyIf(plans []*pattern.Plan) bool {
	return slices.ContainsFunc(plans, func(p *pattern.Plan) bool { return shortVerdict(p) == ifRight })
}
