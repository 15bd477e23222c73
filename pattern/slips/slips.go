package slips

import (
	"math"
	"slices"

	"roundlay/pattern/glass"
)

// Quantity is what was measured in a reading.
type Quantity int

// A blank's readings are its height, its width and wall at each station, and its
// floor, the glass under its inside.
const (
	OfHeight Quantity = iota
	OfWidth
	OfWall
	OfFloor
)

// Doubt is a reading that does not agree with the other blanks of the set, or a wall
// that does not agree with the walls next to it.
type Doubt struct {
	Blank   *glass.Blank
	Of      Quantity
	Station int     // by number from 0; the last one for OfHeight, -1 for OfFloor
	Height  float64 // where it was read
	Read    float64 // a width is a diameter
	// Min and Max are the smallest and the greatest value that the other blanks,
	// its sisters, have there. Sisters is how many were compared: all of them, or
	// those that were measured near that height.
	Sisters  int
	Min, Max float64
	// Below and Above are the walls next to it, where they speak against it and no
	// sisters were compared; 0 where there is none.
	Below, Above float64
	// Least is the thinnest wall that a blown glass has, where this one is thinner and nothing
	// else speaks against it; else 0.
	Least float64
}

// minSisters is how many sisters it takes to doubt a reading.
const minSisters = 2

// Doubts returns the readings that do not agree with the other blanks of a set, and
// the walls that do not agree with those next to them, blank by blank. A single blank
// is a set of one.
func Doubts(set []*glass.Blank) []Doubt {
	bySet := againstSisters(set)
	var all []Doubt
	for i, blank := range set {
		var own []Doubt
		for _, d := range bySet {
			if d.Blank == blank {
				own = append(own, d)
			}
		}
		for _, d := range Beside(blank) {
			told := func(o Doubt) bool { return o.Of == OfWall && o.Station == d.Station }
			if !slices.ContainsFunc(own, told) && !d.borneOut(but(set, i)) {
				own = append(own, d)
			}
		}
		own = append(own, tooThin(blank, own, but(set, i))...)
		all = append(all, own...)
	}
	return all
}

// againstSisters returns the readings that do not agree with the other blanks.
func againstSisters(set []*glass.Blank) []Doubt {
	if len(set) < minSisters+1 {
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
				height = middleHeight(sisters) // compare its other readings as if it were as tall as they are
			}
			all = append(all, doubted...)
		}
	}
	return all
}

// doubtsOf returns the doubted readings of one quantity of a blank, which is taken
// to have the given height.
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
		d.Min, d.Max = between(of, r.at, sisters)
		all = append(all, d)
	}
	return all
}

// but returns the blanks without the i-th.
func but(blanks []*glass.Blank, i int) []*glass.Blank {
	return slices.Delete(slices.Clone(blanks), i, i+1)
}

// honest is how far a reading may be from its sisters' because no two glasses are
// alike, as the logarithm of a ratio: common practice, no source.
func honest(of Quantity) float64 {
	if of == OfWall || of == OfFloor {
		return math.Log(1.3)
	}
	return math.Log(1.06)
}

// comparison is how far a blank's readings of a quantity are from others', as
// logarithms of ratios: off as they are, own after taking away by how much the
// blank's other readings are off.
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

// many is how many sisters it takes until one more that is misread leaves their
// middle where it is. With more than these, the one furthest off is not counted.
const many = 5

// usually is how far a set's blanks are from one another in a quantity.
type usually struct {
	of  Quantity
	set []*glass.Blank
	far []scatter // how far each blank is from all the others; nil for a small set
}

func newUsually(of Quantity, set []*glass.Blank) usually {
	u := usually{of: of, set: set}
	if len(set) > many {
		u.far = farthest(of, set)
	}
	return u
}

// without returns how far the sisters of one blank are from the others: the
// furthest of them or, of many, the next to furthest.
func (u usually) without(i int) scatter {
	if u.far == nil {
		return worst(farthest(u.of, but(u.set, i)), 0)
	}
	return worst(slices.Delete(slices.Clone(u.far), i, i+1), 1)
}

// farthest returns, for each blank, the most by which it is off from all the others.
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

// worst returns the greatest of each kind after leaving out the given number.
func worst(all []scatter, leaveOut int) scatter {
	nth := func(of func(scatter) float64) float64 {
		values := make([]float64, len(all))
		for i, s := range all {
			values[i] = of(s)
		}
		slices.Sort(values)
		return values[len(values)-1-leaveOut]
	}
	return scatter{nth(func(s scatter) float64 { return s.off }), nth(func(s scatter) float64 { return s.own })}
}

// doubts reports whether a reading is too far off, by a number of sisters.
func (s scatter) doubts(c comparison, i, sisters int) bool {
	const (
		twice = 2.2
		few   = 3.0 // with this many sisters it has to be off twice as far as with very many
		// If the sisters agree with one another this many times better than the reading
		// agrees with them, few of them are enough: the reading need only be off by
		// agreed times what is honest.
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
