// Package wrap draws the paper that goes round a glass: one wrap, gores or patches,
// for outside or inside, with every groove at its true size and place, cut into
// pieces that go on the printer's pages.
//
// [New] makes a [Wrap] of a plan, by [Options] that begin as [DefaultOptions]; its
// PDF, SVG, PageSVG and PagePNG write it. [NewTestPage] makes a page to try a
// printer with, [NewChart] and [NewMotifChart] swatches of motifs, all of them
// written the same way. They stop between pages when their context is done.
//
// # Faces, strips and pages
//
// A facePaper (render/wrap/facepaper.go) is the paper for one face of one glass. Its flat map
// is the face's cone, moved off it by half the paper's thickness, or gores where the face is
// curved. A place on either is found from (θ, z), so the drawing code is the same for both. A
// height on the outside is at Face.Height of it on the face; for the inside that is square
// through the wall. pattern/ends.go says where the paper of a face begins and ends, and why.
//
// Drawing goes strip by strip. A strip is a part of a piece that lies flat by itself: the
// whole piece on a cone, or one gore. Cuts are clipped as places of the glass, where the ends
// of a strip are straight.
//
// Everything on a page is laid out at its size on paper. Only page.Format.Correct converts
// that to what the file must say for a printer that is not true.
//
// A test that looks at files through other programs looks at many pages at once where it can:
// everyPage is all sides on all papers, in one PDF. The test through the printing system's
// own filters runs where cups-filters is installed.
package wrap
