// Package geometry is the plane and the round surface that a pattern is laid out
// on. It knows nothing of glass, wheels or motifs.
//
// Lengths are millimetres and angles are radians throughout. [Unit] reads and
// writes lengths as people do, in inches or millimetres; [Degrees] and
// [Angle.Degrees] are the way in and out for angles.
//
// Places on the surface are (θ, z). θ grows to the right as the upright body is
// seen from outside, and z is the height above the table. s is the distance along
// the profile from its lower end. On a flat map θ = 0 runs straight up: x = 0
// there, and y = s.
//
// What to call first:
//
//   - [NewProfile] makes the outside curve from measured radii and heights.
//   - [Profile.FitCone] gives the cone nearest to it, whose flat map paper is
//     drawn on. [Gore] is the paper where no cone comes near enough.
//   - [NewSurface] turns a profile into a surface of revolution with a chart:
//     Forward and Reverse go between (θ, z) and the chart, ForwardAlong and
//     ReverseAlong between (θ, s) and the chart.
//   - [NewOutline] makes a closed outline, which knows its distance to others.
//   - [Division] is a circle stepped into equal parts: the chord that dividers
//     are set to, and the gap that a setting leaves.
package geometry
