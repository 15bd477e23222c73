package pattern

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/geometry"
	"roundlay/pattern/job"
)

// TestWholeGlass holds the findings of one period, carried round the glass, to
// those of a walk over all pairs of all cuts on it, without index or symmetry.
func TestWholeGlass(t *testing.T) {
	t.Parallel()
	const jobs = 150
	random := rand.New(rand.NewPCG(3, 14))
	all := make([]*job.Job, jobs)
	for n := range all {
		all[n] = scattered(t, random)
	}
	all[0] = helices(t)
	wholeGlass(t, all, 30)
}

// TestWholeGlassByNumber is the same for motifs that stand on some repeats alone.
func TestWholeGlassByNumber(t *testing.T) {
	t.Parallel()
	const jobs = 150
	random := rand.New(rand.NewPCG(27, 18))
	once := helices(t)
	for i := range once.Motifs {
		once.Motifs[i].Only = []int{1}
	}
	all := []*job.Job{once}
	periods := map[int]int{}
	for len(all) < jobs {
		j := scattered(t, random)
		if j.Layout.Repeats < 2 {
			continue
		}
		byNumber(random, j)
		all = append(all, j)
		if n := period(j, job.Side); n == j.Layout.Repeats {
			periods[0]++
		} else {
			periods[n]++
		}
	}
	if periods[0] < 30 || periods[1] < 5 || periods[2] < 5 {
		t.Errorf("periods: %v", periods)
	}
	wholeGlass(t, all, 30)
}

// byNumber has some of a job's motifs list their repeats, and may leave repeats bare.
func byNumber(random *rand.Rand, j *job.Job) {
	some := func(share float64) []int {
		var all []int
		for repeat := 1; repeat <= j.Layout.Repeats; repeat++ {
			if random.Float64() < share {
				all = append(all, repeat)
			}
		}
		return all
	}
	if random.IntN(3) > 0 {
		j.Layout.Bare = some(0.3)
	}
	for i := range j.Motifs {
		if m := &j.Motifs[i]; random.IntN(2) == 0 || len(j.Layout.Copies(*m)) == 0 {
			m.On = job.Each
			for len(m.Only) == 0 {
				m.Only = some(0.5)
			}
		}
	}
}

func wholeGlass(t *testing.T, jobs []*job.Job, few int) {
	met := map[Kind]int{}
	shares, double := 0, 0
	for n, j := range jobs {
		plan := laid(t, j)
		want := walk(plan)
		checks, err := plan.check(t.Context(), nil)
		if err != nil {
			t.Fatal(err)
		}
		plan.Findings = slices.Concat(checks.found, checks.slight) // the walk measures both
		got := roundGlass(plan)
		for _, s := range spots(got, want) {
			met[s.kind]++
			if s.share {
				shares++
			}
			if len(got[s]) > 1 {
				double++
			}
			if !agree(got[s], want[s]) {
				t.Errorf("job %d, %d repeats: %v %v of cuts %v: the check measures %v, all pairs %v",
					n, plan.Repeats, s.kind, s.share, s.cuts, got[s], want[s])
			}
		}
		cuts := plan.All()
		for _, f := range plan.Findings {
			checkPlace(t, plan, cuts, f)
		}
	}
	// The jobs would prove little if they seldom came to something.
	for _, kind := range []Kind{Crowded, Thin, Rim, Foot, Shallow, Off} {
		if met[kind] < few {
			t.Errorf("only %d findings are %v", met[kind], kind)
		}
	}
	if shares < few || double == 0 {
		t.Errorf("only %d findings are clear shares, only %d pairs are near in two places", shares, double)
	}
}

// helices returns a job of two bars, each once round the glass, that meet above
// θ = 0 and again two turns on, with one crossing between.
func helices(t *testing.T) *job.Job {
	round, rise := 2*math.Pi*40, 40.0
	length, lean := math.Hypot(round, rise), math.Atan(round/rise)*180/math.Pi
	return jobOn(straight(t), 1, bar(t, -round/2, 30, length, turn(-lean)), bar(t, round/2, 30, length, turn(lean)))
}

// exact is what turning a footprint round the glass may change of a length:
// rounding, at the size of a glass, in millimetres.
const exact = 1e-6

// walk checks a plan that is laid out but not checked: every cut on the glass
// by itself, and every two of them as they stand and rolled whole turns apart.
func walk(p *Plan) tally {
	all := tally{}
	if face := p.Outside(); face.Curved() {
		off := face.Gores(p.Repeats, 0).Worst()
		all.add(newSpot(Uneven, false), off, off-maxEase, exact)
	}
	stretch := p.Surface.Stretch(0, p.Surface.Length())
	const turns = 3 // two motifs of double pitch, half a pitch aside, reach no farther
	cuts := p.All()
	boxes := make([]geometry.Box, len(cuts))
	for i, c := range cuts {
		boxes[i] = c.Box()
	}
	for i, a := range cuts {
		walkAlone(p, a, all)
		for roll := -turns; roll <= turns; roll++ {
			around := p.Surface.Turned(float64(roll) * 2 * math.Pi)
			for j := i; j < len(cuts); j++ {
				b := cuts[j]
				if i == j && roll <= 0 {
					continue // the cut itself, or seen from the other side
				}
				if roll != 0 {
					if gap := boxes[j].Moved(around).Distance2(boxes[i]); gap > 9*stretch*stretch { // mm²; no land is wider
						continue
					}
					turned := b.Turned(&p.Surface, float64(roll)*2*math.Pi)
					b.Groove = &turned
				}
				walkPair(p, a, b, roll, all)
			}
		}
	}
	all.once(p)
	return all
}

func walkPair(p *Plan, a, b Cut, roll int, all tally) {
	limit := func(own func(c Cut) *float64, otherwise float64) float64 {
		most := 0.0
		for _, c := range []Cut{a, b} {
			if set := own(c); set != nil {
				most = max(most, *set)
			} else {
				most = max(most, otherwise)
			}
		}
		return most
	}
	part := func(c Cut) job.Part {
		for _, one := range p.Job.Motifs[c.Motif].Parts {
			if one.Name == c.Part {
				return one
			}
		}
		return job.Part{}
	}
	land := limit(func(c Cut) *float64 { return cmp.Or(part(c).Land, p.Job.Motifs[c.Motif].Land) }, p.Job.Limits.Land)
	wanted := limit(func(c Cut) *float64 { return cmp.Or(part(c).Clear, p.Job.Motifs[c.Motif].Clear) }, p.Job.Limits.Clear)

	far := land + 0.01 // mm; what is farther than the limit needs no number
	least := far
	for _, o := range a.Outlines {
		for _, q := range b.Outlines {
			d, _, _ := o.Distance(q, far)
			least = min(least, d)
		}
	}
	sameCopy := a.Repeat == b.Repeat && roll == 0
	switch {
	case a.Motif == b.Motif && (sameCopy && slices.Contains(a.Joins, b.ID) || !sameCopy && endsMeet(a, b)):
		if least < land {
			share, tolerance := clearWalk(p, a, b, land)
			all.add(newSpot(Crowded, true, a.ID, b.ID), share, wanted-share, tolerance)
		}
	case a.Motif == b.Motif && !sameCopy && least == 0:
		all.addAcross(true, newSpot(Off, false, a.ID, b.ID), 0, 1, exact)
	default:
		if land > 0 {
			all.addAcross(!sameCopy, newSpot(Crowded, false, a.ID, b.ID), least, land-least, exact)
		}
	}
}

// endsMeet reports whether two centre lines end in one place, to what a hand
// could tell.
func endsMeet(a, b Cut) bool {
	ends := func(c Cut) []geometry.Point {
		return []geometry.Point{c.Samples[0].At, c.Samples[len(c.Samples)-1].At}
	}
	return slices.ContainsFunc(ends(a), func(e geometry.Point) bool {
		return slices.ContainsFunc(ends(b), func(f geometry.Point) bool { return r2.Norm(r2.Sub(e, f)) < 0.02 })
	})
}

// clearWalk walks along both edges of the shorter cut in small steps, and
// counts those from which the other is at least the land away. It is out by up
// to half a step wherever that changes, which is twice at most beside each of
// the other's outlines, on either edge.
func clearWalk(p *Plan, a, b Cut, land float64) (share, tolerance float64) {
	const step = 0.2 // mm
	walk := func(c, other Cut) float64 {
		isClear, all := 0.0, 0.0
		for i := 1; i < len(c.Samples); i++ {
			from, to := c.Samples[i-1], c.Samples[i]
			length := to.Along - from.Along
			n := math.Ceil(length / step)
			for k := range int(n) {
				t := (float64(k) + 0.5) / n
				left := r2.Add(r2.Scale(1-t, from.LeftEdge), r2.Scale(t, to.LeftEdge))
				right := r2.Add(r2.Scale(1-t, from.RightEdge), r2.Scale(t, to.RightEdge))
				all += length / n
				if !slices.ContainsFunc(other.Outlines, func(o geometry.Outline) bool {
					near := func(q geometry.Point) bool { return o.DistanceToPlace(q, p.Surface.Space(q), land) < land }
					return near(left) || near(right)
				}) {
					isClear += length / n
				}
			}
		}
		return isClear / all
	}
	tolerance = 4 * step / min(a.Length, b.Length)
	switch longer := a.Length - b.Length; {
	case math.Abs(longer) < exact: // either is the shorter
		of, by := walk(a, b), walk(b, a)
		return (of + by) / 2, tolerance + math.Abs(of-by)/2
	case longer < 0:
		return walk(a, b), tolerance
	default:
		return walk(b, a), tolerance
	}
}

func walkAlone(p *Plan, c Cut, all tally) {
	low, high := math.Inf(1), math.Inf(-1) // of the centre line
	for _, s := range c.Samples {
		low, high = min(low, s.Height), max(high, s.Height)
	}
	left := c.Remains.Min
	all.add(newSpot(Thin, false, c.ID), left, p.Job.Limits.Leave-left, exact)
	all.add(newSpot(Buried, false, c.ID), c.Depth, c.WheelFit.Buried, exact)
	all.add(newSpot(Tight, false, c.ID), c.WheelFit.Sweep, c.WheelFit.Share-MaxSweep, exact)
	reach := p.Job.Limits.Reach * c.Asked
	deep := c.Depth
	if !c.Hand.Even() {
		deep = c.Plunge
	}
	if last := len(c.Hand.Swell) - 1; last > 0 && !c.Touch {
		inner := slices.Max(append(slices.Clone(c.Hand.Swell[1:last]), 0))
		if max(c.Hand.Swell[0], c.Hand.Swell[last]) > inner { // at its end the wheel is out of the glass
			reach = min(reach, deep)
		}
	}
	all.add(newSpot(Shallow, false, c.ID), deep, reach-deep, exact)

	// Where a centre line goes and its footprint runs into a margin, that is reported.
	const stray = 0.01 // mm that a bound may be passed by
	lineLow, lineHigh := low, high
	low, high = math.Inf(1), math.Inf(-1) // of the footprint
	for _, o := range c.Outlines {
		for _, q := range o.Points {
			_, z := p.Surface.Reverse(q)
			low, high = min(low, z), max(high, z)
		}
	}
	rim := p.Blank.Height() - p.Job.Limits.Rim
	all.add(newSpot(Rim, false, c.ID), high, high-rim-stray, exact)
	all.add(newSpot(Foot, false, c.ID), low, p.Job.Limits.Foot-low-stray, exact)
	if over := lineHigh - p.Band.Top - stray; over > 0 && high <= rim+stray {
		all.add(newSpot(Off, false, c.ID), lineHigh, over, exact)
	} else if low >= p.Job.Limits.Foot-stray {
		all.add(newSpot(Off, false, c.ID), lineLow, p.Band.Foot-lineLow-stray, exact)
	}
}

// checkPlace looks for a finding's cuts at the place it gives: between two, on
// the footprint or the centre line of one.
func checkPlace(t *testing.T, p *Plan, cuts []Cut, f Finding) {
	t.Helper()
	within := exact
	if !p.Surface.Flat() {
		within = 0.05 // the middle between two places lies a little beside them on a curved glass
	}
	if len(f.Cuts) == 2 {
		within += max(f.Wanted, p.maxLand()) / 2
		if !f.Share {
			within += f.Measured/2 - max(f.Wanted, p.maxLand())/2
		}
	}
	for _, id := range f.Cuts {
		away := math.Inf(1)
		for roll := -4; roll <= 4; roll++ {
			place := p.Surface.Forward(f.Theta+float64(roll)*2*math.Pi, f.Height)
			for _, o := range cuts[id-1].Outlines {
				away = min(away, o.DistanceToPlace(place, p.Surface.Space(place), away))
			}
			for _, s := range cuts[id-1].Samples {
				away = min(away, r3.Norm(r3.Sub(p.Surface.Space(s.At), p.Surface.Space(place))))
			}
		}
		if away > within {
			t.Errorf("%v of %v, share %v: cut %d is %g mm away from the place given", f.Kind, f.Cuts, f.Share, id, away)
		}
	}
}
