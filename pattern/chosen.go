package pattern

import (
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// chosen is a kept result of share: of the motifs it keeps only the sizes.
type chosen struct {
	band  job.Band
	sizes [][2]job.Measure // width and height, motif by motif
	err   error
}

// share is the function share with its results kept. Most changes that are tried leave
// every motif's place, size and depth as they were, and so the band too.
func (e *Evaluator) share(j *job.Job, blank *glass.Blank) (job.Band, []job.Motif, error) {
	of := -1 // the set
	if !matched(j) {
		of = slices.Index(j.Blanks, blank)
	}
	key := string(stands(j, of))
	c, known := e.bands[key]
	if !known {
		var sized []job.Motif
		c.band, sized, c.err = share(j, blank)
		for _, m := range sized {
			c.sizes = append(c.sizes, [2]job.Measure{m.Width, m.Height})
		}
		e.bands[key] = c
	}
	if c.err != nil {
		return c.band, nil, c.err
	}
	motifs := slices.Clone(j.Motifs)
	for i, size := range c.sizes {
		motifs[i].Width, motifs[i].Height = size[0], size[1]
	}
	return c.band, motifs, nil
}

// stands writes everything that the band and the sizes of a job's motifs depend on. The
// blank is given by its number, or -1 for a set that matches.
func stands(j *job.Job, blank int) []byte {
	b := number(nil, float64(blank), float64(len(j.Blanks)), float64(j.Layout.Repeats))
	if band := j.Layout.Band; band != nil {
		b = number(b, band.Foot, band.Top)
	}
	for _, m := range j.Motifs {
		b = describePlace(b, m)
	}
	return b
}
