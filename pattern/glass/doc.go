// Package glass is the uncut glass: what the calipers read, its outside curve, its
// wall and its inside, and what it holds and weighs.
//
// Lengths are millimetres, volumes cubic millimetres, weights grams. Walls are
// measured square to the outside.
//
// What to call first: [NewBlank] makes a blank of its measured stations, and fails
// where they are no glass. [Blank.Straightened] takes it as straight and
// [Blank.CalibrateWalls] corrects its walls by its weight; each returns a new blank.
//
// Then ask the blank:
//
//   - [Blank.Profile] and [Blank.Meridian] are the outside, by height and by the
//     distance along it.
//   - [Blank.Wall], [Blank.MinWall] and [Blank.Carries] say how thick the wall is
//     and up to where it is thick enough. [Blank.CutTo] says what a cut leaves.
//   - [Blank.Inner] is the inside surface as it most likely is, and
//     [Blank.ThinInner] the one that glass left is measured to. [Blank.Inside] is
//     the inside as a profile that paper can lie on.
//   - [Blank.Capacity], [Blank.Volume] and [Blank.Weight] need a measured floor.
package glass
