package pattern

import (
	"context"
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Lay lays a job out on each of its blanks, in their order, or on those given,
// as members of the set still, and checks it. For a job that is laid out again after
// every edit there is Editor.
func Lay(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*Plan, error) {
	return (&Editor{once: true}).Lay(ctx, j, blanks...)
}

// matched reports whether the job's blanks are to match.
func matched(j *job.Job) bool { return j.Layout.Match == job.Set && len(j.Blanks) > 1 }

// share returns the band and the motifs that a blank is given. Where the set is
// to match, they are those that every blank can carry:
//
// The band is the same in height above the table. Where the job states none, it
// is the tallest that every blank carries.
//
// A motif keeps its share of the repeat in where it stands, for the repeats are
// equal parts of every blank; but its width and its height become lengths: the
// least that its shares come to on any blank. So on a wider blank the motifs are
// no wider, and the land between them takes up the difference. A motif that
// meets its next copy is the exception: it keeps its share of the repeat in
// width, or a ring would not close nor a swag hang from the next.
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

// oneSize returns the job's motifs in the one size that every blank can carry,
// and for each the blank, by number, that its width comes from: -1 where it has
// none, being a length already or its share of each repeat still.
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
			s := p.set(m)
			heights[i] = min(heights[i], s.height)
			if s.width < widths[i] {
				widths[i], from[i] = s.width, b
			}
		}
	}
	for i, m := range j.Motifs {
		if m.Inside > 0 { // its shares are of the motif it is inside
			from[i] = -1
			continue
		}
		if m.Height.Fraction {
			motifs[i].Height = job.Measure{Value: heights[i]}
		}
		if m.Width.Fraction && !meets(m) {
			motifs[i].Width = job.Measure{Value: widths[i]}
		} else {
			from[i] = -1
		}
	}
	return motifs, from, nil
}

// meets reports whether a motif reaches its own next copy, one repeat on or,
// where it stands on every other repeat, two. Cuts of different motifs never
// meet by design, so there only the land between them changes.
func meets(m job.Motif) bool {
	upright := math.Abs(math.Sin(m.Turn.Radians())) < 1e-9 // its width lies round the glass
	return upright && m.Width.Value >= m.Stride()-1e-3
}

// across returns the diameter at the middle of a band.
func across(profile *geometry.Profile, band job.Band) float64 {
	return 2 * profile.Radius((band.Foot+band.Top)/2)
}
