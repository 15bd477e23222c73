package pattern

import (
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// chosen is what share answers, but for what stands in its motifs apart from
// their size.
type chosen struct {
	band  job.Band
	sizes [][2]job.Measure // width and height, motif by motif
	err   error
}

// share is share for a draft. Most changes that are tried leave the motifs where
// they stood and as large and as deep as they were, and with them the band: it is
// looked for once.
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

// stands writes all that the band and the sizes of a job's motifs depend on, on a
// blank by its number or on the set.
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
