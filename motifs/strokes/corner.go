package strokes

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// split divides a trail where it turns more sharply than the given angle from one
// curve to the next, doubles back inside one, or is told to: at the curves before
// which corners is true. A closed trail without such a place stays closed.
func split(t trail, corners []bool, angle float64) []trail {
	t.curves, corners = cuspless(t.curves, corners)
	n := len(t.curves)
	var sharp []int // the curves that begin at a corner
	for i := range n {
		if i == 0 && !t.closed {
			continue
		}
		before := t.curves[(i+n-1)%n]
		if corners[i] || turn(arrives(before), leaves(t.curves[i])) > angle {
			sharp = append(sharp, i)
		}
	}
	if len(sharp) == 0 {
		return []trail{t}
	}
	if t.closed { // begin at a corner
		first := sharp[0]
		t.curves = slices.Concat(t.curves[first:], t.curves[:first])
		for i := range sharp {
			sharp[i] -= first
		}
		sharp = sharp[1:]
	}
	var all []trail
	from := 0
	for _, to := range append(sharp, n) {
		all = append(all, trail{curves: t.curves[from:to]})
		from = to
	}
	return all
}

// slightCorner is the sharpest turn, in degrees, that stays inside a stroke between two long
// straight lines. A corner has no radius, so no wheel follows it: a contact of 8 mm leaves
// it by 4 mm × sin 5° = 0.35 mm at its ends, the width of a fine line. Common practice, no source.
const slightCorner = 5

// bends marks the corners between two straight lines that smoothing left as they are, each
// longer than the window in which a tremor turns: they are meant. A run of like turns is a
// curve that was saved as straight lines, and stays whole. Where a sharper corner than the
// default is to stay inside a stroke, so do these.
func (f *finisher) bends(t trail, corners []bool) {
	if f.Corner > DefaultCorner() {
		return
	}
	n := len(t.curves)
	for i, c := range t.curves {
		before := t.curves[(i+n-1)%n]
		if i == 0 && !t.closed || corners[i] || !f.leg(before) || !f.leg(c) {
			continue
		}
		by := turn(arrives(before), leaves(c))
		if by > geometry.Degrees(slightCorner).Radians() && by <= f.angle && alike(t, i) < curved {
			corners[i], f.slight = true, true
		}
	}
}

// curved is how many like turns in a row make a curve.
const curved = 3

// alike returns how many turns of a trail in a row, that before curve i among them, go the
// same way by like angles; no more than curved are counted.
func alike(t trail, i int) int {
	n, own := len(t.curves), signedTurn(t, i)
	count := 1
	for _, step := range []int{-1, 1} {
		for k := i + step; count < curved; k += step {
			if !t.closed && (k < 1 || k >= n) {
				break
			}
			if share := signedTurn(t, (k+n)%n) / own; !(share >= 0.5 && share <= 2) {
				break
			}
			count++
		}
	}
	return count
}

// signedTurn returns the angle by which a trail turns before curve i, above 0 to the left.
func signedTurn(t trail, i int) float64 {
	n := len(t.curves)
	a, b := arrives(t.curves[(i+n-1)%n]), leaves(t.curves[i])
	return math.Atan2(r2.Cross(a, b), r2.Dot(a, b))
}

// leg reports whether a curve is straight and longer than the window.
func (f *finisher) leg(c geometry.Bezier) bool {
	by := r2.Norm(r2.Sub(c[3], c[0]))
	return by > f.window() && length(c)-by < 1e-9*f.size
}

// cuspless returns curves divided where one of them doubles back.
func cuspless(curves []geometry.Bezier, corners []bool) ([]geometry.Bezier, []bool) {
	var all []geometry.Bezier
	var sharp []bool
	for i, c := range curves {
		sharp = append(sharp, corners[i])
		if t, ok := cusp(c); ok {
			before, after := divided(c, t)
			// The handles there are as good as nothing; without them the ends look along
			// the branches.
			before[2], after[1] = before[3], after[0]
			all = append(all, before)
			sharp = append(sharp, true)
			c = after
		}
		all = append(all, c)
	}
	return all, sharp
}

// cusp returns where a curve doubles back: where, by its derivative, it all but stops.
func cusp(c geometry.Bezier) (at float64, ok bool) {
	d := [3]geometry.Point{r2.Sub(c[1], c[0]), r2.Sub(c[2], c[1]), r2.Sub(c[3], c[2])}
	size := r2.Norm(d[0]) + r2.Norm(d[1]) + r2.Norm(d[2])
	if r2.Dot(d[0], d[1]) >= 0 && r2.Dot(d[1], d[2]) >= 0 && r2.Dot(d[0], d[2]) >= 0 {
		return 0, false // the handles never turn back
	}
	speed := func(t float64) float64 {
		u := 1 - t
		v := r2.Add(r2.Scale(u*u, d[0]), r2.Add(r2.Scale(2*u*t, d[1]), r2.Scale(t*t, d[2])))
		return r2.Norm(v)
	}
	const steps = 64
	best := 0.5
	for i := 1; i < steps; i++ {
		if t := float64(i) / steps; speed(t) < speed(best) {
			best = t
		}
	}
	low, high := best-1.0/steps, best+1.0/steps
	for high-low > 1e-9 { // thirds
		a, b := low+(high-low)/3, high-(high-low)/3
		if speed(a) < speed(b) {
			high = b
		} else {
			low = a
		}
	}
	best = (low + high) / 2
	const stopped = 1e-4 // of the handles: a bend there is thousands of times tighter than the curve
	return best, best > 1e-3 && best < 1-1e-3 && speed(best) < stopped*size
}

// divided returns the two parts of a curve before and after t (de Casteljau).
func divided(c geometry.Bezier, t float64) (before, after geometry.Bezier) {
	mix := func(p, q geometry.Point) geometry.Point { return r2.Add(r2.Scale(1-t, p), r2.Scale(t, q)) }
	ab, bc, cd := mix(c[0], c[1]), mix(c[1], c[2]), mix(c[2], c[3])
	abc, bcd := mix(ab, bc), mix(bc, cd)
	on := mix(abc, bcd)
	return geometry.Bezier{c[0], ab, abc, on}, geometry.Bezier{on, bcd, cd, c[3]}
}

// cornersOf returns the points at which a line of points has a corner, though it may
// tremble: where the chords over a window to either side turn by more than the angle,
// and those over half of it do too. A closed line's last point is its first.
func cornersOf(points []geometry.Point, closed bool, window, corner float64) []int {
	along := lengths(points)
	n := len(points)
	sharpness := make([]float64, n)
	for i := range points {
		if (i == 0 || i == n-1) && !closed {
			continue
		}
		wide, fine := turnOver(points, along, i, closed, window), turnOver(points, along, i, closed, window/2)
		sharpness[i] = math.Min(wide, fine)
	}
	return sharpest(sharpness, along, closed, window, corner)
}

// sharpest returns the points that turn by more than the corner, in order; of several
// within a window the one that turns most.
func sharpest(sharpness, along []float64, closed bool, window, corner float64) []int {
	var order []int
	for i, s := range sharpness {
		if s > corner && !(closed && i == len(along)-1) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(sharpness[j], sharpness[i]) })
	whole := along[len(along)-1]
	near := func(i, j int) bool {
		d := math.Abs(along[i] - along[j])
		return d < window || closed && whole-d < window
	}
	var kept []int
	for _, i := range order {
		k, _ := slices.BinarySearch(kept, i)
		if n := len(kept); n > 0 && (near(kept[k%n], i) || near(kept[(k+n-1)%n], i)) {
			continue
		}
		kept = slices.Insert(kept, k, i)
	}
	return kept
}

// turnOver returns the angle between the chords that end and begin at a point, each
// over a window along the line.
func turnOver(points []geometry.Point, along []float64, i int, closed bool, window float64) float64 {
	before := pointAt(points, along, along[i]-window, closed)
	after := pointAt(points, along, along[i]+window, closed)
	return turn(r2.Sub(points[i], before), r2.Sub(after, points[i]))
}

// lengths returns how far along a line of points each of them is.
func lengths(points []geometry.Point) []float64 {
	along := make([]float64, len(points))
	for i := 1; i < len(points); i++ {
		along[i] = along[i-1] + r2.Norm(r2.Sub(points[i], points[i-1]))
	}
	return along
}

// pointAt returns the place at a distance along a line of points. Beyond the ends of
// an open line it is the end.
func pointAt(points []geometry.Point, along []float64, at float64, closed bool) geometry.Point {
	whole := along[len(along)-1]
	if closed && whole > 0 {
		if at = math.Mod(at, whole); at < 0 {
			at += whole
		}
	}
	low, high := 0, len(along)-1
	for high-low > 1 {
		if mid := (low + high) / 2; along[mid] <= at {
			low = mid
		} else {
			high = mid
		}
	}
	step := along[high] - along[low]
	if step == 0 {
		return points[low]
	}
	t := math.Max(0, math.Min(1, (at-along[low])/step))
	return r2.Add(points[low], r2.Scale(t, r2.Sub(points[high], points[low])))
}
