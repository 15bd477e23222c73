package wrap

import (
	"fmt"
	"math"
	"slices"

	"roundlay/geometry"
	"roundlay/pattern"
	"roundlay/render/drawing"
	"roundlay/render/lettering"
	"roundlay/render/report"
)

// facePaper is the paper for one blank, and draws pieces of it on its flat map.
type facePaper struct {
	plan *pattern.Plan
	side Side
	face pattern.Face
	low  float64 // the heights that the paper spans
	high float64
	seam float64 // the angle at which its left edge lies
	at   int     // the repeat at which that was asked for
	tab  bool
	// parts is how many equal parts of the turn stay in one piece, if they can:
	// repeats, or gores. sheets is how many papers they make up: one wrap,
	// a patch for each repeat, or gores one by one.
	parts, sheets int

	// cone is the flat map that the pieces lie on side by side. The paper of a
	// curved face is made of gores instead, which are joined on the cone, if they
	// can be joined at all.
	cone           geometry.Cone
	curved, joined bool
	gore           geometry.Gore
	gores          pattern.Gores
	joint          float64 // the height at which they are

	mirror      bool
	thickness   float64
	traces      []trace
	thin        []pattern.ThinGlass
	rings       []ring
	worstRinged bool // whether they are of the worst of each letter only
	letters     *lettering.Letters
	drawn       map[piece]drawing.Drawing // what was drawn already: pages and the picture show the same papers
	numbering   map[piece]numbering       // of the pieces that are drawn
}

// LeftEdge returns the angle at which the left edge of the paper for one side of a plan's
// glass lies, where nothing else is asked for.
func LeftEdge(p *pattern.Plan, side Side) (float64, error) {
	o := DefaultOptions(p.Job.Length)
	o.Side = side
	s, err := barePaper(p, o, nil)
	if err != nil {
		return 0, err
	}
	return s.seam, nil
}

// newFacePaper returns the paper for a plan's blank.
func newFacePaper(p *pattern.Plan, o Options, letters *lettering.Letters) (*facePaper, error) {
	s, err := barePaper(p, o, letters)
	if err != nil {
		return nil, err
	}
	if s.cone.RadiusAt(s.low) <= 0 || s.cone.RadiusAt(s.high) <= 0 {
		return nil, fmt.Errorf("blank %q: the cone of its band comes to a point before the glass ends: no paper can be laid on it (%s)", p.Blank.Name, s.side)
	}
	s.traces, s.thin = traces(p, s.face), thinOn(p, s.face)
	if !o.NoRings {
		s.ringFindings()
	}
	return s, nil
}

// barePaper returns the paper with nothing on it yet.
func barePaper(p *pattern.Plan, o Options, letters *lettering.Letters) (*facePaper, error) {
	s := &facePaper{
		plan: p, side: o.Side, face: p.Outside(), at: o.SeamAt, tab: o.Seam == Tab, parts: p.Repeats,
		mirror: o.Mirror, thickness: o.Thickness, letters: letters, drawn: map[piece]drawing.Drawing{}, numbering: map[piece]numbering{},
	}
	lift := o.Thickness / 2
	if o.Side == Inside {
		face, err := p.Inside()
		if err != nil {
			return nil, err
		}
		s.face, lift = face, -lift
	}
	s.low, s.high = s.face.Low, s.face.High
	if o.Side == Patches {
		const above = 3 // mm of paper over the band
		s.high = min(s.high, p.Band.Top+above)
	}
	s.lay(lift)
	s.divide()
	if s.side == Patches {
		s.seam = findPatchEdge(p, o.SeamAt)
	} else {
		s.seam = findSeam(p, o.SeamAt, s.parts/p.Repeats)
	}
	return s, nil
}

// thinOn returns where the wall is too thin, as heights on a face. A range that
// reaches the glass's foot or rim is extended beyond any paper.
func thinOn(p *pattern.Plan, face pattern.Face) []pattern.ThinGlass {
	thin := p.TooThin()
	for i := range thin {
		t := &thin[i]
		foot, rim := t.From <= 0, t.To >= p.Blank.Height()
		t.From, t.To = face.Height(t.From), face.Height(t.To)
		if foot {
			t.From = math.Inf(-1)
		}
		if rim {
			t.To = math.Inf(1)
		}
	}
	return thin
}

// lay finds the flat map of paper whose middle lies a distance off the face.
func (s *facePaper) lay(lift float64) {
	c := s.face.Cone
	s.cone = geometry.NewCone(c.HalfAngle, geometry.Circle{Radius: c.Radius + lift, Height: c.Height}, c.Along)
	if !s.face.Curved() {
		return
	}
	s.curved = true
	s.gores = s.face.Gores(s.plan.Repeats, lift)
	if s.side == Patches && s.gores.PerRepeat%2 == 0 {
		// An even number would part each patch up its middle, and what lies there.
		s.gores = s.face.InGores(s.plan.Repeats, s.gores.PerRepeat+1, lift)
	}
	s.parts *= s.gores.PerRepeat
	s.gore = geometry.Gore{Profile: s.face.Profile, Lift: lift, HalfWidth: math.Pi / float64(s.parts)}
	joint, ok := s.gore.Join(s.low, s.high)
	if ok {
		s.joined, s.joint, s.cone = true, joint, s.gore.Tangent(joint)
	}
}

// divide says how many papers there are.
func (s *facePaper) divide() {
	switch {
	case s.curved && !s.joined:
		s.sheets, s.tab = s.parts, false
	case s.side == Patches:
		s.sheets, s.tab = s.plan.Repeats, false
	default:
		s.sheets = 1
	}
}

// apart reports whether there are several papers, or may be.
func (s *facePaper) apart() bool { return s.sheets > 1 || s.side == Patches }

// part returns the angle of one part.
func (s *facePaper) part() float64 { return 2 * math.Pi / float64(s.parts) }

// paperName names one of several papers.
func (s *facePaper) paperName() string {
	if s.side == Patches && s.sheets == s.plan.Repeats {
		return "patch"
	}
	return "gore"
}

// papers returns the papers that the sheet is made of: of several patches, those on which
// something is cut.
func (s *facePaper) papers() []piece {
	all := s.allPapers()
	some := slices.DeleteFunc(slices.Clone(all), s.empty)
	if s.side != Patches || len(some) == 0 {
		return all
	}
	return some
}

// paperNumbers writes the numbers of some of the papers, from first up to but not including
// last: the first and the last of them where none is left out between.
func (s *facePaper) paperNumbers(first, last int, to string) string {
	papers := s.papers()[first:last]
	from, end := papers[0].paper, papers[len(papers)-1].paper
	switch {
	case from == end:
		return fmt.Sprint(from)
	case end-from == len(papers)-1:
		return fmt.Sprintf("%d%s%d", from, to, end)
	}
	all := make([]int, len(papers))
	for i, p := range papers {
		all[i] = p.paper
	}
	return report.Numbers(all)
}

// leftOut returns the numbers of the papers that aren't printed.
func (s *facePaper) leftOut() []int {
	var out []int
	printed := s.papers()
	for _, p := range s.allPapers() {
		if !slices.ContainsFunc(printed, func(q piece) bool { return q.paper == p.paper }) {
			out = append(out, p.paper)
		}
	}
	return out
}

// empty reports whether no cut comes onto a paper.
func (s *facePaper) empty(p piece) bool {
	period := float64(s.plan.Period) * s.plan.PitchAngle()
	return !slices.ContainsFunc(s.traces, func(t trace) bool {
		turns := math.Ceil((p.from - t.box.Max.X) / period)
		return t.box.Min.X+turns*period <= p.to && t.box.Max.Y >= p.low && t.box.Min.Y <= p.high
	})
}

func (s *facePaper) allPapers() []piece {
	angle := 2 * math.Pi / float64(s.sheets)
	all := make([]piece, s.sheets)
	for i := range all {
		all[i] = piece{
			paper: i + 1, number: 1, from: s.seam + float64(i)*angle, to: s.seam + float64(i+1)*angle, low: s.low, high: s.high,
			first: true, last: true, lowest: true, highest: true, rows: 1, columns: 1,
		}
	}
	return all
}

// frame returns the piece as it would lie on the sheet's cone, where it meets
// its neighbours.
func (s *facePaper) frame(p piece) strip {
	f := strip{piece: p, on: s.cone, centre: p.middle(), place: geometry.Motion{Cos: 1}, leads: true}
	if s.curved && !s.joined {
		f.on = s.gore
	}
	return f
}

// strips returns the parts of a piece that lie flat by themselves.
func (s *facePaper) strips(p piece) []strip {
	if !s.joined {
		return []strip{s.frame(p)}
	}
	n := int(math.Round((p.to - p.from) / s.part()))
	all := make([]strip, n)
	for i := range all {
		own := p
		own.from, own.to = p.from+float64(i)*s.part(), p.from+float64(i+1)*s.part()
		own.first, own.last = p.first && i == 0, p.last && i == n-1
		all[i] = strip{own, s.gore, own.middle(), s.cone.Turned(own.middle() - p.middle()), i == 0}
	}
	return all
}

// shown returns what a strip shows: paper on a cone runs on beyond a match line,
// gores end at their edges.
func (s *facePaper) shown(st strip) (from, to, low, high float64) {
	left, right := 0.0, 0.0
	if !s.curved && !st.first {
		left = overlap
	}
	if !s.curved && !st.last {
		right = overlap
	}
	if st.last && s.tab {
		right = tabShows
	}
	return st.shown(left, right)
}

// draw returns a piece, its middle line upright.
func (s *facePaper) draw(p piece) drawing.Drawing {
	if known, ok := s.drawn[p]; ok {
		return known
	}
	var d drawing.Drawing
	strips := s.strips(p)
	for _, st := range strips {
		s.content(&d, st)
	}
	for _, st := range strips {
		s.edges(&d, st)
	}
	d = d.EdgesFirst(drawing.Footprints)
	s.matches(&d, p)
	if p.last && s.tab {
		s.tabOf(&d, strips[len(strips)-1])
	}
	s.write(&d, p, strips)
	if s.mirror {
		d = d.Mirrored()
	}
	s.drawn[p] = d
	return d
}

// box returns the box of a piece as it is drawn.
func (s *facePaper) box(p piece) geometry.Box {
	box := geometry.EmptyBox()
	for _, st := range s.strips(p) {
		from, to, low, high := s.shown(st)
		if st.last && s.tab {
			to = st.to + tabWidth/min(st.on.RadiusAt(st.low), st.on.RadiusAt(st.high))
		}
		for _, points := range [][]geometry.Point{
			st.level(from, to, low), st.level(from, to, high), st.upright(from, low, high), st.upright(to, low, high),
		} {
			box = box.Union(geometry.BoxOf(points...))
		}
	}
	for _, m := range s.matchLines(p) {
		for _, cross := range m.crosses {
			box = box.Union(geometry.BoxOf(cross).Grow(overlap))
		}
	}
	if s.mirror {
		box = geometry.BoxOf(geometry.Point{X: -box.Min.X, Y: box.Min.Y}, geometry.Point{X: -box.Max.X, Y: box.Max.Y})
	}
	return box
}
