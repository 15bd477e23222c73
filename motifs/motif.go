package motifs

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
)

// Kind is one kind of motif: its parameters, and how it is drawn.
type Kind struct {
	Name   string
	About  string // one line, no full stop
	Params []Param
	Parts  []string // of its cuts, whatever the parameters
	// Mirrored says that the cuts are the same seen from left and from right,
	// whatever the parameters: each has a mirror image with the same Part, or is it.
	Mirrored bool
	// Draw returns the cuts for a full set of values, each within its range. The
	// same values give the same cuts. All of them lie inside the box.
	Draw func(v Values, aspect float64) []Cut

	// Hand is what the hand does along the cuts of its parts where the parameter hand is 1;
	// nil where the kind has none.
	Hand map[string]Gesture

	// What follows is of a kind that is made for one motif of one job: see Made.

	// Keys are those by which a job says what it is made of.
	Keys []ContentKey
	// Contents is the same for two kinds of one name only if they draw the same.
	Contents string
	// Aspect is the width of the kind's box over its height in its own proportions; 0 where
	// it has none.
	Aspect float64
	// Notes say what was left out or changed in making it.
	Notes []Note
}

// Note is something about a motif's making that is good to know.
type Note struct {
	Text string
	// Share is the length that the text tells, as a share of the longer side of the motif's box
	// in its own proportions; 0 where it tells none.
	Share float64
}

// Sort is how a parameter is written in a job.
type Sort int

// A parameter is a number, a whole count, or a switch that is true or false.
const (
	Number Sort = iota
	Count
	Switch
)

// Param is one parameter of a motif, with its default and its range, ends
// included. A switch is 0 or 1. Angles are degrees here, as they are in a job.
type Param struct {
	Name, About       string
	Sort              Sort
	Default, Min, Max float64
	// Bends says that the cuts' lines are straighter the nearer the number is to zero.
	Bends bool
	// Longer says which way to take the number where the shortest cuts are too short:
	// 1 up, -1 down; 0 where it doesn't help.
	Longer int
	// Shows is how far from zero the number can be for the kind as it is listed, where its
	// contents allow less than the range; 0 where all of the range can be drawn.
	Shows float64
}

// Values holds a value for each parameter of a kind, by name.
type Values map[string]float64

// Count returns a parameter that is a whole number.
func (v Values) Count(name string) int { return int(math.Round(v[name])) }

// Radians returns a parameter that is an angle. A job has it in degrees.
func (v Values) Radians(name string) float64 { return geometry.Degrees(v[name]).Radians() }

// On reports whether a switch is on.
func (v Values) On(name string) bool { return v[name] != 0 }

// Cut is one groove of a motif: the part it plays, its centre line in the unit
// repeat, and the cuts of the same motif, by index, that it meets or crosses by
// design. A join is given on both of its cuts.
type Cut struct {
	Part string
	Path geometry.Bezier
	// More continues the path: each curve begins where the one before it ends, without
	// a corner.
	More []geometry.Bezier
	// Closed says that the line ends where it begins, without a corner there either.
	Closed bool
	// Side is the half of the motif in which the cut is, for its gesture.
	Side  Side
	Joins []int
}

// Curves returns the number of curves that the cut's line is made of.
func (c *Cut) Curves() int { return 1 + len(c.More) }

// Curve returns one of them, from 0.
func (c *Cut) Curve(i int) *geometry.Bezier {
	if i == 0 {
		return &c.Path
	}
	return &c.More[i-1]
}

// At returns a point of the cut's line: t goes from 0 at its start to 1 at its end, and
// each curve has an equal share of it.
func (c *Cut) At(t float64) geometry.Point {
	at := t * float64(c.Curves())
	i := min(max(int(at), 0), len(c.More))
	return c.Curve(i).At(at - float64(i))
}

// All returns every kind whose cuts follow from its parameters, in the order they are
// listed.
func All() []Kind {
	return []Kind{
		Leaf(), Sprig(), Wheat(), Fan(), Star(), Diamond(), Lattice(),
		Basket(), Chevron(), Flute(), Olives(), Ladder(), Ring(), Swag(),
	}
}

// Find returns the kind of the given name. One that is made for a motif has the cuts of
// an example.
func Find(name string) (Kind, bool) {
	for _, kinds := range [...]func() []Kind{All, Made} { // an example is drawn only where it is wanted
		all := kinds()
		if i := slices.IndexFunc(all, func(k Kind) bool { return k.Name == name }); i >= 0 {
			return all[i], true
		}
	}
	return Kind{}, false
}

// Defaults returns the value every parameter has when it is not given.
func (k Kind) Defaults() Values {
	v := make(Values, len(k.Params))
	for _, p := range k.Params {
		v[p.Name] = p.Default
	}
	return v
}

// Param returns the parameter of the given name.
func (k Kind) Param(name string) (Param, bool) {
	i := slices.IndexFunc(k.Params, func(p Param) bool { return p.Name == name })
	if i < 0 {
		return Param{}, false
	}
	return k.Params[i], true
}

// Accepts reports whether a value lies in the parameter's range, and is whole
// where it has to be.
func (p Param) Accepts(value float64) bool {
	return value >= p.Min && value <= p.Max && (p.Sort == Number || value == math.Trunc(value))
}

// Range says in words what the parameter accepts.
func (p Param) Range() string {
	switch p.Sort {
	case Count:
		return fmt.Sprintf("a whole number from %g to %g", p.Min, p.Max)
	case Switch:
		return "true or false"
	}
	return fmt.Sprintf("a number from %g to %g", p.Min, p.Max)
}

// join records on both cuts that they meet by design.
func join(cuts []Cut, i, j int) {
	cuts[i].Joins = append(cuts[i].Joins, j)
	cuts[j].Joins = append(cuts[j].Joins, i)
}
