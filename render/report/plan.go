// Package report puts plans into words and into JSON: what the commands check, plan,
// fit, divide and motifs print.
//
// Start with [Check] for a plan's findings or [Plan] for all of it; [CheckSet] and
// [Set] are for the blanks of a set, [Fit] and [Rack] for what a search offers,
// [Divide] for divider settings and [Motifs] for the kinds of motif. Each has a
// counterpart with JSON in its name, but Set and CheckSet: CheckJSON takes a whole
// set. [CutList] writes the cuts for a spreadsheet. The smaller functions, such as
// [Cure] and [Measured], are the phrases that paper and messages share with these.
//
// Lengths in JSON are millimetres and angles degrees; words use the job's unit.
package report

import (
	"encoding/json"
	"io"
	"math"
	"slices"

	"roundlay/pattern"
	"roundlay/pattern/groove"
)

// schema is the version of the JSON a plan is written in.
const schema = 1

// planJSON is how one blank is laid out: every cut, what was found, and the order to cut in.
type planJSON struct {
	Schema   int           `json:"schema"`              // the version of this form, 1
	Title    string        `json:"title"`               // the job's title
	Length   string        `json:"length" word:"units"` // the unit of the job; the figures here are in millimetres all the same
	Blank    blankJSON     `json:"blank"`               // the blank that is cut
	Surface  surfaceJSON   `json:"surface"`             // the shape of the glass in its band, as paper takes it
	Repeats  int           `json:"repeats"`             // how many times the design goes round
	Free     []int         `json:"free"`                // the numbers of the repeats that carry nothing
	Band     [2]number     `json:"band" unit:"mm"`      // from which height to which the design goes
	Limits   limitsJSON    `json:"limits"`              // what the job won't go beyond
	Most     []mostJSON    `json:"most"`                // each count that the job asks as "most"
	Cuts     []cutJSON     `json:"cuts"`                // all cuts round the glass, those of the base too
	Lines    []lineJSON    `json:"lines"`               // cuts that go on into one another
	Findings []findingJSON `json:"findings"`            // what is wrong
	OnlyIf   []string      `json:"only_if"`             // the readings in doubt on which it depends that there are no findings, in words; empty where none is in doubt, or where there are findings
	Notes    []string      `json:"notes"`               // remarks that are not findings, as check has them
	Chords   []chordJSON   `json:"chords"`              // divider settings; empty for one repeat
	Totals   totalsJSON    `json:"totals"`              // what there is to cut, the base included
	Glass    glassJSON     `json:"glass"`               // what the blank holds and weighs
	Rounds   []roundJSON   `json:"out_of_round"`        // the stations that are out of round; empty for one repeat
	Order    []passJSON    `json:"order"`               // what to cut with each wheel, in the order to cut
	Base     *baseJSON     `json:"base,omitempty"`      // the base; left out of a job that cuts none
	Quote    *quoteJSON    `json:"quote,omitempty"`     // what such pieces take and cost; left out where the job gives nothing for it, or a rate isn't known

	Included []includedJSON `json:"included,omitempty"` // what the job has from which file; left out of a job that includes none
}

// blankJSON is an uncut glass.
type blankJSON struct {
	Name        string        `json:"name"`                             // what the job calls it
	Stations    []stationJSON `json:"stations"`                         // as measured, from the foot up
	InsideFloor *number       `json:"inside_floor,omitempty" unit:"mm"` // how high the inside begins; left out where the floor wasn't measured
	Straight    bool          `json:"straight"`                         // whether it is taken as straight, whatever its stations read
	// the outside from the foot up, at steps of half a millimetre or less, as grooves are worked out on it
	Profile []curveJSON `json:"profile"`
	// the inside likewise; without a floor it is taken to run on down to the table
	Inside []curveJSON `json:"inside"`
}

// curveJSON is one place of the outside's or the inside's curve.
type curveJSON struct {
	Height number `json:"height" unit:"mm"` // above the table
	Radius number `json:"radius" unit:"mm"` // half the diameter there
}

// stationJSON is a height at which the glass was measured.
type stationJSON struct {
	Height number  `json:"height" unit:"mm"`        // above the table
	Radius number  `json:"radius" unit:"mm"`        // half the outside diameter there
	Wall   number  `json:"wall" unit:"mm"`          // thickness of the glass there; the thinner of the walls as measured and as corrected by a scale
	Off    *number `json:"off,omitempty" unit:"mm"` // how far in radius it is off the line; left out unless the blank is taken as straight
}

// surfaceJSON is the shape of the glass in its band, as paper takes it.
type surfaceJSON struct {
	Kind             string  `json:"kind" word:"surfaces"`                 // what the paper lies on
	HalfAngle        number  `json:"half_angle" unit:"°"`                  // of its cone; above zero where the glass widens upwards
	ApexRadiusFoot   *number `json:"apex_radius_foot,omitempty" unit:"mm"` // from the cone's apex to the foot, along the cone; left out for a cylinder
	WorstRadiusError number  `json:"worst_radius_error" unit:"mm"`         // how far the glass leaves its cone within the band, in radius
	GoresPerRepeat   int     `json:"gores_per_repeat,omitempty"`           // strips of paper to a repeat; left out where the paper is not in gores
	GoreError        *number `json:"gore_error,omitempty" unit:"mm"`       // how far their edges are out; left out where the paper is not in gores
}

// limitsJSON is what a job won't go beyond, as it gives it or by default.
type limitsJSON struct {
	Land   number `json:"land" unit:"mm"`     // least uncut glass between two cuts
	Leave  number `json:"leave" unit:"mm"`    // least glass left under a cut
	Rim    number `json:"rim" unit:"mm"`      // kept clear of cuts below the rim
	Foot   number `json:"foot" unit:"mm"`     // kept clear of cuts above the table
	Clear  number `json:"clear" unit:"share"` // of two cuts that join, the least share of the shorter that has land beside it
	Polish number `json:"polish" unit:"mm"`   // how much polishing widens a cut on each side
	Reach  number `json:"reach" unit:"share"` // the share of its depth that a mark too short for it must still come to
}

// cutJSON is one cut.
type cutJSON struct {
	ID          int        `json:"id"`                            // its number on paper, from 1
	Face        string     `json:"face,omitempty" word:"base"`    // the face it is on; left out on the side
	Repeat      int        `json:"repeat"`                        // the repeat it is in, from 1
	Motif       string     `json:"motif" word:"motifs"`           // the kind of its motif
	MotifNumber int        `json:"motif_number"`                  // the motif's number in the job, from 1
	Part        string     `json:"part"`                          // the part of the motif
	Wheel       string     `json:"wheel"`                         // the name of the wheel
	Joins       []int      `json:"joins"`                         // the ids of the cuts that it meets or crosses by design
	Length      number     `json:"length" unit:"mm"`              // of the groove along the glass, ends included
	Depth       number     `json:"depth" unit:"mm"`               // as it comes out, where it is deepest
	Set         *number    `json:"depth_set,omitempty" unit:"mm"` // how deep to set the wheel; left out where that is depth: a broad edge that is rolled bites deeper at one side than it is set
	Asked       number     `json:"depth_asked" unit:"mm"`         // the depth that the job asks
	Width       number     `json:"width" unit:"mm"`               // of the groove where it is widest, polishing included
	Left        *number    `json:"left,omitempty" unit:"mm"`      // the least glass left under it; below zero where it breaks through; left out where all of it is off the glass
	Touch       bool       `json:"touch"`                         // true: the wheel is pressed in and lifted at one place
	Swell       []number   `json:"swell,omitempty" unit:"share"`  // the depth along it from root to tip, as shares of the depth asked; left out where it is even
	Rock        *[2]number `json:"rock,omitempty" unit:"°"`       // how far the glass is rolled to the left and right of the cut as it lies on the glass; left out where it is not rolled
	Path        []pathJSON `json:"path"`                          // its centre line from one end of the groove to the other, in places at most 1 mm apart
}

// pathJSON is one place of a cut's centre line.
type pathJSON struct {
	Theta     number `json:"theta" unit:"°"`       // round the glass, to the right from the middle of repeat 1; without a jump along one cut
	Height    number `json:"height" unit:"mm"`     // above the table; on the base the distance from its middle
	X         number `json:"x" unit:"mm"`          // on the flat map of the outside, without paper: to the right of the middle of repeat 1; on the base as seen from below
	Y         number `json:"y" unit:"mm"`          // on the flat map, upwards from the foot along the glass; on the base as seen from below
	Depth     number `json:"depth" unit:"mm"`      // of the groove there
	HalfWidth number `json:"half_width" unit:"mm"` // the mean of left and right
	Left      number `json:"left" unit:"mm"`       // how far the groove reaches to the left of the line
	Right     number `json:"right" unit:"mm"`      // how far the groove reaches to the right of the line
}

// findingJSON is one thing that is wrong. It stands for all places round the glass where it recurs.
type findingJSON struct {
	Kind     string `json:"kind" word:"kinds"`           // what is wrong
	Face     string `json:"face,omitempty" word:"base"`  // the face it is on; left out on the side
	Cuts     []int  `json:"cuts"`                        // the ids of the cuts that have it: one, or two that are too near; none where it is the whole glass's
	Repeat   int    `json:"repeat"`                      // where it is: the repeat, from 1
	Theta    number `json:"theta" unit:"°"`              // where it is: round the glass from the middle of repeat 1
	Height   number `json:"height" unit:"mm"`            // where it is: above the table; on the base the distance from its middle
	Measured number `json:"measured" unit:"mm or share"` // what it comes to: a share where share is true, a length otherwise
	Wanted   number `json:"wanted" unit:"mm or share"`   // what it should come to, likewise
	Share    bool   `json:"share"`                       // whether measured and wanted are shares, not lengths
	Cure     string `json:"cure,omitempty"`              // the smallest change that cures it, in words; left out where none was sought or found
	Letter   string `json:"letter"`                      // its letter on paper: one for each kind of trouble between the same parts, however many cuts have it
	Recurs   int    `json:"recurs"`                      // in how many places round the glass it is
}

// chordJSON is a circle that is stepped into equal parts.
type chordJSON struct {
	Name   string `json:"name"`             // where the circle is, such as the foot
	Height number `json:"height" unit:"mm"` // above the table; on the base the distance from its middle
	Radius number `json:"radius" unit:"mm"` // of the circle
	Parts  int    `json:"parts"`            // into how many it is stepped
	Chord  number `json:"chord" unit:"mm"`  // what dividers are set to, straight across
}

// totalsJSON is what there is to cut.
type totalsJSON struct {
	Cuts    int     `json:"cuts"`                         // how many
	Length  number  `json:"length" unit:"mm"`             // of groove
	Volume  number  `json:"volume" unit:"mm³"`            // of glass ground away, each place once where grooves cross
	Minutes *number `json:"minutes,omitempty" unit:"min"` // how long that takes; left out where the rate of a wheel isn't known
}

// number is written to six decimals: a millionth of a millimetre or of a degree.
// One that is not known is left out, never null: a pointer with omitempty.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	return json.Marshal(math.Round(float64(n)*1e6)/1e6 + 0) // + 0: never minus zero
}

// known returns a number that is left out where it is infinite, or no number.
func known(x float64) *number { return where(!math.IsInf(x, 0) && !math.IsNaN(x), x) }

// where returns a number that is left out where it does not hold.
func where(holds bool, x float64) *number {
	if !holds {
		return nil
	}
	n := number(x)
	return &n
}

func degrees(radians float64) number { return number(radians * 180 / math.Pi) }

// PlanJSON writes the whole plan.
func PlanJSON(w io.Writer, p *pattern.Plan) error {
	out := planJSON{
		Schema: schema, Title: p.Job.Title, Length: p.Job.Length.String(),
		Blank: blank(p), Surface: surface(p), Repeats: p.Repeats, Free: append([]int{}, p.Free()...),
		Band: [2]number{number(p.Band.Foot), number(p.Band.Top)}, Limits: limits(p), Most: mosts(p),
		Cuts: cuts(p), Lines: lines(p), Findings: findings(p), OnlyIf: hangsOn(p), Notes: append([]string{}, allNotes(p)...), Chords: chords(p),
		Glass: glassware(p), Rounds: rounds(p), Order: passes(p), Base: base(p), Quote: quote(p), Included: includes(p),
	}
	t := p.Whole()
	out.Totals = totalsJSON{Cuts: t.Cuts, Length: number(t.Length), Volume: number(p.GroundAway())}
	times := p.WholeTimes()
	out.Totals.Minutes = where(Rates(p, times) != "", times.Cutting)
	return write(w, out)
}

func write(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

func blank(p *pattern.Plan) blankJSON {
	b := blankJSON{
		Name: p.Blank.Name, Straight: p.Blank.Straight, Stations: []stationJSON{}, Profile: []curveJSON{}, Inside: []curveJSON{},
		InsideFloor: where(p.Blank.Floor > 0, p.Blank.Floor),
	}
	for _, s := range p.Blank.Stations {
		b.Stations = append(b.Stations, stationJSON{number(s.Height), number(s.Radius), number(p.Blank.Wall(s.Height)), where(p.Blank.Straight, p.Blank.Off(s))})
	}
	m := p.Blank.Meridian()
	n := int(math.Ceil(m.Length() / curveStep))
	for i := range n + 1 {
		r, z := m.At(m.Length() * float64(i) / float64(n))
		b.Profile = append(b.Profile, curveJSON{number(z), number(r)})
	}
	for _, at := range p.Blank.ThinInner().Places(curveStep) {
		b.Inside = append(b.Inside, curveJSON{number(at.Height), number(at.Radius)})
	}
	return b
}

// curveStep is the greatest distance between listed places of the glass's curves.
const curveStep = 0.5

func surface(p *pattern.Plan) surfaceJSON {
	s := surfaceJSON{
		Kind: "cone", HalfAngle: number(p.Cone.HalfAngle.Degrees()), WorstRadiusError: number(p.WorstRadiusError),
	}
	if p.Straight() {
		s.Kind = "cylinder"
	} else {
		s.ApexRadiusFoot = known(p.Cone.ApexRadius(0))
	}
	if face := p.Outside(); face.Curved() {
		gores := face.Gores(p.Repeats, 0)
		s.Kind, s.GoresPerRepeat, s.GoreError = "gores", gores.PerRepeat, known(gores.Worst())
	}
	return s
}

func limits(p *pattern.Plan) limitsJSON {
	l := p.Job.Limits
	return limitsJSON{
		number(l.Land), number(l.Leave), number(l.Rim), number(l.Foot),
		number(l.Clear), number(l.Polish), number(l.Reach),
	}
}

func cuts(p *pattern.Plan) []cutJSON {
	out := []cutJSON{}
	for _, face := range p.Faces() {
		out = append(out, cutsOn(face)...)
	}
	return out
}

// cutsOn lists the cuts of one face.
func cutsOn(p *pattern.Plan) []cutJSON {
	all := p.All()
	out := make([]cutJSON, len(all))
	for i, c := range all {
		out[i] = cutJSON{
			ID: c.ID, Face: faceName(p), Repeat: c.Repeat, Motif: p.Job.Motifs[c.Motif].Kind.Name, MotifNumber: c.Motif + 1,
			Part: c.Part, Wheel: p.Job.Rack[c.Wheel].Name, Joins: append([]int{}, c.Joins...),
			Length: number(c.Length), Depth: number(c.Depth), Asked: number(c.Asked), Set: where(number(DepthToSet(c)) != number(c.Depth), DepthToSet(c)),
			Width: number(c.Width), Left: known(c.Left), Touch: c.Touch, Path: path(c.Groove),
			Swell: swellJSON(*c.Hand), Rock: rockJSON(*c.Hand),
		}
	}
	return out
}

// path returns the centre line of a groove, from one end of its footprint to the
// other.
func path(g *groove.Groove) []pathJSON {
	tips := g.Tips()
	samples := slices.Clone(tips[0])
	slices.Reverse(samples)
	samples = slices.Concat(samples, g.Samples, tips[1])
	out := make([]pathJSON, len(samples))
	for i, s := range samples {
		out[i] = pathJSON{
			degrees(s.Theta), number(s.Height), number(s.At.X), number(s.At.Y),
			number(s.Depth), number(s.HalfWidth()), number(s.Left), number(s.Right),
		}
	}
	return out
}

func findings(p *pattern.Plan) []findingJSON {
	out := []findingJSON{}
	for _, face := range p.Faces() {
		for _, g := range face.Groups() {
			for _, f := range g.Findings {
				out = append(out, finding(face, g, f))
			}
		}
	}
	return out
}

// finding returns one of a group's findings.
func finding(p *pattern.Plan, g pattern.Group, f pattern.Finding) findingJSON {
	return findingJSON{
		Kind: f.Kind.String(), Face: faceName(p), Cuts: append([]int{}, f.Cuts...), Repeat: f.Repeat, Theta: degrees(f.Theta),
		Height: number(f.Height), Measured: number(f.Measured), Wanted: number(f.Wanted), Share: f.Share,
		Cure: Cure(p, f), Letter: g.Letter, Recurs: p.Periods(),
	}
}

func chords(p *pattern.Plan) []chordJSON {
	out := make([]chordJSON, len(p.Chords))
	for i, c := range p.Chords {
		out[i] = chordJSON{c.Name, number(c.Height), number(c.Radius), c.Parts, number(c.Chord)}
	}
	return out
}
