// Package wrap draws the paper that goes round a glass: one wrap, gores or patches,
// for outside or inside, with every groove at its true size and place, cut into
// pieces that go on the printer's pages.
//
// [New] makes a [Wrap] of a plan, by [Options] that begin as [DefaultOptions]; its
// PDF, SVG, PageSVG and PagePNG write it. [NewTestPage] makes a page to try a
// printer with, [NewChart] and [NewMotifChart] swatches of motifs, all of them
// written the same way. They stop between pages when their context is done.
package wrap
