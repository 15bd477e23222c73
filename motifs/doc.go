// Package motifs holds the elements a pattern is made of, one file a motif.
//
// A motif turns its parameters into cuts in the unit repeat: a box one wide and
// one high, x from -0.5 at its left edge to 0.5, y from 0 at its foot to 1. It
// knows nothing of sizes, wheels or glass. It only gets its aspect, the width of
// its box over its height, so that the angles it draws are true.
//
// What to call first: [All] lists the kinds there are and [Find] returns one by
// its name. [Kind.Defaults] gives it a full set of values, [Kind.Param] and
// [Param.Accepts] say which others it takes, and Draw makes the cuts. [Drawing] makes a
// kind of a drawing that strokes has read, for one motif; [Made] lists such kinds with an
// example of each, and [Listed] those of [All] and these.
package motifs
