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

type planJSON struct {
	Schema   int           `json:"schema"`
	Title    string        `json:"title"`
	Length   string        `json:"length"`
	Blank    blankJSON     `json:"blank"`
	Surface  surfaceJSON   `json:"surface"`
	Repeats  int           `json:"repeats"`
	Free     []int         `json:"free"`
	Band     [2]number     `json:"band"`
	Limits   limitsJSON    `json:"limits"`
	Most     []mostJSON    `json:"most"` // the counts the job asks the most of
	Cuts     []cutJSON     `json:"cuts"`
	Lines    []lineJSON    `json:"lines"` // cuts that go on into one another
	Findings []findingJSON `json:"findings"`
	OnlyIf   []string      `json:"only_if"` // the readings in doubt on which it hangs that there are none
	Notes    []string      `json:"notes"`   // as check has them
	Chords   []chordJSON   `json:"chords"`
	Totals   totalsJSON    `json:"totals"`
	Glass    glassJSON     `json:"glass"`
	Rounds   []roundJSON   `json:"out_of_round"` // the stations that are
	Order    []passJSON    `json:"order"`        // in which to cut
	Base     *baseJSON     `json:"base,omitempty"`
	Quote    *quoteJSON    `json:"quote,omitempty"`

	Included []includedJSON `json:"included,omitempty"` // what the job has from which file
}

type blankJSON struct {
	Name        string        `json:"name"`
	Stations    []stationJSON `json:"stations"`
	InsideFloor *number       `json:"inside_floor,omitempty"` // above the table; where it was measured
	Straight    bool          `json:"straight"`               // taken as straight, whatever its stations read
	// The outside and the inside, from the foot up, at steps of half a millimetre
	// or less, as grooves are reckoned on them. Without a floor the inside is
	// taken to run on down to the table.
	Profile []curveJSON `json:"profile"`
	Inside  []curveJSON `json:"inside"`
}

// curveJSON is one place of the outside's or the inside's curve.
type curveJSON struct {
	Height number `json:"height"`
	Radius number `json:"radius"`
}

type stationJSON struct {
	Height number  `json:"height"`
	Radius number  `json:"radius"`
	Wall   number  `json:"wall"`
	Off    *number `json:"off,omitempty"` // in radius, of a glass that is taken as straight
}

type surfaceJSON struct {
	Kind             string  `json:"kind"`
	HalfAngle        number  `json:"half_angle"`
	ApexRadiusFoot   *number `json:"apex_radius_foot,omitempty"` // a cylinder has none
	WorstRadiusError number  `json:"worst_radius_error"`
	// Of paper in gores: how many to a repeat, and how far their edges are out.
	GoresPerRepeat int     `json:"gores_per_repeat,omitempty"`
	GoreError      *number `json:"gore_error,omitempty"`
}

type limitsJSON struct {
	Land   number `json:"land"`
	Leave  number `json:"leave"`
	Rim    number `json:"rim"`
	Foot   number `json:"foot"`
	Clear  number `json:"clear"`
	Polish number `json:"polish"`
	Reach  number `json:"reach"`
}

type cutJSON struct {
	ID          int     `json:"id"`
	Face        string  `json:"face,omitempty"` // base; left out on the side
	Repeat      int     `json:"repeat"`
	Motif       string  `json:"motif"`
	MotifNumber int     `json:"motif_number"`
	Part        string  `json:"part"`
	Wheel       string  `json:"wheel"`
	Joins       []int   `json:"joins"`
	Length      number  `json:"length"`
	Depth       number  `json:"depth"`
	Asked       number  `json:"depth_asked"`
	Width       number  `json:"width"`
	Left        *number `json:"left,omitempty"` // left out where all of it is off the glass
	Touch       bool    `json:"touch"`
	// What the hand does along it, in shares of the depth asked and in degrees to the left and
	// to the right; left out where it is even.
	Swell []number   `json:"swell,omitempty"`
	Rock  *[2]number `json:"rock,omitempty"`
	Path  []pathJSON `json:"path"`
}

type pathJSON struct {
	Theta     number `json:"theta"`
	Height    number `json:"height"`
	X         number `json:"x"`
	Y         number `json:"y"`
	Depth     number `json:"depth"`
	HalfWidth number `json:"half_width"` // the mean of what lies to the left and to the right
	Left      number `json:"left"`
	Right     number `json:"right"`
}

type findingJSON struct {
	Kind     string `json:"kind"`
	Face     string `json:"face,omitempty"` // base; left out on the side
	Cuts     []int  `json:"cuts"`
	Repeat   int    `json:"repeat"`
	Theta    number `json:"theta"`
	Height   number `json:"height"`
	Measured number `json:"measured"`
	Wanted   number `json:"wanted"`
	Share    bool   `json:"share"`          // measured and wanted are shares, not lengths
	Cure     string `json:"cure,omitempty"` // where one was sought
	Letter   string `json:"letter"`
	Recurs   int    `json:"recurs"` // in how many places round the glass
}

type chordJSON struct {
	Name   string `json:"name"`
	Height number `json:"height"`
	Radius number `json:"radius"`
	Parts  int    `json:"parts"`
	Chord  number `json:"chord"`
}

type totalsJSON struct {
	Cuts   int    `json:"cuts"`
	Length number `json:"length"`
	Volume number `json:"volume"`
	// Minutes is how long the groove takes at the shop's rate; left out without one.
	Minutes *number `json:"minutes,omitempty"`
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
			Length: number(c.Length), Depth: number(c.Depth), Asked: number(c.Asked),
			Width: number(c.Width), Left: known(c.Left), Touch: c.Touch, Path: path(c.Groove),
			Swell: swellJSON(c.Hand), Rock: rockJSON(c.Hand),
		}
	}
	return out
}

// path returns the centre line of a groove, from one end of its footprint to the
// other.
func path(g *groove.Groove) []pathJSON {
	samples := slices.Clone(g.Tips[0])
	slices.Reverse(samples)
	samples = slices.Concat(samples, g.Samples, g.Tips[1])
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
