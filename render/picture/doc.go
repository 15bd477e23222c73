// Package picture draws a cut glass on the table as seen from the side, true to size:
// the outline, the wall and the floor of the glass, the cuts on its near side lit
// from the upper left, and those on its far side faint through the glass.
//
// Call [New] with a plan and [Options] that say from where it is seen. It returns a
// [Picture], whose SVG, PDF and PNG methods write it. [Small] draws one for a corner of
// another page.
//
// Nothing is translucent: what shows through glass is drawn in the tone that the two
// have together. All tones lie on one scale from dark to light, which a grey printer
// keeps.
package picture
