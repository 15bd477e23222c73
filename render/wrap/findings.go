package wrap

import (
	"math"
	"slices"

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

// mostRings is how many rings may lie on one paper before only the worst of each
// letter keeps its own. Repeats that look alike count once.
const mostRings = 12

// ringFindings finds a sheet's rings: those of all findings, or where these are
// too many to be told apart only those of the worst.
func (s *facePaper) ringFindings() {
	s.rings = s.findRings(false)
	if s.mostOnPaper() > mostRings {
		s.rings, s.worstRinged = s.findRings(true), true
	}
}

// mostOnPaper returns the number of rings on the paper that has the most.
func (s *facePaper) mostOnPaper() int {
	most := 0
	for _, p := range s.papers() {
		n := 0
		for _, r := range s.rings {
			for range s.around(r, p.from, p.to) {
				n++
				break
			}
		}
		most = max(most, n)
	}
	return most
}

// findRings returns the rings of a sheet's findings, or of the worst of each
// letter. Findings so close together that one ring holds them share it, so that
// rings don't pile up.
func (s *facePaper) findRings(worst bool) []ring {
	var rings []ring
	told, _ := report.Listed(s.plan)
	for _, g := range told {
		findings := s.ringable(g)
		if worst && len(findings) > 1 {
			findings = []pattern.Finding{pattern.Group{Findings: findings}.Worst()}
		}
		for _, f := range findings {
			rings = s.ringed(rings, f, g.Letter)
		}
	}
	return rings
}

// ringable returns those findings of a group that have a place on the paper.
func (s *facePaper) ringable(g pattern.Group) []pattern.Finding {
	var all []pattern.Finding
	for _, f := range g.Findings {
		if height := s.face.Height(f.Height); placed(f) && height >= s.low && height <= s.high {
			all = append(all, f)
		}
	}
	return all
}

// ringed returns rings with one that holds a finding.
func (s *facePaper) ringed(rings []ring, f pattern.Finding, letter string) []ring {
	const within = ringOuter - 0.3
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	height := s.face.Height(f.Height)
	radius, along := s.face.Profile.Radius(height), s.face.Profile.Along(height)
	i := slices.IndexFunc(rings, func(r ring) bool {
		up := along - r.along
		return math.Abs(up) < within && math.Hypot(math.Remainder(f.Theta-r.theta, period)*radius, up) < within
	})
	if i < 0 {
		i = len(rings)
		rings = append(rings, ring{theta: f.Theta, height: height, along: along})
	}
	if !slices.Contains(rings[i].letters, letter) {
		rings[i].letters = append(rings[i].letters, letter)
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

// findings rings the findings on a strip, and what of its neighbours' rings
// reaches onto it: no ring leaves the paper.
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
