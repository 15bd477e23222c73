// Package bench draws the sheet that goes to the wheel: for each blank the
// settings of the dividers, where to mark, a small picture, and the cuts in the
// order to cut them, each with a box to tick; and for all of them what carries
// the pattern over, what the finish asks, and the cautions. It is read at arm's
// length beside running water, so its words are large.
//
// [New] makes a [Sheet] of the plans of a job, and its PDF writes it. [Describe]
// tells a wheel by what can be measured on it.
package bench
