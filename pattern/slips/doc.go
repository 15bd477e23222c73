// Package slips finds readings of a job's blanks that were misread or mistyped.
//
// A slip at the calipers or the keys, 94.8 for 84.8 or 24 for 2.4, can still be a
// glass that could be made. Only the other blanks of the set, its sisters, show
// that it is wrong. So each reading is compared with what they have at the same
// share of their height, as a ratio.
//
// A reading is doubted if it is further from the middle of its sisters than honest
// glass differs, and more than twice as far as any of them is from the others. One
// sister may be as far off, because it may be misread too. With few sisters the
// difference has to be greater, unless it is five times what they differ among
// themselves. A blank that is wider or thicker all the way up is no slip: the
// reading has to be off from the blank's own other readings as well.
//
// A wall is also compared with the walls next to it in its own blank, so that a single
// blank or a set of two is not without any check: see [Beside].
//
// What to call first: [Doubts] takes the blanks of a set and returns every reading
// in doubt, with what the sisters have there, or the walls next to it.
package slips
