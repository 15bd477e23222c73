package strokes

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// calmed returns points moved onto the parabola that comes nearest to those about them,
// over a window to either side (local regression, Savitzky and Golay 1964, with weights
// that fade to the window's ends). None is moved by more than most. The ends of an open
// line stay; a closed line's last point is its first.
func calmed(points []geometry.Point, closed bool, window, most float64) []geometry.Point {
	along := lengths(points)
	last := len(points) - 1
	whole := along[last]
	all := make([]geometry.Point, len(points))
	copy(all, points)
	for i, p := range points {
		reach := math.Min(window, whole/4)
		if !closed {
			reach = math.Min(window, math.Min(along[i], whole-along[i]))
		}
		if i == last && closed {
			all[i] = all[0]
			continue
		}
		var f parabola
		for _, by := range []int{-1, 1} {
			for j, off := i, 0.0; ; {
				next := j + by
				if closed && next < 0 {
					next = last - 1
				} else if closed && next > last {
					next = 1
				}
				if next < 0 || next > last {
					break
				}
				if off += r2.Norm(r2.Sub(points[next], points[j])); off >= reach {
					break
				}
				f.add(float64(by)*off/reach, r2.Sub(points[next], p))
				j = next
			}
		}
		f.add(0, geometry.Point{})
		move := f.middle()
		if by := r2.Norm(move); by > most {
			move = r2.Scale(most/by, move)
		}
		all[i] = r2.Add(p, move)
	}
	return all
}

// parabola is the sums that a weighted parabola through places is worked out from; x is
// from −1 to 1.
type parabola struct {
	count              int
	s0, s1, s2, s3, s4 float64
	t0, t1, t2         geometry.Point
}

func (f *parabola) add(x float64, p geometry.Point) {
	w := (1 - x*x) * (1 - x*x)
	f.count++
	f.s0 += w
	f.s1 += w * x
	f.s2 += w * x * x
	f.s3 += w * x * x * x
	f.s4 += w * x * x * x * x
	f.t0 = r2.Add(f.t0, r2.Scale(w, p))
	f.t1 = r2.Add(f.t1, r2.Scale(w*x, p))
	f.t2 = r2.Add(f.t2, r2.Scale(w*x*x, p))
}

// middle returns the parabola's place at zero; zero for fewer than five places, of
// which nothing can be said.
func (f *parabola) middle() geometry.Point {
	c0, c1, c2 := f.s2*f.s4-f.s3*f.s3, f.s2*f.s3-f.s1*f.s4, f.s1*f.s3-f.s2*f.s2
	det := f.s0*c0 + f.s1*c1 + f.s2*c2
	if f.count < 5 || !(math.Abs(det) > 1e-9*f.s0*f.s0*f.s0) {
		return geometry.Point{}
	}
	return r2.Scale(1/det, r2.Add(r2.Scale(c0, f.t0), r2.Add(r2.Scale(c1, f.t1), r2.Scale(c2, f.t2))))
}
