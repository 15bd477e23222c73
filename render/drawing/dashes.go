package drawing

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
)

// minGap is the shortest gap between two dashes, in millimetres, that a
// printer still shows.
const minGap = 0.4

// Dashes returns the dashes that a stroke is drawn as, flat at both ends, or nil
// where it is a whole line. The dashes begin where the stroke does, and an open
// stroke ends on a dash too: for that all lengths of the pen are stretched or
// shortened by one factor, which is near 1 unless the stroke is no longer than
// a few dashes. A stroke too short to show a gap is one dash.
func (s Stroke) Dashes() [][]geometry.Point {
	if len(s.Pen.Dash) == 0 {
		return nil
	}
	run := s.Points
	if s.Closed {
		run = append(run[:len(run):len(run)], run[0])
	}
	lengths := fitted(s.Pen.Dash, lengthOf(run), s.Closed)
	if lengths == nil {
		return [][]geometry.Point{run}
	}
	return drawnOf(run, lengths)
}

// fitted returns the lengths drawn and left out in turn along a line of a
// length, which they fill from end to end; nil where it is too short to be
// parted.
func fitted(dash []float64, length float64, closed bool) []float64 {
	if len(dash)%2 == 1 { // what is drawn the first time round is left out the next
		dash = slices.Concat(dash, dash)
	}
	period, shortest := 0.0, math.Inf(1)
	for i, d := range dash {
		period += d
		if i%2 == 1 {
			shortest = min(shortest, d)
		}
	}
	last := dash[0] // of an open line, after the periods
	if closed {
		last = 0
	}
	n := max(1, math.Round((length-last)/period))
	factor := length / (n*period + last)
	if !(factor*shortest >= minGap) {
		return nil
	}
	var all []float64
	for range int(n) {
		for _, d := range dash {
			all = append(all, factor*d)
		}
	}
	if closed {
		return all
	}
	return append(all, factor*last)
}

// drawnOf parts a line into lengths drawn and left out in turn, and returns
// those drawn. The last length ends where the line does.
func drawnOf(line []geometry.Point, lengths []float64) [][]geometry.Point {
	var all [][]geometry.Point
	at, i := line[0], 1
	for k, left := range lengths {
		part := []geometry.Point{at}
		for ; i < len(line); i++ {
			step := r2.Norm(r2.Sub(line[i], at))
			if step > left && k+1 < len(lengths) {
				at = between(at, line[i], left/step)
				part = append(part, at)
				break
			}
			left -= step
			at = line[i]
			part = append(part, at)
			if left <= 0 && k+1 < len(lengths) {
				i++
				break
			}
		}
		if k%2 == 0 && len(part) > 1 {
			all = append(all, part)
		}
	}
	return all
}

func lengthOf(line []geometry.Point) (length float64) {
	for i := 1; i < len(line); i++ {
		length += r2.Norm(r2.Sub(line[i], line[i-1]))
	}
	return length
}
