package groove_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// What the package may differ by from the search on a curved glass, in
// millimetres. Bite and glass left count where the package tells them safer than
// they are.
const (
	markTolerance = 0.1  // where a mark begins and ends
	safeTolerance = 0.05 // bite, and glass left
)

// randomTurning returns a wheel of the given edge on a random vessel.
func randomTurning(rnd *rand.Rand, edge groove.Edge) *turning {
	return randomTurningOn(rnd, edge, randomVessel)
}

// randomTurningOn is randomTurning on a vessel of some kind.
func randomTurningOn(rnd *rand.Rand, edge groove.Edge, on func(*rand.Rand) (*vessel, float64)) *turning {
	for {
		v, height := on(rnd)
		s := &turning{
			vessel: v, height: height, wheel: randomWheel(rnd, edge),
			angle:  between(rnd, 0, 2*math.Pi),
			length: logBetween(rnd, 1, 60),
			share:  chance(rnd, 0, 1),
			depth:  chance(rnd, 0.05, 2.5),
		}
		s.wheel.Radius = chance(rnd, 10, 100)
		if rnd.IntN(2) == 0 { // as cuts mostly run: up the glass or round it
			s.angle = float64(rnd.IntN(4)) * math.Pi / 2
		}
		s.prepare(height-15, height+15)
		if s.within(15, 70) {
			s.hollow(rnd)
			return s
		}
	}
}

// within reports whether the vessel's radius is in a range all along the line,
// and the vessel goes on beyond it.
func (s *turning) within(least, most float64) bool {
	for i := range 9 {
		p := s.line.at(s.line.length() * float64(i) / 8).at
		r := math.Hypot(p.X, p.Y)
		if !(r >= least && r <= most && p.Z > s.vessel.bottom+2 && p.Z < s.vessel.top-2) {
			return false
		}
	}
	return true
}

// hollow gives the vessel a wall that changes with the height, and a floor that
// some of the lines reach down to.
func (s *turning) hollow(rnd *rand.Rand) {
	thick, taper, wave := between(rnd, 2, 9), between(rnd, -0.1, 0.1), between(rnd, 0, 1)
	wall := func(z float64) float64 {
		return max(thick+taper*(z-s.height)+wave*math.Sin((z-s.height)/8), 1.5)
	}
	s.lining = newLining(s.vessel, max(s.height+between(rnd, -40, 5), s.vessel.bottom+1), wall)
}

// turnings checks a number of random turnings of each edge, every one with its own
// seed, and logs the worst differences. A short run takes one in twenty.
func turnings(t *testing.T, edges []groove.Edge, count int, draw func(*rand.Rand, groove.Edge) *turning, check func(comparison, *rand.Rand)) *worst {
	if testing.Short() {
		count /= 20
	}
	w := &worst{of: map[string]float64{}, n: map[string]int{}}
	t.Run("turnings", func(t *testing.T) {
		for _, edge := range edges {
			const batch = 50
			for from := 0; from < count; from += batch {
				t.Run(fmt.Sprint(edge, from), func(t *testing.T) {
					t.Parallel()
					for i := from; i < min(from+batch, count); i++ {
						rnd := rand.New(rand.NewPCG(uint64(edge), uint64(100_000+i)))
						s := draw(rnd, edge)
						endless := time.AfterFunc(endlessly, func() { panic(fmt.Sprintf("%v %d does not end: %v", edge, i, s)) })
						check(comparison{t, w, s, s.reported(0), s.work(), fmt.Sprint(edge, " ", i)}, rnd)
						endless.Stop()
					}
				})
			}
		}
	})
	for kind, d := range w.of {
		t.Logf("%s: worst %.5f mm of %d", kind, d, w.n[kind])
	}
	return w
}

// TestCurvedGlassAgainstSolids compares straight cuts on glass of every curve with
// the search of both solids.
func TestCurvedGlassAgainstSolids(t *testing.T) {
	t.Parallel()
	edges := []groove.Edge{groove.Mitre, groove.Round, groove.Flat, groove.Gang}
	w := turnings(t, edges, 850, randomTurning, comparison.all)
	if all := w.n["compared"] + w.n["bridged"]; w.n["compared"] < all*9/10 {
		t.Errorf("of %d turnings %d are compared", all, w.n["compared"])
	}
}

// TestCurvedLinesAgainstSolids compares drawn cuts along arcs of the chart.
func TestCurvedLinesAgainstSolids(t *testing.T) {
	t.Parallel()
	turnings(t, []groove.Edge{groove.Mitre, groove.Round, groove.Flat}, 60, randomBend, comparison.between)
}

// randomBend returns a turning on an arc of 15 to 200 mm radius, to either side,
// long enough to draw the wheel along.
func randomBend(rnd *rand.Rand, edge groove.Edge) *turning {
	for {
		s := randomTurning(rnd, edge)
		s.bend = math.Copysign(1/between(rnd, 15, 200), between(rnd, -1, 1))
		if s.length*math.Abs(s.bend) > math.Pi {
			continue
		}
		s.draw()
		if k := s.work(); s.within(15, 70) && !k.touch && !k.bridged {
			return s
		}
	}
}

// comparison is one turning, as reported and as searched.
type comparison struct {
	*testing.T
	worst    *worst
	s        *turning
	reported reported
	work     work
	which    string
}

// all compares what a turning has to compare.
func (c comparison) all(rnd *rand.Rand) {
	c.numbers()
	if c.work.bridged || c.reported.bridge != nil {
		c.worst.note("bridged", 0)
		c.bridged()
		return
	}
	c.bites()
	c.worst.note("compared", 0)
	c.mark()
	n := len(c.reported.Samples)
	for _, i := range []int{1 + rnd.IntN(max(n-2, 1)), n / 2} {
		c.sample(i)
	}
}

// between compares what a bent cut has to compare: its widths between the tails.
func (c comparison) between(rnd *rand.Rand) {
	c.numbers()
	if c.reported.bridge != nil {
		return
	}
	var inner []int
	for i, at := range c.reported.Samples { // next to a tail their way is half a straight one
		if at.Along > c.work.first+1 && at.Along < c.work.last-1 {
			inner = append(inner, i)
		}
	}
	for range min(len(inner), 3) {
		c.sample(inner[rnd.IntN(len(inner))])
	}
}

// kind names what a turning belongs to.
func (c comparison) kind() string {
	switch {
	case c.work.bridged || c.reported.bridge != nil:
		return c.s.wheel.Edge.String() + " bridged "
	case c.work.touch:
		return c.s.wheel.Edge.String() + " touch "
	}
	return c.s.wheel.Edge.String() + " drawn "
}

// fail reports a difference.
func (c comparison) fail(what string, got, want float64) {
	c.Errorf("%s: %s%s is %.4f, searched %.4f (touch %v, %.4f deep, %.3f to %.3f): %v",
		c.which, c.kind(), what, got, want, c.work.touch, c.work.depth, c.work.first, c.work.last, c.s)
}

// differ checks a figure both ways.
func (c comparison) differ(what string, got, want, tolerance float64) {
	d := math.Abs(got - want)
	c.worst.note(c.kind()+what, d)
	if !(d <= tolerance) {
		c.fail(what, got, want)
	}
}

// safe checks that a figure is reported no better than it is: too much of one that
// is better the greater it is.
func (c comparison) safe(what string, got, want, better float64) {
	over := better * (got - want)
	if got == want { // a gang none of whose mitres reach the glass leaves all of it, without end
		over = 0
	}
	c.worst.note(c.kind()+what+", safer than it is by", over)
	c.worst.note(c.kind()+what+", worse than it is by", -over)
	if !(over <= safeTolerance) {
		c.fail(what, got, want)
	}
}

// bridged compares the bite of a wheel that rests elsewhere than in its mark, and the
// glass it leaves. Pressed in it is taken to stand in the middle of its line, as deep as
// it is asked to: where it spans a hollow no mark shows how far it may go in.
func (c comparison) bridged() {
	k := c.work
	if k.unset || k.touch && k.bridged {
		k = c.s.standing(c.s.line.length() / 2)
	}
	b := c.s.bite(k)
	c.safe("bite", c.reported.depth, b.depth, -1)
	c.safe("glass left", max(c.reported.left, 0), max(b.left, 0), 1)
}

// bites compares the deepest bite and the least glass left.
func (c comparison) bites() {
	b := c.s.bite(c.work)
	c.safe("bite", c.reported.depth, b.depth, -1)
	c.safe("glass left", max(c.reported.left, 0), max(b.left, 0), 1)
}

// mark compares a touch's length with that of the wheel as deep as the package
// sets it: at the most where its rim comes out of the glass, at the least where
// the groove leaves the line.
func (c comparison) mark() {
	length := c.s.line.length()
	c.differ("line", c.reported.Length, length, 0.01)
	if c.reported.Touch != c.work.touch {
		c.fail("touch or drawn", c.reported.depth, c.work.depth)
		return
	}
	if !c.work.touch {
		return
	}
	w := c.s.line.at(c.work.first)
	onLine, depth := 0.0, c.reported.depth
	for _, at := range c.reported.Samples {
		onLine = max(onLine, at.Depth)
	}
	if depth > onLine+0.0015 { // across a hollow a broad edge is deeper beside its line
		depth = onLine
	}
	behind, _ := c.s.emerges(w, depth, -1)
	ahead, _ := c.s.emerges(w, depth, 1)
	least := c.s.covers(w, depth, -1) + c.s.covers(w, depth, 1)
	c.worst.note(c.kind()+"rim beyond the line's groove", behind+ahead-least)
	c.differ("mark", length, min(max(length, min(least, behind+ahead)), max(least, behind+ahead)), markTolerance)
}

// sample compares the width of the groove at a sample, to either hand of the way
// the samples go, and where its edges lie.
func (c comparison) sample(i int) {
	at, foot := c.reported.Samples[i], c.foot(i)
	places := c.s.near(c.work, at.Along)
	far := c.s.wheel.Thick/2 + 8
	for _, side := range []struct {
		name      string
		hand, got float64
		edge      geometry.Point
	}{{"left", 1, at.Left, at.LeftEdge}, {"right", -1, at.Right, at.RightEdge}} {
		got := max(side.got, 0)
		want, trail := c.s.edge(places, foot, side.hand, far)
		if math.Abs(got-want) > widthTolerance && c.grazes(places, foot, side.hand, got) {
			c.worst.note(c.kind()+"mitre that only grazes", 0)
			continue
		}
		c.differ(side.name, got, want, widthTolerance)
		if side.got > 0 {
			off := r3.Norm(r3.Sub(c.s.chart.space(side.edge), trail.at(side.got)))
			c.differ(side.name+" edge's place", off, 0, widthTolerance)
		}
	}
	c.differ("depth", at.Depth, c.s.depthAt(places, foot), safeTolerance)
}

// grazing is how much deeper or shallower a mitre has to go to be one that bites,
// or one that doesn't, where it only grazes the glass.
const grazing = 0.003

// grazes reports whether a gang's outermost mitre is reported to bite, or not to, as it
// would a few thousandths deeper or shallower.
func (c comparison) grazes(places []placed, foot walker, hand, got float64) bool {
	for _, by := range []float64{-grazing, grazing} {
		sunk := make([]placed, len(places))
		for i, at := range places {
			sunk[i] = c.s.stand(c.s.line.at(at.along), c.work.depth+by)
		}
		if want, _ := c.s.edge(sunk, foot, hand, 0); math.Abs(got-want) <= 2*widthTolerance {
			return c.s.wheel.Edge == groove.Gang
		}
	}
	return false
}

// foot returns a walker at a sample, looking along the line.
func (c comparison) foot(i int) walker {
	at := c.reported.Samples[i]
	place := c.s.chart.space(at.At)
	on := c.s.line.at(at.Along)
	c.differ("way off the line", r3.Norm(r3.Sub(place, on.at)), 0, 0.01)
	return c.s.vessel.looking(place, on.ahead)
}

// numbers checks that the samples are places of the surface in a row, a
// millimetre apart at most, and that what each says of itself agrees.
func (c comparison) numbers() {
	if len(c.reported.Samples) < 3 {
		c.fail("samples", float64(len(c.reported.Samples)), 3)
		return
	}
	var theta, height, way, step float64
	for i, at := range c.reported.Samples {
		turn, z := c.s.chart.reverse(at.At)
		theta, height = max(theta, math.Abs(at.Theta-turn)), max(height, math.Abs(at.Height-z))
		if i > 0 {
			was := c.reported.Samples[i-1]
			chord := r3.Norm(r3.Sub(c.s.chart.space(at.At), c.s.chart.space(was.At)))
			way, step = max(way, math.Abs(at.Along-was.Along-chord)), max(step, at.Along-was.Along)
		}
	}
	c.differ("θ of samples", theta, 0, 1e-5)
	c.differ("height of samples", height, 0, 1e-3)
	c.differ("way between samples", way, 0, 0.005)
	c.differ("samples apart by more than 1 mm", max(step-1, 0), 0, 1e-6)
	c.differ("outline farther than the wheel reaches", max(c.strays()-c.s.wheel.Radius-c.s.wheel.Thick, 0), 0, 1e-6)
}

// strays returns how far any point of an outline lies from the nearest sample: beyond
// an end of the glass, from there on and to the nearest.
func (c comparison) strays() float64 {
	v, most := c.s.vessel, 0.0
	place := func(q geometry.Point) (at r3.Vec, beyond float64) {
		theta, z := c.s.chart.reverse(q)
		on := min(max(z, v.bottom), v.top)
		return v.place(theta, on), math.Abs(z - on)
	}
	var samples []r3.Vec
	for i := 0; i < len(c.reported.Samples); i += 8 {
		at, _ := place(c.reported.Samples[i].At)
		samples = append(samples, at)
	}
	for _, o := range c.reported.Outlines {
		for _, q := range o.Points {
			at, beyond := place(q)
			least := math.Inf(1)
			for _, p := range samples {
				off := r3.Sub(at, p)
				least = min(least, r3.Dot(off, off))
			}
			most = max(most, beyond+math.Sqrt(least))
		}
	}
	return most
}
