// Package pattern lays a job's motifs out on a blank, turns them into grooves, and checks
// whether they can be cut: job → layout → grooves → findings. It draws nothing and
// touches no file.
//
// Call Lay first, or New for one blank. They make a Plan with its Cuts and Findings. For a
// job that asks for the "most" of something that clears, call search.Lay instead: it finds
// the counts. Package search also looks for cures of findings.
//
// From a Plan, Order is the order in which to cut, Groups the findings as a person reads
// them, Outside and Inside the faces that paper is laid on. NewSet compares the plans of a
// set of blanks. To lay a job out again after every edit, keep an Editor; to check many
// variants of a job, keep an Evaluator.
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
	// Face is which face of the glass it is the plan of. The plan of a side has that of the
	// base, where the job has one, in Base; its cuts are numbered on from those of the side.
	Face job.Face
	Base *Plan
	side *Plan // of the same piece, in the plan of its base

	// Surface is the face that is cut, with the chart on which cuts have their places.
	Surface geometry.Surface
	// Cone is the cone nearest to the band: paper is laid and the chart drawn on it.
	// WorstRadiusError is the largest error in radius it leaves in the band.
	Cone             geometry.Cone
	WorstRadiusError float64
	goreError        func() float64 // of the paper, 0 unless made of gores; computed on first use

	Repeats int
	Band    job.Band
	sized   []job.Motif // the job's, in the sizes this blank is given

	// Cuts holds the cuts of one period of the pattern, in the order of their ids. All
	// others are copies of these, turned round the glass.
	Cuts   []Cut
	ground func() float64 // what they take, computed on first use: see Volume
	// Period is after how many repeats the pattern recurs: one, two where odd and even
	// repeats differ, or more where the job says by number what stands on them.
	Period int
	before int // how many cuts are numbered before this plan's
	letter int // how many groups of findings are lettered before this plan's

	// NoneClears lists the counts for which the job asks for the most that clears, and
	// package search found that not even the smallest clears.
	NoneClears []job.Count

	Findings []Finding
	Slight   []Finding // misses too small for a hand to hold: notes, where there is no like finding
	Chords   []Chord   // empty for one repeat
	doubts   []slips.Doubt
}

// Cut is one groove on the glass.
type Cut struct {
	ID             int // from 1 in repeat 1 of the side, counted on through the repeats
	Repeat         int // from 1
	Motif          int // number in the job, from 0
	Part           string
	Joins          []int        // ids of the cuts that it meets or crosses by design
	*groove.Groove              // shared with the figures and plans that have the same: never changed
	Hand           *groove.Hand // what the hand does along it; never nil
	Wheel          int          // number in the job's rack, from 0
	Left           float64      // the least glass left anywhere under it

	twin twin
}

// Chord is one setting for dividers: the chord that steps a circle off into the repeats.
type Chord struct {
	Circle
	Parts int
	Chord float64
}

// Straight reports whether the surface counts as a cylinder: the cone's radius changes by
// less than a hundredth of a millimetre over the band.
func (p *Plan) Straight() bool { return cylindrical(p.Cone, p.Band.Foot, p.Band.Top) }

func cylindrical(cone geometry.Cone, foot, top float64) bool {
	return math.Abs(cone.RadiusAt(top)-cone.RadiusAt(foot)) < 0.01
}
