package screen

import (
	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// Hand is what the hand does along the cuts of a motif or of one of its parts, as two small
// drawings: of the depth along a cut, and of the wheel across its deepest place.
type Hand struct {
	Path    string `json:"path"`    // of the motif or the part, which has the keys swell and rock
	Even    bool   `json:"even"`    // without its own swell it would be as deep all along
	Upright bool   `json:"upright"` // and without its own rock it would not be rolled

	Swell   Swell     `json:"swell"`
	Rock    [2]Number `json:"rock"` // to the left and to the right, in degrees
	Section Rolled    `json:"section"`
}

// Swell is the depth along a cut from its root at x = 0 to its tip at x = 100, in hundredths
// of the depth asked: the glass is at y = 0 and that depth at y = -100.
type Swell struct {
	Shares []Number    `json:"shares"` // as a job has them, 2 or more
	Points [][2]Number `json:"points"` // where on the curve they are
	Curve  string      `json:"curve"`
	// The same depths by one share more, and by one fewer: empty where a job can't have that.
	More  []Number `json:"more"`
	Fewer []Number `json:"fewer"`
}

// evenShares is how many shares an even cut is shown with.
const evenShares = 3

// NewHands draws what the hand does on each of a job's motifs and on each of their parts.
func NewHands(j *job.Job) []Hand {
	all := []Hand{}
	for i := range j.Motifs {
		m := &j.Motifs[i]
		all = append(all, newHand(j, m, "", job.Item("motif", i)))
		for _, part := range m.Kind.Parts {
			all = append(all, newHand(j, m, part, job.PartPath(i, part)))
		}
	}
	return all
}

// newHand draws what the hand does on a part of a motif; with "" on the motif, but for what
// its kind does by hand and its parts have for themselves.
func newHand(j *job.Job, m *job.Motif, part, path string) Hand {
	g := m.GestureOf(part)
	by := groove.Hand{Swell: g.Swell, Rock: [2]float64{g.Rock[0].Radians(), g.Rock[1].Radians()}}
	if len(by.Swell) == 1 { // one share for all of the cut
		by.Swell = []float64{by.Swell[0], by.Swell[0]}
	}
	even, upright := m.Values[motifs.HandParam] == 0, m.Values[motifs.HandParam] == 0
	if part != "" {
		even, upright = even && m.Swell == nil, upright && m.Rock == nil
	}
	return Hand{
		Path: path, Even: even, Upright: upright, Swell: newSwell(by),
		Rock:    [2]Number{degrees(by.Rock[0]), degrees(by.Rock[1])},
		Section: newRolled(j.Rack[m.WheelOf(part)], m.DepthOf(part)*by.Greatest(), by.Rock),
	}
}

// newSwell draws the depth along a cut.
func newSwell(by groove.Hand) Swell {
	n := len(by.Swell)
	if n == 0 {
		n = evenShares
	}
	s := Swell{Shares: shares(by, n), More: []Number{}, Fewer: []Number{}}
	for i := range n {
		along := float64(i) / float64(n-1)
		s.Points = append(s.Points, pair(swellAt(by, along)))
	}
	if n < groove.MaxShares {
		s.More = shares(by, n+1)
	}
	if n > groove.MinShares {
		s.Fewer = shares(by, n-1)
	}
	s.Curve = string(path(nil).line(swellCurve(by), false))
	return s
}
