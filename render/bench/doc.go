// Package bench draws the sheet that goes to the wheel.
//
// Call [New] with the plans of a job: it returns a [Sheet], whose PDF method writes it.
// [Describe] names a wheel by what can be measured on it.
//
// For each blank the sheet has the divider settings, where to mark, a small picture,
// and the cuts in the order to cut them, each with a box to tick. For all blanks it
// has ways to carry the pattern over, what the finish asks, and the cautions. It is
// read at arm's length beside running water, so its words are large.
package bench
