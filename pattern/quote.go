package pattern

import (
	"math"
	"slices"

	"roundlay/pattern/job"
)

// Quote is what some pieces take and cost, worked out from the rates in the job. Of a job
// whose pieces may be spoiled it counts those too, each as if it were cut and finished.
type Quote struct {
	Shop   job.Shop
	Pieces int // that are to come out well
	Each   int // that many of each plan's blank
	// Begun is how many pieces are begun for that on average. Blanks is as many, rounded
	// up; Safe is how many blanks leave enough good pieces nine times in ten.
	Begun        float64
	Blanks, Safe int

	Cutting float64 // minutes at the wheel for the pieces, spoiled ones not counted
	// Wheels is how many are put on, if all pieces are cut with one before the next;
	// Changes how often one is put on, if each piece is cut by itself.
	Wheels, Changes int

	Minutes Interval // in all: see NewQuote
	Price   Interval // in the shop's money; zero where it isn't known what an hour costs
}

// Interval is the least and the most that something comes to.
type Interval struct{ Least, Most float64 }

// NewQuote returns the quote for the pieces of some plans of one job, of each as many as the
// shop is to make. ok is false where the rate of a wheel isn't known.
//
// The least time has each wheel put on once for all the pieces, and all times shorter by
// the shop's spread. The most has each wheel put on for each piece that is begun, and all
// times longer by the spread. Both have as many pieces spoiled as are on average.
func NewQuote(plans []*Plan) (q Quote, ok bool) {
	each := plans[0].Job.Shop.Each()
	q = Quote{Shop: plans[0].Job.Shop, Pieces: each * len(plans), Each: each}
	var wheels []int
	for _, p := range plans {
		t := p.WholeTimes()
		if !t.Known() {
			return Quote{}, false
		}
		q.Cutting += float64(each) * t.Cutting
		q.Changes += each * len(t.Wheels)
		wheels = append(wheels, t.Wheels...)
	}
	slices.Sort(wheels)
	q.Wheels = len(slices.Compact(wheels))
	q.Begun = begun(q.Pieces, q.Shop.Spoil)
	q.Blanks, q.Safe = roundedUp(q.Begun), enough(q.Pieces, q.Shop.Spoil)
	q.Minutes = q.minutes()
	hours := q.Shop.Hour / 60
	q.Price = Interval{hours * q.Minutes.Least, hours * q.Minutes.Most}
	return q, true
}

// minutes is how long all of it takes.
func (q Quote) minutes() Interval {
	each, change := 0.0, 0.0 // minutes
	if q.Shop.Finishing != nil {
		each = *q.Shop.Finishing
	}
	if q.Shop.Change != nil {
		change = *q.Shop.Change
	}
	more := q.Begun / float64(q.Pieces)
	work := more * (q.Cutting + float64(q.Pieces)*each)
	return Interval{
		Least: (1 - q.Shop.Spread) * (work + float64(q.Wheels)*change),
		Most:  (1 + q.Shop.Spread) * (work + more*float64(q.Changes)*change),
	}
}

// begun returns how many pieces are begun on average for some good ones, where a share of
// those begun is spoiled: the mean of the negative binomial distribution.
func begun(good int, spoil float64) float64 { return float64(good) / (1 - spoil) }

// roundedUp returns the least whole number that isn't below x, but for rounding errors.
func roundedUp(x float64) int { return int(math.Ceil(x - 1e-9)) }

// enough returns the least number of blanks that leaves so many good pieces nine times in
// ten, where each is spoiled by itself with the same chance.
func enough(good int, spoil float64) int {
	const often, hair = 0.9, 1e-9
	// The chance that the last good piece is the nth begun: the negative binomial
	// distribution, from its first term on.
	chance := math.Pow(1-spoil, float64(good))
	n, sum := good, chance
	for sum < often-hair {
		n++
		chance *= spoil * float64(n-1) / float64(n-good)
		sum += chance
	}
	return n
}
