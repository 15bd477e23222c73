package search

import (
	"context"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// problems lists what stands in a job's way on any of its blanks, and the glass
// where it can't be laid out at all. A problem of fit is a kind of finding on a motif
// by itself, or two motifs that don't clear one another, whatever their parts; of no
// motif it is the glass, for which no paper can be made.
func (f *fitSearch) problems(j *job.Job) []pattern.Problem { return f.problemsOn(j, f.TryOn) }

type drafting func(context.Context, *job.Job, *glass.Blank, job.Face) (*pattern.Draft, error)

// faceOf is a face of a blank.
type faceOf struct {
	blank *glass.Blank
	face  job.Face
}

// faces lists the faces that a job cuts of all its blanks.
func faces(j *job.Job) []faceOf {
	var all []faceOf
	for _, b := range j.Blanks {
		for _, face := range j.Cut() {
			all = append(all, faceOf{b, face})
		}
	}
	return all
}

func (f *fitSearch) problemsOn(j *job.Job, draft drafting) []pattern.Problem {
	var all []pattern.Problem
	add := func(motifs []int, kinds ...pattern.Kind) {
		for _, k := range kinds {
			if p := (pattern.Problem{Kind: k, Motifs: pattern.MotifPair(motifs)}); !slices.Contains(all, p) {
				all = append(all, p)
			}
		}
	}
	for _, at := range faces(j) {
		d, err := draft(f.ctx, j, at.blank, at.face)
		if err != nil || d.Plan.Ungored() {
			add(nil, pattern.Uneven)
		}
		if err != nil {
			continue
		}
		for i := range d.Motifs {
			add([]int{i}, d.Kinds(i)...)
			for k := range i {
				if !d.ClearsPair(k, i) {
					add([]int{k, i}, pattern.Crowded)
				}
			}
		}
	}
	return all
}

// has reports whether a problem has to do with a motif.
func has(p pattern.Problem, i int) bool { return p.Motifs[0] == i || p.Motifs[1] == i }

// without reports whether a job is without one problem on all of its blanks.
func (f *fitSearch) without(j *job.Job, p pattern.Problem) bool {
	a, b := p.Motifs[0], p.Motifs[1]
	return !slices.ContainsFunc(j.Blanks, func(blank *glass.Blank) bool {
		d, err := f.TryOn(f.ctx, j, blank, j.Motifs[a].Face)
		if b < 0 {
			return err != nil || slices.Contains(d.Kinds(a), p.Kind)
		}
		return err != nil || !d.ClearsPair(a, b)
	})
}

// uneven reports whether a blank of a job leaves the cone of its band, or a face of it can't
// be laid out at all: no change to a motif mends that.
func (f *fitSearch) uneven(j *job.Job) bool {
	return slices.ContainsFunc(faces(j), func(at faceOf) bool {
		d, err := f.TryOn(f.ctx, j, at.blank, at.face)
		return err != nil || d.Plan.Ungored()
	})
}
