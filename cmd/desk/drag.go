package desk

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"sync"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/screen"
)

// drag is what a pointer did: from where to where. On the wrap its places are points of the
// flat map, on the glass angles in degrees and heights, each of the copy in repeat 1. A
// station is dragged to a radius and a height.
type drag struct {
	Grab string      `json:"grab"` // middle, corner or turn
	On   string      `json:"on"`   // glass, or nothing for the wrap
	From *[2]float64 `json:"from"`
	To   *[2]float64 `json:"to"`
	Fine bool        `json:"fine"`
}

// farthest is how far off a pointer may be, in mm or degrees: far beyond any wrap.
const farthest = 1e5

var (
	motifPath   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^motif\[([1-9][0-9]{0,5})\]$`) })
	stationPath = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^blank(?:\[([1-9][0-9]{0,5})\])?\.station\[([1-9][0-9]{0,5})\]$`)
	})
)

// dragged returns the changes of a job's text that carry out a drag: what the person who
// owns the job would have typed.
func (e Edit) dragged(text string, ask layRequest) ([]job.Revision, error) {
	var by drag
	if err := read(e.Value, &by); err != nil {
		return nil, err
	}
	j, err := ask.readAs(text)
	if err != nil {
		return nil, err
	}
	if by.To == nil {
		return nil, badRequest("edits: a drag needs its to")
	}
	for _, at := range []*[2]float64{by.From, by.To} {
		if at != nil && !(math.Abs(at[0]) <= farthest && math.Abs(at[1]) <= farthest) {
			return nil, badRequest("edits: read a drag at %v; accepted: places up to %g off", *at, farthest)
		}
	}
	if of := stationPath().FindStringSubmatch(e.Path); of != nil {
		return stationDragged(j, text, e.Path, of, *by.To)
	}
	i, ok := numberIn(motifPath().FindStringSubmatch(e.Path), 1, len(j.Motifs))
	if !ok {
		return nil, badRequest("edits: there is no %q to drag", e.Path)
	}
	if by.From == nil {
		return nil, badRequest("edits: the drag of a motif needs its from")
	}
	blank, err := ask.blankOf(j)
	if err != nil {
		return nil, err
	}
	h, err := newHold(j, blank, i, ask.Side, by)
	if err != nil {
		return nil, err
	}
	switch by.Grab {
	case "middle":
		return h.moved(), nil
	case "corner":
		return h.sized(), nil
	case "turn":
		return h.turned(), nil
	}
	return nil, badRequest("grab: read %q; accepted: middle, corner, turn", by.Grab)
}

// numberIn returns a number, from 0, that a path has in one of its places.
func numberIn(found []string, place, count int) (int, bool) {
	if found == nil {
		return 0, false
	}
	n, err := strconv.Atoi(found[place])
	return n - 1, err == nil && n >= 1 && n <= count
}

// hold is a motif under a pointer.
type hold struct {
	job      *job.Job
	blank    *glass.Blank
	motif    int
	plan     *pattern.Plan
	grip     pattern.Grip
	from, to geometry.Spot
	target   geometry.Spot // where the motif's middle would come to lie
	fine     bool
}

func newHold(j *job.Job, blank *glass.Blank, motif int, side string, by drag) (*hold, error) {
	face := j.Motifs[motif].Face
	p, err := pattern.BareOn(j, blank, face)
	if err != nil {
		return nil, err
	}
	h := &hold{job: j, blank: blank, motif: motif, plan: p, grip: p.Grip(motif), fine: by.Fine}
	middle := h.grip.Middle()
	switch by.On {
	case "glass":
		place := func(at [2]float64) geometry.Spot {
			return geometry.Spot{Theta: geometry.Degrees(at[0]).Radians(), Along: p.Surface.AlongAt(at[1])}
		}
		h.from, h.to = place(*by.From), place(*by.To)
		h.target = geometry.Spot{Theta: middle.Theta + h.to.Theta - h.from.Theta, Along: middle.Along + h.to.Along - h.from.Along}
	case "":
		inside, err := insideOf(side)
		if err != nil {
			return nil, err
		}
		flat := flatOf(p, inside && face == job.Side)
		from, to := geometry.Point{X: by.From[0], Y: by.From[1]}, geometry.Point{X: by.To[0], Y: by.To[1]}
		h.from, h.to = flat.ReverseNear(from, middle.Theta), flat.ReverseNear(to, middle.Theta)
		h.target = flat.ReverseNear(r2.Add(flat.Forward(middle), r2.Sub(to, from)), middle.Theta)
	default:
		return nil, badRequest("on: read %q; accepted: glass, or nothing for the wrap", by.On)
	}
	return h, nil
}

// flatOf returns the flat map of a side, the outside's where the inside has none.
func flatOf(p *pattern.Plan, inside bool) screen.Flat {
	if flat, err := screen.NewFlat(p, inside); err == nil {
		return flat
	}
	flat, _ := screen.NewFlat(p, false)
	return flat
}

// set returns the change of one of the motif's keys.
func (h *hold) set(key string, value any) job.Revision {
	return job.Revision{Op: "set", Path: fmt.Sprintf("%s.%s", job.Item("motif", h.motif), key), Value: value}
}

// moved puts the motif's middle where it was dragged. A job that states no band gives its
// motifs one that suits their places, and so may move them again: the place is corrected for
// that.
func (h *hold) moved() []job.Revision {
	if h.job.Motifs[h.motif].Middle {
		return nil // over the middle of the base it has no other place
	}
	const rounds = 5
	grip := h.grip
	x, y := grip.MovedTo(h.target)
	for range rounds {
		x, y = h.across(x), h.up(y)
		after := h.job.With(job.Change{Motif: h.motif, Key: "at", At: [2]job.Measure{x, y}})
		p, err := pattern.BareOn(after, h.blank, h.plan.Face)
		if err != nil || p.Band == h.plan.Band {
			break
		}
		h.plan, grip = p, p.Grip(h.motif)
		x, y = grip.MovedTo(h.target)
	}
	x, y = h.across(x), h.up(y)
	across, up := h.whole()
	return []job.Revision{h.set("at", []any{h.written(x, across), h.written(y, up)})}
}

// whole returns the box of which the motif's shares are: the repeat at its height and the
// band or, inside another motif, that one's box.
func (h *hold) whole() (across, up float64) {
	m := h.job.Motifs[h.motif]
	if m.Inside > 0 {
		outer := h.plan.Box(h.job.Motifs[m.Inside-1])
		return outer.Width, outer.Height
	}
	box := h.plan.Box(m)
	return box.Repeat, box.Band
}

// sized gives the motif the size that a corner was dragged to.
func (h *hold) sized() []job.Revision {
	width, height := h.grip.Sized(h.from, h.to)
	was := h.job.Motifs[h.motif]
	across, up := h.whole()
	var all []job.Revision
	for _, side := range []struct {
		key      string
		now, was job.Measure
		whole    float64
	}{{"width", h.wide(width), was.Width, across}, {"height", h.high(height), was.Height, up}} {
		if text := h.written(side.now, side.whole); text != h.written(side.was, side.whole) {
			all = append(all, h.set(side.key, text))
		}
	}
	return all
}

// turned turns the motif by the angle it was dragged through.
func (h *hold) turned() []job.Revision {
	digits := 0
	if h.fine {
		digits = 1
	}
	return []job.Revision{h.set("turn", decimal(h.grip.Turned(h.from, h.to).Degrees(), digits))}
}
