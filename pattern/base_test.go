package pattern

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// The rack of every job here.
const (
	mitre = iota // a right angle, so that a groove is nearly twice as wide as deep
	fine         // a smaller mitre
	lines
	olive
	panel
)

func rack() []groove.Wheel {
	return []groove.Wheel{
		mitre: {Name: "mitre", Edge: groove.Mitre, Radius: 50, Thick: 12, Angle: math.Pi / 2},
		fine:  {Name: "fine", Edge: groove.Mitre, Radius: 25, Thick: 6, Angle: math.Pi / 2},
		lines: {Name: "lines", Edge: groove.Gang, Radius: 45, Thick: 9, Angle: 1.2, Mitres: 3, Spacing: 2.2},
		olive: {Name: "olive", Edge: groove.Round, Radius: 40, Thick: 9, Convex: 6},
		panel: {Name: "panel", Edge: groove.Flat, Radius: 50, Thick: 8},
	}
}

// blankOf returns a glass 100 mm high, of the given radii at even heights, with
// a wall of 7 mm at the foot that thins in a straight line to 2 mm at the rim.
func blankOf(t testing.TB, radii ...float64) *glass.Blank {
	t.Helper()
	stations := make([]glass.Station, len(radii))
	for i, r := range radii {
		up := float64(i) / float64(len(radii)-1)
		stations[i] = glass.Station{Height: 100 * up, Radius: r, Wall: 7 - 5*up}
	}
	return blank(t, stations...)
}

func blank(t testing.TB, stations ...glass.Station) *glass.Blank {
	t.Helper()
	b, err := glass.NewBlank("trial", 0, stations)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// straight returns a straight glass, 80 mm across.
func straight(t testing.TB) *glass.Blank { return blankOf(t, 40, 40) }

// jobOn returns a job in millimetres in a band from 20 to 80 mm.
func jobOn(b *glass.Blank, repeats int, motifs ...job.Motif) *job.Job {
	return &job.Job{
		Title: "Trial", Length: geometry.Millimetre, Blanks: []*glass.Blank{b}, Rack: rack(),
		Limits: job.Limits{Land: 0.8, Leave: 1.6, Rim: 9.5, Foot: 6.4, Clear: 0.5, Reach: 0.5},
		Layout: job.Layout{Repeats: repeats, Band: &job.Band{Foot: 20, Top: 80}},
		Motifs: motifs,
	}
}

// of and mm are the two ways to give a measure.
func of(fraction float64) job.Measure { return job.Measure{Value: fraction, Fraction: true} }
func mm(length float64) job.Measure   { return job.Measure{Value: length} }

// motif returns a motif that fills the repeat and the band, cut 0.5 mm deep.
func motif(t testing.TB, kind string, given motifs.Values, change ...func(*job.Motif)) job.Motif {
	t.Helper()
	k, ok := motifs.Find(kind)
	if !ok {
		t.Fatalf("no motif %q", kind)
	}
	m := job.Motif{Kind: k, Values: k.Defaults(), Depth: 0.5, Across: of(0), Up: of(0.5), Width: of(1), Height: of(1)}
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

// bar returns a single straight cut, upright until it is turned: a fan of one
// ray. Its middle is across from the repeat's middle and up from the band's foot.
func bar(t testing.TB, across, up, length float64, change ...func(*job.Motif)) job.Motif {
	t.Helper()
	m := motif(t, "fan", motifs.Values{"rays": 1, "hub": 0}, change...)
	m.Across, m.Up, m.Height = mm(across), mm(up), mm(length)
	return m
}

func depth(d float64) func(*job.Motif) { return func(m *job.Motif) { m.Depth = d } }
func turn(degrees float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Turn = degrees * math.Pi / 180 }
}
func at(across, up float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Across, m.Up = of(across), of(up) }
}
func size(width, height float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Width, m.Height = of(width), of(height) }
}
func with(wheel int) func(*job.Motif)    { return func(m *job.Motif) { m.Wheel = wheel } }
func on(repeats job.On) func(*job.Motif) { return func(m *job.Motif) { m.On = repeats } }
func land(limit float64) func(*job.Motif) {
	return func(m *job.Motif) { m.Land = &limit }
}
func mirrored(m *job.Motif)  { m.Mirror = true }
func trueShape(m *job.Motif) { m.Shape = job.True }

// planned lays a job out on its first blank and checks it, cures and all.
func planned(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p, err := New(j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// laid only lays it out.
func laid(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p, err := lay(context.Background(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// checked lays it out and checks it, without looking for cures.
func checked(t testing.TB, j *job.Job) *Plan {
	t.Helper()
	p := laid(t, j)
	p.Findings = p.findings()
	return p
}

// near compares lengths and angles. Beside each use stands why the two may differ.
func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

// polygons returns a groove's footprint for the reference library.
func polygons(g groove.Groove) []geom.Geometry {
	all := make([]geom.Geometry, len(g.Outlines))
	for i, o := range g.Outlines {
		var ring []float64
		for _, p := range append(o.Points[:len(o.Points):len(o.Points)], o.Points[0]) {
			ring = append(ring, p.X, p.Y)
		}
		line := geom.NewLineString(geom.NewSequence(ring, geom.DimXY))
		all[i] = geom.NewPolygon([]geom.LineString{line}).AsGeometry()
	}
	return all
}

// scattered returns a job drawn at random, of motifs in every placing there is,
// with few enough cuts for all their pairs to be walked.
func scattered(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	const most = 80
	for {
		j := draw(t, random)
		cuts := 0
		for _, m := range j.Motifs {
			cuts += len(m.Kind.Draw(m.Values, 1)) * j.Layout.Repeats
		}
		if cuts <= most {
			return j
		}
	}
}

func draw(t testing.TB, random *rand.Rand) *job.Job {
	t.Helper()
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	often := func(share float64) bool { return random.Float64() < share }

	foot := between(25, 42)
	radii := []float64{foot, foot + between(-8, 12)}
	if often(0.3) { // a belly
		radii = []float64{foot, foot + between(0, 4), foot + between(-6, 2)}
	}
	repeats := []int{1, 1, 2, 2, 3, 4, 5, 6}[random.IntN(8)]
	j := jobOn(blankOf(t, radii...), repeats)
	j.Limits.Land, j.Limits.Clear = between(0.2, 1.5), between(0.2, 0.95)
	if often(0.3) {
		j.Limits.Polish = between(0, 0.2)
	}
	j.Layout.Band = nil
	if often(0.6) {
		j.Layout.Band = &job.Band{Foot: between(3, 20), Top: between(65, 100)}
	}
	for range 1 + random.IntN(3) {
		j.Motifs = append(j.Motifs, drawMotif(t, random, repeats))
	}
	return j
}

func drawMotif(t testing.TB, random *rand.Rand, repeats int) job.Motif {
	t.Helper()
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	often := func(share float64) bool { return random.Float64() < share }

	// These three have every way in which cuts join and cross.
	kind, _ := motifs.Find([]string{"leaf", "fan", "diamond"}[random.IntN(3)])
	m := motif(t, kind.Name, nil, depth(between(0.1, 1.5)), at(between(-0.5, 0.5), between(0.2, 0.8)),
		size(between(0.2, 1), between(0.2, 0.9)), with([]int{mitre, mitre, fine, fine, lines, lines, olive, panel}[random.IntN(8)]))
	for _, p := range kind.Params {
		switch {
		case p.Sort == motifs.Count:
			m.Values[p.Name] = float64(1 + random.IntN(6))
		case p.Sort == motifs.Switch:
			m.Values[p.Name] = float64(random.IntN(2))
		case often(0.5):
			m.Values[p.Name] = between(p.Least, p.Most)
		}
	}
	if kind.Name == "leaf" && often(0.7) { // bent cuts take long to trace
		m.Values["arch"] = 0
	}
	if often(0.4) { // a whole pitch wide: cuts may meet across the repeat's edge
		m.Width = of(1)
	}
	if often(0.1) {
		m.Width = of(between(1, 2))
	}
	if often(0.3) {
		m.Turn = between(-math.Pi, math.Pi)
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
