package pattern

import (
	"encoding/binary"
	"math"

	"roundlay/pattern/job"
)

// describe writes everything that a motif's cuts depend on.
func describe(b []byte, i int, m job.Motif) []byte {
	b = append(number(b, float64(i)), m.Kind.Name...)
	for _, p := range m.Kind.Params {
		b = number(b, m.Values[p.Name])
	}
	return describePlace(b, m)
}

// describePlace writes the part of that which fixes a motif's place, size and depth.
func describePlace(b []byte, m job.Motif) []byte {
	for _, s := range []job.Measure{m.X, m.Y, m.Width, m.Height} {
		fraction := 0.0
		if s.Fraction {
			fraction = 1
		}
		b = number(b, s.Value, fraction)
	}
	mirror := 0.0
	if m.Mirror {
		mirror = 1
	}
	return number(b, float64(m.Wheel), m.Depth, m.Turn.Radians(), mirror, float64(m.On), float64(m.Shape), float64(m.Inside))
}

func number(b []byte, all ...float64) []byte {
	for _, x := range all {
		b = binary.NativeEndian.AppendUint64(b, math.Float64bits(x))
	}
	return b
}
