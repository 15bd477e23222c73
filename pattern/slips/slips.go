// Package slips finds readings of a set's blanks that were misread or mistyped.
//
// A slip of the hand at the calipers or the keys, 94.8 for 84.8 or 24 for 2.4, may
// well be a glass that can be made, and only its sisters know better. Each reading
// is compared with what they have at the same share of their height, as a ratio.
//
// It is doubted where it is further from the middle of its sisters than a
// difference that honest glass may have, and more than twice as far as any of them
// is from the others. One of them may be as far off: it may be misread too. Few
// sisters ask for a greater difference, but for one of five times what they differ
// by themselves. But a blank that is wider, or thicker, all the way up is just
// that: the reading has to be off from its own others as well.
package slips

import (
	"math"
	"slices"

	"roundlay/pattern/glass"
)

// Quantity is what a reading is of.
type Quantity int

// What is read of a blank: its height, and at each station its width and its
// wall; and the glass under its inside.
const (
	OfHeight Quantity = iota
	OfWidth
	OfWall
	OfFloor
)

// Doubt is a reading that its blank's sisters speak against.
type Doubt struct {
	Blank   *glass.Blank
	Of      Quantity
	Station int     // by number from 0; the last of OfHeight, none of OfFloor
	Height  float64 // at which it was read
	Read    float64 // a width as a diameter
	// What the sisters have there, the least and the most; Sisters is how many can
	// tell: all, or those that were measured near it.
	Sisters     int
	Least, Most float64
}

// leastSisters is how many it takes to speak against a reading.
const leastSisters = 2

// Doubts returns the readings of a set's blanks that the others, their sisters,
// speak against, blank by blank.
func Doubts(set []*glass.Blank) []Doubt {
	if len(set) < leastSisters+1 {
		return nil
	}
	var usual [OfFloor + 1]usually
	for of := range usual {
		usual[of] = newUsually(Quantity(of), set)
	}
	var all []Doubt
	for i, blank := range set {
		sisters, height := but(set, i), blank.Height()
		for _, of := range []Quantity{OfHeight, OfFloor, OfWidth, OfWall} {
			doubted := doubtsOf(of, blank, height, sisters, usual[of].without(i))
			if of == OfHeight && len(doubted) > 0 {
				height = middleHeight(sisters) // its other readings are compared as if it were as tall as they are
			}
			all = append(all, doubted...)
		}
	}
	return all
}

// doubtsOf returns the readings of one quantity of a blank that is taken to be of a
// height.
func doubtsOf(of Quantity, blank *glass.Blank, height float64, sisters []*glass.Blank, usual scatter) []Doubt {
	var all []Doubt
	one := compared(blank, of, height, sisters)
	for i, r := range one.readings {
		asked, _ := ask(of, r.at, sisters)
		if !usual.doubts(one, i, len(asked)) {
			continue
		}
		d := Doubt{Blank: blank, Of: of, Station: r.station, Read: r.value, Sisters: len(asked)}
		if r.station >= 0 {
			d.Height = blank.Stations[r.station].Height
		}
		d.Least, d.Most = between(of, r.at, sisters)
		all = append(all, d)
	}
	return all
}

// but returns blanks without one of them.
func but(blanks []*glass.Blank, i int) []*glass.Blank {
	return slices.Delete(slices.Clone(blanks), i, i+1)
}

// honest is how far a reading may be from its sisters' for no other reason than
// that no two glasses are alike, as the logarithm of a ratio: common practice, no
// source.
func honest(of Quantity) float64 {
	if of == OfWall || of == OfFloor {
		return math.Log(1.3)
	}
	return math.Log(1.06)
}

// comparison is how far a blank's readings of a quantity are from others', as
// logarithms of ratios: by themselves, and but for what the blank's own other
// readings are off.
type comparison struct {
	readings []reading
	off, own []float64
}

func compared(b *glass.Blank, of Quantity, height float64, others []*glass.Blank) comparison {
	c := comparison{}
	for _, r := range readings(b, of, height) {
		if by, ok := off(r, others); ok {
			c.readings, c.off = append(c.readings, r), append(c.off, by)
		}
	}
	c.own = slices.Clone(c.off)
	for i := range c.own {
		if rest := slices.Delete(slices.Clone(c.off), i, i+1); len(rest) > 0 {
			c.own[i] -= median(rest)
		}
	}
	return c
}

// scatter is how far blanks are usually from one another.
type scatter struct{ off, own float64 }

// many is how many sisters it takes for one more, misread, to leave their middle
// where it is, and for the one of them that is furthest off not to count.
const many = 5

// usually tells how far a set's blanks are from one another in a quantity.
type usually struct {
	of  Quantity
	set []*glass.Blank
	far []scatter // of each blank, how far it is from all the others; none of a small set
}

func newUsually(of Quantity, set []*glass.Blank) usually {
	u := usually{of: of, set: set}
	if len(set) > many {
		u.far = farthest(of, set)
	}
	return u
}

// without returns how far the sisters of one blank are from the others: the one
// that is furthest or, of many, that is next to furthest.
func (u usually) without(i int) scatter {
	if u.far == nil {
		return worst(farthest(u.of, but(u.set, i)), 0)
	}
	return worst(slices.Delete(slices.Clone(u.far), i, i+1), 1)
}

// farthest returns how far each of some blanks is from all the others at the most.
func farthest(of Quantity, blanks []*glass.Blank) []scatter {
	far := make([]scatter, len(blanks))
	for i, b := range blanks {
		c := compared(b, of, b.Height(), but(blanks, i))
		for k := range c.off {
			far[i] = scatter{max(far[i].off, math.Abs(c.off[k])), max(far[i].own, math.Abs(c.own[k]))}
		}
	}
	return far
}

// worst returns the greatest of each, but for so many that are greater.
func worst(all []scatter, but int) scatter {
	nth := func(of func(scatter) float64) float64 {
		values := make([]float64, len(all))
		for i, s := range all {
			values[i] = of(s)
		}
		slices.Sort(values)
		return values[len(values)-1-but]
	}
	return scatter{nth(func(s scatter) float64 { return s.off }), nth(func(s scatter) float64 { return s.own })}
}

// doubts reports whether a reading is too far off where so many sisters can tell.
func (s scatter) doubts(c comparison, i, sisters int) bool {
	const (
		twice = 2.2
		few   = 3.0 // with so few sisters it has to be off twice as far as with very many
		// A few that agree so many times better with one another than the reading
		// does with them speak for more: then so many times of what is honest will do.
		agree  = 5.0
		agreed = 1.5
	)
	off, own := math.Abs(c.off[i]), math.Abs(c.own[i])
	least := 1 + few/float64(sisters)
	if off > agree*s.off && own > agree*s.own {
		least = min(least, agreed)
	}
	if min(off, own) < least*honest(c.readings[i].of) {
		return false
	}
	return off > twice*s.off || own > twice*s.own
}
