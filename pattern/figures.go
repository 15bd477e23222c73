package pattern

import (
	"context"
	"slices"

	"roundlay/pattern/job"
)

// figured returns the figures of all of a plan's motifs: kept ones where there are, new
// ones for the rest. The error says that a motif can't be drawn, or that all together are
// over a limit; or it is the context's.
func (e *Editor) figured(ctx context.Context, p *Plan, stage key) ([]numbered, error) {
	const counted = 20 * maxCuts // far over the limit: stop drawing
	figures, drawings := make([]numbered, len(p.sized)), map[int]drawing{}
	keys := make([]string, len(p.sized))
	drawn := 0
	all := bill{plan: p, each: make([]toll, len(p.sized))}
	for i := range p.sized {
		if err := ctx.Err(); err != nil {
			return nil, layingOut(p.Blank, err)
		}
		if !p.carries(i) {
			continue
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
				figures[i].place(p, of)
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

// figureKey returns the key of everything that a motif's grooves depend on.
func (p *Plan) figureKey(stage key, i int) key {
	k := stage.and(p.Job.Limits.Polish, p.Job.Rack[p.sized[i].Wheel])
	for _, part := range p.sized[i].Parts {
		k = k.and(p.Job.Rack[p.sized[i].WheelOf(part.Name)])
	}
	for {
		m := p.sized[i]
		k = k.and(shaping(m))
		if m.Inside == 0 {
			return k
		}
		i = m.Inside - 1
	}
}

// shaping returns a motif with only what its grooves depend on: without its own limits,
// its place in the job, and its wheel's number in the rack.
func shaping(m job.Motif) job.Motif {
	m.Wheel, m.Inside = 0, min(m.Inside, 1)
	m.Land, m.Clear = nil, nil
	m.Parts = slices.Clone(m.Parts)
	for i, part := range m.Parts {
		m.Parts[i] = job.Part{Name: part.Name, Depth: part.Depth, Swell: part.Swell, Rock: part.Rock}
	}
	m.Most = nil // the values hold the counts
	m.CutOrder, m.Line = 0, 0
	return m
}
