package pattern

import (
	"context"
	"sync"

	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// figure is a motif in the first repeat: its cuts, their lines on the chart, and the
// grooves they leave. Once cut it doesn't change, so plans can share it. It holds neither
// its motif's number in the job nor its wheel's in the rack: an edit may change both.
type figure struct {
	cuts    []motifs.Cut
	lines   []groove.Line
	toll    toll
	grooves []groove.Groove // nil until they are cut
	next    []groove.Groove // the same in the second repeat of a period; nil until needed
}

// lines lays the lines of a motif's cuts where it is set.
func (p *Plan) lines(of drawing) []groove.Line {
	lines := make([]groove.Line, len(of.cuts))
	for i, c := range of.cuts {
		lines[i] = of.line(c.Path)
	}
	p.runOn(of.motif, lines)
	return lines
}

// mark names one cut of a plan before it is cut: the motif, and the cut's number in it.
type mark struct{ motif, number int }

// cutAll cuts the figures that are not cut yet, and lists the plan's cuts from all of them.
// A motif whose figure is nil is left out. The error is the context's.
func (p *Plan) cutAll(ctx context.Context, figures []*figure) error {
	if err := p.cutFigures(ctx, figures); err != nil {
		return err
	}
	p.list(figures)
	p.joinCopies()
	return nil
}

// cutFigures cuts the grooves of the figures that have none yet. It runs in parallel over
// cuts, not motifs, as one motif may be most of the work.
func (p *Plan) cutFigures(ctx context.Context, figures []*figure) error {
	var marks []mark
	fresh := map[int][]groove.Groove{}
	for i, f := range figures {
		if f == nil || f.grooves != nil {
			continue
		}
		fresh[i] = make([]groove.Groove, len(f.cuts))
		for number := range f.cuts {
			marks = append(marks, mark{i, number})
		}
	}
	err := each(ctx, len(marks), func() func(int) {
		cutter := p.cutter()
		return func(n int) {
			k := marks[n]
			fresh[k.motif][k.number] = p.cut(cutter, k.motif, figures[k.motif].lines[k.number])
		}
	})
	if err != nil {
		return err
	}
	for i, grooves := range fresh {
		figures[i].grooves = grooves
	}
	return nil
}

// cut cuts a line of a motif.
func (p *Plan) cut(cutter *groove.Cutter, motif int, line groove.Line) groove.Groove {
	m := p.sized[motif]
	return cutter.Cut(line, p.Job.Rack[m.Wheel], m.Depth, p.Job.Limits.Polish)
}

// cutter returns a cutter for the plan's blank.
func (p *Plan) cutter() *groove.Cutter { return groove.NewCutter(&p.Surface, p.Blank.ThinInner()) }

// list fills in the plan's cuts, repeat by repeat, with the joins that their motifs name.
func (p *Plan) list(figures []*figure) {
	total := 0
	for _, f := range figures {
		if f != nil {
			total += len(f.cuts)
		}
	}
	p.Cuts = make([]Cut, 0, total*p.Period) // or less
	for repeat := range p.Period {
		for i, f := range figures {
			if f == nil || !p.stands(i, repeat) {
				continue
			}
			first := len(p.Cuts) + 1
			grooves := f.in(p, repeat)
			for number, drawn := range f.cuts {
				p.Cuts = append(p.Cuts, Cut{ID: first + number, Repeat: repeat + 1, Motif: i, Part: drawn.Part, Groove: grooves[number]})
				c := &p.Cuts[len(p.Cuts)-1]
				c.Left, c.Wheel = c.Remains.Min, p.sized[i].Wheel
				for _, other := range drawn.Joins {
					c.Joins = append(c.Joins, first+other)
				}
			}
		}
	}
	p.ground = sync.OnceValue(p.grinds)
}

// stands reports whether a motif stands in a repeat of the period.
func (p *Plan) stands(motif, repeat int) bool {
	on := p.sized[motif].On
	return on == job.Each || (on == job.Odd) == (repeat == 0)
}

// in returns the figure's grooves in a repeat of the period.
func (f *figure) in(p *Plan, repeat int) []groove.Groove {
	if repeat == 0 {
		return f.grooves
	}
	if f.next == nil {
		f.next = make([]groove.Groove, len(f.grooves))
		for n, g := range f.grooves {
			f.next[n] = g.Turned(&p.Surface, p.PitchAngle())
		}
	}
	return f.next
}
