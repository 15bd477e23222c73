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
	cuts   []motifs.Cut
	hands  []groove.Hand // of the cuts; nil where all are even
	toll   toll
	shapes []shape
	copies []copyOf // of one period, in the order of their repeats
}

// hand returns what the hand does along a cut. even is what it does along an even one.
func (f *figure) hand(number int, even *groove.Hand) *groove.Hand {
	if f.hands == nil {
		return even
	}
	return &f.hands[number]
}

// lines lays the lines of a motif's cuts where it is set, as the hand goes along them. They
// don't run on.
func (p *Plan) lines(of drawing, hands []groove.Hand) []groove.Line {
	lines := make([]groove.Line, len(of.cuts))
	for i := range of.cuts {
		c := &of.cuts[i]
		lines[i] = of.line(c)
		if hands == nil {
			continue
		}
		line, err := lines[i].ByHand(hands[i])
		if err != nil { // the job's reader and job.Change take none
			panic(err)
		}
		lines[i] = line
	}
	return lines
}

// mark names one cut of a plan before it is cut: the motif, which shape of it, and the
// cut's number in it.
type mark struct{ motif, shape, number int }

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
// cuts, not motifs, as one motif may be most of the work. A figure has its grooves once all
// of them are cut.
func (p *Plan) cutFigures(ctx context.Context, figures []*figure) error {
	var marks []mark
	fresh := make([][][]groove.Groove, len(figures)) // of each figure's shapes
	for i, f := range figures {
		if f == nil || f.cut() {
			continue
		}
		fresh[i] = make([][]groove.Groove, len(f.shapes))
		for k := range f.shapes {
			fresh[i][k] = make([]groove.Groove, len(f.cuts))
			for number := range f.cuts {
				if f.like(k, number) == k {
					marks = append(marks, mark{i, k, number})
				}
			}
		}
	}
	err := each(ctx, len(marks), func() func(int) {
		cutter := p.cutter()
		return func(n int) {
			k := marks[n]
			f := figures[k.motif]
			fresh[k.motif][k.shape][k.number] = p.cut(cutter, k.motif, f, k.number, f.shapes[k.shape].lines[k.number])
		}
	})
	if err != nil {
		return err
	}
	for i, shapes := range fresh {
		f := figures[i]
		for k, grooves := range shapes {
			for number := range grooves {
				if first := f.like(k, number); first != k {
					grooves[number] = shapes[first][number]
				}
			}
			f.shapes[k].grooves, f.shapes[k].rooted = grooves, rooted(p.sized[i].Kind.Name, f.cuts, grooves)
		}
	}
	return nil
}

// cut cuts one of the lines of a motif's figure.
func (p *Plan) cut(cutter *groove.Cutter, motif int, f *figure, number int, line groove.Line) groove.Groove {
	m, part := p.sized[motif], f.cuts[number].Part
	return cutter.Cut(line, p.Job.Rack[m.WheelOf(part)], m.DepthOf(part), p.Job.Limits.Polish)
}

// cutter returns a cutter for the plan's face.
func (p *Plan) cutter() *groove.Cutter {
	if p.Face == job.Base {
		return groove.NewCutter(&p.Surface, p.Blank.Underside())
	}
	return groove.NewCutter(&p.Surface, p.Blank.Beneath())
}

// list fills in the plan's cuts, repeat by repeat, with the joins that their motifs
// name and those of drawn lines that end in one another.
func (p *Plan) list(figures []*figure) {
	total := 0
	for _, f := range figures {
		if f != nil {
			total += len(f.cuts)
		}
	}
	p.Cuts = make([]Cut, 0, total*p.Period) // or less
	even := new(groove.Hand)
	for repeat := range p.Period {
		for i, f := range figures {
			if f == nil {
				continue
			}
			c, ok := f.copyOn(repeat)
			if !ok {
				continue
			}
			first := p.before + len(p.Cuts) + 1
			grooves, roots := f.in(p, c), f.shapes[c.shape].rooted
			for number, drawn := range f.cuts {
				p.Cuts = append(p.Cuts, Cut{
					ID: first + number, Repeat: repeat + 1, Motif: i, Part: drawn.Part, Groove: &grooves[number], Hand: f.hand(number, even),
					twin: twin{number, f.like(c.shape, number)},
				})
				c := &p.Cuts[len(p.Cuts)-1]
				c.Left, c.Wheel = c.Remains.Min, p.sized[i].WheelOf(c.Part)
				for _, other := range drawn.Joins {
					c.Joins = append(c.Joins, first+other)
				}
				if roots != nil {
					c.joinAll(first, roots[number])
				}
			}
		}
	}
	p.ground = sync.OnceValue(p.grinds)
}
