package wrap

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/page"
	"roundlay/render/report"
)

// ringOuter is the radius of a ring round a finding, in millimetres.
const ringOuter = 2.6

func ringMark() page.Ring {
	return page.Ring{Radius: ringOuter, Pen: ringPen(), Lead: drawing.Pen{Width: 0.15}}
}

// letterBreak stands between the letters of one ring.
const letterBreak = ", "

// ring is drawn round findings: those of one period of the pattern, each inside
// a ring that bears its group's letter.
type ring struct {
	theta, height float64
	along         float64 // the height, as a distance along the profile
	letters       []string
}

// placed reports whether a finding has a place that can be ringed: one without
// cuts is of the glass as a whole.
func placed(f pattern.Finding) bool { return len(f.Cuts) > 0 }

// findRings returns the rings of a sheet. Findings so close together that one ring
// holds them share it, so that rings don't pile up.
func (s *facePaper) findRings() []ring {
	const within = ringOuter - 0.3
	profile := s.face.Profile
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	var rings []ring
	told, _ := report.Listed(s.plan)
	for _, g := range told {
		for _, f := range g.Findings {
			height := s.face.Height(f.Height)
			if !placed(f) || height < s.low || height > s.high {
				continue
			}
			radius, along := profile.Radius(height), profile.Along(height)
			i := slices.IndexFunc(rings, func(r ring) bool {
				up := along - r.along
				return math.Abs(up) < within && math.Hypot(math.Remainder(f.Theta-r.theta, period)*radius, up) < within
			})
			if i < 0 {
				i = len(rings)
				rings = append(rings, ring{theta: f.Theta, height: height, along: along})
			}
			if !slices.Contains(rings[i].letters, g.Letter) {
				rings[i].letters = append(rings[i].letters, g.Letter)
			}
		}
	}
	return rings
}

// around yields the angles between two at which a ring recurs.
func (s *facePaper) around(r ring, from, to float64) func(yield func(theta float64) bool) {
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	return func(yield func(theta float64) bool) {
		for theta := r.theta + math.Ceil((from-r.theta)/period-1e-9)*period; theta <= to+1e-9; theta += period {
			if !yield(theta) {
				return
			}
		}
	}
}

// findings draws the rings on a strip, and the parts of its neighbours' rings that
// reach onto it, clipped to the paper.
func (s *facePaper) findings(d *drawing.Drawing, st strip) {
	from, to, low, high := s.marked(st)
	var paper geometry.Outline
	for _, r := range s.rings {
		if r.height < low-ringOuter || r.height > high+ringOuter {
			continue
		}
		aside := ringOuter / st.on.RadiusAt(r.height)
		for theta := range s.around(r, st.from-aside, st.to+aside) {
			if paper.Points == nil {
				paper = geometry.NewOutline(drawing.Thinned(st.region(from, to, low, high), 0.02))
			}
			d.Add(drawing.Findings, ringMark().On(paper, st.at(theta, r.height))...)
		}
	}
}

// ringLetters writes the letters of the rings, each beside its own and clear of the
// others; where there is no room, at the end of a line farther away.
func (l *labels) ringLetters() {
	type place struct {
		ring
		theta float64
		on    *pane
	}
	var places []place
	var centres []geometry.Point
	for i := range l.panes {
		on := &l.panes[i]
		for _, r := range l.rings {
			if r.height < on.low || r.height > on.high {
				continue
			}
			for theta := range l.around(r, on.from, on.to) {
				places, centres = append(places, place{r, theta, on}), append(centres, on.at(theta, r.height))
			}
		}
	}
	for i, p := range places {
		// To the left of a repeat's middle on the left, so that the rings of a pair
		// leave each other room.
		left := math.Remainder(p.theta, l.plan.PitchAngle()) < -1e-9
		l.ringLetter(strings.Join(p.letters, letterBreak), centres[i], p.on.tilt(p.theta, p.height), left, p.on, centres)
	}
}

func (l *labels) ringLetter(words string, centre geometry.Point, tilt float64, left bool, on *pane, centres []geometry.Point) {
	const beside = 0.6
	best, far := taken, 0.0
	var chosen wording
	var at spot
	apart := func(o geometry.Outline) bool { // from the other rings
		return !slices.ContainsFunc(centres, func(c geometry.Point) bool {
			return c != centre && o.DistanceTo(c, ringOuter+0.2) < ringOuter+0.2
		})
	}
search:
	for _, try := range []struct{ off, size float64 }{{0, 9}, {0, 7.5}, {0, 6}, {2, 9}, {2, 7}, {5, 7}, {9, 7}} {
		w := wording{[]string{words}, try.size, true}
		width, tall := l.size(w.texts(spot{})[0])
		for _, degrees := range []float64{30, 150, -30, -150, 0, 180, 60, 120, -60, -120, 90, -90} {
			if left {
				degrees = 180 - degrees
			}
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			reach := ringOuter + beside + try.off + math.Min(width/2/max(math.Abs(cos), 1e-9), tall/2/max(math.Abs(sin), 1e-9))
			off := geometry.Point{X: reach * cos, Y: reach*sin - tall/2}
			s := spot{at: r2.Add(centre, r2.Rotate(off, tilt, geometry.Point{})), turn: tilt, align: drawing.Centre, on: on}
			outline := l.outline(w, s)
			if !on.outline.Contains(middle(outline)) || !apart(outline) {
				continue
			}
			r := l.rank(outline)
			if r == aloneOnLines || r == nearOthersOnLines {
				r-- // a letter is legible on faint lines
			}
			if r < best {
				best, chosen, at, far = r, w, s, try.off
			}
		}
		if best < taken {
			break search
		}
	}
	if best == taken { // all is full of lines: it stands on them
		chosen = wording{[]string{words}, 6, true}
		at = spot{at: r2.Add(centre, r2.Rotate(geometry.Point{X: ringOuter + beside}, tilt, geometry.Point{})), turn: tilt}
	}
	text := chosen.texts(at)[0]
	if far > 0 {
		to := middle(l.figures(text))
		way := r2.Unit(r2.Sub(to, centre))
		l.d.Add(drawing.Findings, ringMark().LeadTo(centre, r2.Add(centre, r2.Scale(ringOuter+far, way)))...)
	}
	l.d.Add(drawing.Findings, text)
	l.text(text)
}
