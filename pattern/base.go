package pattern

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// The base of a glass is laid out like its side. Its surface is a disc, a cone whose
// half-angle is a right angle, and its heights are distances from the middle. So repeats are
// sectors, a level line is a circle, and all of the pattern's code holds as it is. The glass
// over it is the floor.

// layout returns how the plan's face is divided.
func (p *Plan) layout() job.Layout { return p.Job.LayoutOf(p.Face) }

// carries reports whether a motif stands on the plan's face.
func (p *Plan) carries(motif int) bool { return p.Job.Motifs[motif].Face == p.Face }

// From says from where the plan's heights are counted.
func (p *Plan) From() string {
	if p.Face == job.Base {
		return "from the middle"
	}
	return "above the table"
}

// CutOf returns the cut of the period that the one with an id is a copy of.
func (p *Plan) CutOf(id int) *Cut { return &p.Cuts[p.inPeriod(id)] }

// Faces returns the plan and, where the job has one, that of the base.
func (p *Plan) Faces() []*Plan {
	if p.Base == nil {
		return []*Plan{p}
	}
	return []*Plan{p, p.Base}
}

// Clear reports whether nothing is found, on the base either.
func (p *Plan) Clear() bool { return p.Lettered() == 0 }

// Lettered returns how many groups of findings there are, those of the base too.
func (p *Plan) Lettered() int {
	n := 0
	for _, face := range p.Faces() {
		n += len(face.Groups())
	}
	return n
}

// GroundAway returns the glass that is ground away on all faces, in mm³.
func (p *Plan) GroundAway() float64 {
	volume := 0.0
	for _, face := range p.Faces() {
		volume += face.Volume()
	}
	return volume
}

// Whole returns the sums over all the cuts on all faces.
func (p *Plan) Whole() Totals {
	var all Totals
	for _, face := range p.Faces() {
		t := face.Totals()
		all.Cuts, all.Length = all.Cuts+t.Cuts, all.Length+t.Length
	}
	return all
}

// bareBase returns the plan of the base in a band, without cuts.
func bareBase(j *job.Job, blank *glass.Blank, band job.Band) *Plan {
	disc := geometry.Disc(blank.BaseRadius())
	return &Plan{
		Job: j, Blank: blank, Face: job.Base, Surface: disc, Cone: disc.Chart(), goreError: func() float64 { return 0 },
		Repeats: j.Base.Repeats, Band: band, Period: period(j, job.Base), sized: j.Motifs,
	}
}

// arrangeBase returns the band of the base and the sizes of its motifs. On a disc a share of
// a repeat is as wide on any blank, so where a set has one band its motifs have one size.
func arrangeBase(j *job.Job, blank *glass.Blank) (arrangement, error) {
	of := []*glass.Blank{blank}
	if matched(j) {
		of = j.Blanks
	}
	a := arrangement{band: job.Band{Foot: job.MinMiddle, Top: math.Inf(1)}, sizes: make([][2]job.Measure, len(j.Motifs))}
	for i, m := range j.Motifs {
		a.sizes[i] = [2]job.Measure{m.Width, m.Height}
	}
	for _, b := range of {
		if !b.FloorKnown() {
			return a, fmt.Errorf("blank %q: its base can't be laid out: the thickness of the glass there (floor) was not measured", b.Name)
		}
		a.band.Foot = max(a.band.Foot, b.Hollow.Across/2)
		a.band.Top = min(a.band.Top, b.BaseRadius()-j.Limits.Edge)
	}
	if band := j.Base.Band; band != nil {
		a.band = *band
		return a, nil
	}
	if a.band.Top-a.band.Foot < MinBand {
		return a, noBase(j, blank, a.band)
	}
	return a, nil
}

// noBase returns the error for a base on which nothing is left between its middle and the
// margin at its edge.
func noBase(j *job.Job, b *glass.Blank, band job.Band) error {
	u := j.Length
	why := fmt.Sprintf("blank %q: no glass of its base can be cut: it is %s across, its edge keeps %s of that clear, and the design begins %s from the middle",
		b.Name, u.Format(2*b.BaseRadius()), u.Format(j.Limits.Edge), u.Format(band.Foot))
	if rest := b.BaseRadius() - band.Foot - MinBand; rest > 0 && j.Given("limits.edge") {
		return j.Refuse("limits.edge", u.Format(j.Limits.Edge), "a length up to "+u.FormatDown(rest), why)
	}
	least := 2 * (band.Foot + j.Limits.Edge + MinBand)
	return j.Refuse(blankKey(j, b)+".base", u.Format(2*b.BaseRadius()), "a base of "+u.FormatUp(least)+" across and more", why)
}

// overMiddle returns the place of a motif over the middle of the base: its width and height
// may be shares of the band from edge to edge.
func (p *Plan) overMiddle(m job.Motif) setting {
	width, height := m.Size(2*p.Band.Top, 2*p.Band.Top)
	return setting{motif: m, surface: &p.Surface, width: width, height: height}
}

// The circles of a base that a job marks.
const (
	BaseEdge  = "base edge"
	BaseInner = "base band inside"
	BaseOuter = "base band outside"
)

// baseCircles returns the circles of the base, from its edge inwards.
func (p *Plan) baseCircles() []Circle {
	edge := p.Blank.BaseRadius()
	return []Circle{
		{BaseEdge, edge, edge}, {BaseOuter, p.Band.Top, p.Band.Top}, {BaseInner, p.Band.Foot, p.Band.Foot},
	}
}
