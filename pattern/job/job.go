package job

import (
	"maps"
	"slices"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
)

// Job is one decoration for one set of blanks. Lengths are millimetres and
// angles radians, whatever the file was written in.
type Job struct {
	Title  string
	Length geometry.Unit // the unit its owner reads
	Blanks []*glass.Blank
	Limits Limits
	Rack   []groove.Wheel
	Shop   Shop
	Layout Layout
	Base   *Layout // of the underside; nil where the job has nothing there
	Motifs []Motif

	source source
}

// Clone returns a copy whose motifs and layout can be changed without changing the
// job's own.
func (j *Job) Clone() *Job {
	c := *j
	c.Motifs = slices.Clone(j.Motifs)
	for i := range c.Motifs {
		c.Motifs[i].Values = maps.Clone(c.Motifs[i].Values)
		c.Motifs[i].Parts = slices.Clone(c.Motifs[i].Parts)
	}
	c.Layout = j.Layout.clone()
	if j.Base != nil {
		base := j.Base.clone()
		c.Base = &base
	}
	return &c
}

// Limits is what the shop will not go beyond.
type Limits struct {
	Land   float64 // least uncut glass between two footprints
	Leave  float64 // least glass left under a groove
	Rim    float64 // glass below the rim kept clear of cuts
	Foot   float64 // glass above the table kept clear of cuts
	Edge   float64 // glass inside the edge of the base kept clear of cuts
	Clear  float64 // least clear share of a cut that joins another, 0 to 1
	Polish float64 // how much smoothing and polishing widen a groove on each side
	Reach  float64 // least share of the depth asked that a short mark has to reach, 0 to 1
}

// DefaultLimits returns the limits of a job that states none: common practice,
// no source.
func DefaultLimits() Limits {
	const inch = geometry.MillimetresPerInch
	return Limits{Land: inch / 32, Leave: inch / 16, Rim: inch * 3 / 8, Foot: inch / 4, Edge: inch / 8, Clear: 0.5, Reach: 0.5}
}

// Layout divides the glass.
type Layout struct {
	Repeats int
	// Bare is the repeats that are left free of every motif that doesn't list them
	// itself, in order. nil leaves none free.
	Bare []int
	// Band is the range of heights given to the decoration. nil gives it all the
	// glass that can be cut.
	Band *Band
	// Match says what the blanks of a set share.
	Match Match
}

// clone returns a copy whose band can be changed without changing the layout's own.
func (l Layout) clone() Layout {
	if l.Band != nil {
		band := *l.Band
		l.Band = &band
	}
	return l
}

// Band is a range of heights.
type Band struct{ Foot, Top float64 }

// Match says how the blanks of a set are laid out beside one another.
type Match int

// Every blank has the band and the size of motif that all of them can carry, so
// that the set matches; or each goes to its own limits.
const (
	Set Match = iota
	Own
)

// Matches lists the words for Match in a job, in order.
func Matches() []string { return []string{"set", "own"} }

func (m Match) String() string { return Matches()[m] }

// Motif is one motif of the job as it is placed in every repeat, or in every
// other one.
type Motif struct {
	Name   string // what the person calls it, if anything; see Called
	Kind   motifs.Kind
	Values motifs.Values // one for every parameter of the kind, but for those of Most
	// Most names the counts that are to be as large as clears, in the order of the
	// kind's parameters. They have a value once that is found.
	Most  []string
	Face  Face
	Wheel int // the rack's
	Depth float64
	Parts []Part // those that have something for themselves, each once

	// Inside is the number, from 1, of an earlier motif whose space this one fills. Its
	// place and size are then measured in that one's box, and it is turned, mirrored
	// and repeated with it. 0 is a motif on its own.
	Inside int

	// Middle says that it stands once, flat over the middle of the base. Its width and height
	// may then be shares of the base's band from edge to edge, and X and Y say nothing.
	Middle bool

	X, Y          Measure        // where its middle is: from the repeat's middle line, and from the band's foot along the slant
	Width, Height Measure        // of the pitch, and of the band along the slant; see Size
	Turn          geometry.Angle // anticlockwise as seen from outside
	Mirror        bool
	On            On
	// Only is the repeats the motif stands on, in order, where the job lists them. On then
	// says nothing.
	Only  []int
	Shape Shape

	// The motif's own limits; nil where the job's hold.
	Land, Clear *float64
	// What the hand does along its cuts; nil where the kind says it. See GestureOf.
	Swell []float64
	Rock  *[2]geometry.Angle

	// CutOrder, from 1, orders the motifs that one wheel cuts. 0 leaves the order to
	// the depth and the length of the cuts.
	CutOrder int

	// Line is the line of the job file on which the motif starts.
	Line int
}

// Called returns the word for the motif: its name, else what it is.
func (m Motif) Called() string {
	if m.Name != "" {
		return m.Name
	}
	return m.Kind.Name
}

// Size returns the width and the height of the motif's box, where the wholes are given of
// which they can be shares. Of a kind with proportions of its own, one that is zero
// follows from the other.
func (m Motif) Size(across, up float64) (width, height float64) {
	width, height = m.Width.Of(across), m.Height.Of(up)
	switch aspect := m.Kind.Aspect; {
	case aspect == 0:
	case m.Width.follows():
		width = height * aspect
	case m.Height.follows():
		height = width / aspect
	}
	return width, height
}

// Count is one of the counts of a job's motifs.
type Count struct {
	Motif int // its number, from 0
	Key   string
}

// Measure is a fraction of something, or a length.
type Measure struct {
	Value    float64
	Fraction bool
}

// follows reports whether the measure is none of its own.
func (m Measure) follows() bool { return m == Measure{} }

// Of returns the length the measure has where its whole is given.
func (m Measure) Of(whole float64) float64 {
	if m.Fraction {
		return m.Value * whole
	}
	return m.Value
}

// On says which repeats carry a motif.
type On int

// A motif stands on each repeat, on the odd ones (1, 3, …) or on the even ones.
const (
	Each On = iota
	Odd
	Even
)

// Ons lists the words for On in a job, in order.
func Ons() []string { return []string{"each", "odd", "even"} }

func (o On) String() string { return Ons()[o] }

// Shape says what a motif does on a glass that narrows.
type Shape int

// A motif narrows with the pitch, or keeps its own shape.
const (
	Taper Shape = iota
	True
)

// Shapes lists the words for Shape in a job, in order.
func Shapes() []string { return []string{"taper", "true"} }

func (s Shape) String() string { return Shapes()[s] }
