// Package drawing is a picture as a list of marks in named layers: strokes,
// fills, areas and words, all opaque. It knows nothing of what is drawn, nor of
// the files it is written to.
//
// A [Drawing] begins empty. Add puts a [Stroke], a [Fill], an [Area] or a [Text] on
// one of its [Layers]; Append lays another drawing over it. Moved, Mapped, Clipped
// and the like return a changed one and leave the first as it was. Check finds
// what could not be printed. Package printing makes files of it.
//
// Lengths are millimetres, angles radians, and y grows upwards. There are no
// arcs and no curves: what is round is a polyline that leaves its arc by no
// more than Flatness, so that every place is where it is said to be and any
// picture can be cut along a straight line exactly.
package drawing
