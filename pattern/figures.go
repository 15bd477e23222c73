package pattern

import (
	"context"

	"roundlay/pattern/job"
)

// figured returns the figures of all of a plan's motifs: those that are kept, and
// the others drawn. The error says that one can't be drawn, or that they come to
// more than is cut.
func (e *Editor) figured(ctx context.Context, p *Plan, stage key) ([]numbered, error) {
	const counted = 20 * maxCuts // past that nobody asks how many there are
	figures, drawings := make([]numbered, len(p.sized)), map[int]drawing{}
	keys := make([]string, len(p.sized))
	drawn := 0
	all := bill{plan: p, each: make([]toll, len(p.sized))}
	for i := range p.sized {
		if err := ctx.Err(); err != nil {
			return nil, layingOut(p.Blank, err)
		}
		if err := p.tooDeep(i); err != nil {
			return nil, err
		}
		var f numbered
		known := false
		if !e.once {
			keys[i] = string(p.figureKey(stage, i))
			f, known = e.figures.get(keys[i])
		}
		if !known {
			of, err := p.drawing(i)
			if err != nil {
				return nil, err
			}
			drawings[i] = of
			f = numbered{&figure{cuts: of.cuts, toll: p.toll(i, of)}, e.count}
			e.count++
		}
		figures[i], all.each[i] = f, f.toll
		if drawn += len(f.cuts); drawn > counted {
			break
		}
	}
	if err := all.within(); err != nil {
		return nil, err
	}
	err := each(ctx, len(figures), func() func(int) {
		return func(i int) {
			if of, fresh := drawings[i]; fresh {
				figures[i].lines = p.lines(of)
			}
		}
	})
	if err != nil {
		return nil, layingOut(p.Blank, err)
	}
	for i := range drawings {
		if !e.once {
			e.figures.put(keys[i], figures[i])
		}
	}
	return figures, nil
}

// figureKey returns the key of all that a motif's grooves follow from.
func (p *Plan) figureKey(stage key, i int) key {
	k := append(stage[:len(stage):len(stage)], keyOf(p.Job.Limits.Polish, p.Job.Rack[p.sized[i].Wheel])...)
	for {
		m := p.sized[i]
		k = append(k, keyOf(shaping(m))...)
		if m.Inside == 0 {
			return k
		}
		i = m.Inside - 1
	}
}

// shaping returns a motif without what its grooves don't follow from: its own limits,
// which of the motifs it is, and which of the rack its wheel is.
func shaping(m job.Motif) job.Motif {
	m.Wheel, m.Inside = 0, min(m.Inside, 1)
	m.Land, m.Clear = nil, nil
	m.Most = nil // the values say it
	m.CutOrder, m.Line = 0, 0
	return m
}
