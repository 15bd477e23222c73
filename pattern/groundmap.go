package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/groove"
)

// groundMap is one period of the glass in cells, each with how deep it is ground. It closes
// on itself: a groove that leaves it at one side comes in at the other, as its copy does.
type groundMap struct {
	surface    *geometry.Surface
	from       float64 // the distance along the profile of its lower edge
	rise, turn float64 // of a cell: along the profile, and the angle round the glass
	up, across int     // how many cells
	area       []float64
	cells      []groundCell
	sum, union float64 // mm³ of the grooves each by itself, and of what they take together
	disc       bool    // it is a square round a whole disc, with its middle on the disc's
}

// groundCell is a cell of the map: the greatest depth of all, and that of the groove that
// was last laid on it, with how often that had gone round the map.
type groundCell struct {
	deepest, own float32
	cut, lap     int16 // the cut's number from 1, which is at most maxCuts; 0 for none
}

// What bounds the work: the cells of a map, those that grooves are laid on, and their least
// size in millimetres. A groove is some twenty of the finest wide.
const (
	maxGroundCells = 5e5
	maxGroundLaid  = 1e6
	finestGround   = 0.1
)

// newGroundMap returns an empty map of a plan's period with room for some of its cuts; nil
// where there are none.
func newGroundMap(p *Plan, cuts []int) *groundMap {
	low, high, covered := math.Inf(1), math.Inf(-1), 0.0
	for _, i := range cuts {
		for _, o := range p.Cuts[i].Outlines {
			for _, q := range o.Points {
				_, along := p.Surface.ReverseAlong(q)
				low, high = min(low, along), max(high, along)
			}
		}
		covered += p.Cuts[i].Length * p.Cuts[i].Width
	}
	if !(high > low) {
		return nil
	}
	if p.Surface.Level() {
		return discMap(p, high, covered*float64(p.Periods()))
	}
	radius, _ := p.Surface.At((low + high) / 2)
	period := p.PitchAngle() * float64(p.Period)
	size := max(math.Sqrt(covered/maxGroundLaid), math.Sqrt((high-low)*radius*period/maxGroundCells), finestGround)
	m := &groundMap{
		surface: &p.Surface, from: low,
		up: int(math.Ceil((high - low) / size)), across: int(math.Ceil(radius * period / size)),
	}
	m.rise, m.turn = (high-low)/float64(m.up), period/float64(m.across)
	m.cells, m.area = make([]groundCell, m.up*m.across), make([]float64, m.up)
	for row := range m.area {
		r, _ := m.surface.At(low + (float64(row)+0.5)*m.rise)
		m.area[row] = m.rise * m.turn * r
	}
	return m
}

// rung is a cross-section of a hollow with its edges on the map, in cells.
type rung struct {
	cross       *groove.Cross
	left, right geometry.Point
}

func (m *groundMap) rung(c *groove.Cross) rung {
	return rung{c, m.at(c.Left), m.at(c.Right)}
}

// at returns a place of the chart in cells: X to the right, Y up.
func (m *groundMap) at(q geometry.Point) geometry.Point {
	if m.disc {
		return geometry.Point{X: q.X/m.rise + float64(m.across)/2, Y: q.Y/m.rise + float64(m.up)/2}
	}
	theta, along := m.surface.ReverseAlong(q)
	return geometry.Point{X: theta / m.turn, Y: (along - m.from) / m.rise}
}

// take lays a groove on the map. Each has a number of its own, from 1.
func (m *groundMap) take(cut int16, relief groove.Relief) {
	for _, hollow := range relief {
		last := m.rung(&hollow[0])
		for i := 1; i < len(hollow); i++ {
			next := m.rung(&hollow[i])
			m.lay(cut, last, next, [3]geometry.Point{last.left, last.right, next.right}, [3]float64{0, 1, 1}, [3]float64{0, 0, 1})
			m.lay(cut, last, next, [3]geometry.Point{last.left, next.right, next.left}, [3]float64{0, 1, 0}, [3]float64{0, 1, 1})
			last = next
		}
	}
}

// lay lays the part of a groove between two cross-sections that is within a triangle on the
// map. Its corners are at shares of the way from left edge to right, and at 0 or 1 of the
// way from the last section to the next.
func (m *groundMap) lay(cut int16, last, next rung, corner [3]geometry.Point, share, on [3]float64) {
	a, b, c := corner[0], corner[1], corner[2]
	area := (b.X-a.X)*(c.Y-a.Y) - (c.X-a.X)*(b.Y-a.Y)
	const nothing = 1e-12 // cells
	if math.Abs(area) < nothing {
		return
	}
	first, end := span(m.up, min(a.Y, b.Y, c.Y), max(a.Y, b.Y, c.Y))
	for row := first; row < end; row++ {
		y := float64(row) + 0.5
		from, to := math.Inf(1), math.Inf(-1)
		for i := range corner {
			p, q := corner[i], corner[(i+1)%3]
			if (p.Y <= y) != (q.Y <= y) {
				x := p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y)
				from, to = min(from, x), max(to, x)
			}
		}
		if !(from <= to) {
			continue
		}
		for column := int(math.Ceil(from - 0.5)); float64(column)+0.5 <= to; column++ {
			x := float64(column) + 0.5
			v := ((x-a.X)*(c.Y-a.Y) - (c.X-a.X)*(y-a.Y)) / area
			w := ((b.X-a.X)*(y-a.Y) - (x-a.X)*(b.Y-a.Y)) / area
			u := 1 - v - w
			s, t := u*share[0]+v*share[1]+w*share[2], u*on[0]+v*on[1]+w*on[2]
			m.dig(cut, row, column, (1-t)*last.cross.Depth(s)+t*next.cross.Depth(s))
		}
	}
}

// span returns the cells, of n, whose middles are between two places.
func span(n int, from, to float64) (first, end int) {
	return max(int(math.Ceil(from-0.5)), 0), min(int(math.Floor(to+0.5)), n)
}

// dig makes a cell as deep as a groove is there, if it isn't yet.
func (m *groundMap) dig(cut int16, row, column int, depth float64) {
	lap := int16(math.Floor(float64(column) / float64(m.across)))
	cell := &m.cells[row*m.across+column-int(lap)*m.across]
	if cell.cut != cut || cell.lap != lap {
		cell.cut, cell.lap, cell.own = cut, lap, 0
	}
	deep := float32(depth)
	if deep > cell.own {
		m.sum += float64(deep-cell.own) * m.area[row]
		cell.own = deep
	}
	if deep > cell.deepest {
		m.union += float64(deep-cell.deepest) * m.area[row]
		cell.deepest = deep
	}
}
