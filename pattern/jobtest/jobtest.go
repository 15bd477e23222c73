// Package jobtest has small jobs for tests, built in code and drawn at random.
package jobtest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// The rack of every job here, by number.
const (
	Mitre = iota // a right angle, so that a groove is nearly twice as wide as deep
	Fine         // a smaller mitre
	Lines
	Olive
	Panel
)

// Rack returns those wheels.
func Rack() []groove.Wheel {
	return []groove.Wheel{
		Mitre: {Name: "mitre", Edge: groove.Mitre, Radius: 50, Thick: 12, Angle: math.Pi / 2},
		Fine:  {Name: "fine", Edge: groove.Mitre, Radius: 25, Thick: 6, Angle: math.Pi / 2},
		Lines: {Name: "lines", Edge: groove.Gang, Radius: 45, Thick: 9, Angle: 1.2, Mitres: 3, Spacing: 2.2},
		Olive: {Name: "olive", Edge: groove.Round, Radius: 40, Thick: 9, Convex: 6},
		Panel: {Name: "panel", Edge: groove.Flat, Radius: 50, Thick: 8},
	}
}

// BlankOf returns a glass 100 mm high, of the given radii at even heights, with
// a wall of 7 mm at the foot that thins in a straight line to 2 mm at the rim.
func BlankOf(t testing.TB, radii ...float64) *glass.Blank {
	t.Helper()
	stations := make([]glass.Station, len(radii))
	for i, r := range radii {
		up := float64(i) / float64(len(radii)-1)
		stations[i] = glass.Station{Height: 100 * up, Radius: r, Wall: 7 - 5*up}
	}
	return Blank(t, stations...)
}

// Blank returns a glass of the given stations.
func Blank(t testing.TB, stations ...glass.Station) *glass.Blank {
	t.Helper()
	b, err := glass.NewBlank("trial", 0, stations)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Straight returns a straight glass, 80 mm across.
func Straight(t testing.TB) *glass.Blank { return BlankOf(t, 40, 40) }

// On returns a job in millimetres in a band from 20 to 80 mm.
func On(b *glass.Blank, repeats int, motifs ...job.Motif) *job.Job {
	return &job.Job{
		Title: "Trial", Length: geometry.Millimetre, Blanks: []*glass.Blank{b}, Rack: Rack(),
		Limits: job.Limits{Land: 0.8, Leave: 1.6, Rim: 9.5, Foot: 6.4, Clear: 0.5, Reach: 0.5},
		Layout: job.Layout{Repeats: repeats, Band: &job.Band{Foot: 20, Top: 80}},
		Motifs: motifs,
	}
}

// Of and MM are the two ways to give a measure.
func Of(fraction float64) job.Measure { return job.Measure{Value: fraction, Fraction: true} }
func MM(length float64) job.Measure   { return job.Measure{Value: length} }

// Motif returns a motif that fills the repeat and the band, cut 0.5 mm deep.
func Motif(t testing.TB, kind string, given motifs.Values, change ...func(*job.Motif)) job.Motif {
	t.Helper()
	k, ok := motifs.Find(kind)
	if !ok {
		t.Fatalf("no motif %q", kind)
	}
	m := job.Motif{Kind: k, Values: k.Defaults(), Depth: 0.5, X: Of(0), Y: Of(0.5), Width: Of(1), Height: Of(1)}
	for name, value := range given {
		if _, ok := m.Values[name]; !ok {
			t.Fatalf("%s has no parameter %q", kind, name)
		}
		m.Values[name] = value
	}
	for _, f := range change {
		f(&m)
	}
	return m
}

// Bar returns a single straight cut, upright until it is turned: a fan of one
// ray. Its middle is across from the repeat's middle and up from the band's foot.
func Bar(t testing.TB, across, up, length float64, change ...func(*job.Motif)) job.Motif {
	t.Helper()
	m := Motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, change...)
	m.X, m.Y, m.Height = MM(across), MM(up), MM(length)
	return m
}

// Depth and the like change a motif.
func Depth(d float64) func(*job.Motif) { return func(m *job.Motif) { m.Depth = d } }
func Turn(degrees float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Turn = geometry.Degrees(degrees) }
}
func At(across, up float64) func(*job.Motif) {
	return func(m *job.Motif) { m.X, m.Y = Of(across), Of(up) }
}
func Size(width, height float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Width, m.Height = Of(width), Of(height) }
}
func Wheel(wheel int) func(*job.Motif)        { return func(m *job.Motif) { m.Wheel = wheel } }
func Repeats(repeats job.On) func(*job.Motif) { return func(m *job.Motif) { m.On = repeats } }
func Land(limit float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Land = &limit }
}
func Mirrored(m *job.Motif)  { m.Mirror = true }
func TrueShape(m *job.Motif) { m.Shape = job.True }

// Scattered returns a job drawn at random, of motifs in every placing there is,
// with few enough cuts for all their pairs to be walked.
func Scattered(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	const most = 80
	for {
		j := Draw(t, random)
		cuts := 0
		for _, m := range j.Motifs {
			cuts += len(m.Kind.Draw(m.Values, 1)) * j.Layout.Repeats
		}
		if cuts <= most {
			return j
		}
	}
}

// Draw returns a job drawn at random.
func Draw(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	often := func(share float64) bool { return random.Float64() < share }

	foot := between(25, 42)
	radii := []float64{foot, foot + between(-8, 12)}
	if often(0.3) { // a belly
		radii = []float64{foot, foot + between(0, 4), foot + between(-6, 2)}
	}
	repeats := []int{1, 1, 2, 2, 3, 4, 5, 6}[random.IntN(8)]
	j := On(BlankOf(t, radii...), repeats)
	j.Limits.Land, j.Limits.Clear = between(0.2, 1.5), between(0.2, 0.95)
	if often(0.3) {
		j.Limits.Polish = between(0, 0.2)
	}
	j.Layout.Band = nil
	if often(0.6) {
		j.Layout.Band = &job.Band{Foot: between(3, 20), Top: between(65, 100)}
	}
	for range 1 + random.IntN(3) {
		j.Motifs = append(j.Motifs, DrawMotif(t, random, repeats))
	}
	return j
}

// DrawMotif returns a motif drawn at random.
func DrawMotif(t testing.TB, random *rand.Rand, repeats int) job.Motif {
	t.Helper()
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	often := func(share float64) bool { return random.Float64() < share }

	// These three have every way in which cuts join and cross.
	kind, _ := motifs.Find([]string{"leaf", "fan", "diamond"}[random.IntN(3)])
	m := Motif(t, kind.Name, nil, Depth(between(0.1, 1.5)), At(between(-0.5, 0.5), between(0.2, 0.8)),
		Size(between(0.2, 1), between(0.2, 0.9)), Wheel([]int{Mitre, Mitre, Fine, Fine, Lines, Lines, Olive, Panel}[random.IntN(8)]))
	for _, p := range kind.Params {
		switch {
		case p.Name == motifs.HandParam: // see ByHand
		case p.Sort == motifs.Count:
			m.Values[p.Name] = float64(1 + random.IntN(6))
		case p.Sort == motifs.Switch:
			m.Values[p.Name] = float64(random.IntN(2))
		case often(0.5):
			m.Values[p.Name] = between(p.Min, p.Max)
		}
	}
	if kind.Name == "leaf" && often(0.7) { // bent cuts take long to trace
		m.Values["arch"] = 0
	}
	if often(0.4) { // a whole pitch wide: cuts may meet across the repeat's edge
		m.Width = Of(1)
	}
	if often(0.1) {
		m.Width = Of(between(1, 2))
	}
	if often(0.3) {
		m.Turn = geometry.Angle(between(-math.Pi, math.Pi))
	}
	if often(0.1) {
		m.Turn = math.Pi / 2
	}
	m.Mirror = often(0.3)
	if often(0.3) {
		m.Shape = job.True
	}
	if repeats%2 == 0 && often(0.4) {
		m.On = []job.On{job.Odd, job.Even}[random.IntN(2)]
	}
	if often(0.2) {
		own := []float64{0, between(0, 2)}[random.IntN(2)]
		m.Land = &own
	}
	if often(0.2) {
		own := between(0, 1)
		m.Clear = &own
	}
	return m
}

// Named returns a straight-sided blank.
func Named(t testing.TB, name string, height, radius, foot, rim float64) *glass.Blank {
	t.Helper()
	b, err := glass.NewBlank(name, 12, []glass.Station{
		{Height: 0, Radius: radius, Wall: foot}, {Height: height, Radius: radius, Wall: rim},
	})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Three is a set of three blanks, none of which limits all:
//
//	          height  across  wall      own band, for a motif 1 mm deep that fills it
//	thin        100     80     7 to 2   6.4 to 88: 2.6 mm of wall are 12/50 below the rim
//	short        90     78     5        6.4 to 80.5, the rim's margin
//	narrow       96     76     5        6.4 to 86.5, the rim's margin
func Three(t testing.TB, all ...job.Motif) *job.Job {
	j := On(nil, 4, all...)
	j.Layout.Band = nil
	j.Blanks = []*glass.Blank{Named(t, "thin", 100, 40, 7, 2), Named(t, "short", 90, 39, 5, 5), Named(t, "narrow", 96, 38, 5, 5)}
	return j
}

// Small draws a job whose counts are soon tried: fine mitres only, and no count
// above eight.
func Small(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	j := Scattered(t, random)
	if len(j.Motifs) > 1 && random.IntN(3) > 0 {
		j.Motifs = j.Motifs[:1]
	}
	// With the limits of a rough hand, something clears and something doesn't.
	j.Limits.Reach, j.Limits.Clear, j.Limits.Leave = 0, random.Float64()*0.3, 0.5
	j.Limits.Rim, j.Limits.Foot = 0, 0
	for i := range j.Motifs {
		m := &j.Motifs[i]
		m.Kind.Params = slices.Clone(m.Kind.Params)
		for k, p := range m.Kind.Params {
			if p.Sort == motifs.Count {
				m.Kind.Params[k].Max = min(p.Max, 8)
				m.Values[p.Name] = min(m.Values[p.Name], 8)
			}
		}
		m.Wheel, m.Depth = Fine, 0.1+1.1*random.Float64()
		m.Values["arch"], m.Land, m.Clear, m.Turn = 0, nil, nil, 0
		m.Y, m.Width, m.Height = Of(0.5), Of(0.3+0.5*random.Float64()), Of(0.4+0.4*random.Float64())
	}
	return j
}

// Counts returns the counts of a motif's kind.
func Counts(m job.Motif) []string {
	var names []string
	for _, p := range m.Kind.Params {
		if p.Sort == motifs.Count {
			names = append(names, p.Name)
		}
	}
	return names
}
