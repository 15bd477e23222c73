package pattern

import (
	"math"

	"roundlay/geometry"
)

// Edge tells why paper ends where it does.
type Edge struct {
	Why Why
	// Own is where the face itself ends: at the table, the inside floor or the rim.
	Own float64
	// Off is by how much the glass beyond is wider than a cone that lies on the
	// band, at the most, as a radius; below zero narrower. 0 but where paper on a
	// cone parts from the glass.
	Off float64
}

// Why tells what ends paper.
type Why int

// Paper goes as far as its face, or to where it parts from the glass, or to where
// the job asks.
const (
	Whole Why = iota
	Parts
	Asked
)

// rulerStep is what the height of a paper's edge is rounded to, so that it is
// found on a ruler.
func rulerStep(u geometry.Unit) float64 {
	if u == geometry.Inch {
		return geometry.MillimetresPerInch / 32
	}
	return 0.5
}

// ask makes the paper fit between two heights, and there alone.
func (f *Face) ask(low, high float64) {
	f.asked, f.fit = true, [2]float64{low, min(high, f.own[1])}
	f.Band = [2]float64{max(f.Band[0], f.fit[0]), min(f.Band[1], f.fit[1])}
	f.Cone, f.Misfit = f.Profile.FitCone(f.fit[0], f.fit[1])
}

// end finds where the paper ends: where the job asks or else, on the way from the
// band to the face's own ends, where it parts from the glass. Such an edge is a
// whole number of steps above the table, or inside below the rim, unless that lies
// within the band.
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
				e.end.Why = Asked
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
	if f.Lower.Why == Parts {
		f.Low = min(from+math.Ceil((f.Low-from)/step-1e-9)*step, f.Band[0])
	}
	if f.Upper.Why == Parts {
		f.High = max(from+math.Floor((f.High-from)/step+1e-9)*step, f.Band[1])
	}
}

// endCone finds where paper on the cone parts from the glass.
func (f *Face) endCone() {
	for _, e := range []struct {
		end  *Edge
		at   *float64
		from float64
	}{{&f.Lower, &f.Low, f.Band[0]}, {&f.Upper, &f.High, f.Band[1]}} {
		if at := f.follows(e.from, e.end.Own); at != e.end.Own {
			e.end.Why, *e.at, e.end.Off = Parts, at, f.off(at, e.end.Own)
		}
	}
}

const fineStep = 0.1 // mm: what calipers show

// follows returns how far from one height towards another the glass stays on the
// cone.
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

// aside returns by how much the glass is wider at a height than the cone, as a
// radius.
func (f *Face) aside(z float64) float64 { return f.Profile.Radius(z) - f.Cone.RadiusAt(z) }

// off returns the most by which the glass leaves the cone between two heights.
func (f *Face) off(from, to float64) (worst float64) {
	n := max(1, int(math.Ceil(math.Abs(to-from)/fineStep)))
	for i := range n + 1 {
		if off := f.aside(from + (to-from)*float64(i)/float64(n)); math.Abs(off) > math.Abs(worst) {
			worst = off
		}
	}
	return worst
}

// endGores finds where gores that lie on the band no longer lie on the glass:
// where, beyond the band, their edges would be out by as much again as they may be
// within it.
func (f *Face) endGores(repeats int) {
	gore := geometry.Gore{Profile: f.Profile, HalfWidth: math.Pi / float64(repeats*f.Gores(repeats, 0).PerRepeat)}
	if low := gore.Lies(f.Band[0], f.own[0], maxEase); low != f.own[0] {
		f.Lower.Why, f.Low = Parts, low
	}
	if high := gore.Lies(f.Band[1], f.own[1], maxEase); high != f.own[1] {
		f.Upper.Why, f.High = Parts, high
	}
}

// Carries returns the heights on the outside between which the paper carries marks.
func (f Face) Carries() (low, high float64) { return f.outer(f.Low), f.outer(f.High) }
