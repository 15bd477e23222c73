package pattern

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// What the cuts of a job may come to: with more, some command would take longer
// than anyone waits for, or more memory than a bench's machine has. A hand that
// cuts one groove in half a minute is a week at the most that is let through.
const (
	maxCuts   = 5000  // on one glass, all round
	maxInAll  = 10000 // on all blanks together
	maxGroove = 40e3  // mm, on one glass
	maxAlong  = 100e3 // mm, on all blanks together
	maxMitred = 160e3 // mm, on one glass, where each mitre of a gang counts
	maxWork   = 3e6   // in one period on all blanks together: see work
	maxBeside = 1e6   // mm, in one period, along which cuts that meet or cross are measured against one another
)

// maxFound is how many pairs of cuts in a period may come too near one another:
// what has more is no pattern to mend.
const maxFound = 20000

// toll is what a motif comes to.
type toll struct {
	cuts   int     // on one glass
	groove float64 // on one glass
	mitred float64 // on one glass, under each mitre of a gang by itself
	beside float64 // in one period, along each mitre
	work   float64 // in one period: see work
	period float64 // the groove of one period
}

// toll returns what a motif that is drawn comes to. Lines are taken as long as they
// would be on the widest of the band.
func (p *Plan) toll(i int, d drawing) toll {
	const looks = 8
	at, wide := p.Surface.RadiusAt(p.Surface.HeightAt(d.along)), 1.0
	for k := range looks + 1 {
		z := p.Band.Foot + (p.Band.Top-p.Band.Foot)*float64(k)/looks
		wide = max(wide, p.Surface.RadiusAt(z)/at)
	}
	lengths := make([]float64, len(d.cuts))
	wheel := p.Job.Rack[p.sized[i].Wheel]
	var t toll
	for n, c := range d.cuts {
		lengths[n] = wide * d.length(c.Path)
		t.groove += lengths[n]
		const ends = 8 // places for the tails
		t.work += p.work(wheel, d.bends(c.Path)) * (lengths[n] + ends)
	}
	mitres := mitresOf(wheel)
	for n, c := range d.cuts {
		for _, other := range c.Joins {
			t.beside += mitres * min(lengths[n], lengths[other]) / 2 // each of the two has the other
		}
	}
	copies := p.Repeats
	if p.sized[i].On != job.Each {
		copies /= 2
	}
	t.cuts = len(d.cuts) * copies
	t.period = t.groove
	t.groove *= float64(copies)
	t.mitred = t.groove * mitres
	return t
}

func mitresOf(wheel groove.Wheel) float64 {
	if wheel.Edge == groove.Gang {
		return float64(wheel.Mitres)
	}
	return 1
}

// work returns how long it takes to measure a place of a groove, in microseconds of
// a workshop's machine, as BenchmarkWork measures it. A broad edge is looked at all across, and
// a line that bends from both sides.
func (p *Plan) work(wheel groove.Wheel, bent bool) float64 {
	of := [...]struct{ straight, bent, curved, curvedBent float64 }{
		groove.Mitre: {3, 14, 5, 40},
		groove.Round: {4, 24, 30, 80},
		groove.Flat:  {10, 32, 60, 110},
		groove.Gang:  {3, 18, 13, 50},
	}[wheel.Edge]
	work := of.straight
	switch flat := p.Surface.Flat(); {
	case flat && bent:
		work = of.bent
	case !flat && !bent:
		work = of.curved
	case !flat:
		work = of.curvedBent
	}
	return work * mitresOf(wheel)
}

// Work returns how long it takes to measure a plan that is laid out already, in
// microseconds of a workshop's machine.
func (p *Plan) Work() float64 {
	work := 0.0
	for i := range p.sized {
		if d, err := p.drawing(i); err == nil {
			t := p.toll(i, d)
			work += t.work + 2*t.beside
		}
	}
	return work
}

// length returns a length that a cut's line doesn't exceed, in millimetres.
func (d drawing) length(path geometry.Bezier) float64 {
	length := 0.0
	for k := range 3 {
		length += r2.Norm(r2.Sub(d.local(path[k+1]), d.local(path[k])))
	}
	return length
}

// bill is what the motifs of a plan come to, each by itself.
type bill struct {
	plan *Plan
	each []toll
}

// within returns an error if they come to more than is cut.
func (t bill) within() error {
	var all toll
	for _, one := range t.each {
		all.cuts += one.cuts
		all.groove += one.groove
		all.mitred += one.mitred
		all.beside += one.beside
		all.work += one.work
		all.period += one.period
	}
	blanks := len(t.plan.Job.Blanks)
	cuts := func(one toll) float64 { return float64(one.cuts) }
	along := func(one toll) float64 { return one.groove }
	switch {
	case all.cuts > maxCuts:
		return t.refuse(cuts, fmt.Sprintf("%d cuts round the glass", all.cuts), fmt.Sprintf("up to %d", maxCuts))
	case all.cuts*blanks > maxInAll:
		return t.refuse(cuts, fmt.Sprintf("%d cuts on each of %d blanks, %d in all", all.cuts, blanks, all.cuts*blanks),
			fmt.Sprintf("up to %d in all: %d blanks in a job, or %d cuts on each", maxInAll, maxInAll/all.cuts, maxInAll/blanks))
	case all.groove > maxGroove:
		return t.refuse(along, metres(all.groove)+" of groove round the glass", "up to "+metres(maxGroove))
	case all.groove*float64(blanks) > maxAlong:
		return t.refuse(along, fmt.Sprintf("%s of groove on each of %d blanks, %s in all", metres(all.groove), blanks, metres(all.groove*float64(blanks))),
			fmt.Sprintf("up to %s in all: %d blanks in a job, or %s on each", metres(maxAlong), int(maxAlong/all.groove), metres(maxAlong/float64(blanks))))
	case all.mitred > maxMitred:
		return t.refuse(func(one toll) float64 { return one.mitred },
			metres(all.mitred)+" of groove round the glass, under all the mitres of its gangs", "up to "+metres(maxMitred))
	case all.beside > maxBeside:
		return t.refuse(func(one toll) float64 { return one.beside },
			fmt.Sprintf("cuts that meet or cross one another along %s in all", metres(all.beside)), "up to "+metres(maxBeside)+": fewer cuts that cross, or shorter ones")
	case all.work*float64(blanks) > maxWork:
		return t.refuse(func(one toll) float64 { return one.work },
			fmt.Sprintf("%s of groove in a repeat, on %s, bent or under broad wheels or on curved glass, where a place takes long to reckon", metres(all.period), counted(blanks, "blank")),
			fmt.Sprintf("up to %s of the kind in all", metres(all.period*maxWork/all.work)))
	}
	return nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// metres writes a length that is far longer than any glass.
func metres(mm float64) string { return fmt.Sprintf("%.4g m", math.Round(mm/100)/10) }

// refuse names the motif that has most of what is too much.
func (t bill) refuse(of func(toll) float64, read, accepted string) error {
	i, most := 0, -1.0
	for k, one := range t.each {
		if of(one) > most {
			i, most = k, of(one)
		}
	}
	j := t.plan.Job
	m := t.plan.sized[i]
	e := j.Refuse(job.Item("motif", i), "", accepted, fmt.Sprintf("motif %d, a %s with %s, has most of them", i+1, m.Kind.Name, described(m)))
	e.Read = read
	return e
}

// refuseCrowded refuses a plan in which so many cuts crowd that no list of them helps:
// at the motif that has most.
func (p *Plan) refuseCrowded(found []Finding) error {
	times, most := make([]int, len(p.sized)), 0
	for _, f := range found {
		about, _ := p.About(f)
		for _, i := range about {
			if times[i]++; times[i] > times[most] {
				most = i
			}
		}
	}
	m := p.sized[most]
	e := p.Job.Refuse(job.Item("motif", most), "", fmt.Sprintf("cuts of which up to %d pairs do", maxFound),
		fmt.Sprintf("motif %d, a %s with %s, has most of them", most+1, m.Kind.Name, described(m)))
	e.Read = fmt.Sprintf("%d pairs of cuts and more that come too near one another", maxFound)
	return e
}

// What may lie on one spot of the glass, and on all of them together. A star's rays
// meet in its middle and bars cross in their grid, but where more do nobody could
// tell which of them is deepest, nor draw it.
const (
	maxThrough = 80    // cuts of a period, through one spot
	maxCrossed = 12000 // pairs of mitres of a period, at all spots
	maxAround  = 24000 // and of all periods on all blanks
)

// pile is what runs through a square millimetre of the flat map.
type pile struct{ cuts, mitres int }

// add adds a cut, and returns how many pairs of mitres it makes with the others.
func (s *pile) add(mitres int) int {
	pairs := s.mitres * mitres
	s.cuts, s.mitres = s.cuts+1, s.mitres+mitres
	return pairs
}

// refuseCrossed refuses a plan whose cuts lie on one another in heaps, at the motif that is
// on top.
func (p *Plan) refuseCrossed() error {
	most := min(maxCrossed, maxAround/(p.Periods()*len(p.Job.Blanks)))
	spots, crossed := map[[2]int32]pile{}, 0
	for i := range p.Cuts {
		c := &p.Cuts[i]
		last := [2]int32{math.MinInt32, 0}
		for _, at := range c.Samples {
			here := [2]int32{int32(math.Floor(at.At.X)), int32(math.Floor(at.At.Y))}
			if here == last {
				continue
			}
			last = here
			s := spots[here]
			crossed += s.add(max(len(c.Outlines), 1))
			spots[here] = s
			switch {
			case s.cuts > maxThrough:
				return p.onTop(c.Motif, fmt.Sprintf("more than %d cuts through one spot, %s above the table", maxThrough, p.Job.Length.Format(at.Height)),
					fmt.Sprintf("up to %d", maxThrough))
			case crossed > most:
				return p.onTop(c.Motif, fmt.Sprintf("mitres that cross one another or lie together, more than %d pairs of them in a repeat", most),
					fmt.Sprintf("up to %d pairs: fewer cuts that cross, or a wheel with fewer mitres", most))
			}
		}
	}
	return nil
}

func (p *Plan) onTop(motif int, read, accepted string) error {
	m := p.sized[motif]
	e := p.Job.Refuse(job.Item("motif", motif), "", accepted,
		fmt.Sprintf("motif %d, a %s with %s, is on top of them", motif+1, m.Kind.Name, described(m)))
	e.Read = read
	return e
}
