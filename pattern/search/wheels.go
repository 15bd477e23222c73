package search

import (
	"context"
	"math"

	"roundlay/motifs"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// OnWheel is a whole design, all of its motifs, cut with one wheel of the rack.
type OnWheel struct {
	Wheel int
	Clear bool
	// Against is the design as asked, checked on the first of the blanks on which it
	// doesn't clear: its findings are what stands in the way. It is nil where it clears,
	// and where it isn't known.
	Against *pattern.Plan
	// Unfit says why the design can't be laid out on it as asked, nil where it can:
	// it may be deeper than the wheel's middle.
	Unfit error
	// Short says that the search came to its end before all counts and depths were
	// tried.
	Short bool
	// Count is the first count in the job, with no key where there is none, and Max the
	// largest with which everything clears; 0 where none does.
	Count job.Count
	Max   int
	// Depth is the greatest, by the caliper's step, at which everything clears
	// with all motifs cut to it; 0 where none does.
	Depth  float64
	Groove float64 // the widest groove, at the depths the job asks for
	// Land is the smallest land between two cuts that don't join, if it is below
	// Within: farther than that nobody looks. It is 0 where grooves run together.
	Land float64
}

// Within is how far apart cuts are whose land is measured, in millimetres.
const Within = 10.0

// Wheels puts a design on each wheel of its rack in turn. Of a set, what it
// tells holds on all of the blanks. The error says why the job can't be laid out on
// any wheel, or is the context's.
func Wheels(ctx context.Context, j *job.Job) ([]OnWheel, error) {
	r, err := Resolve(ctx, j)
	if err != nil {
		return nil, err
	}
	j = r.Job
	for _, at := range faces(j) {
		if _, err := pattern.NewEvaluator().DraftOn(ctx, j, at.blank, at.face); err != nil {
			return nil, err // whatever the wheel
		}
	}
	f := newFitSearch(ctx, j)
	all := make([]OnWheel, len(j.Rack))
	for w := range j.Rack {
		on := j.Clone()
		for i := range on.Motifs {
			on.Motifs[i].Wheel = w
			for k := range on.Motifs[i].Parts {
				on.Motifs[i].Parts[k].Wheel = nil
			}
		}
		fit := OnWheel{Wheel: w, Count: firstCount(j), Land: Within}
		if f.Spent() {
			fit.Unfit, fit.Short = pattern.ErrSpent, true
			all[w] = fit
			continue
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		fit.Clear = f.clears(on)
		for _, at := range faces(j) {
			if err := fit.measure(ctx, on, at, f.Evaluator); err != nil && fit.Unfit == nil {
				fit.Unfit = err
			}
		}
		f.mostOn(&fit, on)
		f.depthOn(&fit, on)
		fit.Short = f.Spent()
		if !fit.Clear && !fit.Short && fit.Unfit == nil {
			fit.Against = f.against(on)
		}
		all[w] = fit
	}
	return all, ctx.Err()
}

func firstCount(j *job.Job) job.Count {
	for i, m := range j.Motifs {
		for _, p := range m.Kind.Params {
			if p.Sort == motifs.Count {
				return job.Count{Motif: i, Key: p.Name}
			}
		}
	}
	return job.Count{}
}

// measure looks at the grooves and the land on a face of one blank.
func (w *OnWheel) measure(ctx context.Context, j *job.Job, at faceOf, e *pattern.Evaluator) error {
	p, err := e.LayOn(ctx, j, at.blank, at.face)
	if err != nil {
		return err
	}
	for _, c := range p.Cuts {
		w.Groove = max(w.Groove, c.Width)
	}
	w.Land = min(w.Land, p.MinLand(w.Land))
	return nil
}

// against returns a job's plan on the first of its blanks on which it doesn't clear.
func (f *fitSearch) against(j *job.Job) *pattern.Plan {
	for _, b := range j.Blanks {
		p, err := pattern.New(f.ctx, j, b)
		if err != nil {
			return nil
		}
		for _, face := range p.Faces() {
			f.Spend(int(face.Work()))
			if len(face.Findings) > 0 {
				return face
			}
		}
	}
	return nil
}

// mostOn finds the largest first count with which everything clears.
func (f *fitSearch) mostOn(w *OnWheel, j *job.Job) {
	if w.Count.Key == "" {
		return
	}
	for _, p := range f.problems(j) {
		if !has(p, w.Count.Motif) {
			return // no count mends that
		}
	}
	param, _ := j.Motifs[w.Count.Motif].Kind.Param(w.Count.Key)
	for n := param.Max; n >= param.Min; n-- {
		if f.clears(j.With(job.Change{Motif: w.Count.Motif, Key: w.Count.Key, Value: n})) {
			w.Max = int(n)
			return
		}
	}
}

// depthOn finds the greatest depth at which everything clears. Shallower may
// clear less, where the band is all the glass that may be cut: it is higher then.
func (f *fitSearch) depthOn(w *OnWheel, j *job.Job) {
	step, thickest := j.Length.Step(), 0.0
	for _, b := range j.Blanks {
		for _, s := range b.Stations {
			thickest = max(thickest, s.Wall)
		}
		if j.Base != nil {
			thickest = max(thickest, b.Floor)
		}
	}
	for n := math.Floor((thickest - j.Limits.Leave) / step); n >= 1; n-- {
		on := j.Clone()
		for i := range on.Motifs {
			on.Motifs[i].Depth = n * step
			for k := range on.Motifs[i].Parts {
				on.Motifs[i].Parts[k].Depth = nil
			}
		}
		if f.clears(on) {
			w.Depth = n * step
			return
		}
	}
}
