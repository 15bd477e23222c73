package pattern

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
)

// drawing is a plan's motif set in the first repeat, with its cuts in the unit repeat.
// Its lines are checked: they are finite, lie in their box and on the glass, and are at
// least minLine long.
type drawing struct {
	setting
	cuts []motifs.Cut
}

// drawing draws a motif. Every motif is drawn here. For lines that no wheel can cut it
// returns an error that names the motif.
func (p *Plan) drawing(i int) (drawing, error) {
	if err := p.tooDeep(i); err != nil {
		return drawing{}, err
	}
	if err := p.tooRolled(i); err != nil {
		return drawing{}, err
	}
	m := p.sized[i]
	s := p.set(m)
	d := drawing{s, m.Kind.Draw(m.Values, s.width/s.height)}
	for n, c := range d.cuts {
		if why := d.wrong(&c); why != "" {
			return drawing{}, p.undrawable(i, s, fmt.Sprintf("its line %d (%s) %s", n+1, c.Part, why))
		}
	}
	return d, nil
}

// minLine is the length of the shortest line that can be cut, in millimetres. A wheel
// can't be aligned to a shorter one.
const minLine = 0.01

// wrong says what is wrong with a cut's line in the unit repeat, or "".
func (d *drawing) wrong(c *motifs.Cut) string {
	const parts = 8 // of a curve
	if d.plain(c) {
		return ""
	}
	length := 0.0
	var before geometry.Point
	for k := range parts*c.Curves() + 1 {
		i := min(k/parts, len(c.More))
		u := c.Curve(i).At(float64(k-parts*i) / parts)
		if !inBox(u) {
			return "leaves its box"
		}
		q := d.local(u)
		if !d.onGlass(q) {
			return "runs off the glass, past where it comes to a point"
		}
		if k > 0 {
			length += r2.Norm(r2.Sub(q, before))
		}
		before = q
	}
	if !(length >= minLine) {
		return "has no length"
	}
	return ""
}

// plain reports whether a cut's line is plainly right: straight on straight glass, where its
// two ends tell about all between them. Most lines are.
func (d *drawing) plain(c *motifs.Cut) bool {
	from, to := c.Path[0], c.Path[3]
	if len(c.More) > 0 || !d.surface.Flat() || !inBox(from) || !inBox(to) || !c.Path.Straight() {
		return false
	}
	a, b := d.local(from), d.local(to)
	return r2.Norm2(r2.Sub(b, a)) >= minLine*minLine && inBox(c.Path[1]) && inBox(c.Path[2]) && d.onGlass(a) && d.onGlass(b)
}

// inBox reports whether a point is in the unit box, but for rounding.
func inBox(u geometry.Point) bool {
	const hair = 1e-6
	// Not a > b, so that NaN fails.
	return math.Abs(u.X) <= 0.5+hair && u.Y >= -hair && u.Y <= 1+hair
}

// onGlass reports whether there is glass at a height from the middle of the outermost box.
func (d *drawing) onGlass(q geometry.Point) bool {
	return d.motif.Middle || d.surface.RadiusAt(d.surface.HeightAt(d.along+q.Y)) > minLine
}

// undrawable returns the error for a motif with a line that can't be cut.
func (p *Plan) undrawable(i int, s setting, why string) error {
	u := p.Job.Length
	e := p.Job.Refuse(job.Item("motif", i), "", "a motif whose lines all lie on the glass, each of "+u.FormatWithRest(minLine)+" or more",
		fmt.Sprintf("%s; its box is %s wide and %s high on blank %q", why, u.FormatDecimal(s.width), u.FormatDecimal(s.height), p.Blank.Name))
	e.Read = "a " + described(p.sized[i])
	return e
}

// described names a motif's kind, with its parameters as a job has them.
func described(m job.Motif) string {
	if len(m.Kind.Params) == 0 {
		return m.Kind.Name
	}
	all := make([]string, len(m.Kind.Params))
	for i, p := range m.Kind.Params {
		all[i] = fmt.Sprintf("%s = %g", p.Name, m.Values[p.Name])
		if p.Sort == motifs.Switch {
			all[i] = fmt.Sprintf("%s = %t", p.Name, m.Values.On(p.Name))
		}
	}
	return m.Kind.Name + " with " + strings.Join(all, ", ")
}

// tooDeep returns an error if a motif, or a part of it, is as deep as its wheel's radius or
// the glass's, or deeper.
func (p *Plan) tooDeep(i int) error {
	m := p.sized[i]
	if len(m.Parts) == 0 || len(m.Kind.Parts) == 0 {
		return p.tooDeepFor(job.Item("motif", i)+".depth", m.Depth, m.Wheel)
	}
	for _, part := range m.Kind.Parts {
		key := job.Item("motif", i) + ".depth"
		if own := m.Part(part); own.Depth != nil || own.Wheel != nil {
			key = partKey(i, part) + ".depth"
		}
		if err := p.tooDeepFor(key, m.DepthOf(part), m.WheelOf(part)); err != nil {
			return err
		}
	}
	return nil
}

// tooDeepFor is tooDeep for one depth and the wheel that has to cut it.
func (p *Plan) tooDeepFor(key string, depth float64, on int) error {
	u, wheel := p.Job.Length, p.Job.Rack[on]
	most, what := wheel.Radius, fmt.Sprintf("as deep as its wheel's middle: %q is %s across", wheel.Name, u.Format(2*wheel.Radius))
	round := min(p.Surface.RadiusAt(p.Band.Foot), p.Surface.RadiusAt(p.Band.Top))
	if p.Face == job.Side && round < most {
		most, what = round, fmt.Sprintf("as deep as the glass's middle: blank %q is %s across in its band", p.Blank.Name, u.Format(2*round))
	}
	if depth < most {
		return nil
	}
	return p.Job.Refuse(key, u.FormatChosen(depth), "a depth below "+u.FormatDown(most), what)
}
