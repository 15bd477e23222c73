// Package page holds what every printed page has in common.
//
// [ParsePaper] reads which sheet is in the printer, and [ParsePrinted] what a ruler
// said of its test page. Both go into [Options], whose Portrait and Landscape are the
// pages to fill: a [Format] knows how large its page is, where on it there is room,
// and in the end, with Correct, what the file has to say so that this printer
// makes everything true to size. A [Frame] draws what stands round that room: words
// at the head, the check [Bar]s and the cautions; a [Column] sets notes into it, and a
// [Ring] goes round what was found. Paper that won't do is a [PaperError].
package page
