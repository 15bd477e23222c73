package screen

import (
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Wrap is a plan's decoration laid flat. Its shapes are those of one period of the pattern;
// Copies says where they are drawn round the glass, that of repeat 1 first. The wrap ends where
// the printed one does; about its middle it is upright.
type Wrap struct {
	Flat    Kind         `json:"flat"`
	Caption string       `json:"caption,omitempty"`
	Box     [4]Number    `json:"box"` // left, low, right and high
	Repeats int          `json:"repeats"`
	Period  int          `json:"period"`
	Copies  [][4]Precise `json:"copies"` // cosine, sine, and the way right and up
	Motifs  []Motif      `json:"motifs"`
	Band    string       `json:"band"`   // both of its ends
	Edges   string       `json:"edges"`  // between repeats
	Ends    string       `json:"ends"`   // where the paper ends
	Paper   string       `json:"paper"`  // all round it: shapes may reach beyond
	Before  [4]Precise   `json:"before"` // one more copy, left of the first: what of it is on the paper comes round the seam
	After   [4]Precise   `json:"after"`  // and one right of the last
	Seam    string       `json:"seam"`   // both of its edges
	Parts   []Part       `json:"parts"`
	Rings   []Ring       `json:"rings"`
	Place   Place        `json:"place"`
}

// Motif is one of the job's motifs, with all of its cuts in a period.
type Motif struct {
	Number    int          `json:"motif"` // from 1
	Called    string       `json:"called"`
	Footprint string       `json:"footprint"`
	Line      string       `json:"line"`
	Box       [4][2]Number `json:"box"` // lower left and on anticlockwise, as the motif is drawn
	Middle    [2]Number    `json:"middle"`
	// Copies are where Box and Middle are round the glass, themselves first: one for each
	// repeat on which the motif stands, then one more at either end.
	Copies [][4]Precise `json:"copies"`
	Inside int          `json:"inside"` // the motif it is inside, from 1; 0 for none
	Parts  []MotifPart  `json:"parts"`
	PartOf []int        `json:"part_of"` // of each piece of Line, which of the parts it is, from 0
}

// MotifPart is a part of a motif that may have keys of its own, under their path.
type MotifPart struct {
	Name string `json:"name"`
	Path string `json:"path"`
}

// Part is where the number of a repeat stands: at its middle, on the upper end of the paper.
type Part struct {
	Repeat int    `json:"repeat"`
	X      Number `json:"x"`
	Y      Number `json:"y"`
	Turn   Number `json:"turn"` // of what stands there, anticlockwise, in degrees
}

// Place says which place of the glass a point of the map is. On a cylinder and on the chart
// of a curved glass x is the angle times the radius, and y the way up the profile. On a cone
// both are polar about the apex.
type Place struct {
	Kind   Kind    `json:"kind"`
	Radius Number  `json:"radius,omitempty"`
	Half   Precise `json:"half,omitempty"` // the half-angle, in degrees
	Rho0   Number  `json:"rho0,omitempty"` // from the apex to the foot of the glass
	S0     Number  `json:"s0"`             // of the band's foot, along the profile from the foot of the glass
	S1     Number  `json:"s1"`
}

// NewWrap draws a plan on a flat map of its glass.
func NewWrap(f Flat) Wrap {
	p := f.plan
	w := Wrap{
		Flat: f.Kind, Repeats: p.Repeats, Period: p.Period, Copies: [][4]Precise{}, Motifs: f.motifs(),
		Rings: f.rings(), Place: f.place(),
	}
	if f.Kind == Curved {
		w.Caption = "A chart of curved glass: true round the band's middle and up the glass. The paper is in gores."
	}
	n := p.Periods()
	for k := range n {
		w.Copies = append(w.Copies, f.copied(k))
	}
	w.Before, w.After = f.copied(-1), f.copied(n)
	if f.Kind == Disc {
		w.Caption = "The base, seen from below, true to size. The middle of repeat 1 is at the top, of the side too; numbers run clockwise."
	}
	f.frame(&w)
	return w
}

// standing returns the motions from a motif's first copy to all of them.
func (f Flat) standing(m job.Motif) [][4]Precise {
	repeats := f.plan.Job.LayoutOf(f.plan.Face).Copies(m)
	if len(repeats) == 0 {
		return [][4]Precise{}
	}
	n, last := f.plan.Repeats, len(repeats)-1
	repeats = append(repeats, repeats[last]-n, repeats[0]+n)
	all := make([][4]Precise, len(repeats))
	for i, repeat := range repeats {
		all[i] = f.moved(repeat - repeats[0])
	}
	return all
}

// copied returns the motion to a copy.
func (f Flat) copied(k int) [4]Precise { return f.moved(k * f.plan.Period) }

// moved returns the motion by a number of repeats, from where repeat 1 is upright.
func (f Flat) moved(repeats int) [4]Precise {
	m := f.turned(float64(repeats)*f.plan.PitchAngle() - f.middle())
	return [4]Precise{Precise(m.Cos), Precise(m.Sin), Precise(m.X), Precise(m.Y)}
}

// motifs draws every motif of the face.
func (f Flat) motifs() []Motif {
	p := f.plan
	n := len(p.Job.Motifs)
	footprints, lines, partOf := make([]path, n), make([]path, n), make([][]int, n)
	var t thinner
	if len(p.Cuts) > many {
		t.within = fineOfManyFlat
	}
	var along []geometry.Point
	for _, c := range p.Cuts {
		for _, o := range c.Outlines {
			footprints[c.Motif] = footprints[c.Motif].line(t.thin(f.charted(o.Points)), true)
		}
		along = along[:0]
		for _, s := range c.Samples {
			along = append(along, s.At)
		}
		lines[c.Motif] = lines[c.Motif].line(t.thin(f.charted(along)), false)
		partOf[c.Motif] = append(partOf[c.Motif], slices.Index(p.Job.Motifs[c.Motif].Kind.Parts, c.Part))
	}
	all := make([]Motif, 0, n)
	for i, m := range p.Job.Motifs {
		if m.Face != p.Face {
			continue
		}
		g := p.Grip(i)
		one := Motif{
			Number: i + 1, Called: m.Called(), Footprint: string(footprints[i]), Line: string(lines[i]),
			Middle: pair(f.Forward(g.Middle())), Inside: m.Inside,
			Copies: f.standing(m), Parts: partsOf(m, i), PartOf: append([]int{}, partOf[i]...),
		}
		for k, corner := range [4][2]float64{{-0.5, 0}, {0.5, 0}, {0.5, 1}, {-0.5, 1}} {
			one.Box[k] = pair(f.Forward(g.At(corner[0], corner[1])))
		}
		all = append(all, one)
	}
	return all
}

// partsOf returns the parts of a motif, by its number from 0.
func partsOf(m job.Motif, number int) []MotifPart {
	all := make([]MotifPart, len(m.Kind.Parts))
	for i, name := range m.Kind.Parts {
		all[i] = MotifPart{name, job.PartPath(number, name)}
	}
	return all
}

// frame draws the paper's ends and seam, the band, and the edges between repeats, and the
// box round them.
func (f Flat) frame(w *Wrap) {
	from, to := f.ends()
	low, high := f.face.Low, f.face.High
	foot, rim := f.level(from, to, low), f.level(from, to, high)
	if f.Kind != Disc {
		w.Seam = string(path(nil).line(f.upright(from, low, high), false).line(f.upright(to, low, high), false))
	}
	w.Ends = string(path(nil).line(foot, false).line(rim, false)) + w.Seam
	round := append([]geometry.Point{}, foot...)
	if f.Kind == Disc {
		round = nil // nothing is cut away in its middle
	}
	for i := range rim {
		round = append(round, rim[len(rim)-1-i])
	}
	w.Paper = string(path(nil).line(round, true))
	w.Band = string(path(nil).line(f.level(from, to, f.face.Band[0]), false).line(f.level(from, to, f.face.Band[1]), false))
	w.Edges, w.Parts = string(f.edges()), f.parts()
	box := geometry.BoxOf(foot...).Union(geometry.BoxOf(rim...)).Union(geometry.BoxOf(f.upright(0, low, high)...))
	w.Box = [4]Number{Number(box.Min.X), Number(box.Min.Y), Number(box.Max.X), Number(box.Max.Y)}
}

// edges draws the edges between repeats that are not the wrap's own.
func (f Flat) edges() (edges path) {
	const own = 1e-6
	pitch := f.plan.PitchAngle()
	from, to := f.ends()
	for k := range f.plan.Repeats {
		at := f.around((float64(k) - 0.5) * pitch)
		if from+own < at && at < to-own || f.Kind == Disc {
			edges = edges.line(f.upright(at, f.face.Low, f.face.High), false)
		}
	}
	return edges
}

// parts says where the repeats' numbers stand.
func (f Flat) parts() (all []Part) {
	for k := range f.plan.Repeats {
		theta := f.around(float64(k) * f.plan.PitchAngle())
		at, m := f.lay(geometry.Spot{Theta: theta, Along: f.surface.AlongAt(f.face.High)}), f.turned(theta)
		all = append(all, Part{k + 1, Number(at.X), Number(at.Y), degrees(math.Atan2(m.Sin, m.Cos))})
	}
	return all
}

// level returns a line round the glass at a height of the face.
func (f Flat) level(from, to, height float64) []geometry.Point {
	along := f.surface.AlongAt(height)
	n := 1
	if f.Kind == Cone || f.Kind == Disc {
		// A chord of an arc of radius ρ over an angle φ deviates by ρφ²/8.
		rho := math.Abs(f.surface.Chart().ApexRadius(along))
		phi := math.Abs(to-from) * math.Abs(math.Sin(f.surface.Chart().HalfAngle.Radians()))
		n = min(max(1, int(math.Ceil(phi*math.Sqrt(rho/(8*fine))))), 2000)
	}
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i] = f.lay(geometry.Spot{Theta: from + (to-from)*float64(i)/float64(n), Along: along})
	}
	return points
}

// upright returns a line up the face.
func (f Flat) upright(theta, low, high float64) []geometry.Point {
	return []geometry.Point{
		f.lay(geometry.Spot{Theta: theta, Along: f.surface.AlongAt(low)}),
		f.lay(geometry.Spot{Theta: theta, Along: f.surface.AlongAt(high)}),
	}
}

func (f Flat) place() Place {
	chart, band := f.surface.Chart(), f.face.Band
	p := Place{Kind: f.Kind, S0: Number(f.surface.AlongAt(band[0])), S1: Number(f.surface.AlongAt(band[1]))}
	switch f.Kind {
	case Curved:
		p.Radius = Number(f.radius)
	case Cylinder:
		p.Radius = Number(chart.Radius)
	case Cone, Disc:
		p.Half, p.Rho0 = Precise(chart.HalfAngle.Degrees()), Number(chart.ApexRadius(0))
	}
	return p
}

// Ring marks a finding.
type Ring struct {
	Letter string `json:"letter"`
	X      Number `json:"x"`
	Y      Number `json:"y"`
}

// Placed reports whether a finding has a place: one without cuts is of the glass as a whole.
func Placed(found pattern.Finding) bool { return len(found.Cuts) > 0 }

// Found returns where a finding is seen on the wrap.
func (f Flat) Found(found pattern.Finding) geometry.Point {
	return f.Forward(geometry.Spot{Theta: f.around(found.Theta), Along: f.plan.Surface.AlongAt(found.Height)})
}

// mostRings is how many rings a period may have before only the worst of each letter keeps
// its own.
const mostRings = 12

// rings rings the findings of a period, those of one letter that lie close together once.
func (f Flat) rings() []Ring {
	const apart = 2.3 // mm
	all := []Ring{}
	var worst []Ring
	for _, g := range f.plan.Groups() {
		if !Placed(g.Worst()) {
			continue
		}
		worst = append(worst, f.ring(g.Letter, g.Worst()))
		var own []Ring
		for _, found := range g.Findings[:min(len(g.Findings), 100*mostRings)] {
			r, near := f.ring(g.Letter, found), false
			for _, o := range own {
				near = near || math.Hypot(float64(r.X-o.X), float64(r.Y-o.Y)) < apart
			}
			if !near {
				own = append(own, r)
			}
		}
		all = append(all, own...)
	}
	if len(all) > mostRings {
		return worst
	}
	return all
}

func (f Flat) ring(letter string, found pattern.Finding) Ring {
	at := f.Found(found)
	return Ring{letter, Number(at.X), Number(at.Y)}
}

func pair(q geometry.Point) [2]Number { return [2]Number{Number(q.X), Number(q.Y)} }
