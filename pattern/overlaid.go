package pattern

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// The limits on grooves that lie over one another. Where two grooves cross they share a few
// square millimetres; where many broad ones are laid over each other, the picture has to find
// the deepest of them in each place, and shows nothing that anybody would cut.
const (
	maxOverlaid = 30e3  // overlaps in a period: see overlay
	maxOverAll  = 100e3 // the same, all periods on all blanks together

	maxOverlayCells = 500e3 // of an overlay's map, and of footprints laid on it
)

// overlay is one period of the glass in cells of a square millimetre, of more on a glass that
// is larger than any for drinking. It counts overlaps: each pair of footprints in a cell.
type overlay struct {
	surface  *geometry.Surface
	side     float64 // of a cell, mm
	from     float64 // along the profile, where the lowest row begins
	period   float64 // its angle
	up, wide int
	cells    []overlaid
}

// overlaid is a cell: how many footprints lie on it, and the last of them.
type overlaid struct {
	count uint16
	last  int32
}

// refuseOverlaid returns an error if too many grooves lie over one another. It names the
// motif whose cut goes over the limit.
func (p *Plan) refuseOverlaid() error {
	const narrow = 2.0 // mm: of grooves no wider than this, refuseCrossed counts the middle lines
	if !slices.ContainsFunc(p.Cuts, func(c Cut) bool { return c.Width > narrow }) {
		return nil
	}
	m := newOverlay(p)
	most := maxOverAll / (p.Periods() * len(p.Job.Blanks))
	if p.Period <= 2 { // a longer period has the same motifs again
		most = min(most, maxOverlaid)
	}
	over := 0
	for i := range p.Cuts {
		if over += m.lay(i, p.Cuts[i].Samples); over > most {
			return p.onTop(p.Cuts[i].Motif, fmt.Sprintf("grooves that lie over one another in more than %d places of a repeat, each two of them counted", most),
				fmt.Sprintf("up to %d such places: fewer cuts there, or narrower ones", most))
		}
	}
	return nil
}

// newOverlay returns an empty map of a plan's period.
func newOverlay(p *Plan) *overlay {
	low, high, covered := math.Inf(1), 0.0, 0.0
	for i := range p.Cuts {
		for k := range p.Cuts[i].Samples {
			at := &p.Cuts[i].Samples[k]
			_, along := p.Surface.ReverseAlong(at.At)
			reach := max(at.Left, at.Right)
			low, high = min(low, along-reach), max(high, along+reach)
		}
		covered += p.Cuts[i].Length * p.Cuts[i].Width
	}
	if !(high > low) {
		return &overlay{}
	}
	m := &overlay{surface: &p.Surface, from: low, period: p.PitchAngle() * float64(p.Period)}
	const looks = 8
	widest := 0.0
	for k := range looks + 1 {
		radius, _ := p.Surface.At(low + (high-low)*float64(k)/looks)
		widest = max(widest, radius)
	}
	arc := m.period * widest
	m.side = max(1, math.Sqrt(covered/maxOverlayCells), math.Sqrt((high-low)*arc/maxOverlayCells))
	m.up, m.wide = int((high-low)/m.side)+1, int(arc/m.side)+1
	m.cells = make([]overlaid, m.up*m.wide)
	return m
}

// lay lays a cut's footprint on the map, and returns how many overlaps it makes.
func (m *overlay) lay(cut int, samples []groove.Sample) int {
	over := 0
	next := math.Inf(-1)
	for k := range samples {
		at := &samples[k]
		if at.Along < next && k < len(samples)-1 {
			continue
		}
		next = at.Along + 0.9*m.side
		steps := int(math.Ceil((at.Left+at.Right)/m.side)) + 1
		for n := range steps {
			over += m.mark(cut, r2.Add(at.LeftEdge, r2.Scale((float64(n)+0.5)/float64(steps), r2.Sub(at.RightEdge, at.LeftEdge))))
		}
	}
	return over
}

// mark counts a cut in the cell of a place, once, and returns how many were there before. What
// leaves the period at one side comes in at the other, as the cut's copy does.
func (m *overlay) mark(cut int, q geometry.Point) int {
	theta, along := m.surface.ReverseAlong(q)
	row := int((along - m.from) / m.side)
	if row < 0 || row >= m.up {
		return 0
	}
	lap := math.Floor(theta / m.period)
	radius, _ := m.surface.At(m.from + (float64(row)+0.5)*m.side)
	column := int((theta - lap*m.period) * radius / m.side)
	const laps = 1 << 10 // more than there are
	id := int32(cut)*laps + int32(lap) + laps/2
	cell := &m.cells[row*m.wide+min(column, m.wide-1)]
	if cell.count > 0 && cell.last == id {
		return 0
	}
	before := int(cell.count)
	cell.count, cell.last = cell.count+1, id
	return before
}
