package geometry

import "math"

// Angle is an angle in radians. Values of this type come in as degrees and go
// out as degrees: a cone's half-angle, how far a motif is turned. The angle θ of
// a place on the surface is a plain float64, always in front of its height.
type Angle float64

// Degrees returns the angle of a number of degrees.
func Degrees(degrees float64) Angle { return Angle(degrees * math.Pi / 180) }

// Degrees returns the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a) * 180 / math.Pi }

// Radians returns the angle as a bare number, for sines and cosines.
func (a Angle) Radians() float64 { return float64(a) }
