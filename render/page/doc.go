// Package page holds what every printed page has in common.
//
// Start with [DefaultOptions]. [ParsePaper] reads the size of the sheets and
// [ParsePrinted] what a ruler says of the printer's test page; both go into [Options].
// Their Portrait and Landscape return the page to fill, a [Format]. It knows the
// page's size and where on it there is room, and its Correct makes the page of the
// file that this printer prints true to size.
//
// A [Frame] draws what surrounds the room: words at the head, the check [Bar]s and the
// cautions. A [Column] sets notes into the room, and a [Ring] marks a finding. Paper
// that can't be used is a [PaperError].
package page
