package desk

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

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
	shortest   = 8     // times its tremor: nothing shorter is a stroke
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
	i, ok := numberIn(motifPath.FindStringSubmatch(e.Path), 1, len(j.Motifs))
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
	radius := p.Surface.RadiusAt(p.Surface.HeightAt(middle.Along))
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

// finished makes the stroke fit to cut, and returns it as path data. points are in the
// drawing's units, y up, of which a millimetre has so many.
func (s sketch) finished(points []geometry.Point, perMillimetre float64) (string, error) {
	box := geometry.BoxOf(points...)
	width, height := box.Size()
	size := math.Max(width, height)
	step := math.Max(s.Step*perMillimetre, strokes.DefaultStep*size)
	tremor := math.Max(0.6*step, strokes.DefaultTremor*size)
	if !(size > shortest*tremor) {
		return "", &job.RevisionError{Path: "motif", Words: "that stroke is too short to cut"}
	}
	points = evenly(points, 0.9*step) // what is shorter than a step is smoothed
	var text strings.Builder
	for i, at := range points {
		fmt.Fprintf(&text, "%c%s %s", " ML"[min(i+1, 2)], decimal(at.X, 4), decimal(-at.Y, 4))
	}
	if ends := r2.Norm(r2.Sub(points[0], points[len(points)-1])); ends <= 4*step && size > 20*step {
		text.WriteByte('Z')
	}
	d, err := strokes.ReadPaths([]string{text.String()}, strokes.Options{
		Tremor: tremor / size, Step: step / size, Corner: meant(),
	})
	if err != nil {
		return "", &job.RevisionError{Path: "motif", Words: err.Error()}
	}
	return pathOf(d), nil
}

// evenly returns a line of points with more or fewer on it, so far apart along it.
func evenly(points []geometry.Point, apart float64) []geometry.Point {
	all := points[:1:1]
	left := apart // to the next
	for i := 1; i < len(points); i++ {
		way := r2.Sub(points[i], points[i-1])
		length, at := r2.Norm(way), 0.0
		for ; length-at >= left; left = apart {
			at += left
			all = append(all, r2.Add(points[i-1], r2.Scale(at/length, way)))
		}
		left -= length - at
	}
	return append(all, points[len(points)-1])
}

// meant is the sharpest turn of a hand that is a bend. Over the few pixels in which it is
// looked for a small ring turns by more than the sharpest that a wheel is carried through.
func meant() geometry.Angle { return geometry.Degrees(40) }

// added returns the changes that add the stroke to a drawing, whose other strokes stay where
// they are: its box grows, and with it its place and size.
func (s sketch) added(j *job.Job, motif int) ([]job.Revision, error) {
	path := job.Item("motif", motif)
	m := j.Motifs[motif]
	lines := linesOf(s.text, path)
	if m.Kind.Name != motifs.DrawingName || lines == nil {
		return nil, &job.RevisionError{Path: path, Words: "strokes can be drawn in a drawing that has its lines in the job"}
	}
	old, err := strokes.ReadPaths(lines, strokes.Options{})
	if err != nil {
		return nil, err
	}
	p, err := pattern.Bare(j, s.blank)
	if err != nil {
		return nil, err
	}
	g := p.Grip(motif)
	now := p.Box(m)
	width, height := old.Box.Size()
	spots := s.spots(p, g.Middle().Theta)
	points := make([]geometry.Point, len(spots))
	for i, at := range spots {
		in := g.In(at)
		points[i] = geometry.Point{X: old.Box.Min.X + (in.X+0.5)*width, Y: old.Box.Min.Y + in.Y*height}
	}
	line, err := s.finished(points, math.Sqrt(width*height/(now.Width*now.Height)))
	if err != nil {
		return nil, err
	}
	lines = append(lines, line)
	all, err := strokes.ReadPaths(lines, strokes.Options{})
	if err != nil {
		return nil, &job.RevisionError{Path: path, Words: err.Error()}
	}
	return s.grown(g, p, motif, old.Box, all.Box, lines, j)
}

// grown returns the changes that give a drawing more lines and the box round them.
func (s sketch) grown(g pattern.Grip, p *pattern.Plan, motif int, was, box geometry.Box, lines []string, j *job.Job) ([]job.Revision, error) {
	path, m := job.Item("motif", motif), j.Motifs[motif]
	width, height := was.Size()
	wider, higher := box.Size()
	middle := g.At((box.Min.X+box.Max.X)/2/width-was.Min.X/width-0.5, ((box.Min.Y+box.Max.Y)/2-was.Min.Y)/height)
	x, y := g.MovedTo(middle)
	set := func(key string, value any) job.Revision {
		return job.Revision{Op: "set", Path: path + "." + key, Value: value}
	}
	all := []job.Revision{set("paths", lines), set("at", []any{s.measure(x, j), s.measure(y, j)})}
	for _, side := range []struct {
		key   string
		m     job.Measure
		times float64
	}{{"width", m.Width, wider / width}, {"height", m.Height, higher / height}} {
		if side.m.Value == 0 {
			continue // it follows from the other
		}
		if side.key == "width" && !side.m.Fraction && m.Shape == job.Taper && m.Inside == 0 {
			// A length is that at the box's middle, which is on another width of the glass now.
			side.times *= radiusAt(p, middle) / radiusAt(p, g.Middle())
		}
		side.m.Value *= side.times
		all = append(all, set(side.key, s.measure(side.m, j)))
	}
	return all, nil
}

func radiusAt(p *pattern.Plan, at geometry.Spot) float64 {
	return p.Surface.RadiusAt(p.Surface.HeightAt(at.Along))
}

// measure writes a measure so finely that strokes stay where they were drawn.
func (s sketch) measure(m job.Measure, j *job.Job) string {
	if !m.Fraction {
		return j.Length.FormatDecimal(m.Value)
	}
	return share(m.Value)
}

func share(x float64) string { return decimal(x, 4) }

// linesOf returns the lines that a drawing has in the job; nil where it has none.
func linesOf(text, path string) []string {
	form, err := job.NewForm([]byte(text))
	if err != nil {
		return nil
	}
	for _, t := range form.Tables {
		for _, f := range t.Fields {
			if f.Key == motifs.PathsKey && f.Given && (f.Path == path+"."+motifs.PathsKey || path == "motif[1]" && f.Path == "motif."+motifs.PathsKey) {
				return f.List
			}
		}
	}
	return nil
}

// pathOf writes a drawing's strokes as path data, y down, so finely that no rounding turns a
// curve against the next.
func pathOf(d *strokes.Drawing) string {
	width, height := d.Box.Size()
	digits := 2
	for digits < 6 && math.Pow10(-digits) > math.Max(width, height)/20000 {
		digits++
	}
	var b strings.Builder
	point := func(lead string, at geometry.Point) {
		b.WriteString(lead + decimal(at.X, digits) + " " + decimal(-at.Y, digits))
	}
	for i, s := range d.Strokes {
		if i == 0 || s.Curves[0][0] != d.Strokes[i-1].Curves[len(d.Strokes[i-1].Curves)-1][3] {
			if i > 0 {
				b.WriteByte(' ')
			}
			point("M ", s.Curves[0][0])
		}
		for _, c := range s.Curves {
			point(" C ", c[1])
			point(" ", c[2])
			point(" ", c[3])
		}
		if s.Closed {
			b.WriteString(" Z")
		}
	}
	return b.String()
}
