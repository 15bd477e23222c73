// Package search finds by trying: the counts of a job that are to be the most that
// clear, what cures its findings, what makes the whole of it clear or what it has
// room for, and which wheels of its rack it could be cut with.
//
// # What to call first
//
// [Lay] finds the counts, and lays the job out and checks it as package pattern does.
// [Cures] then seeks what cures the findings of its plans, and notes it on them; where
// nobody reads cures, leave it out: it takes far longer than laying out. [NewFit] and
// [Wheels] take a job by itself. [Resolve] finds the counts alone.
//
// # How it searches
//
// A problem is a kind of finding on certain motifs. A candidate is a change or two to
// the job, and a series is candidates of one sort, from the mildest on: this motif
// higher and higher, that one of fewer and fewer fronds. The evaluator of package
// pattern answers what problems a candidate leaves, and looks only at what it changed.
//
// A cure is the mildest candidate, of the first list of series that has one, that
// clears one problem and brings no other. A fit mends one problem after the other, each
// in every way there is, and follows up what costs the look least.
//
// Every call takes a context, and ends with its error when that is done. Nothing is
// sought without an end: see pattern.MaxTried.
package search
