package desk

import (
	"math"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/motifs/strokes"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

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
