package glass

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
)

// MaxOff is how far a reading may lie off the line when a glass is taken as
// straight, as a radius: a sixteenth of an inch across. With more, paper on a cone
// would be 5 mm out round the glass.
const MaxOff = geometry.MillimetresPerInch / 32

// OffError is returned for a glass that can't be taken as straight. Station is the
// one that alone lies off a line through the others, or else the one furthest off.
// Line is the radius the line has there.
type OffError struct {
	Station Station
	Line    float64
}

func (e *OffError) Error() string {
	return fmt.Sprintf("the station at %g mm is %g mm off a straight line in radius", e.Station.Height, e.Station.Radius-e.Line)
}

// Straightened returns the blank with a straight line for its profile, the line of
// least squares through the radii. The stations stay as measured. The error is an
// *OffError where one of them is more than MaxOff from the line, and ErrWall where
// the line leaves no room for a wall.
func (b *Blank) Straightened() (*Blank, error) {
	foot, rate := line(b.Stations)
	worst, most := b.Stations[0], -1.0
	for _, s := range b.Stations {
		if off := math.Abs(s.Radius - foot - rate*s.Height); off > most {
			worst, most = s, off
		}
	}
	if most > MaxOff+1e-9 {
		if i, radius, ok := b.Odd(MaxOff / 4); ok {
			return nil, &OffError{b.Stations[i], radius}
		}
		return nil, &OffError{worst, foot + rate*worst.Height}
	}
	for _, s := range b.Stations {
		if s.Wall >= foot+rate*s.Height {
			return nil, ErrWall
		}
	}
	on := func(z float64) geometry.Circle { return geometry.Circle{Radius: foot + rate*z, Height: z} }
	profile, err := geometry.NewProfile([]geometry.Circle{on(b.Stations[0].Height), on(b.Height())})
	if err != nil {
		return nil, err
	}
	straight := *b
	straight.Straight = true
	straight.shape(profile)
	return &straight, nil
}

// Off returns how far a station's reading lies outside the profile, as a radius. It
// is 0 unless the glass is taken as straight.
func (b *Blank) Off(s Station) float64 {
	if !b.Straight {
		return 0
	}
	return s.Radius - b.profile.Radius(s.Height)
}

// line returns the radius at height 0, and the rate, of the line of least squares
// through the stations' radii.
func line(stations []Station) (foot, rate float64) {
	heights, radii := make([]float64, len(stations)), make([]float64, len(stations))
	for i, s := range stations {
		heights[i], radii[i] = s.Height, s.Radius
	}
	return geometry.LeastSquares(heights, radii)
}

// Odd returns the one station that lies off the line of all the others, and the
// radius that line has at its height. None of the others is off the line by more
// than within, in radius, and the odd one is off by far more than any of them. If
// not, the whole glass is curved and ok is false.
// Of several such stations it returns the one without which the others are nearest
// to their line, and of three stations only the middle one.
func (b *Blank) Odd(within float64) (odd int, radius float64, ok bool) {
	// On a glass with an even curve, a station between others is off by 1.7 times as
	// much as the others, and the foot or the rim by 5 times.
	const far, farAtEnd = 2, 8
	last := len(b.Stations) - 1
	least := math.Inf(1)
	for i, s := range b.Stations {
		if last < 2 || last == 2 && i != 1 {
			continue
		}
		others := slices.Delete(slices.Clone(b.Stations), i, i+1)
		foot, rate := line(others)
		most := 0.0
		for _, o := range others {
			most = max(most, math.Abs(o.Radius-foot-rate*o.Height))
		}
		times := float64(far)
		if i == 0 || i == last {
			times = farAtEnd
		}
		on := foot + rate*s.Height
		if most <= within && most < least && math.Abs(s.Radius-on) > times*most {
			least, odd, radius, ok = most, i, on, true
		}
	}
	return odd, radius, ok
}
