// Package pattern lays a job's motifs out on a blank, turns them into grooves,
// and says whether they can be cut: job → layout → grooves → findings. It draws
// nothing, touches no file and seeks no cures: package search does.
//
// Call search.Lay first, or Lay of a job without counts that are to be "most": it
// makes a Plan of each blank, with its Cuts and Findings. NewSet compares the plans
// of a set. To try many jobs that differ little from one another, keep an Evaluator.
package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
	"roundlay/pattern/slips"
)

// Plan is a job laid out on one of its blanks.
type Plan struct {
	Job   *job.Job
	Blank *glass.Blank

	// Surface is the outside of the glass, with the chart that cuts are told on.
	Surface geometry.Surface
	// Cone is the one that the band comes nearest to, on which paper is laid and
	// the chart is drawn, with the worst error in radius it leaves inside the band.
	Cone             geometry.Cone
	WorstRadiusError float64
	goreError        func() float64 // of its paper, where that is made of gores; reckoned when first asked for

	Repeats int
	Band    job.Band
	sized   []job.Motif // the job's, in the sizes this blank is given

	// Cuts holds the cuts of one period of the pattern, in the order of their
	// ids. The others are these, turned round the glass.
	Cuts []Cut
	// Period is how many repeats the pattern takes to come round to itself: one,
	// or two where odd and even repeats differ.
	Period int

	// NoneClears lists the counts asked for as the most that clear of which not even
	// the least does, where package search has looked for them.
	NoneClears []job.Count

	Findings []Finding
	Slight   []Finding // by so little that no hand holds it: notes, where there is no like finding
	Chords   []Chord   // none where there is one repeat
	doubts   []slips.Doubt
}

// Cut is one groove on the glass.
type Cut struct {
	ID     int // from 1 in repeat 1, counted on through the repeats
	Repeat int // from 1
	Motif  int // the job's
	Part   string
	Joins  []int // ids of all that it meets or crosses by design
	groove.Groove
	Left float64 // the least glass left under any of it
}

// Chord is one setting for dividers: a circle of the job, stepped in its repeats.
type Chord struct {
	Circle
	Parts int
	Chord float64
}

// Straight reports whether the sides are so nearly upright that the surface is
// called a cylinder: the radius changes by less than a hundredth of a
// millimetre over the band.
func (p *Plan) Straight() bool {
	return math.Abs(p.Cone.RadiusAt(p.Band.Top)-p.Cone.RadiusAt(p.Band.Foot)) < 0.01
}
