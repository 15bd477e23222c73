package strokes

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// slender is how broad a sliver may be, as a share of its length. Strokes of a brush
// are up to a tenth; a leaf's outline is a fifth and more, and meant as an outline.
const slender = 1.0 / 7

// sliver is the closed outline of one stroke of a pen, as two sides that run beside
// each other from one tip to the other.
type sliver struct {
	left, right []geometry.Point // both from the first tip to the second
	blunt       [2]bool          // whether the first tip, and the second, is the middle of a broad end
}

// middleLine returns the middle line of an outline, and its greatest width, if the
// outline is a sliver.
func middleLine(t trail, fine float64) (middle []geometry.Point, width float64, ok bool) {
	outline := t.flattened(fine)
	if t.end() != t.start() {
		outline = append(outline, outline[0])
	}
	along := lengths(outline)
	whole := along[len(along)-1]
	if whole == 0 {
		return nil, 0, false
	}
	// A round outline can't be a sliver: a look at its box spares the search.
	if a := math.Abs(area(outline)); a > slender*whole*whole/4 {
		return nil, 0, false
	}
	s := sides(outline, along)
	middle = s.first()
	for range 3 {
		middle = s.better(middle)
	}
	width = s.width(middle)
	for end, blunt := range s.blunt {
		if blunt {
			middle = throughEnd(middle, end == 0, width, outline)
		}
	}
	length := lengths(middle)[len(middle)-1]
	// Sides that wander, or fold back, are longer than the line between them.
	return middle, width, width <= slender*length && whole <= 2.2*length+2*width
}

// area returns the area inside a closed line of points, with a sign for its sense.
func area(points []geometry.Point) float64 {
	sum := 0.0
	for i := 1; i < len(points); i++ {
		sum += r2.Cross(r2.Sub(points[i-1], points[0]), r2.Sub(points[i], points[0]))
	}
	return sum / 2
}

// sides divides an outline at its tips: at the two places between which, side beside
// side at equal shares of their lengths, the sides are nearest to each other.
func sides(outline []geometry.Point, along []float64) sliver {
	whole := along[len(along)-1]
	at := func(share float64) geometry.Point { return pointAt(outline, along, share*whole, true) }
	const looks = 20
	apart := func(from, share float64) float64 {
		sum := 0.0
		for k := range looks {
			t := (float64(k) + 0.5) / looks
			sum += r2.Norm(r2.Sub(at(from+t*share), at(from-t*(1-share))))
		}
		return sum
	}
	from, share := 0.0, 0.5
	least := math.Inf(1)
	try := func(f, h float64) {
		if d := apart(f, h); d < least {
			least, from, share = d, f, h
		}
	}
	const steps = 64
	for i := range steps {
		for h := 0.44; h < 0.57; h += 0.02 {
			try(float64(i)/steps, h)
		}
	}
	for by := 0.5 / steps; by > 1e-5; by /= 2 {
		for range 4 {
			f, h := from, share
			for _, d := range []float64{-by, by} {
				try(f+d, h)
				try(f, h+d)
				try(f+d, h-d) // one tip moves, the other stays
			}
			if f == from && h == share {
				break
			}
		}
	}
	first, firstPointed := tip(outline, along, from*whole)
	second, secondPointed := tip(outline, along, (from+share)*whole)
	both := sideBySide(outline, along, first, second)
	both.blunt = [2]bool{!firstPointed, !secondPointed}
	return both
}

// tip returns the pointed end of an outline near a distance along it, if there is
// one: the outline turns there by more than a right angle. Otherwise it is the place
// itself, somewhere on a blunt end.
func tip(outline []geometry.Point, along []float64, at float64) (best float64, pointed bool) {
	whole := along[len(along)-1]
	best = at
	sharpest := 100 * math.Pi / 180
	for i := range len(outline) - 1 {
		d := math.Abs(math.Remainder(along[i]-at, whole))
		if d > whole/50 {
			continue
		}
		if by := turnOver(outline, along, i, true, whole/200); by > sharpest {
			best, sharpest, pointed = along[i], by, true
		}
	}
	return best, pointed
}

// throughEnd returns a middle line whose last part, as long as the sliver is broad, runs
// straight on through the outline: across a blunt end nothing tells where its middle is,
// but the line that comes to it does.
func throughEnd(middle []geometry.Point, first bool, width float64, outline []geometry.Point) []geometry.Point {
	line := slices.Clone(middle)
	if first {
		slices.Reverse(line)
	}
	along := lengths(line)
	whole := along[len(along)-1]
	from := pointAt(line, along, whole-width, false)
	onward := r2.Sub(from, pointAt(line, along, whole-2*width, false))
	far := r2.Add(from, r2.Scale(3*width/math.Max(r2.Norm(onward), 1e-9*whole), onward))
	hit, best := far, math.Inf(1)
	for i := 1; i < len(outline); i++ {
		at, ok := crossing(segment{p: from, q: far}, segment{p: outline[i-1], q: outline[i]})
		if d := r2.Norm2(r2.Sub(at, from)); ok && d < best {
			hit, best = at, d
		}
	}
	if math.IsInf(best, 1) || 3*width > whole {
		return middle
	}
	keep, _ := slices.BinarySearch(along, whole-width)
	line = append(line[:keep], from, hit)
	if first {
		slices.Reverse(line)
	}
	return line
}

// sideBySide returns the two sides of an outline between two places on it.
func sideBySide(outline []geometry.Point, along []float64, from, to float64) sliver {
	whole := along[len(along)-1]
	ahead := math.Mod(to-from+2*whole, whole)
	n := min(2000, max(200, 2*len(outline)))
	var s sliver
	for i := range n + 1 {
		t := float64(i) / float64(n)
		s.left = append(s.left, pointAt(outline, along, from+t*ahead, true))
		s.right = append(s.right, pointAt(outline, along, from-t*(whole-ahead), true))
	}
	return s
}

// first returns a first middle line: half way between the sides at equal shares.
func (s *sliver) first() []geometry.Point {
	middle := make([]geometry.Point, len(s.left))
	for i := range middle {
		middle[i] = half(s.left[i], s.right[i])
	}
	return middle
}

// better returns the places half way between the points of the sides that are nearest
// to those of a middle line. The tips stay.
func (s *sliver) better(middle []geometry.Point) []geometry.Point {
	all := []geometry.Point{middle[0]}
	last := len(middle) - 1
	i, j := 0, 0
	for _, m := range middle[1:last] {
		var p, q geometry.Point
		p, i = nearestFrom(s.left, i, m)
		q, j = nearestFrom(s.right, j, m)
		if next := half(p, q); next != all[len(all)-1] {
			all = append(all, next)
		}
	}
	return append(all, middle[last])
}

// width returns how far apart the sides are, where most, across a middle line.
func (s *sliver) width(middle []geometry.Point) float64 {
	width := 0.0
	i, j := 0, 0
	for _, m := range middle {
		var p, q geometry.Point
		p, i = nearestFrom(s.left, i, m)
		q, j = nearestFrom(s.right, j, m)
		width = math.Max(width, r2.Norm(r2.Sub(p, q)))
	}
	return width
}

// nearestFrom returns the point of a line that is nearest to a place, looking on from
// the i-th piece as long as the way there is not much longer, and its piece.
func nearestFrom(line []geometry.Point, i int, m geometry.Point) (geometry.Point, int) {
	const ahead = 40
	best, at := line[i], i
	for k := i; k < min(i+ahead, len(line)-1); k++ {
		if p := nearest(m, line[k], line[k+1]); r2.Norm2(r2.Sub(p, m)) <= r2.Norm2(r2.Sub(best, m)) {
			best, at = p, k
		}
	}
	return best, at
}

func half(p, q geometry.Point) geometry.Point { return r2.Scale(0.5, r2.Add(p, q)) }
