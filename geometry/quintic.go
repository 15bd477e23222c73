package geometry

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// quintic is the stretch of a profile between two knots: the polynomial of the
// fifth degree that has the radius, the slope and the bend of both.
type quintic struct {
	from, height float64    // where it begins, and how far up it goes
	c            [6]float64 // the radius, in powers of the share of the way up
	low, high    float64    // the readings at its ends, which it keeps within
	straight     bool
}

func newQuintic(a, b knot) quintic {
	h := b.z - a.z
	q := quintic{from: a.z, height: h, low: min(a.r, b.r), high: max(a.r, b.r)}
	rise := b.r - a.r
	if q.straight = a.bend == 0 && b.bend == 0 && math.Abs(a.slope*h-rise) <= onALine && math.Abs(b.slope*h-rise) <= onALine; q.straight {
		q.c = [6]float64{a.r, rise}
		return q
	}
	m, n := a.slope*h, b.slope*h
	k, l := a.bend*h*h/2, b.bend*h*h/2
	q.c = [6]float64{
		a.r, m, k,
		10*rise - 6*m - 4*n - 3*k + l,
		-15*rise + 8*m + 7*n + 3*k - 2*l,
		6*rise - 3*m - 3*n - k + l,
	}
	return q
}

// at returns the radius, the slope r′ and the bend r″ at a height within the stretch.
func (q *quintic) at(z float64) (radius, slope, bend float64) {
	t, c := (z-q.from)/q.height, &q.c
	if q.straight {
		return c[0] + t*c[1], c[1] / q.height, 0
	}
	radius = c[0] + t*(c[1]+t*(c[2]+t*(c[3]+t*(c[4]+t*c[5]))))
	slope = c[1] + t*(2*c[2]+t*(3*c[3]+t*(4*c[4]+t*5*c[5])))
	bend = 2*c[2] + t*(6*c[3]+t*(12*c[4]+t*20*c[5]))
	// The clamp only takes off rounding: the knots make the curve run one way.
	return min(max(radius, q.low), q.high), slope / q.height, bend / (q.height * q.height)
}

// The places and weights of Gauss's rule on the way from -1 to 1.
var gauss = sync.OnceValues(func() (at, weight []float64) {
	const n = 12
	at, weight = make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(at, weight, -1, 1)
	return at, weight
})

// length returns the distance along the curve from the stretch's lower end to a height.
func (q *quintic) length(z float64) float64 {
	half := (z - q.from) / 2
	if q.straight {
		return 2 * half * math.Hypot(1, q.c[1]/q.height)
	}
	sum := 0.0
	at, weight := gauss()
	for i, x := range at {
		_, slope, _ := q.at(q.from + half*(1+x))
		sum += weight[i] * math.Sqrt(1+slope*slope)
	}
	return sum * half
}

// heightAt undoes length, for lengths from 0 to that of the whole stretch.
func (q *quintic) heightAt(length float64) float64 {
	low, high := q.from, q.from+q.height
	if q.straight {
		return low + length/math.Hypot(1, q.c[1]/q.height)
	}
	// Newton's rule, kept between the heights found too low and too high.
	z := low + min(length, q.height)/2
	for range 100 {
		over := q.length(z) - length
		_, slope, _ := q.at(z)
		next := z - over/math.Hypot(1, slope)
		if math.Abs(next-z) <= 1e-13*(1+math.Abs(z)) {
			return next
		}
		if over < 0 {
			low = z
		} else {
			high = z
		}
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		z = next
	}
	return z
}

// quintics returns the stretches between the knots.
func quintics(knots []knot) []quintic {
	curve := make([]quintic, 0, len(knots)-1)
	for i := 1; i < len(knots); i++ {
		curve = append(curve, newQuintic(knots[i-1], knots[i]))
	}
	return slices.Clip(curve)
}
