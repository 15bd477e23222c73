// Package geometry is the plane and the round surface a pattern is laid out on:
// lengths as people write them, chords of a circle, a profile turned about an
// axis, the cone that unrolls it flat, and distances between outlines.
//
// It knows nothing of glass, wheels or motifs. Lengths are millimetres and
// angles are radians throughout; Unit is where other units enter and leave.
//
// Places on the surface are (θ, z): θ grows to the right as the upright body is
// seen from outside, z is the height above the table. s is the distance along
// the profile from its lower end. On a flat map θ = 0 runs straight up: x = 0
// there and y = s.
package geometry
