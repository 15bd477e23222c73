package pattern

import (
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// arrangement is a result of share in the form in which it is kept: the band and the
// sizes, width and height, that a job's motifs are given on a blank.
type arrangement struct {
	band  job.Band
	sizes [][2]job.Measure
}

// faceOf is a face of a blank.
type faceOf struct {
	blank *glass.Blank
	face  job.Face
}

// arrange returns what share does, or what arrangeBase does for a base.
func arrange(j *job.Job, at faceOf) (arrangement, error) {
	if at.face == job.Base {
		return arrangeBase(j, at.blank)
	}
	band, sized, err := share(j, at.blank)
	if err != nil {
		return arrangement{}, err
	}
	a := arrangement{band, make([][2]job.Measure, len(sized))}
	for i, m := range sized {
		a.sizes[i] = [2]job.Measure{m.Width, m.Height}
	}
	return a, nil
}

// sized returns a job's motifs in the sizes they are given.
func (a arrangement) sized(j *job.Job) []job.Motif {
	all := make([]job.Motif, len(j.Motifs))
	for i, m := range j.Motifs {
		m.Width, m.Height = a.sizes[i][0], a.sizes[i][1]
		all[i] = m
	}
	return all
}

// placings returns a job's motifs with only what their arrangement depends on: without
// what is drawn, the wheel and the motif's own limits.
func placings(j *job.Job) []job.Motif {
	all := make([]job.Motif, len(j.Motifs))
	for i, m := range j.Motifs {
		all[i] = shaping(m)
		all[i].Kind, all[i].Values, all[i].Inside = motifs.Kind{}, nil, m.Inside
		if m.Kind.Aspect != 0 { // its size may follow from its contents
			all[i].Kind = motifs.Kind{Contents: m.Kind.Contents}
		}
	}
	return all
}
