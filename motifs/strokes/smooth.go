package strokes

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// smoother thins and smooths what a hand or a program left rough, and keeps what it
// did. Curves that are drawn cleanly it leaves exactly as they are.
type smoother struct {
	Options // settled

	strokes      int     // how many were changed
	curves, left int     // of how many curves they were, and are
	worst        float64 // how far a line was moved, where most
	spent        int     // points that were looked at
}

// kink is the least turn from one curve to the next that is not drawn on purpose.
const kink = math.Pi / 180

// window is the length over which the direction of a rough line is taken. A tremor
// of the full tolerance to both sides turns it by 2·2/12 of a radian, 19°, less than
// a corner.
func (s *smoother) window() float64 { return math.Max(12*s.Tremor, 2*s.Step) }

// tidy returns a trail with its rough runs smoothed, and before which of its curves
// there is a corner.
func (s *smoother) tidy(t trail) (trail, []bool) {
	rough := s.rough(t)
	n := len(t.curves)
	first := 0
	if t.closed { // begin with a clean curve, or at the start of one that is all rough
		for first < n && rough[first] {
			first++
		}
		first %= n
	}
	done := trail{closed: t.closed}
	var corners []bool
	before := s.left
	for i := 0; i < n; {
		run := 1
		for at := (first + i) % n; rough[at] && i+run < n && rough[(at+run)%n]; {
			run++
		}
		curves := make([]geometry.Bezier, run)
		for j := range curves {
			curves[j] = t.curves[(first+i+j)%n]
		}
		r := roughRun{curves: curves, closed: run == n && t.closed}
		if !r.closed {
			r.onward, r.back = s.smoothlyFrom(t, first+i), s.smoothlyTo(t, first+i+run)
		}
		curves, sharp := s.smoothed(r)
		done.curves, corners = append(done.curves, curves...), append(corners, sharp...)
		i += run
	}
	if s.left > before {
		s.strokes++
	}
	return done, corners
}

// rough returns which curves are shorter than the step, or meet a neighbour in a kink.
// Between curves shorter than the window any turn may be a tremor's.
func (s *smoother) rough(t trail) []bool {
	n := len(t.curves)
	rough := make([]bool, n)
	short := make([]bool, n)
	for i, c := range t.curves {
		by := length(c)
		rough[i], short[i] = by < s.Step, by < s.window()
	}
	for i, c := range t.curves {
		if i == 0 && !t.closed || s.Tremor == 0 {
			continue
		}
		before := (i + n - 1) % n
		by := turn(arrives(t.curves[before]), leaves(c))
		if by > kink && (by <= s.Corner.Radians() || short[i] && short[before]) {
			rough[i], rough[before] = true, true
		}
	}
	// A short curve between rough ones is smooth at its ends by chance.
	for i := range rough {
		before, after := i > 0 && rough[i-1], i+1 < n && rough[i+1]
		if short[i] && (before || i == 0) && (after || i+1 == n) && n > 2 {
			rough[i] = true
		}
	}
	return rough
}

// roughRun is a run of rough curves, and the directions it has to keep at its ends;
// zero where it needn't keep any.
type roughRun struct {
	curves       []geometry.Bezier
	closed       bool // it is a whole trail that closes
	onward, back geometry.Point
}

// smoothlyFrom returns the direction in which the curve before the i-th arrives, if
// the i-th goes on in it.
func (s *smoother) smoothlyFrom(t trail, i int) geometry.Point {
	n := len(t.curves)
	before, c := t.curves[(i+n-1)%n], t.curves[i%n]
	if i%n == 0 && !t.closed || turn(arrives(before), leaves(c)) > kink {
		return geometry.Point{}
	}
	return arrives(before)
}

// smoothlyTo returns the direction against which the i-th curve leaves, if the one
// before it comes in it.
func (s *smoother) smoothlyTo(t trail, i int) geometry.Point {
	if s.smoothlyFrom(t, i) == (geometry.Point{}) {
		return geometry.Point{}
	}
	return r2.Scale(-1, leaves(t.curves[i%len(t.curves)]))
}

// smoothed returns a rough run smoothed if that takes fewer curves and moves no line by
// more than a tremor and a step, otherwise as it is, and before which of the curves
// there is a corner.
func (s *smoother) smoothed(r roughRun) ([]geometry.Bezier, []bool) {
	asIs := make([]bool, len(r.curves))
	if len(r.curves) < 2 || s.window() == 0 {
		return r.curves, asIs
	}
	t := trail{curves: r.curves}
	points := denser(t.flattened(math.Max(s.Tremor, s.Step)/8), s.window()/3)
	s.spent += len(points)
	corners := cornersOf(points, r.closed, s.window(), s.Corner.Radians())
	sharp := []bool{r.closed && len(corners) > 0}
	if sharp[0] { // begin at a corner
		first := corners[0]
		points = slices.Concat(points[first:], points[1:first+1])
		for i := range corners {
			corners[i] -= first
		}
		corners, r.closed = corners[1:], false
	}
	var done []geometry.Bezier
	worst, from := 0.0, 0
	for i, to := range append(corners, len(points)-1) {
		part := roughRun{closed: r.closed}
		if i == 0 {
			part.onward = r.onward
		}
		if i == len(corners) {
			part.back = r.back
		}
		curves, off := s.between(points[from:to+1], part)
		for j := range curves {
			if i > 0 || j > 0 {
				sharp = append(sharp, j == 0)
			}
		}
		done, worst, from = append(done, curves...), math.Max(worst, off), to
	}
	if len(done) >= len(r.curves) || worst > s.Tremor+s.Step {
		return r.curves, asIs
	}
	s.curves, s.left, s.worst = s.curves+len(r.curves), s.left+len(done), math.Max(s.worst, worst)
	return done, sharp
}

// denser returns a line of points with more on it, so that none are farther apart
// than the given distance, or than is needed to have a few thousand.
func denser(points []geometry.Point, apart float64) []geometry.Point {
	along := lengths(points)
	apart = math.Max(apart, along[len(along)-1]/5000)
	all := []geometry.Point{points[0]}
	for i := 1; i < len(points); i++ {
		n := max(1, int(math.Ceil((along[i]-along[i-1])/apart)))
		d := r2.Sub(points[i], points[i-1])
		for j := 1; j < n; j++ {
			all = append(all, r2.Add(points[i-1], r2.Scale(float64(j)/float64(n), d)))
		}
		all = append(all, points[i])
	}
	return all
}

// between returns the curves along a line of points without corners, and how far they
// are from it where most.
func (s *smoother) between(points []geometry.Point, r roughRun) ([]geometry.Bezier, float64) {
	kept := s.thin(points)
	few := make([]geometry.Point, len(kept))
	for i, k := range kept {
		few[i] = points[k]
	}
	if s.Tremor == 0 {
		curves := make([]geometry.Bezier, len(few)-1)
		at := make([]float64, len(few))
		for i := range curves {
			curves[i], at[i+1] = geometry.Line(few[i], few[i+1]), float64(i+1)
		}
		return curves, deviation(points, kept, curves, at)
	}
	// The tolerance is shared between calming the points and laying curves along them.
	few = calmed(few, r.closed, s.window(), 0.6*s.Tremor)
	if r.closed {
		along := lengths(few)
		r.onward = unit(r2.Sub(pointAt(few, along, s.window(), true), pointAt(few, along, -s.window(), true)),
			r2.Sub(few[1], few[0]))
		r.back = r2.Scale(-1, r.onward)
	}
	curves, at := fitCurves(few, r.onward, r.back, 0.4*s.Tremor, s.window())
	return curves, deviation(points, kept, curves, at)
}

// thin returns which points to keep: the first, the last, and those that are not
// nearer than a step to the one kept before.
func (s *smoother) thin(points []geometry.Point) []int {
	kept := []int{0}
	last := len(points) - 1
	for i := 1; i < last; i++ {
		before := points[kept[len(kept)-1]]
		if d := r2.Norm(r2.Sub(points[i], before)); d > 0 && d >= s.Step && r2.Norm(r2.Sub(points[last], points[i])) >= s.Step/2 {
			kept = append(kept, i)
		}
	}
	if kept = append(kept, last); len(kept) < 5 && points[0] == points[last] {
		far := farthest(points) // a loop this small is a loop all the same
		kept = []int{0, far / 2, far, (far + last) / 2, last}
	}
	return slices.Compact(kept)
}

// farthest returns the point that is farthest from the first.
func farthest(points []geometry.Point) (far int) {
	for i, p := range points {
		if r2.Norm2(r2.Sub(p, points[0])) > r2.Norm2(r2.Sub(points[far], points[0])) {
			far = i
		}
	}
	return far
}

// deviation returns how far apart a line of points and the curves along it are, where
// most. The kept points say which part of one lies beside which of the other.
func deviation(points []geometry.Point, kept []int, curves []geometry.Bezier, at []float64) float64 {
	worst := 0.0
	for k := 1; k < len(kept); k++ {
		line := points[kept[k-1] : kept[k]+1]
		const steps = 4
		var curve [steps + 1]geometry.Point
		for i := range curve {
			curve[i] = on(curves, at[k-1]+(at[k]-at[k-1])*float64(i)/steps)
		}
		for _, p := range line {
			worst = math.Max(worst, distanceTo(p, curve[:]))
		}
		for _, p := range curve {
			worst = math.Max(worst, distanceTo(p, line))
		}
	}
	return worst
}

// on returns the place at a number of curves, and a share of one, along a chain.
func on(curves []geometry.Bezier, at float64) geometry.Point {
	i := min(int(at), len(curves)-1)
	return curves[i].At(at - float64(i))
}

// distanceTo returns how far a place is from a line of points.
func distanceTo(p geometry.Point, line []geometry.Point) float64 {
	least := r2.Norm(r2.Sub(p, line[0]))
	for i := 1; i < len(line); i++ {
		least = math.Min(least, r2.Norm(r2.Sub(p, nearest(p, line[i-1], line[i]))))
	}
	return least
}

// nearest returns the point of a straight line that is nearest to a place.
func nearest(p, a, b geometry.Point) geometry.Point {
	d := r2.Sub(b, a)
	whole := r2.Norm2(d)
	if whole == 0 {
		return a
	}
	t := math.Max(0, math.Min(1, r2.Dot(r2.Sub(p, a), d)/whole))
	return r2.Add(a, r2.Scale(t, d))
}
