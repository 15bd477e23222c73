package screen

import (
	"encoding/json"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/pattern/glass"
)

// Glass is a plan's glass in the round, for a picture that is turned under a finger: curves
// of radius and height, and the footprints of one period as places of angle, height and
// radius.
type Glass struct {
	Profile [][2]Number   `json:"profile"`
	Inside  [][2]Number   `json:"inside"`
	Motifs  []RoundMotif  `json:"motifs"`
	Repeats int           `json:"repeats"`
	Period  int           `json:"period"`
	Rings   []RoundedRing `json:"rings"`
}

// RoundMotif is the footprints of a motif in a period.
type RoundMotif struct {
	Number int             `json:"motif"` // from 1
	Called string          `json:"called"`
	Cuts   json.RawMessage `json:"cuts"` // outlines, each a list of [angle, height, radius]
}

// RoundedRing marks a finding on the glass.
type RoundedRing struct {
	Letter string `json:"letter"`
	Theta  Number `json:"theta"`
	Height Number `json:"height"`
}

// NewGlass returns the glass of a plan.
func NewGlass(p *pattern.Plan) Glass {
	g := Glass{
		Profile: outside(p.Blank), Inside: inside(p.Blank), Repeats: p.Repeats, Period: p.Period,
		Motifs: make([]RoundMotif, len(p.Job.Motifs)), Rings: []RoundedRing{},
	}
	cuts := make([][]byte, len(g.Motifs))
	var t thinner
	if len(p.Cuts) > many {
		t.within = fineOfManyRound
	}
	for _, c := range p.Cuts {
		for _, o := range c.Outlines {
			cuts[c.Motif] = appendOutline(cuts[c.Motif], p, t.thin(o.Points))
		}
	}
	for i := range g.Motifs {
		all := append([]byte{'['}, cuts[i]...)
		g.Motifs[i] = RoundMotif{i + 1, p.Job.Motifs[i].Called(), append(all, ']')}
	}
	for _, group := range p.Groups() {
		if worst := group.Worst(); Placed(worst) {
			g.Rings = append(g.Rings, RoundedRing{group.Letter, degrees(worst.Theta), Number(worst.Height)})
		}
	}
	return g
}

// appendOutline adds an outline of the plan's chart to a list of outlines in the round.
func appendOutline(b []byte, p *pattern.Plan, points []geometry.Point) []byte {
	if len(b) > 0 {
		b = append(b, ',')
	}
	b = append(b, '[')
	for i, q := range points {
		if i > 0 {
			b = append(b, ',')
		}
		theta, along := p.Surface.ReverseAlong(q)
		radius, height := p.Surface.At(along)
		b = appendNumber(append(b, '['), float64(degrees(theta)))
		b = appendNumber(append(b, ','), height)
		b = append(appendNumber(append(b, ','), radius), ']')
	}
	return append(b, ']')
}

// curveStep is the greatest distance between the places that a curve is thinned from.
const curveStep = 0.5

// outside returns the outside of a glass from the foot up.
func outside(b *glass.Blank) [][2]Number { return curve(outline(b)) }

// outline returns places of the outside of a glass from the foot up, none left out.
func outline(b *glass.Blank) []geometry.Point {
	m := b.Meridian()
	n := max(1, int(m.Length()/curveStep))
	points := make([]geometry.Point, n+1)
	for i := range points {
		points[i].X, points[i].Y = m.At(m.Length() * float64(i) / float64(n))
	}
	return points
}

// inside returns the inside of a glass from its floor up.
func inside(b *glass.Blank) [][2]Number {
	places := b.ThinInner().Places(curveStep)
	points := make([]geometry.Point, len(places))
	for i, at := range places {
		points[i] = geometry.Point{X: at.Radius, Y: at.Height}
	}
	return curve(points)
}

func curve(points []geometry.Point) [][2]Number {
	var t thinner
	out := [][2]Number{}
	for _, q := range t.thin(points) {
		out = append(out, pair(q))
	}
	return out
}

func degrees(radians float64) Number { return Number(geometry.Angle(radians).Degrees()) }
