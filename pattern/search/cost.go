package search

import (
	"math"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Cost is what changes take from the look of a job on its first blank; below
// zero, what they add. Each length is that of the motif that loses or gains most.
type Cost struct {
	Cuts   int     // round the whole glass
	Depth  float64 // that the cuts come out with, on average, mm
	Groove float64 // of the grooves, likewise
	Width  float64 // the motif's width, mm
	Height float64 // and height
	Moved  float64 // how far a motif is moved, mm
	Bent   float64 // how far a number that bends a motif's lines is changed, of its range
	// Redrawn is likewise how far another number of a motif is changed; what keeps its
	// own shape no more is redrawn by a tenth.
	Redrawn float64
	// Score adds up the shares that are lost, by each motif's share in the cuts:
	// offers are ranked by it. Where a job has to change in order to clear, a share
	// that is won takes it as far from what was asked for as one that is lost.
	Score float64
}

// looks is what is seen of each motif on one blank.
type looks []seen

type seen struct {
	cuts          int // round the glass
	depth, groove float64
	at            [2]job.Measure
	on            job.On
	face          job.Face
	pattern.MotifBox
}

// look sees what a job comes to on a blank, each motif on its own face. It returns the band
// of the side too.
func (f *fitSearch) look(j *job.Job, blank *glass.Blank) (looks, job.Band, error) {
	all, band := make(looks, len(j.Motifs)), job.Band{}
	for _, face := range j.Cut() {
		d, err := f.DraftOn(f.ctx, j, blank, face)
		if err != nil {
			return nil, band, err
		}
		if face == job.Side {
			band = d.Plan.Band
		}
		all.see(d)
	}
	return all, band, nil
}

// see adds the motifs of a draft's face.
func (all looks) see(d *pattern.Draft) {
	for i, m := range d.Motifs {
		if m.Face != d.Plan.Face {
			continue
		}
		cuts := d.Cuts(i)
		all[i] = seen{cuts: len(cuts) * d.Plan.Periods(), at: [2]job.Measure{m.X, m.Y}, on: m.On, face: m.Face, MotifBox: d.Plan.Box(m)}
		for _, c := range cuts {
			all[i].depth += c.Depth / float64(len(cuts))
			all[i].groove += c.Width / float64(len(cuts))
		}
	}
}

// moved returns how far a motif stands from where it stood, in millimetres and in
// shares of the repeat and the band; 0 where it stands in the same place of a
// band that has changed. On the other repeats it is a whole one away, and yet as much
// of the design as it was: that counts as another word does among cures.
func (b seen) moved(a seen) (far, share float64) {
	const elsewhere = 0.2
	if a.on != b.on {
		return b.Repeat, elsewhere
	}
	if a.at == b.at {
		return 0, 0
	}
	x, y := math.Abs(a.Middle.X-b.Middle.X), math.Abs(a.Middle.Y-b.Middle.Y)
	return math.Hypot(x, y), x/b.Repeat + y/b.Band
}

// wide returns what a motif's width is compared by: on a base its share of the repeat, for
// there the same design is wider the farther out its band begins.
func (b seen) wide() float64 {
	if b.face == job.Base {
		return b.Width / b.Repeat
	}
	return b.Width
}

// redrawn returns by how much of its range a number of a motif has changed: one that
// bends its lines, and another.
func redrawn(was, is job.Motif) (bent, other float64) {
	const shape = 0.1
	for _, p := range was.Kind.Params {
		if p.Sort != motifs.Number {
			continue
		}
		by := math.Abs(is.Values[p.Name]-was.Values[p.Name]) / (p.Max - p.Min)
		if p.Bends {
			bent = max(bent, by)
		} else {
			other = max(other, by)
		}
	}
	if was.Shape != is.Shape {
		other = max(other, shape)
	}
	return bent, max(other, handled(was, is))
}

// handled returns by how much the hand along a motif's cuts has changed, of the part where
// that is most: its rock by what a job may have, its swell by the mean depth.
func handled(was, is job.Motif) float64 {
	most := 0.0
	for _, part := range was.Kind.Parts {
		for _, c := range []job.Change{{Part: part, Key: "rock"}, {Part: part, Key: "swell"}} {
			before, _ := c.Has(&job.Job{Motifs: []job.Motif{was}})
			after, _ := c.Has(&job.Job{Motifs: []job.Motif{is}})
			by := math.Abs(after.Value - before.Value)
			if c.Key == "rock" {
				by /= 2 * job.MaxRock
			}
			most = max(most, by)
		}
	}
	return most
}

// weigh finds what an offer costs.
func (f *fitSearch) weigh(o *Offer) {
	after, _, err := f.look(o.Job, o.Job.Blanks[0]) // it clears: it is weighed, whatever was tried
	if err != nil {
		o.Score = math.Inf(1)
		return
	}
	before := f.before[0]
	total := 0
	for _, b := range before {
		total += b.cuts
	}
	further := func(into *float64, by float64) {
		if math.Abs(by) > math.Abs(*into) && math.Abs(by) > 1e-6 {
			*into = by
		}
	}
	for i, b := range before {
		a := after[i]
		o.Cuts += b.cuts - a.cuts
		further(&o.Depth, b.depth-a.depth)
		further(&o.Groove, b.groove-a.groove)
		further(&o.Width, b.Width-a.Width)
		further(&o.Height, b.Height-a.Height)
		far, moved := b.moved(a)
		bent, other := redrawn(f.job.Motifs[i], o.Job.Motifs[i])
		o.Bent, o.Redrawn = max(o.Bent, bent), max(o.Redrawn, other)
		o.Moved = max(o.Moved, far)
		part := float64(b.cuts) / float64(max(total, 1))
		for _, lost := range []float64{
			1 - float64(a.cuts)/float64(max(b.cuts, 1)), 1 - a.depth/b.depth,
			1 - a.wide()/b.wide(), 1 - a.Height/b.Height, math.Abs(math.Log(a.groove/b.groove)) / 4, moved, bent, other,
		} {
			if !f.clear {
				lost = math.Abs(lost)
			}
			o.Score += part * lost
		}
	}
}
