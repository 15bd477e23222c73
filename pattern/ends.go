package pattern

import (
	"math"

	"roundlay/geometry"
)

// Edge is an edge of the paper, and why it is there.
type Edge struct {
	Why EndReason
	// Own is where the face itself ends: at the table, the inside floor or the rim.
	Own float64
	// Off is the largest difference in radius between the glass beyond the edge and the
	// paper's cone, negative where the glass is narrower. It is 0 unless paper on a cone
	// leaves the glass here.
	Off float64
}

// EndReason is the reason that paper ends.
type EndReason int

// WholeGlass: the paper reaches the end of its face. PartsFromGlass: it ends where it would
// leave the glass. AsAsked: it ends where the job says.
const (
	WholeGlass EndReason = iota
	PartsFromGlass
	AsAsked
)

// rulerStep is the step to which the height of a paper's edge is rounded, so that it can
// be read on a ruler.
func rulerStep(u geometry.Unit) float64 {
	if u == geometry.Inch {
		return geometry.MillimetresPerInch / 32
	}
	return 0.5
}

// ask makes the paper fit between two heights, and only there.
func (f *Face) ask(low, high float64) {
	f.asked, f.fit = true, [2]float64{low, min(high, f.own[1])}
	f.Band = [2]float64{max(f.Band[0], f.fit[0]), min(f.Band[1], f.fit[1])}
	f.Cone, f.Misfit = f.Profile.FitCone(f.fit[0], f.fit[1])
}

// end finds where the paper ends: where the job asks or, without that, where it leaves the
// glass on the way from the band to the end of the face. The height where it leaves the
// glass is rounded towards the band to a whole number of steps, above the table or,
// inside, below the rim; but never past the band's own end.
func (f *Face) end(repeats int, step float64) {
	f.Low, f.High = f.own[0], f.own[1]
	f.Lower, f.Upper = Edge{Own: f.Low}, Edge{Own: f.High}
	switch {
	case f.asked:
		f.Low, f.High = f.fit[0], f.fit[1]
		for _, e := range []struct {
			end *Edge
			at  float64
		}{{&f.Lower, f.Low}, {&f.Upper, f.High}} {
			if e.at != e.end.Own {
				e.end.Why = AsAsked
			}
		}
		return
	case f.Curved():
		f.endGores(repeats)
	default:
		f.endCone()
	}
	from := 0.0
	if f.inner != nil {
		from = f.own[1]
	}
	if f.Lower.Why == PartsFromGlass {
		f.Low = min(from+math.Ceil((f.Low-from)/step-1e-9)*step, f.Band[0])
	}
	if f.Upper.Why == PartsFromGlass {
		f.High = max(from+math.Floor((f.High-from)/step+1e-9)*step, f.Band[1])
	}
}

// endCone finds where paper on the cone leaves the glass.
func (f *Face) endCone() {
	for _, e := range []struct {
		end  *Edge
		at   *float64
		from float64
	}{{&f.Lower, &f.Low, f.Band[0]}, {&f.Upper, &f.High, f.Band[1]}} {
		if at := f.follows(e.from, e.end.Own); at != e.end.Own {
			e.end.Why, *e.at, e.end.Off = PartsFromGlass, at, f.off(at, e.end.Own)
		}
	}
}

const fineStep = 0.1 // mm: what calipers show

// follows returns the height, on the way from one to another, up to which the glass stays
// on the cone.
func (f *Face) follows(from, to float64) (z float64) {
	z = from
	n := max(1, int(math.Ceil(math.Abs(to-from)/fineStep)))
	for i := range n + 1 {
		next := from + (to-from)*float64(i)/float64(n)
		if math.Abs(f.aside(next)) > maxMisfit {
			return z
		}
		z = next
	}
	return to
}

// aside returns the glass's radius at a height less the cone's.
func (f *Face) aside(z float64) float64 { return f.Profile.Radius(z) - f.Cone.RadiusAt(z) }

// off returns the largest value of aside between two heights, with its sign.
func (f *Face) off(from, to float64) (worst float64) {
	n := max(1, int(math.Ceil(math.Abs(to-from)/fineStep)))
	for i := range n + 1 {
		if off := f.aside(from + (to-from)*float64(i)/float64(n)); math.Abs(off) > math.Abs(worst) {
			worst = off
		}
	}
	return worst
}

// endGores finds where gores no longer lie on the glass: where, counted from the band's
// end, their edges would be wrong by maxEase again.
func (f *Face) endGores(repeats int) {
	gore := geometry.Gore{Profile: f.Profile, HalfWidth: math.Pi / float64(repeats*f.Gores(repeats, 0).PerRepeat)}
	if low := gore.Lies(f.Band[0], f.own[0], maxEase); low != f.own[0] {
		f.Lower.Why, f.Low = PartsFromGlass, low
	}
	if high := gore.Lies(f.Band[1], f.own[1], maxEase); high != f.own[1] {
		f.Upper.Why, f.High = PartsFromGlass, high
	}
}

// Carries returns the lowest and highest height of the outside that the paper can mark.
func (f Face) Carries() (low, high float64) { return f.Outer(f.Low), f.Outer(f.High) }
