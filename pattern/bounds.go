package pattern

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// The limits on the cuts of a job. Beyond them some command would take longer than
// anyone waits, or more memory than a workshop's computer has. At half a minute a
// groove, the largest glass allowed is about a week of cutting by hand.
const (
	maxCuts   = 5000  // on one glass, all round
	maxInAll  = 10000 // on all blanks together
	maxGroove = 40e3  // mm, on one glass
	maxAlong  = 100e3 // mm, on all blanks together
	maxMitred = 160e3 // mm, on one glass, each mitre of a gang counted by itself
	maxWork   = 3e6   // µs, in one period on all blanks together: see work
	maxBeside = 1e6   // mm, in one period: the length of cuts measured against those they meet or cross
)

// maxFound is how many pairs of cuts in a period may come too near one another. A job
// with more is refused: no list of findings would help to mend it.
const maxFound = 20000

// toll is what a motif costs: its cuts, their length, and the time to measure them.
type toll struct {
	cuts   int     // on one glass
	groove float64 // on one glass
	mitred float64 // on one glass, each mitre of a gang counted by itself
	beside float64 // in one period, each mitre counted by itself: see maxBeside
	work   float64 // µs, in one period: see work
	period float64 // the groove of one period
}

// toll returns the toll of a drawn motif. It takes each line to be as long as it would
// be where the band is widest.
func (p *Plan) toll(i int, d drawing) toll {
	const looks = 8
	at, wide := p.Surface.RadiusAt(p.Surface.HeightAt(d.along)), 1.0
	for k := range looks + 1 {
		if d.motif.Middle {
			break // it keeps its size
		}
		z := p.Band.Foot + (p.Band.Top-p.Band.Foot)*float64(k)/looks
		wide = max(wide, p.Surface.RadiusAt(z)/at)
	}
	lengths := make([]float64, len(d.cuts))
	m := p.sized[i]
	wheelOf := func(n int) groove.Wheel { return p.Job.Rack[m.WheelOf(d.cuts[n].Part)] }
	var t toll
	for n, c := range d.cuts {
		wheel := wheelOf(n)
		lengths[n] = wide * d.length(&c)
		t.groove += lengths[n]
		t.mitred += lengths[n] * mitresOf(wheel)
		const ends = 8 // places for the tails
		t.work += p.work(wheel, d.bends(&c), d.hand(&c)) * (lengths[n] + ends)
	}
	for n, c := range d.cuts {
		for _, other := range c.Joins {
			mitres := max(mitresOf(wheelOf(n)), mitresOf(wheelOf(other)))
			t.beside += mitres * min(lengths[n], lengths[other]) / 2 // each of the two has the other
		}
	}
	copies := len(p.layout().Copies(p.sized[i]))
	t.cuts = len(d.cuts) * copies
	t.period = t.groove
	t.groove *= float64(copies)
	t.mitred *= float64(copies)
	return t
}

func mitresOf(wheel groove.Wheel) float64 {
	if wheel.Edge == groove.Gang {
		return float64(wheel.Mitres)
	}
	return 1
}

// Work returns the time to measure a plan that is laid out already, in microseconds on a
// workshop's computer.
func (p *Plan) Work() float64 {
	work := 0.0
	for i := range p.sized {
		if !p.carries(i) {
			continue
		}
		if d, err := p.drawing(i); err == nil {
			t := p.toll(i, d)
			work += t.work + 2*t.beside
		}
	}
	return work
}

// bill is the toll of each motif of a plan.
type bill struct {
	plan *Plan
	each []toll
}

// within returns an error if the sum of the tolls is over a limit.
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
			fmt.Sprintf("%s of groove in a repeat, on %s, bent, cut by hand, under broad wheels or on curved glass, which takes long to measure", metres(all.period), counted(blanks, "blank")),
			fmt.Sprintf("up to %s of such groove on each", metres(all.period*maxWork/(all.work*float64(blanks)))))
	}
	return nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// metres writes a length far longer than any glass.
func metres(mm float64) string { return fmt.Sprintf("%.4g m", math.Round(mm/100)/10) }

// refuse returns an error that names the motif with the largest share of what is over
// the limit.
func (t bill) refuse(of func(toll) float64, read, accepted string) error {
	i, most := 0, -1.0
	for k, one := range t.each {
		if of(one) > most {
			i, most = k, of(one)
		}
	}
	j := t.plan.Job
	m := t.plan.sized[i]
	e := j.Refuse(job.Item("motif", i), "", accepted, fmt.Sprintf("motif %d, a %s, has most of them", i+1, described(m)))
	e.Read = read
	return e
}

// refuseCrowded returns the error for a plan with more than maxFound crowded pairs. It
// names the motif that has most of them.
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
	e := p.Job.Refuse(job.Item("motif", most), "", fmt.Sprintf("up to %d such pairs", maxFound),
		fmt.Sprintf("motif %d, a %s, has most of them", most+1, described(m)))
	e.Read = fmt.Sprintf("more than %d pairs of cuts too near one another", maxFound)
	return e
}

// The limits on cuts that cross or overlap. A star's rays meet in its middle and bars
// cross in a grid, but with more than this in one spot nobody can say which cut is
// deepest, nor draw it.
const (
	maxThrough = 80    // cuts of a period, through one spot
	maxCrossed = 12000 // pairs of mitres of a period, all spots together
	maxAround  = 24000 // the same, all periods on all blanks together
)

// piles counts what runs through each square millimetre of the flat map within a box, row by
// row.
type piles struct {
	left, low, wide int
	cuts            []uint8  // up to maxThrough, and one more
	mitres          []uint16 // of their wheels; nil where none is a gang, and each has one
}

// newPiles returns the piles of the plan's cuts, empty.
func (p *Plan) newPiles() piles {
	if len(p.Cuts) == 0 {
		return piles{}
	}
	box, gangs := geometry.EmptyBox(), false
	for i := range p.Cuts {
		c := &p.Cuts[i]
		gangs = gangs || len(c.Outlines) > 1
		for k := range c.Samples {
			box = box.Add(c.Samples[k].At)
		}
	}
	of := func(x float64) int { return int(math.Floor(x)) }
	s := piles{left: of(box.Min.X), low: of(box.Min.Y), wide: of(box.Max.X) - of(box.Min.X) + 1}
	s.cuts = make([]uint8, s.wide*(of(box.Max.Y)-s.low+1))
	if gangs {
		s.mitres = make([]uint16, len(s.cuts))
	}
	return s
}

// index returns the index of the pile at a place.
func (s *piles) index(at geometry.Point) int {
	return (int(math.Floor(at.Y))-s.low)*s.wide + int(math.Floor(at.X)) - s.left
}

// add adds a cut to a pile. It returns how many there are now, and how many pairs of mitres
// the cut makes with the others.
func (s *piles) add(at, mitres int) (cuts, pairs int) {
	pairs = int(s.cuts[at])
	s.cuts[at]++
	if s.mitres != nil {
		pairs = int(s.mitres[at]) * mitres
		s.mitres[at] += uint16(mitres)
	}
	return int(s.cuts[at]), pairs
}

// refuseCrossed returns an error if too many cuts cross or overlap. It names the motif
// whose cut goes over the limit.
func (p *Plan) refuseCrossed() error {
	most := maxAround / (p.Periods() * len(p.Job.Blanks))
	if p.Period <= 2 { // a longer period has the same motifs again
		most = min(most, maxCrossed)
	}
	spots, crossed := p.newPiles(), 0
	for i := range p.Cuts {
		c := &p.Cuts[i]
		last := -1
		for k := range c.Samples {
			at := &c.Samples[k]
			here := spots.index(at.At)
			if here == last {
				continue
			}
			last = here
			cuts, pairs := spots.add(here, max(len(c.Outlines), 1))
			crossed += pairs
			switch {
			case cuts > maxThrough:
				return p.onTop(c.Motif, fmt.Sprintf("more than %d cuts through one spot, %s %s", maxThrough, p.Job.Length.Format(at.Height), p.From()),
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
		fmt.Sprintf("motif %d, a %s, is on top of them", motif+1, described(m)))
	e.Read = read
	return e
}
