package wrap

import (
	"math"

	"roundlay/geometry"
	"roundlay/render/page"
)

// packGap is what is left between two papers on a page, to cut along.
const packGap = 2.0

// slot is a place for one paper on a page: the lower left corner of its box,
// and whether it lies on its side.
type slot struct {
	at        geometry.Point
	landscape bool
}

// slots returns as many places as possible for boxes of one size in a room: n
// columns or n rows of upright boxes, and boxes on their sides in the rest.
func slots(width, height float64, room geometry.Box) []slot {
	var best []slot
	wide, tall := room.Size()
	try := func(found []slot) {
		if len(found) > len(best) {
			best = found
		}
	}
	for columns := range fitting(width, wide) + 1 {
		left, right := room, room
		left.Max.X = room.Min.X + float64(columns)*(width+packGap) - packGap
		right.Min.X = room.Min.X + float64(columns)*(width+packGap)
		try(append(grid(width, height, left, false), grid(height, width, right, true)...))
	}
	for rows := range fitting(height, tall) + 1 {
		upper, lower := room, room
		upper.Min.Y = room.Max.Y - float64(rows)*(height+packGap) + packGap
		lower.Max.Y = room.Max.Y - float64(rows)*(height+packGap)
		try(append(grid(width, height, upper, false), grid(height, width, lower, true)...))
	}
	return best
}

// fitting returns how often a length fits into a room with gaps between.
func fitting(length, room float64) int {
	return max(0, int(math.Floor((room+packGap)/(length+packGap)+1e-9)))
}

// grid fills a room with boxes from its upper left.
func grid(width, height float64, room geometry.Box, landscape bool) []slot {
	var all []slot
	wide, tall := room.Size()
	for row := range fitting(height, tall) {
		for column := range fitting(width, wide) {
			all = append(all, slot{geometry.Point{
				X: room.Min.X + float64(column)*(width+packGap),
				Y: room.Max.Y - float64(row+1)*height - float64(row)*packGap,
			}, landscape})
		}
	}
	return all
}

// pack returns the places for papers of one size on a page, and which of the given
// formats takes fewest pages. It returns no places where not even one paper fits.
func pack(box geometry.Box, papers int, pages ...page.Format) ([]slot, page.Format) {
	var best []slot
	var chosen page.Format
	width, height := box.Size()
	needed := func(found []slot) int { return (papers + len(found) - 1) / len(found) }
	for _, f := range pages {
		for _, room := range []geometry.Box{f.Beside(), f.Above()} {
			found := slots(width, height, room)
			if len(found) > 0 && (best == nil || needed(found) < needed(best)) {
				best, chosen = found, f
			}
		}
	}
	return best, chosen
}

// put returns the motion that carries a box to a slot.
func (s slot) put(box geometry.Box) geometry.Motion {
	if s.landscape { // a quarter turn to the left: its top points left
		return geometry.Motion{Sin: 1, X: s.at.X + box.Max.Y, Y: s.at.Y - box.Min.X}
	}
	return geometry.Motion{Cos: 1, X: s.at.X - box.Min.X, Y: s.at.Y - box.Min.Y}
}
