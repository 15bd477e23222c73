package desk

import (
	"math"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/motifs/strokes"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// stroke is one stroke of a pen on the wrap, in points of the flat map.
type stroke struct {
	Points [][2]float64 `json:"points"`
	// Step is how many mm a pixel of the screen is: a place is known to half of it.
	Step float64 `json:"step"`
}

const (
	mostPoints = 20000 // of one stroke
	largeStep  = 3     // mm
)

// drawn returns the changes of a job's text that add a stroke: a new drawing for the path
// "motif", one line more for the path of a drawing that has its lines in the job.
func (e Edit) drawn(text string, ask layRequest) ([]job.Revision, error) {
	var by stroke
	if err := read(e.Value, &by); err != nil {
		return nil, err
	}
	if err := by.check(); err != nil {
		return nil, err
	}
	j, err := ask.readAs(text)
	if err != nil {
		return nil, err
	}
	blank, err := ask.blankOf(j)
	if err != nil {
		return nil, err
	}
	inside, err := insideOf(ask.Side)
	if err != nil {
		return nil, err
	}
	s := sketch{ask: ask, text: text, blank: blank, inside: inside, stroke: by}
	if e.Path == "motif" {
		return s.begun(j)
	}
	i, ok := numberIn(motifPath().FindStringSubmatch(e.Path), 1, len(j.Motifs))
	if !ok {
		return nil, badRequest("edits: there is no %q to draw a stroke in", e.Path)
	}
	return s.added(j, i)
}

func (s stroke) check() error {
	if n := len(s.Points); n < 2 || n > mostPoints {
		return badRequest("edits: read a stroke of %d points; accepted: 2 to %d", n, mostPoints)
	}
	for _, at := range s.Points {
		if !(math.Abs(at[0]) <= farthest && math.Abs(at[1]) <= farthest) {
			return badRequest("edits: read a stroke at %v; accepted: places up to %g off", at, farthest)
		}
	}
	if !(s.Step >= 0 && s.Step <= largeStep) {
		return badRequest("edits: read the step %g; accepted: 0 to %d mm", s.Step, largeStep)
	}
	return nil
}

// sketch is a stroke that becomes part of a job.
type sketch struct {
	stroke
	ask    layRequest
	text   string
	blank  *glass.Blank
	inside bool
}

// spots returns where the stroke lies on the glass, in the repeat in which its middle is
// nearest to an angle.
func (s sketch) spots(p *pattern.Plan, theta float64) []geometry.Spot {
	flat := flatOf(p, s.inside)
	spots := make([]geometry.Spot, len(s.Points))
	least, most := math.Inf(1), math.Inf(-1)
	near := theta
	for i, at := range s.Points {
		spots[i] = flat.ReverseNear(geometry.Point{X: at[0], Y: at[1]}, near)
		near = spots[i].Theta // a stroke has no jumps
		least, most = min(least, near), max(most, near)
	}
	pitch := p.PitchAngle()
	by := pitch * math.Round(((least+most)/2-theta)/pitch)
	for i := range spots {
		spots[i].Theta -= by
	}
	return spots
}

// begun returns the changes that make a drawing of the stroke. A job that states no band gives
// its motifs one that suits their places, so the place is worked out again for the band that
// comes of it.
func (s sketch) begun(j *job.Job) ([]job.Revision, error) {
	p, err := pattern.Bare(j, s.blank)
	if err != nil {
		return nil, err
	}
	const rounds = 5
	var made []job.Revision
	for range rounds {
		if made, err = s.on(p); err != nil {
			return nil, err
		}
		after, err := s.after(made)
		if err != nil {
			return made, nil // what is wrong with it the layout says
		}
		next, err := pattern.Bare(after, s.blank)
		if err != nil || next.Band == p.Band {
			break
		}
		p = next
	}
	return made, nil
}

// after returns the job with changes made to it.
func (s sketch) after(changes []job.Revision) (*job.Job, error) {
	text, err := job.Revise([]byte(s.text), changes...)
	if err != nil {
		return nil, err
	}
	return s.ask.readAs(string(text))
}

// on returns the new drawing as it stands on a plan: its lines in mm about its middle.
func (s sketch) on(p *pattern.Plan) ([]job.Revision, error) {
	spots := s.spots(p, 0)
	box := geometry.EmptyBox()
	for _, at := range spots {
		box = box.Union(geometry.BoxOf(geometry.Point{X: at.Theta, Y: at.Along}))
	}
	middle := geometry.Spot{Theta: (box.Min.X + box.Max.X) / 2, Along: (box.Min.Y + box.Max.Y) / 2}
	radius := radiusAt(p, middle)
	points := make([]geometry.Point, len(spots))
	for i, at := range spots {
		points[i] = geometry.Point{X: (at.Theta - middle.Theta) * radius, Y: at.Along - middle.Along}
	}
	line, err := s.finished(points, 1)
	if err != nil {
		return nil, err
	}
	d, err := strokes.ReadPaths([]string{line}, strokes.Options{})
	if err != nil {
		return nil, &job.RevisionError{Path: "motif", Words: err.Error()}
	}
	width, height := d.Box.Size()
	foot, top := p.Surface.AlongAt(p.Band.Foot), p.Surface.AlongAt(p.Band.Top)
	repeat := radius * p.PitchAngle()
	x := (d.Box.Min.X+d.Box.Max.X)/2/repeat + middle.Theta/p.PitchAngle()
	y := ((d.Box.Min.Y+d.Box.Max.Y)/2 + middle.Along - foot) / (top - foot)
	// What a share can't say is said as a length.
	up, high := share(max(y, 0)), share(max(height/(top-foot), job.MinShare))
	if y > 1 {
		up = p.Job.Length.FormatDecimal(y * (top - foot))
	}
	if height > top-foot {
		high = p.Job.Length.FormatDecimal(height)
	}
	return []job.Revision{{Op: "add", Path: "motif", Value: map[string]any{
		"kind": motifs.DrawingName, "paths": []any{line}, "at": []any{share(min(max(x, -0.5), 0.5)), up},
		"width": share(min(max(width/repeat, job.MinShare), job.MaxWide)), "height": high,
	}}}, nil
}

// radiusAt is the radius at a place.
func radiusAt(p *pattern.Plan, at geometry.Spot) float64 {
	return p.Surface.RadiusAt(p.Surface.HeightAt(at.Along))
}
