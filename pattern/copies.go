package pattern

import (
	"slices"

	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// period returns after how many repeats a job's pattern on a face recurs: the least number
// of them after which every motif stands as before.
func period(j *job.Job, face job.Face) int {
	layout := j.LayoutOf(face)
	byNumber, apart := j.ByNumber(face), false
	for i := range j.Motifs {
		if m := &j.Motifs[i]; m.Face == face {
			byNumber, apart = byNumber || m.Middle, apart || m.On != job.Each
		}
	}
	switch {
	case !byNumber && apart:
		return 2
	case !byNumber:
		return 1
	}
	all := layout.Repeats
	var stands [][]bool
	for i := range j.Motifs {
		if m := &j.Motifs[i]; m.Face == face {
			on := make([]bool, all)
			for _, repeat := range layout.Copies(*m) {
				on[repeat-1] = true
			}
			stands = append(stands, on)
		}
	}
	for n := 1; n < all; n++ {
		if all%n == 0 && !slices.ContainsFunc(stands, func(on []bool) bool { return !slices.Equal(on[n:], on[:all-n]) }) {
			return n
		}
	}
	return all
}

// shape is the lines of a motif in the first repeat as they run on into its copies to
// either side, and the grooves they leave. A motif whose copies stand at one distance all
// round has one shape. Where a copy lacks a neighbour, its lines end there.
type shape struct {
	lines   []groove.Line
	onwards [][2]bool       // of each line, whether it runs on from its start and from its end
	grooves []groove.Groove // nil until they are cut
	rooted  [][]int         // of each, the numbers of those it joins by an end: see rooted; nil for none
}

// copyOf is a copy of a motif in a repeat of the period, counted from 0.
type copyOf struct {
	repeat, shape int
	grooves       []groove.Groove // turned to where it stands; nil until needed
}

// twin says which cuts are the same, but for the repeat they are in: those of a motif
// that have the same twin.
type twin struct{ number, shape int }

// place lays the lines of a drawn motif, in each shape that its copies have.
func (f *figure) place(p *Plan, of drawing) {
	f.hands = of.hands()
	lines := p.lines(of, f.hands)
	ends := newMeeting(p, of, lines, f.hands)
	copies := p.layout().Copies(of.motif)
	for i, repeat := range copies {
		if repeat > p.Period {
			break
		}
		left, right := copies[(i+len(copies)-1)%len(copies)], copies[(i+1)%len(copies)]
		var onwards [][2]bool
		if p.Face == job.Base && len(copies) == 1 {
			onwards = ends.shut() // all the way round is where it stands itself
		} else {
			onwards = ends.onwards(repeatsBetween(left, repeat, p.Repeats), repeatsBetween(repeat, right, p.Repeats))
		}
		k := slices.IndexFunc(f.shapes, func(s shape) bool { return slices.Equal(s.onwards, onwards) })
		if k < 0 {
			k = len(f.shapes)
			f.shapes = append(f.shapes, shape{lines: running(lines, onwards), onwards: onwards})
		}
		f.copies = append(f.copies, copyOf{repeat: repeat - 1, shape: k})
	}
}

// repeatsBetween returns how many repeats lie from one to the next to its right, of all those round
// the glass. From a repeat to itself it is all of them.
func repeatsBetween(from, to, all int) int {
	if to <= from {
		to += all
	}
	return to - from
}

// cut reports whether the figure's grooves are cut.
func (f *figure) cut() bool { return len(f.shapes) > 0 && f.shapes[0].grooves != nil }

// like returns the first shape in which a cut is the same as in a given one.
func (f *figure) like(shape, number int) int {
	for k := range shape {
		if f.shapes[k].onwards[number] == f.shapes[shape].onwards[number] {
			return k
		}
	}
	return shape
}

// copyOn returns the copy that stands on a repeat of the period.
func (f *figure) copyOn(repeat int) (*copyOf, bool) {
	i := slices.IndexFunc(f.copies, func(c copyOf) bool { return c.repeat == repeat })
	if i < 0 {
		return nil, false
	}
	return &f.copies[i], true
}

// in returns the grooves of a copy, where it stands.
func (f *figure) in(p *Plan, c *copyOf) []groove.Groove {
	if c.repeat == 0 {
		return f.shapes[c.shape].grooves
	}
	if c.grooves == nil {
		c.grooves = make([]groove.Groove, len(f.cuts))
		for n, g := range f.shapes[c.shape].grooves {
			c.grooves[n] = g.Turned(&p.Surface, float64(c.repeat)*p.PitchAngle())
		}
	}
	return c.grooves
}

// Free returns the repeats on which no motif stands, from 1 on.
func (p *Plan) Free() []int {
	if p.OnlyMiddle() {
		return nil
	}
	var all []int
	for repeat := 1; repeat <= p.Repeats; repeat++ {
		if !slices.ContainsFunc(p.Job.Motifs, func(m job.Motif) bool { return m.Face == p.Face && p.layout().Stands(m, repeat) }) {
			all = append(all, repeat)
		}
	}
	return all
}

// OnlyMiddle reports whether all that stands on the plan's face is over its middle, so that
// its repeats mean nothing.
func (p *Plan) OnlyMiddle() bool {
	stands := false
	for _, m := range p.Job.Motifs {
		if m.Face == p.Face && !m.Middle {
			return false
		}
		stands = stands || m.Face == p.Face
	}
	return stands
}
