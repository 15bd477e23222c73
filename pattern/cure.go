package pattern

import (
	"slices"

	"roundlay/pattern/job"
)

// Cure is what a search found out about mending a finding.
type Cure struct {
	// Changes is the smallest change to the job that clears the finding, sometimes of
	// two values at once. It is empty where none was found.
	Changes []job.Change
	// Brings is the findings that the changes cause, and that aren't there now. It is
	// empty where the changes cause no other finding.
	Brings []Brought
	// Or is other ways to clear the finding, each instead of Changes, the cheapest first.
	Or []Alternative
	// Known is lengths that help where no change was found.
	Known []Fact
	Tried Tried
	// Advice is what to do where the job needs no change.
	Advice Advice
}

// Brought is a problem that a change causes.
type Brought struct {
	Problem
	More bool // the problem is there already and gets worse
}

// Alternative is another way to clear a finding: changes, or a wheel that isn't on the
// rack.
type Alternative struct {
	Changes []job.Change
	Brings  bool // whether something else is found then
	// Depths are the least and the greatest depth of the marks that Changes accept as
	// they are: see job.OfLimits. Zero where Changes accept nothing.
	Depths   [2]float64
	Diameter float64 // the largest diameter for a wheel otherwise like the motif's; 0 where Changes is set
}

// Fact is a length that helps to choose a change by hand.
type Fact struct {
	Kind   FactKind
	Length float64 // mm
}

// FactKind says what a fact's length is.
type FactKind int

// MarkLength is the shortest mark that reaches the depth asked for. CurveRadius is the
// radius of the tightest curve that the wheel follows.
const (
	MarkLength FactKind = iota
	CurveRadius
)

// Tried says how far a search for a cure went.
type Tried int

// TriedAll: every change was tried. TriedSome: the search reached its limit first.
// TriedNone: the job is too large to try changes on. NothingToTry: no change applies.
const (
	TriedAll Tried = iota
	TriedSome
	TriedNone
	NothingToTry
)

// Advice is what to do about cuts that lie beyond the paper.
type Advice int

// MorePaper: ask for more paper in the job. Patches: print patches, which reach where one
// piece doesn't. ByHand: mark the cuts without paper.
const (
	NoAdvice Advice = iota
	MorePaper
	Patches
	ByHand
)

// OtherEdge reports whether changes of a job put a wheel with another edge in place of one: an
// olive for a mitre. The cuts look different then.
func OtherEdge(j *job.Job, changes []job.Change) bool {
	return slices.ContainsFunc(changes, func(c job.Change) bool {
		if c.Key != "wheel" || c.Motif < 0 {
			return false
		}
		return j.Rack[int(c.Value)].Edge != j.Rack[j.Motifs[c.Motif].WheelOf(c.Part)].Edge
	})
}
