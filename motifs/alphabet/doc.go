// Package alphabet is an alphabet of single strokes that a cutting wheel can cut.
// It is drawn here, by points and formulas. All lengths are in cap heights.
//
// Straight letters suit any wheel that their strokes are long enough for. Round ones (C, O,
// S, 8 and the like) turn as tightly as [MinRadius], and take a small wheel: with a mitre of
// 90° one up to 0.4 cap heights across, with one of 120° up to 0.6. How deep it cuts makes no
// difference there, for a mitre's groove widens as its contact lengthens. Under a round edge
// less depth helps. testdata/scripts/letters.txtar has the commands that show it.
//
// [Write] sets a text along the level. It returns a [Line]: its strokes in their order, how
// wide it is, and which strokes meet or cross. A text that can't be set is an error that
// says what could be. [Line.Along] takes it along an arc.
//
// # How the letters are drawn
//
// A wheel likes to run straight, and turns only gently. So a letter is straight strokes
// and arcs, none tighter than [MinRadius]. A bowl is too narrow for one such arc: it is
// an arc out and an arc back, which meet in a soft point at the side. The O's halves
// meet in soft points above and below, and so does all that is round. A stroke ends
// wherever a letter has a corner, and strokes that meet or cross are listed as joins.
// No stroke is shorter than [MinLength]; those of letters are longer. A full stop is a
// short upright mark, and a ring is four straight ones.
//
// Accents are strokes of their own part, [Accent]. They keep [AccentGap] from their
// letter, those below too, so that they can have a smaller wheel and less depth. Only
// the bar through Ø, Ð, Đ, Ł, Ħ and Ŧ crosses its letter, and is joined to it. What is
// accepted is [Accepted]: every letter of Latin-1 and Latin Extended-A but ĸ, and any
// accent of theirs on any letter, one above and one below. Small letters are set as
// capitals. Initials on glass are capitals, and small letters would need curves that no
// wheel follows.
//
// # How they are spaced
//
// By the white between them, as the eye does it. A letter's side stands back from an
// upright at its outermost place, by nothing if it is straight, by some if it is round, by
// more if it is diagonal and most if it is open. In the mean over the height of the
// capitals, and no deeper than [Depth], that is white that the shape itself gives. Two
// letters have [White] between them: what their sides give counts towards it, the gap
// is the rest. A letter's bearing is what it keeps from an upright stroke. Kerned pairs
// (AV, LT, TO and every other) are reckoned the same way, not from a table. Where strokes
// would then come nearer than [Clearance], as in LA, the pair stands as far apart as that
// takes, and has more white, up to 1.7 times as much. A space is narrow: [Space], and the
// bearings on either side of it.
package alphabet
