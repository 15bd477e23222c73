package slips

import (
	"slices"

	"roundlay/pattern/glass"
)

// thinnest is the thinnest wall that a blown tumbler has, in mm: a rim of 1/32 in is thin
// already. Common practice, no source.
const thinnest = 0.7

// tooThin returns the walls of a blank that are thinner than any that is blown, but for those
// that are in doubt already, and those that sisters bear out.
func tooThin(b *glass.Blank, doubted []Doubt, sisters []*glass.Blank) []Doubt {
	var all []Doubt
	for i, s := range b.Stations {
		told := func(o Doubt) bool { return o.Of == OfWall && o.Station == i }
		d := Doubt{Blank: b, Of: OfWall, Station: i, Height: s.Height, Read: s.Wall, Least: thinnest}
		if s.Wall < thinnest && !slices.ContainsFunc(doubted, told) && !d.borneOut(sisters) {
			all = append(all, d)
		}
	}
	return all
}
