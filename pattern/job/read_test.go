package job

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
)

// near compares lengths and angles worked out by hand.
var near = cmp.Options{
	cmpopts.EquateApprox(0, 1e-9),
	cmpopts.IgnoreUnexported(glass.Blank{}, Job{}),
	// A kind is compared by its name, because functions can't be.
	cmp.Comparer(func(a, b motifs.Kind) bool { return a.Name == b.Name }),
}

func TestRead(t *testing.T) {
	got, err := Read("six.toml", base().bytes())
	if err != nil {
		t.Fatal(err)
	}
	const mm = geometry.MillimetresPerInch
	// One factor on both walls makes the blank weigh what the scale says. They stay
	// as they were measured.
	factor := got.Blanks[0].Factor
	if weight := got.Blanks[0].Weight(); math.Abs(weight-18*28.349523125) > 1e-6 || factor < 1 || factor > 1.2 {
		t.Errorf("weighs %g g with %g times the walls", weight, factor)
	}
	values := motifs.Leaf().Defaults()
	values["fronds"], values["lean"], values["terminal"] = 9, 45.5, 0
	land, share := 0.0, 0.25
	change, finishing := 8.0, 20.0
	mitre, fine, tenth := 0, geometry.MillimetresPerInch/64, 0.1
	want := &Job{
		Title:  "Six leaves",
		Length: geometry.Inch,
		Blanks: []*glass.Blank{{
			Name:        "tumbler",
			Floor:       12.7,
			Fill:        76.2,
			Material:    glass.Material{Name: "lead crystal", Density: 3.1},
			Paper:       &glass.Extent{Low: 0, High: 82.55},
			ScaleWeight: 18 * 28.349523125,
			Straight:    true,
			Factor:      factor,
			BaseAcross:  73.025,
			Hollow:      glass.Hollow{Across: 15.875, Depth: 1.5875},
			Stations: []glass.Station{
				{Height: 0, Radius: 38.1, Wall: 9.525},
				{Height: 88.9, Radius: 10.25 * mm / (2 * math.Pi), Wall: 2.5},
			},
		}},
		Limits: Limits{Land: 0.79375, Leave: 1.5875, Rim: 9.525, Foot: 6.35, Edge: 3.175, Clear: 0.5, Reach: DefaultLimits().Reach},
		Rack: []groove.Wheel{
			{Name: "mitre", Edge: groove.Mitre, Radius: 50.8, Thick: 6.35, Angle: math.Pi / 2,
				Rate: 50.8, Wear: groove.Wear{Lost: mm / 64, Groove: 1200 * mm}},
			{Name: "olive", Edge: groove.Round, Radius: 50.8, Thick: 9.525, Convex: 6.35},
			{Name: "lines", Edge: groove.Gang, Radius: 50.8, Thick: 9.525, Angle: math.Pi / 3, Mitres: 3, Spacing: 3.175},
			{Name: "panel", Edge: groove.Flat, Radius: 50.8, Thick: 12.7},
		},
		Shop:   Shop{Rate: 38.1, Order: []int{1, 0}, Finish: Felt, Change: &change, Finishing: &finishing, Spoil: 0.1, Spread: 0.2, Hour: 38, Pieces: 6},
		Layout: Layout{Repeats: 6, Bare: []int{2}, Band: &Band{12.7, 69.85}, Match: Own},
		Base:   &Layout{Repeats: 8, Band: &Band{12.7, 31.75}},
		Motifs: []Motif{
			{
				Name: "first", Kind: motifs.Leaf(), Values: values, Wheel: 0, Depth: 0.79375,
				X: Measure{0.25, true}, Y: Measure{31.75, false},
				Width: Measure{0.8, true}, Height: Measure{50.8, false},
				Turn: -math.Pi / 2, Mirror: true, On: Even, Shape: True,
				Parts: []Part{{Name: "frond", Wheel: &mitre, Depth: &fine, Land: &fine, Clear: &tenth,
					Swell: []float64{0, 1, 0.5}, Rock: &[2]geometry.Angle{geometry.Degrees(3.5), 0}}},
				Swell: []float64{0.4, 1, 0.7}, Rock: &[2]geometry.Angle{0, geometry.Degrees(12)},
				Land: &land, Clear: &share, CutOrder: 2, Line: 1 + base().index(t, "motif[1]"),
			},
			{
				Kind: motifs.Fan(), Values: motifs.Fan().Defaults(), Wheel: 1, Depth: 0.79375,
				Inside: 1, On: Even, Shape: True, // with motif 1
				Y: Measure{0.5, true}, X: Measure{0, true},
				Width: Measure{1, true}, Height: Measure{1, true},
				Line: 1 + base().index(t, "motif[2]"),
			},
			{
				Kind: motifs.Star(), Values: motifs.Star().Defaults(), Wheel: 0, Depth: 0.79375, Face: Base,
				Y: Measure{0.5, true}, X: Measure{0, true}, Width: Measure{1, true}, Height: Measure{1, true},
				Line: 1 + base().index(t, "motif[3]"),
			},
			{
				Kind: motifs.Star(), Values: motifs.Star().Defaults(), Wheel: 0, Depth: 0.79375, Face: Base, Middle: true,
				Y: Measure{0.5, true}, X: Measure{0, true}, Width: Measure{1, true}, Height: Measure{1, true},
				Line: 1 + base().index(t, "motif[4]"),
			},
		},
	}
	if diff := cmp.Diff(want, got, near); diff != "" {
		t.Error("wanted -, read +:\n" + diff)
	}
}

// The least a job can say: everything else has a default.
func TestReadLeast(t *testing.T) {
	got, err := Read("least.toml", []byte(`
length = "mm"
blank = {station=[{height=0, across=80, wall=8}, {height=100, across=80, wall=3}]}
wheel = [{name="panel", edge="flat", across=100, thick=12}]
layout.repeats = 1
motif = [
  {kind="diamond", wheel="panel", depth=1},
]
`))
	if err != nil {
		t.Fatal(err)
	}
	if got.Title != "Untitled" || got.Blanks[0].Name != "blank" || got.Blanks[0].Floor != 0 {
		t.Errorf("title %q, blank %q, floor %g", got.Title, got.Blanks[0].Name, got.Blanks[0].Floor)
	}
	if b := got.Blanks[0]; b.Fill != 0 || b.Material != glass.Materials()[0] || b.ScaleWeight != 0 || b.Factor != 1 || b.Paper != nil {
		t.Errorf("fill %g, %+v, weighs %g, walls times %g", b.Fill, b.Material, b.ScaleWeight, b.Factor)
	}
	if got.Layout.Match != Set || got.Shop.Rate != 0 || got.Shop.Order != nil || got.Shop.Finish != Undecided {
		t.Errorf("match %v, shop %+v", got.Layout.Match, got.Shop)
	}
	if got.Limits != DefaultLimits() {
		t.Errorf("limits %+v", got.Limits)
	}
	want := []Motif{{
		Kind: motifs.Diamond(), Values: motifs.Diamond().Defaults(), Depth: 1,
		X: Measure{0, true}, Y: Measure{0.5, true}, Width: Measure{1, true}, Height: Measure{1, true},
		Line: 7,
	}}
	if diff := cmp.Diff(want, got.Motifs, near); diff != "" {
		t.Error(diff)
	}
	if got.Layout.Band != nil {
		t.Errorf("band %v", got.Layout.Band)
	}
}

// Every way TOML has of writing the same tables.
func TestReadForms(t *testing.T) {
	const rest = `
[[wheel]]
name = "m"
edge = "mitre"
across = "100 mm"
thick = "6 mm"
angle = 90.0
[layout]
repeats = 0x6
[[motif]]
kind = "leaf"
wheel = 'm'
depth = 1e-1
`
	for name, text := range map[string]string{
		"a list of tables": `
length = "in"
[blank]
station = [ {height=0, across="3 1/8", wall="3/8"}, {height="3 1/2", across="3 1/8", wall="3/32"} ]`,
		"dotted keys": `
length = "in"
blank.name = "b"
blank.station = [
  {height=0, across="3 1/8", wall="3/8"}, # the foot
  # the rim
  {height="3 1/2", across="3 1/8", wall="3/32"},
]`,
		"a table a station, before its own": `
length = "in"
[[blank.station]]
height = 0
across = '3-1/8"'
wall = "3/8"
[[blank.station]]
height = '3½″'
across = "3⅛"
wall = "0.09375"
[blank]
name = "b"`,
		"a set of one": `
length = "in"
[[blank]]
[[blank.station]]
height = 0.0
across = 3.125
wall = "3/8 in"
[[blank.station]]
height = "88.9 mm"
across = "7.9375 cm"
wall = "3/32"`,
		"quoted keys, carriage returns and a byte order mark": "\ufeff\"length\" = \"in\"\r\n['blank']\r\n" +
			"station = [ {height=0, across=3.125, wall=\"3/8\"}, {height=3.5, across=3.125, wall=\"3/32\"} ]\r\n",
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Read("form.toml", []byte(text+rest))
			if err != nil {
				t.Fatal(err)
			}
			want := []glass.Station{{Height: 0, Radius: 39.6875, Wall: 9.525}, {Height: 88.9, Radius: 39.6875, Wall: 2.38125}}
			if diff := cmp.Diff(want, got.Blanks[0].Stations, near); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestReadSet(t *testing.T) {
	const blank = `
[[blank]]
name = "%"
station = [ {height=0, across=80, wall=8}, {height=100, across=80, wall=3} ]`
	text := `length = "mm"` +
		strings.ReplaceAll(blank, "%", "first") + strings.ReplaceAll(blank, "%", "second") + `
[[wheel]]
name = "p"
edge = "flat"
across = 100
thick = 12
[layout]
repeats = 4
[[motif]]
kind = "leaf"
wheel = "p"
depth = 1
`
	got, err := Read("set.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Blanks) != 2 || got.Blanks[0].Name != "first" || got.Blanks[1].Name != "second" {
		t.Errorf("blanks %v", got.Blanks)
	}

	e := refused(t, []byte(strings.Replace(text, "second", "first", 1)))
	if e.Line != 6 || e.Key != "blank[2].name" || e.Read != `"first"` {
		t.Error(e)
	}
	e = refused(t, []byte(strings.Replace(text, "name = \"second\"\n", "", 1)))
	if e.Line != 5 || e.Key != "blank[2].name" || e.Read != "nothing" {
		t.Error(e)
	}
}

// A motif with its kind's own keys must not find them taken.
func TestKeysOfKinds(t *testing.T) {
	taken := keysOf("motif")
	for _, kind := range motifs.All() {
		for _, p := range kind.Params {
			for _, key := range taken {
				if p.Name == key {
					t.Errorf("%s has a parameter %q, which every motif has", kind.Name, key)
				}
			}
		}
	}
}

func TestDemo(t *testing.T) {
	name, data := Demo()
	j, err := Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	// The demo's glass is one straight taper, so that its paper is one piece.
	profile := j.Blanks[0].Profile()
	if _, worst := profile.FitCone(profile.Bottom(), profile.Top()); worst > 1e-9 {
		t.Errorf("the profile leaves its cone by %g mm", worst)
	}
	clear(data)
	if _, again := Demo(); !bytes.HasPrefix(again, []byte("# ")) {
		t.Error("what Demo returned can change the next demo")
	}
}

func TestStarter(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		data := Starter(unit)
		j, err := Read("starter.toml", data)
		if err != nil {
			t.Fatal(err)
		}
		if j.Length != unit {
			t.Errorf("a starter in %s is in %s", unit, j.Length)
		}
		// What it says about the limits is what holds without them, to the nearest tenth.
		given, fallback := j.Limits, DefaultLimits()
		if diff := cmp.Diff(fallback, given, cmpopts.EquateApprox(0, 0.1)); diff != "" {
			t.Errorf("limits in %s: %s", unit, diff)
		}
		explained := func(key string) bool {
			for line := range strings.Lines(string(data)) {
				rest := strings.TrimLeft(line, "# ")
				if strings.HasPrefix(rest, key+" =") && strings.Count(line, "# ") > strings.Count(line[:2], "# ") ||
					strings.HasPrefix(rest, key+"  ") {
					return true
				}
			}
			return false
		}
		for _, table := range tableNames()[1:] {
			for _, key := range keysOf(table) {
				if !explained(key) && key != "station" { // explained by its own keys
					t.Errorf("%s of a %s is not explained in %s", key, table, unit)
				}
			}
		}
		for _, kind := range motifs.All() {
			for _, p := range kind.Params {
				if !explained(p.Name) {
					t.Errorf("%s of a %s is not explained in %s", p.Name, kind.Name, unit)
				}
			}
		}
	}
}

// Each note of the starter that is a key can be made one.
func TestStarterNotes(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		var b strings.Builder
		leaf := false
		for line := range strings.Lines(string(Starter(unit))) {
			rest, note := strings.CutPrefix(line, "# ")
			name, _, _ := strings.Cut(rest, ":")
			if _, kind := motifs.Find(name); kind && leaf {
				break // the keys of the next kind
			} else if kind && name == "leaf" {
				leaf = true
			}
			if note && (strings.Contains(rest, " = ") || strings.HasPrefix(rest, "[[") && !strings.Contains(rest, " ")) {
				line = rest
			}
			b.WriteString(line)
		}
		if !leaf {
			t.Fatal("the starter doesn't say what keys a leaf has")
		}
		j, err := ReadWith("notes.toml", []byte(b.String()), files(map[string]string{"shop.toml": "[limits]\npolish = 0\n"}))
		if err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
		blank := j.Blanks[0]
		if len(j.Rack) != 3 || j.Layout.Band == nil || j.Motifs[0].Land == nil || j.Shop.Rate == 0 || j.Shop.Order == nil ||
			blank.Fill == 0 || blank.ScaleWeight == 0 || !blank.Straight || j.Motifs[0].CutOrder == 0 {
			t.Errorf("not all of the notes were read: %+v", j)
		}
	}
}

// A count can be "most", in capitals or not. Its value is the smallest until the
// largest is found.
func TestReadMostWord(t *testing.T) {
	for _, word := range []string{"most", "Most", "MOST", " most "} {
		got, err := Read("six.toml", base().with(t, "motif[1].fronds", `fronds = "`+word+`"`).bytes())
		if err != nil {
			t.Fatal(err)
		}
		m := got.Motifs[0]
		if len(m.Most) != 1 || m.Most[0] != "fronds" || got.Motifs[1].Most != nil {
			t.Errorf("most of %v", m.Most)
		}
		if n, known := m.Values["fronds"]; known {
			t.Errorf("%g fronds before any were looked for", n)
		}
	}
}
