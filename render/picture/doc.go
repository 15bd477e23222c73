// Package picture draws a cut glass as it stands on the table and is looked at
// from the side, true to size: the glass's own outline, its wall and its floor,
// the cuts on its near side lit from the upper left, and those on its far side
// faint through the glass.
//
// [New] makes a [Picture] of a plan, by [Options] that say from where it is seen;
// SVG, PDF and PNG write it. [Small] is for a corner of another page.
//
// Nothing is translucent: what shows through something is drawn in the tone
// that the two come to together. All tones lie on one scale from dark to light,
// which a grey printer keeps.
package picture
