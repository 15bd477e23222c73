package groove

import (
	"math"
	"slices"
)

// column is a line round the wheel's edge at a distance to the left of its middle, and the
// blade it is on. lean is how the wheel is rolled there: see skinSpot.
type column struct {
	blade      blade
	left, lean float64
}

// columns returns the columns to look at: for a gang its mitres' lines and its faces, else
// lines evenly across the edge. The wheel's middle line is in the middle.
func (k *stroke) columns() []column {
	if n := k.wheel.blades(); n > 1 {
		all := make([]column, 0, n+2)
		add := func(b blade, left float64) {
			if math.Abs(left) < b.face { // else it is off the wheel
				all = append(all, column{blade: b, left: left})
			}
		}
		face := 0.999 * k.middle.face
		add(k.wheel.blade(0), -face)
		for i := range n {
			b := k.wheel.blade(i)
			add(b, b.offset)
		}
		add(k.wheel.blade(n-1), face)
		return all
	}
	const n = 9
	edge := k.middle
	edge.face = k.wheel.Thick / 2
	all := make([]column, n)
	for i := range all {
		all[i] = column{blade: edge, left: edge.face * (float64(i)/(n-1)*2 - 1) * 0.999}
	}
	return all
}

// leaning returns the columns of the wheel as it is rolled to either side and not at all.
func (k *stroke) leaning() []column {
	all := k.columns()
	if !k.line.hand.rocks() {
		return all
	}
	n := len(all)
	for _, lean := range [...]float64{-1, -0.5, 0.5, 1} {
		for _, c := range all[:n] {
			c.lean = lean
			all = append(all, c)
		}
	}
	return all
}

// on returns the radius and the height of a place in the column at a distance ahead.
func (c *column) on(p *pose, ahead float64) (radius, height float64) {
	if p.roll == nil {
		return p.rim(&c.blade, ahead, c.left)
	}
	radius, height, _ = p.skin(&c.blade, p.roll.leaning(c.lean), ahead, c.left)
	return radius, height
}

// dips returns how far a rolled wheel's edge comes to lie below where it is deepest upright.
func (k *stroke) dips() float64 {
	if !k.line.hand.rocks() {
		return 0
	}
	deepest := 0.0
	for _, c := range k.columns() {
		for _, angle := range k.line.hand.rock {
			sin, cos := math.Sincos(angle)
			deepest = max(deepest, math.Abs(c.left)*sin-c.blade.drop(c.left-c.blade.offset)*cos)
		}
	}
	return deepest
}

// lookAbout looks at the whole wheel, every span in each column, for where it bites outside
// its mark or much deeper than where it stands, and for the least glass it leaves.
func (k *stroke) lookAbout(p *pose) {
	columns := k.columns()
	beyond := 3 + k.wheel.Thick // mm: how much nearer the glass may come within the wheel's faces
	var cells [][]float64       // depths by row, from behind to ahead, and column
	var ways []heading
	spots := make([]spot, len(columns))
	add := func(_ float64, way heading) bool {
		row := make([]float64, len(columns))
		middle, _, _ := p.bite(&k.middle, way.spot(k.surface))
		if middle > -beyond {
			k.row(p, way, columns, spots)
		}
		for i, c := range columns {
			row[i] = middle
			if middle > -beyond { // else no column is near the glass
				deep, room, _ := p.bite(&c.blade, spots[i])
				row[i] = min(deep, room)
			}
		}
		cells, ways = append(cells, row), append(ways, way)
		return true
	}
	k.along(p, -1, add)
	slices.Reverse(cells)
	slices.Reverse(ways)
	own := len(cells)
	add(0, p.heading())
	k.along(p, 1, add)
	mark := marked(cells, own, len(columns)/2)
	var least spotted
	found := false
	limit := 1.2*(p.depth+k.dip) + beside
	for i := range cells {
		for c, deep := range cells[i] {
			if deep <= 0 {
				continue
			}
			at := k.abreast(p, ways[i], columns[c].left)
			depth, radius, height := p.depthAt(&columns[c].blade, at)
			left := math.Inf(1)
			if k.inside != nil {
				left = max(k.inside.Distance(radius, height), 0)
			}
			k.deepest = max(k.deepest, depth)
			if left < k.about.Min {
				k.about = Remains{left, at.theta, at.height}
				least, found = spotted{p, ways[i], columns[c]}, true
			}
			if rests := deep > apart && !mark[[2]int{i, c}] || deep > limit; rests && depth > k.elsewhere.Depth {
				k.elsewhere = Bridge{Depth: depth, Theta: at.theta, Height: at.height, Left: left}
			}
		}
	}
	if found {
		k.closer(least)
	}
	k.lookRound(p)
}

// spotted is a place under a wheel: on a way across its line, in a column.
type spotted struct {
	p   *pose
	way heading
	column
}

// closer searches between the places that were looked at for one that leaves less glass.
func (k *stroke) closer(at spotted) {
	try := func(ahead, left float64) bool {
		next := at
		next.way, next.left = at.way.straight(k.surface, ahead), at.left+left
		q := k.abreast(next.p, next.way, next.left)
		if deep, room, _ := next.p.bite(&next.blade, q); deep <= 0 || room <= 0 || !k.glassAt(q.along) {
			return false
		}
		_, radius, height := next.p.depthAt(&next.blade, q)
		left = max(k.inside.Distance(radius, height), 0)
		if left >= k.about.Min {
			return false
		}
		at, k.about = next, Remains{left, q.theta, q.height}
		return true
	}
	for step := span / 2; step > 0.02; {
		if !try(step, 0) && !try(-step, 0) && !try(0, step) && !try(0, -step) {
			step /= 2
		}
	}
}

// abreast returns the place beside a way that is at a distance to the left in the wheel's
// coordinates. On a curved glass it is farther than that along the glass.
func (k *stroke) abreast(p *pose, way heading, left float64) spot {
	return k.aside(p, way.left(), left).spot(k.surface)
}

// aside moves a heading that looks to a wheel's left, on or back, to the distance left in
// the wheel's coordinates; or as near to it as the glass comes before it turns away.
func (k *stroke) aside(p *pose, way heading, left float64) heading {
	const near = 0.01 // mm
	last := math.Inf(1)
	for range 5 {
		off := left - p.seen(p.space(way.spot(k.surface))).Y
		if math.Abs(off) < near || math.Abs(off) >= last {
			break
		}
		last = math.Abs(off)
		way = way.straight(k.surface, off)
	}
	return way
}

// row finds the places beside a way that are in the wheel's columns, from the middle
// outwards, each from the one before.
func (k *stroke) row(p *pose, way heading, columns []column, spots []spot) {
	middle := len(columns) / 2
	from := way.left()
	for i := middle; i < len(columns); i++ {
		from = k.aside(p, from, columns[i].left)
		spots[i] = from.spot(k.surface)
	}
	from = way.left()
	for i := middle - 1; i >= 0; i-- {
		from = k.aside(p, from, columns[i].left)
		spots[i] = from.spot(k.surface)
	}
}

// marked returns the cells in the glass that are connected with the one where the wheel
// stands.
func marked(cells [][]float64, row, column int) map[[2]int]bool {
	seen := map[[2]int]bool{{row, column}: true}
	for next := [][2]int{{row, column}}; len(next) > 0; {
		at := next[len(next)-1]
		next = next[:len(next)-1]
		for i := max(at[0]-1, 0); i <= min(at[0]+1, len(cells)-1); i++ {
			for c := max(at[1]-1, 0); c <= min(at[1]+1, len(cells[i])-1); c++ {
				if to := [2]int{i, c}; !seen[to] && cells[i][c] > 0 {
					seen[to] = true
					next = append(next, to)
				}
			}
		}
	}
	return seen
}
