package pattern

import "roundlay/pattern/job"

// Cure is what is known of mending a finding.
type Cure struct {
	// Changes is the smallest change to the job that clears the finding; none where
	// none was found. What goes as one change may be of two values.
	Changes []job.Change
	// Brings is what is found then that isn't now: nothing where there is a change
	// that clears and brings nothing.
	Brings []Brought
	// Or is what else would do, the job as it is otherwise: what costs less first.
	Or []Alternative
	// Known is what there is to know where no change was found.
	Known []Fact
	Tried Tried
	// Advice is what to do where no change of the job is wanted.
	Advice Advice
}

// Brought is a problem that a change brings with it.
type Brought struct {
	Problem
	More bool // of what is found already
}

// Alternative is another cure: changes, or a wheel that isn't on the rack.
type Alternative struct {
	Changes []job.Change
	Brings  bool // whether something else is found then
	// Depths are how deep the marks come out, the least and the most, that Changes
	// accept as they are: see job.OfLimits. Zero where they accept nothing.
	Depths   [2]float64
	Diameter float64 // up to so far across may a wheel be that is otherwise like the motif's; 0 where Changes are it
}

// Fact is a length that is good to know.
type Fact struct {
	Kind   FactKind
	Length float64 // mm
}

// FactKind says what a fact's length is.
type FactKind int

// A mark so long reaches the depth that is asked for; the wheel follows curves of so
// large a radius and of larger ones.
const (
	MarkLength FactKind = iota
	CurveRadius
)

// Tried says how far a search for a cure went.
type Tried int

// All that there is was tried, or some, when the search had measured all it may; or
// nothing, as the job is too heavy to try changes on; or there is nothing to try.
const (
	TriedAll Tried = iota
	TriedSome
	TriedNone
	NothingToTry
)

// Advice is what to do of cuts that lie beyond the paper.
type Advice int

// Ask for more paper in the job; print patches, which go where one piece doesn't; or
// mark the cuts without paper.
const (
	NoAdvice Advice = iota
	MorePaper
	Patches
	ByHand
)
