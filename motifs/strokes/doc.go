// Package strokes reads a drawing as strokes that a wheel can cut: an SVG file, or
// SVG path data by itself.
//
// [Read] reads a file and [ReadPaths] path data. Both return a [Drawing]: its strokes,
// the box they lie in, where they meet, and notes on what was left out or changed.
// [Options] say how strokes are made fit to cut. It is a package by itself: it knows
// points and curves, and nothing of motifs, wheels or glass.
//
// # What is read
//
// Every shape that is drawn with a stroke: path with all its commands, line, polyline,
// polygon, circle, ellipse and rect; in groups, with transforms, by use and symbol, in
// inner viewports with viewBox and preserveAspectRatio. Whether a shape has a stroke,
// and can be seen, is decided by attributes, style attributes and the rules of style
// elements, with selectors by name, id, class, attribute and place in the tree.
// Lengths may have units. encoding/xml reads the file and tdewolff/parse its style
// rules; path data, transforms and arcs are read here, so that an error can name its
// character, and because an arc has to be right to a hundredth of a millimetre.
//
// What is no stroke is left out and counted in a note: fills without a stroke, text,
// images, gradients, patterns, clip paths, masks, filters, markers, scripts, animation.
// So is what can't be seen, a stroke that lies exactly on another, and style rules that
// aren't read. A drawing of which nothing is left is an error. Path data that is wrong
// is an error too, where a browser draws the part before the mistake: half a drawing
// would be cut as if it were all of it.
//
// Nothing that a file names is opened: no address, no other file, no entity from
// outside. Bounds on size, depth, uses, rules and curves keep any file to a few seconds.
//
// # Coordinates
//
// Places are in the units of the file's viewBox, or in pixels without one, with y
// turned over: it grows upwards, as everywhere in this module. preserveAspectRatio
// matters to the outermost element only where it is none and both sizes are given; the
// drawing is then stretched as a viewer shows it. The box is the viewBox, else the
// strokes' own, and [Drawing.Unit] is what the file says of its true size. A stroke
// wholly outside its viewport isn't seen and is left out. One that is partly outside is
// kept whole, and the box made larger, because a cut that ends in the middle of nowhere
// is not what anyone drew; a note says so.
//
// # Strokes
//
// Each subpath is a stroke, in the order of the file. Its part is the id of the nearest
// group round it (g, symbol, inner svg or link; of a use, the group that is used), else
// the id of its element. A stroke is a chain of cubic curves, exact for all that SVG
// draws but arcs, where it deviates by 4e-7 of the radius. [Stroke.Points] gives points
// within any distance.
//
// A stroke is divided where it turns by more than 5 degrees from one long straight line to
// the next, unless that is one of a run of like turns, which is a curve. Elsewhere
// it is divided at its corners, where it turns by more than [DefaultCorner], and
// at cusps inside a curve. A closed stroke without a corner stays closed; with one or
// more it becomes the strokes between them.
//
// # Fit to cut
//
// A pen on a tablet leaves hundreds of short lines that tremble, and other programs
// curves with kinks at their joints. Such rough runs are thinned to points a step
// apart, the points calmed by their neighbours, and a few smooth curves laid along them
// by least squares, all within the tremor. Corners are kept: they are found from directions over a window of twelve
// tremors, over which no tremor can feign one. What is drawn with clean curves stays
// exactly as it is. A run that would not take fewer curves stays too. Notes say how
// many strokes were smoothed and by how much a line was moved, where most.
//
// With [Options.Centre] a sliver is taken by its middle line: the closed outline, mostly
// filled, that a program makes of one stroke of a brush or a felt pen. Its two sides run
// side by side from tip to tip, and it is at most a seventh as broad as it is long. The
// middle line is as long as the sliver: to the point of a pointed end, through the
// middle of a blunt one. Outlines that cross or branch are no slivers. Neither is a
// ring's, which is two outlines.
//
// # Joins
//
// Two strokes meet where they cross or come within a touch of each other. Contacts that
// run into one another are one [Join], at the place where the strokes are nearest.
package strokes
