package pattern

import (
	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// runTogether reports whether two grooves of a base that touch do no more than run into one
// another, as rays do towards the middle: their centre lines don't cross. They are crowded
// then, as two cuts of one repeat are; copies whose lines cross lie on top of one another.
func (p *Plan) runTogether(a, b *groove.Groove) bool {
	return p.Face == job.Base && !crossed(a, b)
}

// crossed reports whether the centre lines of two grooves cross.
func crossed(a, b *groove.Groove) bool {
	for i, from := range a.Samples[:len(a.Samples)-1] {
		to := a.Samples[i+1].At
		for k, other := range b.Samples[:len(b.Samples)-1] {
			if parts(from.At, to, other.At, b.Samples[k+1].At) && parts(other.At, b.Samples[k+1].At, from.At, to) {
				return true
			}
		}
	}
	return false
}

// parts reports whether the line through two places has two others on either side, or one
// of them on it.
func parts(from, to, one, other geometry.Point) bool {
	along := r2.Sub(to, from)
	return r2.Cross(along, r2.Sub(one, from))*r2.Cross(along, r2.Sub(other, from)) <= 0
}
