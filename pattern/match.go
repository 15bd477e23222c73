package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// matched reports whether the job's blanks must match.
func matched(j *job.Job) bool { return j.Layout.Match == job.Set && len(j.Blanks) > 1 }

// share returns the band and the motifs, in their sizes, for a blank. Where the set must
// match, they fit every blank:
//
// The band has the same heights above the table on every blank. Where the job states
// none, it is the tallest that every blank carries.
//
// A motif's place stays a share of the repeat, as the repeats divide every blank equally.
// Its width and height become lengths: the least that its shares give on any blank. So on
// a wider blank the motifs are no wider, and there is more land between them. A motif that
// meets its next copy is the exception: its width stays a share of the repeat. Otherwise a
// ring would not close, nor a swag hang from the next.
func share(j *job.Job, blank *glass.Blank) (job.Band, []job.Motif, error) {
	if !matched(j) {
		band, err := findBand(j, blank)
		return band, j.Motifs, err
	}
	band, _, _, err := commonBand(j)
	if err != nil {
		return band, nil, err
	}
	motifs, _, err := oneSize(j, band)
	return band, motifs, err
}

// oneSize returns the job's motifs in one size that fits every blank. For each motif, from
// is the number of the blank that its width comes from; -1 where the width is a length in
// the job, or stays a share of the repeat.
func oneSize(j *job.Job, band job.Band) (motifs []job.Motif, from []int, err error) {
	motifs, from = make([]job.Motif, len(j.Motifs)), make([]int, len(j.Motifs))
	copy(motifs, j.Motifs)
	widths, heights := make([]float64, len(motifs)), make([]float64, len(motifs))
	for i := range motifs {
		from[i], widths[i], heights[i] = -1, math.Inf(1), math.Inf(1)
	}
	for b, blank := range j.Blanks {
		p := uncut(j, blank, band)
		if !p.hasCone() {
			return nil, nil, noCone(j, blank, band)
		}
		for i, m := range j.Motifs {
			if m.Face != job.Side {
				continue
			}
			s := p.set(m)
			heights[i] = min(heights[i], s.height)
			if s.width < widths[i] {
				widths[i], from[i] = s.width, b
			}
		}
	}
	for i, m := range j.Motifs {
		if m.Face != job.Side {
			continue
		}
		if m.Inside > 0 { // its sizes are shares of the motif it is inside
			from[i] = -1
			continue
		}
		if m.Height.Fraction {
			motifs[i].Height = job.Measure{Value: heights[i]}
		}
		if m.Width.Fraction && !meets(j.Layout, m) {
			motifs[i].Width = job.Measure{Value: widths[i]}
		} else {
			from[i] = -1
		}
	}
	return motifs, from, nil
}

// meets reports whether a motif reaches its own next copy, one repeat further or, where it
// doesn't stand on each, more. Different motifs never meet by design.
func meets(l job.Layout, m job.Motif) bool {
	upright := math.Abs(math.Sin(m.Turn.Radians())) < 1e-9 // its width lies round the glass
	return upright && m.Width.Value >= l.Stride(m)-1e-3
}

// across returns the diameter at the middle of a band.
func across(profile *geometry.Profile, band job.Band) float64 {
	return 2 * profile.Radius((band.Foot+band.Top)/2)
}
