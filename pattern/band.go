package pattern

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// A job that states no band gives the decoration all the glass that can be cut, from
// the foot margin up. Motifs stand at shares of the band, so moving the band's top
// moves the motifs. A search finds the highest top at which the wall is thick enough
// for every motif. Where the job asks for paper, the band stays on the paper.
//
// The search uses each motif's box, turned as the motif is, and the depth the job asks
// for. No cut is deeper or lies outside its box. Any part of a box beyond the band's
// ends is ignored.

// End is what limits a band at its top.
type End struct {
	By Bound // ByWall, ByRim or ByPaper
	// For ByWall: the motif, counted from 0, that a taller band would put on too thin
	// a wall, and the height at which the wall gets too thin for it.
	Motif int
	Thin  float64
}

// findBand returns the job's band or, where it states none, all the glass that can be
// cut.
func findBand(j *job.Job, blank *glass.Blank) (job.Band, error) {
	if b := j.Layout.Band; b != nil {
		return *b, onGlass(j, blank)
	}
	band, end := carried(j, blank)
	return band, worth(j, blank, band, end)
}

// onGlass refuses a stated band that reaches above a blank's rim.
func onGlass(j *job.Job, blank *glass.Blank) error {
	const slack = 1e-9 // what job files may be off by, too
	if b := j.Layout.Band; b.Top > blank.Height()+slack {
		return fmt.Errorf("layout.band: its top is %s, but blank %q is only %s high",
			j.Length.Format(b.Top), blank.Name, j.Length.Format(blank.Height()))
	}
	return nil
}

// worth returns an error for a band too low to lay anything out in.
func worth(j *job.Job, blank *glass.Blank, band job.Band, end End) error {
	margins := job.Band{Foot: j.Limits.Foot, Top: blank.Height() - j.Limits.Rim}
	switch {
	case band.Top-band.Foot >= MinBand:
		return nil
	case end.By == ByWall:
		return tooThin(j, blank, band.Foot)
	case margins.Top-margins.Foot < MinBand:
		return noRoom(j, blank)
	}
	return offPaper(j, blank, margins)
}

// worthAll is worth for a band shared by every blank of a set. The band begins where the
// highest paper does. If that is too high for this blank, the error is about that
// paper.
func worthAll(j *job.Job, blank *glass.Blank, band job.Band, end End) error {
	if band.Top-band.Foot >= MinBand || lowest(j, blank) >= band.Foot {
		return worth(j, blank, band, end)
	}
	alone, err := findBand(j, blank)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(j.Blanks, func(b *glass.Blank) bool { return lowest(j, b) >= band.Foot })
	return offPaper(j, j.Blanks[i], alone)
}

// commonBand returns the band that fits every blank of a set. Where the job states no
// band, it also returns the number of the blank that limits the top, and what limits it
// there.
func commonBand(j *job.Job) (common job.Band, by int, end End, err error) {
	if j.Layout.Band != nil {
		for _, b := range j.Blanks {
			if err := onGlass(j, b); err != nil {
				return common, 0, end, err
			}
		}
		return *j.Layout.Band, 0, end, nil
	}
	common = job.Band{Foot: j.Limits.Foot, Top: math.Inf(1)}
	for _, b := range j.Blanks {
		common.Foot = max(common.Foot, lowest(j, b))
	}
	// A lower top moves the motifs, which may put one on thin glass of a blank checked
	// earlier: repeat until the top suits all.
	const rounds = 20
	for range rounds {
		top := common.Top
		for i, b := range j.Blanks {
			own, ends := carriedTo(j, b, common.Foot, common.Top)
			if err := worthAll(j, b, own, ends); err != nil {
				return common, i, ends, err
			}
			if own.Top < common.Top {
				common.Top, by, end = own.Top, i, ends
			}
		}
		if common.Top == top {
			break
		}
	}
	return common, by, end, nil
}

// Ending returns what limits the band of a plan's blank at its top, if it were alone in the
// job. ok is false where the job states a band, or where the plan is of no side.
func (p *Plan) Ending() (end End, ok bool) {
	if p.Face != job.Side || p.Job.Layout.Band != nil {
		return End{}, false
	}
	_, end = carried(p.Job, p.Blank)
	return end, true
}

// carried returns the tallest band that a blank's wall carries, and what limits it at
// the top. It begins at the stated band's foot or, without one, as low as can be cut.
func carried(j *job.Job, blank *glass.Blank) (job.Band, End) {
	foot := lowest(j, blank)
	if b := j.Layout.Band; b != nil {
		foot = b.Foot
	}
	return carriedTo(j, blank, foot, math.Inf(1))
}

// lowest returns the least height that can be cut: above the foot margin and, where the
// job asks for paper, on the paper.
func lowest(j *job.Job, blank *glass.Blank) float64 {
	if paper := blank.Paper; paper != nil {
		return max(j.Limits.Foot, paper.Low)
	}
	return j.Limits.Foot
}

// highest returns the greatest height that can be cut, whatever the wall: below the rim
// margin and, where the job asks for paper, on the paper.
func highest(j *job.Job, blank *glass.Blank) (float64, End) {
	rim := blank.Height() - j.Limits.Rim
	if paper := blank.Paper; paper != nil && paper.High < rim {
		return paper.High, End{By: ByPaper}
	}
	return rim, End{By: ByRim}
}

// carriedTo is carried between a given foot and a given highest top. Where the wall
// carries no band at all, the result ends at its foot.
func carriedTo(j *job.Job, blank *glass.Blank, foot, most float64) (job.Band, End) {
	const (
		rounds = 100
		fine   = 0.01 // mm above the top found: if the wall carries that too, the band came down too far
	)
	top, end := highest(j, blank)
	if most < top {
		top = most // another blank of the set limits it
	}
	c := climb{j, blank, thinFor(j, blank)}
	over, found := top, false
	for range rounds {
		if top < foot+MinBand {
			break
		}
		lower, motif, thin, ok := c.lower(job.Band{Foot: foot, Top: top})
		if found = ok; ok {
			break
		}
		over, top, end = top, lower, End{ByWall, motif, thin}
	}
	switch {
	case end.By != ByWall:
	case !found:
		top = min(top, blank.Carries(glass.Wanted{Wall: j.Limits.Leave + deepest(j), From: foot}))
	case c.carries(foot, top+fine):
		top = c.between(foot, top, over)
	}
	return job.Band{Foot: foot, Top: top}, end
}

// deepest returns the greatest depth that any motif on the side asks for.
func deepest(j *job.Job) float64 {
	depth := 0.0
	for _, m := range j.Motifs {
		if m.Face == job.Side {
			depth = max(depth, m.Deepest())
		}
	}
	return depth
}

// climb searches for the highest top of a blank's band.
type climb struct {
	job   *job.Job
	blank *glass.Blank
	thin  [][]glass.Span // where the wall is too thin, motif by motif
}

// thinFor returns where a blank's wall is too thin for each motif of a job.
func thinFor(j *job.Job, blank *glass.Blank) [][]glass.Span {
	thin := make([][]glass.Span, len(j.Motifs))
	for i, m := range j.Motifs {
		if m.Face != job.Side {
			continue
		}
		const slack = 1e-12 // mm: rounding in the sum of a wall
		thin[i] = blank.CutTo(m.Deepest()).Thinner(j.Limits.Leave - slack)
		if n := len(thin[i]); n > 0 && thin[i][n-1].To >= blank.Height() {
			thin[i][n-1].To = math.Inf(1)
		}
	}
	return thin
}

// lower reports whether the wall carries every motif in a band. If not, it returns a
// lower top to try, the motif that needs it, and the height at which the wall gets too
// thin.
func (c *climb) lower(band job.Band) (top float64, motif int, thin float64, ok bool) {
	const still = 1e-3 // mm in one of the band's height
	p := uncut(c.job, c.blank, band)
	half := uncut(c.job, c.blank, job.Band{Foot: band.Foot, Top: (band.Foot + band.Top) / 2})
	top, ok = band.Top, true
	for i, m := range c.job.Motifs {
		if m.Face != job.Side {
			continue
		}
		from, bad := c.meets(p, i)
		if !bad {
			continue
		}
		// A band of half the height shows how far the motif comes down with the top.
		_, high := p.span(m)
		_, lower := half.span(m)
		rate := (high - lower) / (band.Top - half.Band.Top)
		if rate < still {
			continue // it stands at a fixed height, whatever the band: check reports it
		}
		if to := max(from, band.Top-(high-from)/rate); to < top {
			top, motif, thin, ok = to, i, from, false
		}
	}
	return top, motif, thin, ok
}

// carries reports whether the wall carries every motif in a band.
func (c *climb) carries(foot, top float64) bool {
	_, _, _, ok := c.lower(job.Band{Foot: foot, Top: top})
	return ok
}

// between returns the greatest top between one that is known to be carried and
// one that is not, to the thousandth of a millimetre.
func (c *climb) between(foot, carried, not float64) float64 {
	for not-carried > 1e-3 {
		if half := (carried + not) / 2; c.carries(foot, half) {
			carried = half
		} else {
			not = half
		}
	}
	return carried
}

// meets reports whether a motif, as far as it lies in a plan's band, stands on glass too
// thin for it, and the height at which that glass begins.
func (c *climb) meets(p *Plan, motif int) (from float64, thin bool) {
	const touch = 1e-9 // mm
	low, high := p.span(c.job.Motifs[motif])
	low, high = max(low, p.Band.Foot), min(high, p.Band.Top)-touch
	for _, t := range c.thin[motif] {
		if t.To > low && t.From < high {
			return t.From, true
		}
	}
	return 0, false
}

// uncut returns a plan without cuts: enough to say where motifs stand.
func uncut(j *job.Job, blank *glass.Blank, band job.Band) *Plan {
	p := &Plan{Job: j, Blank: blank, Repeats: j.Layout.Repeats, Band: band, Period: period(j, job.Side), sized: j.Motifs}
	p.Cone, p.WorstRadiusError = blank.Profile().FitCone(band.Foot, band.Top)
	p.Surface = blank.Meridian().Charted(p.Cone)
	if !p.Surface.Straight() { // up a bent profile it is farther than up the cone
		p.Surface = p.Surface.Charted(p.Cone.KeptOff(p.Surface.AlongAt(band.Foot), p.Surface.AlongAt(band.Top)))
	}
	return p
}

// span returns the lowest and highest height of a motif's box, turned with the motif and
// with the motif it is inside.
func (p *Plan) span(m job.Motif) (low, high float64) {
	s := p.set(m)
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range []float64{-0.5, 0, 0.5} { // one that keeps its shape may reach furthest in the middle
		for _, y := range []float64{0, 0.5, 1} {
			z := p.Surface.HeightOf(s.place(s.local(geometry.Point{X: x, Y: y})))
			low, high = min(low, z), max(high, z)
		}
	}
	return low, high
}
