package slips

import (
	"math"
	"slices"

	"roundlay/pattern/glass"
)

// By how many times a wall may differ from the walls next to it in its own blank:
// common practice, no source. A wall falls from the foot to the rim, and a foot may
// be much thicker than the wall above it, so that a step down is doubted late.
const (
	thickBoth    = 2.0 // thicker than the wall below and the wall above: a cut can go through it
	thinBoth     = 2.5 // thinner than both
	thickOnFoot  = 2.0 // a rim that is thicker than a foot, with nothing between them
	rimThick     = 3.0 // a rim that is thicker than the wall below, or a foot thinner than the wall above
	rimThin      = 6.0 // a rim that is thinner than the wall below
	rimUnderFoot = 12. // a rim that is thinner than a foot, with nothing between them
	solidShare   = 0.9 // a wall of so much of the radius is solid glass,
	stemShare    = 0.6 // in a stem or a knop, which is no wider than so much of the glass
)

// Beside returns the walls of one blank that its own walls next to them speak
// against. Of two that disagree it is the one without which the rest agree best.
func Beside(b *glass.Blank) []Doubt {
	trusted := readings(b, OfWall, b.Height())
	var all []Doubt
	for {
		odd, found := oddWall(b, trusted)
		if !found {
			break
		}
		all = append(all, besideDoubt(b, trusted, odd))
		trusted = slices.Delete(trusted, odd, odd+1)
	}
	slices.SortFunc(all, func(a, b Doubt) int { return a.Station - b.Station })
	return all
}

// oddWall returns which of some walls to doubt first. Where only two are left, it is
// the thicker one: too thick a wall is the one that a cut can go through.
func oddWall(b *glass.Blank, walls []reading) (odd int, found bool) {
	least := math.Inf(1)
	for i := range walls {
		if step(b, walls, i) < 1 {
			continue
		}
		left := worstStep(b, slices.Delete(slices.Clone(walls), i, i+1))
		if left < least || left == least && walls[i].value > walls[odd].value {
			odd, found, least = i, true, left
		}
	}
	return odd, found
}

// worstStep returns the greatest step of some walls.
func worstStep(b *glass.Blank, walls []reading) float64 {
	worst := 0.0
	for i := range walls {
		worst = max(worst, step(b, walls, i))
	}
	return worst
}

// step returns how many times as far a wall is from those next to it as it may be. It
// is less than 1 where it may be so.
func step(b *glass.Blank, walls []reading, i int) float64 {
	wall, last := walls[i].value, len(walls)-1
	if last == 0 || solid(b, walls[i]) {
		return 0
	}
	switch i {
	case 0:
		return thinner(b, wall, walls[1]) / rimThick
	case last:
		below, thick, thin := walls[last-1], rimThick, rimThin
		if below.station == 0 {
			thick, thin = thickOnFoot, rimUnderFoot
		}
		return max(wall/below.value/thick, thinner(b, wall, below)/thin)
	}
	below, above := walls[i-1], walls[i+1]
	thick := min(wall/below.value, wall/above.value) / thickBoth
	thin := min(thinner(b, wall, below), thinner(b, wall, above)) / thinBoth
	return max(thick, thin)
}

// thinner returns how many times a wall goes into one beside it. Solid glass says
// nothing about how thick a wall is.
func thinner(b *glass.Blank, wall float64, beside reading) float64 {
	if solid(b, beside) {
		return 0
	}
	return beside.value / wall
}

// solid reports whether the glass is solid there, as a stem or a knop is: narrow, and
// without room for an inside.
func solid(b *glass.Blank, wall reading) bool {
	widest := 0.0
	for _, s := range b.Stations {
		widest = max(widest, s.Radius)
	}
	radius := b.Stations[wall.station].Radius
	return wall.value >= solidShare*radius && radius <= stemShare*widest
}

// besideDoubt is the doubt of the i-th of some walls.
func besideDoubt(b *glass.Blank, walls []reading, i int) Doubt {
	r := walls[i]
	d := Doubt{Blank: b, Of: OfWall, Station: r.station, Height: b.Stations[r.station].Height, Read: r.value}
	if i > 0 {
		d.Below = walls[i-1].value
	}
	if i+1 < len(walls) {
		d.Above = walls[i+1].value
	}
	return d
}

// borneOut reports whether another blank of the set, measured near there, has about
// the same wall: then it was made so.
func (d Doubt) borneOut(sisters []*glass.Blank) bool {
	r := reading{OfWall, d.Station, min(d.Height/d.Blank.Height(), 1), d.Read}
	if _, known := ask(OfWall, r.at, sisters); !known {
		return false
	}
	by, ok := off(r, sisters)
	return ok && by >= -honest(OfWall) && by <= honest(OfWall)
}
