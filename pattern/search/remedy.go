package search

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// remedy is changes that may cure, and what they take from the look: a share.
type remedy struct {
	changes []job.Change
	costs   float64
	text    string
}

// course is remedies of one sort, from the mildest on.
type course []remedy

// moves returns the courses that move each of a group's motifs: up the glass
// for 1, and down for -1.
func (c *curing) moves(g pattern.Group, ways ...float64) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, way := range ways {
			all = append(all, c.course(i, moves(c.Job, i, 0, way, upTo(40))))
		}
	}
	return all
}

// sideways moves them round the glass: a motif that runs on goes all round it
// already.
func (c *curing) sideways(g pattern.Group) []course {
	var all []course
	for _, i := range g.Motifs {
		if !c.before.RunsOn(i) {
			all = append(all, c.course(i, moves(c.Job, i, 1, 0, upTo(40))), c.course(i, moves(c.Job, i, -1, 0, upTo(40))))
		}
	}
	return all
}

// inwards moves a motif back into the band from the end it runs over, if it is one.
func (c *curing) inwards(g pattern.Group, below, above bool) []course {
	switch {
	case below == above:
		return nil
	case below:
		return c.moves(g, 1)
	}
	return c.moves(g, -1)
}

// ends reports which ends of the band the cuts of a group run over.
func (c *curing) ends(g pattern.Group) (below, above bool) {
	for _, f := range g.Findings {
		if len(f.Cuts) == 1 {
			below = below || f.Measured < f.Wanted
			above = above || f.Measured > f.Wanted
		}
	}
	return below, above
}

// course makes a course of a row that changes one motif.
func (c *curing) course(i int, r row) course {
	c.Spend(len(r) * len(c.Job.Motifs) / 4) // a job for each step
	all := make(course, len(r))
	for n, changes := range r {
		after := c.Job.With(changes...)
		words := make([]string, len(changes))
		for k, change := range changes {
			switch words[k] = change.Key + " = " + change.Says(after); change.Key {
			case "depth":
				words[k] = "depth " + c.Job.Length.Given(change.Value)
			case "wheel":
				words[k] = "wheel " + change.Says(after)
			}
		}
		all[n] = remedy{changes, c.costs(changes), name(c.Job, i) + ": " + strings.Join(words, ", ")}
	}
	return all
}

// costs returns what changes take from the look: the sum of the shares they
// change, where a move is a share of the band or the repeat, and another wheel
// has a price of its own.
func (c *curing) costs(changes []job.Change) float64 {
	const wheel = 0.25
	total := 0.0
	share := func(was, is float64) { total += math.Abs(is-was) / max(was, 1e-9) }
	for _, change := range changes {
		if change.Motif < 0 {
			continue
		}
		switch m := c.Job.Motifs[change.Motif]; change.Key {
		case "at":
			to := c.before.Motifs[change.Motif]
			was := c.Box(to)
			to.Across, to.Up = change.At[0], change.At[1]
			is := c.Box(to)
			total += math.Abs(is.Middle.X-was.Middle.X)/is.Repeat + math.Abs(is.Middle.Y-was.Middle.Y)/is.Band
		case "wheel":
			total += wheel
		case "depth":
			share(m.Depth, change.Value)
		case "width":
			share(m.Width.Value, change.Value)
		case "height":
			share(m.Height.Value, change.Value)
		default:
			share(m.Values[change.Key], change.Value)
		}
	}
	return total
}

// rows makes courses of the rows that there are for each of a group's motifs.
func (c *curing) rows(g pattern.Group, of func(j *job.Job, i int) []row) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, r := range of(c.Job, i) {
			all = append(all, c.course(i, r))
		}
	}
	return all
}

// fewer takes the counts of the group's motifs down.
func (c *curing) fewer(g pattern.Group) []course { return c.rows(g, countsDown) }

// lighter takes their depths down, a caliper's step at a time.
func (c *curing) lighter(g pattern.Group) []course { return c.shallower(g, c.Job.Length.Step()) }

// finer takes them down in small steps, which no caliper shows and the bench sheet
// does: for where a caliper's step takes so much that it brings something.
func (c *curing) finer(g pattern.Group) []course {
	small := [...]float64{geometry.Inch: geometry.MillimetresPerInch / 1000, geometry.Millimetre: 0.02}
	return c.shallower(g, small[c.Job.Length])
}

func (c *curing) shallower(g pattern.Group, step float64) []course {
	return c.rows(g, func(j *job.Job, i int) []row { return []row{depths(j, i, step, math.MaxInt)} })
}

// wheels tries the rack's other wheels on the group's motifs.
func (c *curing) wheels(g pattern.Group) []course { return c.rows(g, otherWheels) }

// fewerRepeats tries a few repeats less.
func (c *curing) fewerRepeats() []course {
	var all course
	for n := c.Repeats - c.Period; n >= max(c.Period, c.Repeats-8); n -= c.Period {
		all = append(all, remedy{
			[]job.Change{{Motif: -1, Key: "repeats", Value: float64(n)}}, 1 - float64(n)/float64(c.Repeats), fmt.Sprintf("repeats = %d", n),
		})
	}
	return []course{all}
}

// narrower, lower and smaller draw a group's motifs in, each by itself, a
// fiftieth at a time; larger makes their marks longer.
func (c *curing) narrower(g pattern.Group) []course { return c.sizes(g, times(50, 10, 50), "width") }
func (c *curing) lower(g pattern.Group) []course    { return c.sizes(g, times(50, 10, 50), "height") }
func (c *curing) smaller(g pattern.Group) []course {
	return c.sizes(g, times(50, 10, 50), "width", "height", "width height")
}
func (c *curing) larger(g pattern.Group) []course {
	return c.sizes(g, times(50, 150, 50), "width", "height", "width height")
}

// sizes changes sizes. The width of a motif that is meant to run on from repeat
// to repeat stays: else it wouldn't run on.
func (c *curing) sizes(g pattern.Group, by []float64, sides ...string) []course {
	var all []course
	for _, i := range g.Motifs {
		for _, side := range sides {
			if strings.Contains(side, "width") && c.before.RunsOn(i) {
				continue
			}
			all = append(all, c.course(i, resized(c.Job, i, strings.Fields(side), by)))
		}
	}
	return all
}

// closer makes a motif that nearly meets its next copy meet it, and one that
// lies on it just reach it.
func (c *curing) closer(g pattern.Group) []course {
	return c.rows(g, func(j *job.Job, i int) []row { return []row{closed(j, i)} })
}

// shorterBand draws the end of the band in from the margin it runs into, by up
// to half. Both its ends are told, on the steps of the calipers.
func (c *curing) shorterBand(g pattern.Group) []course {
	step, length := c.Job.Length.Step(), c.Job.Length
	foot, top := -floor(-c.Band.Foot, step), floor(c.Band.Top, step)
	var all course
	for n := 1.0; n < (top-foot)/2/step; n++ {
		band, text := job.Band{Foot: foot, Top: top - n*step}, ""
		if g.Kind == pattern.Rim {
			text = fmt.Sprintf("lower the band's top %s, to %s", length.Text(c.Band.Top-band.Top), length.Text(band.Top))
		} else {
			band = job.Band{Foot: foot + n*step, Top: top}
			text = fmt.Sprintf("raise the band's foot %s, to %s", length.Text(band.Foot-c.Band.Foot), length.Text(band.Foot))
		}
		all = append(all, c.banded(band, text))
	}
	return []course{all}
}

// banded is a remedy that states the band, as the job is to have it.
func (c *curing) banded(band job.Band, text string) remedy {
	change := job.Change{Motif: -1, Key: "band", Band: band}
	if text != "" {
		text += ": "
	}
	share := 1 - (band.Top-band.Foot)/(c.Band.Top-c.Band.Foot)
	return remedy{[]job.Change{change}, share, text + "band = " + change.Says(c.Job.With(change))}
}

// keepBelow adds to a cure for thin glass how far up the band may reach, if that
// clears, and whether it brings anything; and puts it first where it alone brings
// nothing.
func (c *curing) keepBelow(g pattern.Group, cure pattern.Cure) pattern.Cure {
	depth := 0.0
	for _, i := range g.Motifs {
		depth = max(depth, c.Job.Motifs[i].Depth)
	}
	step := c.Job.Length.Step()
	top := floor(c.Blank.Carries(c.Job.Limits.Leave+depth, 0), step)
	if top < c.Band.Foot+pattern.LeastBand {
		return cure
	}
	text := "keep it below " + c.Job.Length.Text(top)
	r := c.banded(job.Band{Foot: c.Band.Foot, Top: top}, text)
	if !c.clears(g, r) {
		return cure
	}
	below, ok := c.prove(g, r)
	if !ok {
		return cure
	}
	switch {
	case cure.Changes == nil, below.clean() && strings.Contains(cure.Text, "; then "):
		return c.told(g, below)
	case strings.Contains(cure.Text, "; then "):
		return cure
	case below.clean():
		cure.Text += ", or " + text
	default:
		cure.Text += ", or " + text + " (which brings other findings)"
	}
	return cure
}

// straighter bends the lines of the group's motifs less.
func (c *curing) straighter(g pattern.Group) []course { return c.rows(g, straighter) }

// orWheel adds to a cure of lines too tight, or of a wheel that bridges a hollow,
// which wheel like the motif's own would do: one that a job may have, that clears
// it, and brings nothing with it.
func (c *curing) orWheel(g pattern.Group, cure pattern.Cure) pattern.Cure {
	u, most := c.Job.Length, math.Inf(1)
	for _, f := range g.Findings {
		cut := c.cut(f)
		r := 0.0
		if cut.Bridges() {
			r = c.LargestWheel(cut)
		} else if g.Kind == pattern.Tight {
			r = cut.WheelFor(c.Job.Rack[cut.Wheel], pattern.MostSweep)
		}
		if r > 0 {
			most = math.Min(most, r)
		}
	}
	across := floor(2*most, u.Step())
	i := g.Motifs[0]
	wheel := c.Job.Rack[c.Job.Motifs[i].Wheel]
	wheel.Radius = across / 2
	if math.IsInf(most, 1) || !job.TakesWheel(wheel) {
		return cure
	}
	// Other trials have another rack.
	j := c.Job.Clone()
	j.Rack = append(slices.Clone(j.Rack), wheel)
	j.Motifs[i].Wheel = len(j.Rack) - 1
	e := c.Afresh()
	d, err := e.Try(j, c.Blank)
	if err != nil || d.Finds(g.Kind, g.Motifs) {
		return cure
	}
	if fresh, more, ok := c.effects(g, e, j); !ok || len(fresh)+len(more) > 0 {
		return cure
	}
	text := fmt.Sprintf("a wheel up to %s across", u.Text(across))
	if cure.Changes == nil {
		return pattern.Cure{Text: text}
	}
	cure.Text += ", or " + text
	return cure
}

// curve says which curve the group's wheel would follow.
func (c *curing) curve(g pattern.Group) string {
	curve := 0.0
	for _, f := range g.Findings {
		curve = max(curve, c.cut(f).CurveFor(pattern.MostSweep))
	}
	return fmt.Sprintf("this wheel follows curves of radius %s and more", c.Job.Length.AtLeast(curve))
}

// flatterBand draws in either end of the band.
func (c *curing) flatterBand() []course {
	step := c.Job.Length.Step()
	foot, top := -floor(-c.Band.Foot, step), floor(c.Band.Top, step)
	var lower, higher course
	for n := 1.0; top-foot-n*step >= pattern.LeastBand; n++ {
		lower = append(lower, c.banded(job.Band{Foot: foot, Top: top - n*step}, ""))
		higher = append(higher, c.banded(job.Band{Foot: foot + n*step, Top: top}, ""))
	}
	return []course{lower, higher}
}

// shortestMark returns the longest mark that any cut of the group needs to
// reach the depth it was asked for.
func (c *curing) shortestMark(g pattern.Group) float64 {
	longest := 0.0
	for _, f := range g.Findings {
		cut := c.cut(f)
		longest = max(longest, cut.LengthFor(&c.Surface, c.Job.Rack[cut.Wheel], cut.Asked))
	}
	return longest
}

// name names a motif in a cure.
func name(j *job.Job, i int) string {
	return fmt.Sprintf("motif %d (%s)", i+1, j.Motifs[i].Kind.Name)
}

// cut returns the period's cut that stands for the first of a finding's.
func (c *curing) cut(f pattern.Finding) *pattern.Cut { return &c.Cuts[(f.Cuts[0]-1)%len(c.Cuts)] }

// floor returns the greatest multiple of a step that is not above a length.
func floor(length, step float64) float64 { return math.Floor(length/step+1e-9) * step }
