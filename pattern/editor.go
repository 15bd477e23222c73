package pattern

import (
	"context"
	"fmt"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Editor lays one job out again and again while it is edited. It doesn't draw, cut or
// measure again what an edit leaves unchanged:
//
//	e := new(pattern.Editor)
//	plans, err := e.Lay(ctx, j)       // all of it
//	plans, err = e.Lay(ctx, edited)   // what differs
//
// The plans are the same as those of Lay. What is kept is found again by all the values
// it depends on, never by its number in the job. So it can't be out of date, and the job
// may be read from its file again for each layout. Only what the last two layouts used is
// kept, so undoing an edit is cheap too.
//
// The zero Editor is ready to use. An Editor is for one goroutine at a time; its plans can
// be shared.
type Editor struct {
	arrangements shelf[string, arrangement]
	stages       shelf[string, *Plan]
	figures      shelf[string, numbered]
	lands        shelf[landKey, verdict]
	count        int  // of the figures made so far
	once         bool // there is only one layout: figures and lands aren't kept
}

// numbered is a figure with a number of its own.
type numbered struct {
	*figure
	number int
}

// Lay lays a job out on each of its blanks, in their order, and checks it; or only on the
// blanks given, still as members of their set. To lay a job out again after every edit,
// use an Editor.
func Lay(ctx context.Context, j *job.Job, blanks ...*glass.Blank) ([]*Plan, error) {
	return (&Editor{once: true}).Lay(ctx, j, blanks...)
}

// Lay lays a job out on each of its blanks, in their order, and checks it; or only on the
// blanks given, still as members of their set. It looks for no cures.
func (e *Editor) Lay(ctx context.Context, j *job.Job, blanks ...*glass.Blank) (plans []*Plan, err error) {
	defer func() { e.finish(err == nil) }()
	if len(blanks) == 0 {
		blanks = j.Blanks
	}
	if err := settled(j); err != nil {
		return nil, err
	}
	plans = make([]*Plan, len(blanks))
	for i, b := range blanks {
		if plans[i], err = e.plan(ctx, j, b); err != nil {
			return nil, err
		}
	}
	doubt(plans...)
	return plans, nil
}

// finish ends a layout.
func (e *Editor) finish(done bool) {
	e.arrangements.finish(done)
	e.stages.finish(done)
	e.figures.finish(done)
	e.lands.finish(done)
}

// plan lays a job out on a blank and checks it: its side and, where the job has one, its base.
func (e *Editor) plan(ctx context.Context, j *job.Job, blank *glass.Blank) (*Plan, error) {
	p, err := e.planOn(ctx, j, faceOf{blank, job.Side}, 0)
	if err != nil || j.Base == nil {
		return p, err
	}
	if p.Base, err = e.planOn(ctx, j, faceOf{blank, job.Base}, p.Totals().Cuts); err != nil {
		return nil, err
	}
	p.Base.letter = len(p.Groups())
	p.Base.side = p
	return p, nil
}

// planOn lays a job out on one face of a blank and checks it. Its cuts are numbered on from
// those before.
func (e *Editor) planOn(ctx context.Context, j *job.Job, at faceOf, before int) (*Plan, error) {
	blank := at.blank
	p, figures, err := e.lay(ctx, j, at, before)
	if err != nil {
		return nil, err
	}
	if err := p.refuseCrossed(); err != nil {
		return nil, err
	}
	if err := p.refuseOverlaid(); err != nil {
		return nil, err
	}
	c, err := p.check(ctx, e.known(p, figures))
	switch {
	case err != nil:
		return nil, checking(blank, err)
	case c.overfull:
		return nil, p.refuseCrowded(c.found)
	}
	p.Findings, p.Slight = c.found, p.apartFrom(c.found, c.slight)
	return p, nil
}

// lay lays a job out on a face of a blank.
func (e *Editor) lay(ctx context.Context, j *job.Job, at faceOf, before int) (*Plan, []numbered, error) {
	blank := at.blank
	if err := ctx.Err(); err != nil {
		return nil, nil, layingOut(blank, err)
	}
	a, err := e.arrange(j, at)
	if err != nil {
		return nil, nil, err
	}
	p, stage, err := e.stage(j, at, a.band)
	if err != nil {
		return nil, nil, err
	}
	p.sized, p.before = a.sized(j), before
	figures, err := e.figured(ctx, p, stage)
	if err != nil {
		return nil, nil, err
	}
	bare := make([]*figure, len(figures))
	for i, f := range figures {
		bare[i] = f.figure
	}
	if err := p.cutAll(ctx, bare); err != nil {
		return nil, nil, layingOut(blank, err)
	}
	return p, figures, nil
}

// arrange is the function arrange with its results kept. Errors aren't kept: they name a
// place in the job's file.
func (e *Editor) arrange(j *job.Job, at faceOf) (arrangement, error) {
	of := []*glass.Blank{at.blank}
	if matched(j) {
		of = j.Blanks
	}
	k := string(keyOf(of, j.Limits, int(at.face), j.LayoutOf(at.face), j.Layout.Match, placings(j)))
	a, known := e.arrangements.get(k)
	if !known {
		var err error
		if a, err = arrange(j, at); err != nil {
			return a, err
		}
		e.arrangements.put(k, a)
	}
	return a, nil
}

// stage is bare with its results kept, and with the divider settings. It also returns the
// key of everything that the motifs stand on.
func (e *Editor) stage(j *job.Job, at faceOf, band job.Band) (*Plan, key, error) {
	layout := j.LayoutOf(at.face)
	k := keyOf(at.blank, int(at.face), band, layout.Repeats, layout.Bare, period(j, at.face), int(j.Length))
	base, known := e.stages.get(string(k))
	if !known {
		var err error
		if base, err = bare(j, at, band); err != nil {
			return nil, nil, err
		}
		base.Chords = base.chords()
		base.Job, base.sized = nil, nil // each plan has its own
		e.stages.put(string(k), base)
	}
	p := *base
	p.Job, p.Blank = j, at.blank
	p.Chords = slices.Clone(base.Chords)
	return &p, k, nil
}

// layingOut and checking wrap a context's error with what it interrupted.
func layingOut(blank *glass.Blank, err error) error {
	return fmt.Errorf("laying out blank %q: %w", blank.Name, err)
}

func checking(blank *glass.Blank, err error) error {
	return fmt.Errorf("checking blank %q: %w", blank.Name, err)
}
