package pattern

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// cureAll finds a cure for each trouble, and notes it on each of its findings.
func (p *Plan) cureAll() {
	for _, g := range p.troubles() {
		cure := p.cure(g)
		for i, f := range p.Findings {
			if about, _ := p.about(f); f.Kind == g.Kind && slices.Equal(about, g.Motifs) {
				p.Findings[i].Cure = cure
			}
		}
	}
}

// troubles returns the findings of one kind on the same motifs, whatever their
// parts: what one cure has to clear.
func (p *Plan) troubles() []Group {
	var all []Group
	for _, g := range p.Groups() {
		i := slices.IndexFunc(all, func(h Group) bool { return h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs) })
		if i < 0 {
			all = append(all, g)
		} else {
			all[i].Findings = slices.Concat(all[i].Findings, g.Findings)
		}
	}
	return all
}

// cure returns the smallest single change that clears a group: each is tried on
// a copy of the job before it is offered.
func (p *Plan) cure(g Group) Cure {
	switch g.Kind {
	case Crowded:
		return p.first(g, p.fewer, p.lighter, p.fewerRepeats, p.narrower)
	case Off:
		return p.first(g, p.smaller, p.fewerRepeats)
	case Thin:
		cure := p.first(g, p.lighter, p.otherWheel)
		if below := p.Blank.Carries(p.Job.Limits.Leave+p.asked(g), 0); below > 0 {
			cure = cure.or("keep it below " + p.Job.Length.Text(floor(below, p.Job.Length.Step())))
		}
		return cure
	case Rim, Foot:
		return p.first(g, p.shorterBand, p.smaller)
	case Buried:
		return p.first(g, p.lighter, p.otherWheel)
	case Tight:
		return p.first(g, p.straighter, p.otherWheel, p.fewer).or(p.wheelOrCurve(g))
	case Uneven:
		return p.first(g, p.flatterBand)
	case Shallow:
		return p.first(g, p.lighter, p.fewer, p.otherWheel).or(
			fmt.Sprintf("marks of %s and more", p.Job.Length.Text(p.shortestMark(g))))
	}
	return Cure{Text: "no single change known"}
}

// first returns the first cure found by the searches, in their order, that
// brings no new trouble with it; if each does, the first of them.
func (p *Plan) first(g Group, searches ...func(Group) (Cure, bool)) Cure {
	best := Cure{Text: "no single change clears it"}
	for _, search := range searches {
		cure, ok := search(g)
		if !ok {
			continue
		}
		if !p.worsens(cure) {
			return cure
		}
		if best.Change == nil {
			best = cure
		}
	}
	return best
}

// worsens reports whether a cure brings findings of a kind on motifs that had none.
func (p *Plan) worsens(c Cure) bool {
	j := p.Job.Clone()
	c.Change(j)
	q, err := lay(j, p.Blank)
	if err != nil {
		return true
	}
	q.Findings = q.check()
	had := p.troubles()
	return slices.ContainsFunc(q.troubles(), func(g Group) bool {
		return !slices.ContainsFunc(had, func(h Group) bool { return h.Kind == g.Kind && slices.Equal(h.Motifs, g.Motifs) })
	})
}

// or adds to a cure what else would do; where there is none, that is the cure.
func (c Cure) or(other string) Cure {
	if c.Change == nil {
		return Cure{Text: other}
	}
	c.Text += ", or " + other
	return c
}

// clears reports whether a change to the job leaves nothing of the group's kind
// on its motifs.
func (p *Plan) clears(g Group, change func(*job.Job)) bool {
	j := p.Job.Clone()
	change(j)
	q, err := lay(j, p.Blank, g.Motifs...)
	return err == nil && !q.has(g.Kind, g.Motifs)
}

// least returns the least of 1 to most steps of a change that clear a group. It
// takes it that further steps clear what a step has cleared; what it returns
// clears, and a step less does not.
func (p *Plan) least(g Group, most int, change func(n int) func(*job.Job)) (n int, ok bool) {
	if most < 1 || !p.clears(g, change(most)) {
		return 0, false
	}
	return 1 + sort.Search(most-1, func(i int) bool { return p.clears(g, change(i+1)) }), true
}

// fewer searches the counts of the group's motifs downwards.
func (p *Plan) fewer(g Group) (Cure, bool) {
	for _, i := range g.Motifs {
		m := p.Job.Motifs[i]
		for _, param := range m.Kind.Params {
			if param.Sort != motifs.Count {
				continue
			}
			for n := m.Values[param.Name] - 1; n >= param.Least; n-- {
				change := func(j *job.Job) { j.Motifs[i].Values[param.Name] = n }
				if p.clears(g, change) {
					return Cure{fmt.Sprintf("%s %s = %g", p.name(i), param.Name, n), change}, true
				}
			}
		}
	}
	return Cure{}, false
}

// lighter searches the depths of the group's motifs downwards, a caliper's step
// at a time: the greatest that clears.
func (p *Plan) lighter(g Group) (Cure, bool) {
	step := p.Job.Length.Step()
	for _, i := range g.Motifs {
		steps := int(math.Ceil(p.Job.Motifs[i].Depth/step)) - 1
		lighter := func(n int) func(*job.Job) {
			return func(j *job.Job) { j.Motifs[i].Depth = float64(steps+1-n) * step }
		}
		if n, ok := p.least(g, steps, lighter); ok {
			text := fmt.Sprintf("%s depth %s", p.name(i), p.Job.Length.Text(float64(steps+1-n)*step))
			return Cure{text, lighter(n)}, true
		}
	}
	return Cure{}, false
}

// otherWheel tries the rack's other wheels on the group's motif.
func (p *Plan) otherWheel(g Group) (Cure, bool) {
	for _, i := range g.Motifs {
		for w, wheel := range p.Job.Rack {
			change := func(j *job.Job) { j.Motifs[i].Wheel = w }
			if w != p.Job.Motifs[i].Wheel && p.clears(g, change) {
				return Cure{fmt.Sprintf("%s wheel %q", p.name(i), wheel.Name), change}, true
			}
		}
	}
	return Cure{}, false
}

// fewerRepeats tries a few repeats less.
func (p *Plan) fewerRepeats(g Group) (Cure, bool) {
	for n := p.Repeats - p.Period; n >= max(p.Period, p.Repeats-8); n -= p.Period {
		change := func(j *job.Job) { j.Layout.Repeats = n }
		if p.clears(g, change) {
			return Cure{fmt.Sprintf("repeats = %d", n), change}, true
		}
	}
	return Cure{}, false
}

// narrower and smaller draw one of the group's motifs in, a fiftieth at a time.
func (p *Plan) narrower(g Group) (Cure, bool) { return p.shrink(g, "width") }

func (p *Plan) smaller(g Group) (Cure, bool) {
	return p.shrink(g, "width", "height", "width and height")
}

func (p *Plan) shrink(g Group, sides ...string) (Cure, bool) {
	const parts, most = 50, 40
	best, found := Cure{}, most+1
	// By so much, and to what can be written in a job.
	by := func(m *job.Measure, share float64) {
		m.Value *= share
		if written := tidy(p.Job, *m); written > 0 {
			m.Value = written
		}
	}
	for _, side := range sides {
		for _, i := range g.Motifs {
			in := func(n int) func(*job.Job) {
				return func(j *job.Job) {
					m, share := &j.Motifs[i], float64(parts-n)/parts
					if side != "height" {
						by(&m.Width, share)
					}
					if side != "width" {
						by(&m.Height, share)
					}
				}
			}
			// Drawn in far, a motif may crowd itself: first not so far.
			for _, most := range []int{most / 4, most / 2, most} {
				if n, ok := p.least(g, min(most, found-1), in); ok {
					smaller := p.Job.Clone()
					in(n)(smaller)
					var words []string
					for _, key := range strings.Split(side, " and ") {
						words = append(words, key+" = "+Change{Motif: i, Key: key}.Says(smaller))
					}
					best, found = Cure{p.name(i) + " " + strings.Join(words, ", "), in(n)}, n
					break
				}
			}
		}
	}
	return best, found <= most
}

// shorterBand draws the end of the band in from the margin it runs into, by up
// to half.
func (p *Plan) shorterBand(g Group) (Cure, bool) {
	step, length := p.Job.Length.Step(), p.Job.Length
	shorter := func(n int) job.Band {
		band := p.Band
		if g.Kind == Rim {
			band.Top = floor(band.Top-float64(n)*step, step)
		} else {
			band.Foot = -floor(-band.Foot-float64(n)*step, step)
		}
		return band
	}
	change := func(n int) func(*job.Job) {
		band := shorter(n)
		return func(j *job.Job) { j.Layout.Band = &band }
	}
	n, ok := p.least(g, int((p.Band.Top-p.Band.Foot)/2/step)-1, change)
	if !ok {
		return Cure{}, false
	}
	band := shorter(n)
	text := fmt.Sprintf("raise the band's foot %s, to %s", length.Text(band.Foot-p.Band.Foot), length.Text(band.Foot))
	if g.Kind == Rim {
		text = fmt.Sprintf("lower the band's top %s, to %s", length.Text(p.Band.Top-band.Top), length.Text(band.Top))
	}
	return Cure{text, change(n)}, true
}

// straighter brings the numbers that bend a motif's lines, those whose range
// has zero inside it, nearer to zero.
func (p *Plan) straighter(g Group) (Cure, bool) {
	for _, i := range g.Motifs {
		m := p.Job.Motifs[i]
		for _, param := range m.Kind.Params {
			if param.Sort != motifs.Number || param.Least >= 0 || param.Most <= 0 {
				continue
			}
			for part := 19.0; part >= 0; part-- {
				value := math.Round(m.Values[param.Name]*part/20*100) / 100
				change := func(j *job.Job) { j.Motifs[i].Values[param.Name] = value }
				if p.clears(g, change) {
					return Cure{fmt.Sprintf("%s %s = %g", p.name(i), param.Name, value), change}, true
				}
			}
		}
	}
	return Cure{}, false
}

// wheelOrCurve says which wheel or which curve would do for all of a group.
func (p *Plan) wheelOrCurve(g Group) string {
	u := p.Job.Length
	wheel, curve := math.Inf(1), 0.0
	for _, f := range g.Findings {
		c := p.Cuts[(f.Cuts[0]-1)%len(p.Cuts)]
		if r := c.WheelFor(p.Job.Rack[c.Wheel], mostSweep); r > 0 {
			wheel = math.Min(wheel, r)
		}
		curve = math.Max(curve, c.CurveFor(mostSweep))
	}
	return fmt.Sprintf("a wheel up to %s across, or a curve of radius %s and more",
		u.Text(floor(2*wheel, u.Step())), u.Text(math.Ceil(curve/u.Step())*u.Step()))
}

// flatterBand draws in the end of the band that leaves the cone sooner.
func (p *Plan) flatterBand(g Group) (Cure, bool) {
	step, length := p.Job.Length.Step(), p.Job.Length
	for n := 1.0; ; n++ {
		lower := job.Band{Foot: p.Band.Foot, Top: floor(p.Band.Top, step) - n*step}
		higher := job.Band{Foot: -floor(-p.Band.Foot, step) + n*step, Top: p.Band.Top}
		if lower.Top-lower.Foot < step || higher.Top-higher.Foot < step {
			return Cure{}, false
		}
		for _, band := range []job.Band{lower, higher} {
			if _, worst := p.Blank.Profile().FitCone(band.Foot, band.Top); worst > mostMisfit {
				continue
			}
			change := func(j *job.Job) { j.Layout.Band = &band }
			if p.clears(g, change) {
				return Cure{fmt.Sprintf("band from %s to %s", length.Text(band.Foot), length.Text(band.Top)), change}, true
			}
		}
	}
}

// asked returns the greatest depth that the group's motifs ask for.
func (p *Plan) asked(g Group) float64 {
	depth := 0.0
	for _, i := range g.Motifs {
		depth = max(depth, p.Job.Motifs[i].Depth)
	}
	return depth
}

// shortestMark returns the longest mark that any cut of the group needs to
// reach the depth it was asked for.
func (p *Plan) shortestMark(g Group) float64 {
	longest := 0.0
	for _, f := range g.Findings {
		c := p.Cuts[(f.Cuts[0]-1)%len(p.Cuts)]
		longest = max(longest, c.LengthFor(p.Surface, p.Job.Rack[c.Wheel], c.Asked))
	}
	return math.Ceil(longest/p.Job.Length.Step()) * p.Job.Length.Step()
}

// name names a motif in a cure.
func (p *Plan) name(i int) string {
	return fmt.Sprintf("motif %d (%s):", i+1, p.Job.Motifs[i].Kind.Name)
}

// floor returns the greatest multiple of a step that is not above a length.
func floor(length, step float64) float64 { return math.Floor(length/step+1e-9) * step }
