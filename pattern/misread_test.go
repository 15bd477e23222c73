package pattern

import (
	"math"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// One reading a 32nd of an inch across out, 0.397 mm in radius, makes a straight
// glass curved; what is reported is what it would have to read, and of a foot, a rim
// or three stations it is only asked.
func TestMisread(t *testing.T) {
	const slip = 25.4 / 64
	for name, test := range map[string]struct {
		radii             []float64 // at even heights
		told, sure, takes bool
		station           int
		diameter          float64 // for a straight glass
		straightened, all bool    // taken as straight; a band of all the glass
	}{
		"straight":          {radii: []float64{36, 37, 38, 39, 40}},
		"between others":    {radii: []float64{36, 37, 38 + slip, 39, 40}, told: true, sure: true, takes: true, station: 2, diameter: 76},
		"narrower":          {radii: []float64{40, 40, 40 - 2*slip, 40}, told: true, sure: true, takes: true, station: 2, diameter: 80},
		"far out":           {radii: []float64{40, 43, 40, 40, 40}, told: true, sure: true, station: 1, diameter: 80},
		"a flared foot":     {radii: []float64{36 + 3*slip, 37, 38, 39, 40}, all: true},
		"the foot":          {radii: []float64{36 + 2*slip, 37, 38, 39, 40}, all: true, told: true, takes: true, diameter: 72},
		"the foot, a slip":  {radii: []float64{36 + slip, 37, 38, 39, 40}, all: true, told: true, takes: true, diameter: 72},
		"below the band":    {radii: []float64{36 + slip, 37, 38, 39, 40}, told: true, takes: true, diameter: 72},
		"a flared rim":      {radii: []float64{36, 37, 38, 39 + 3*slip}},
		"the rim":           {radii: []float64{36, 37, 38, 39 + 2*slip}, told: true, takes: true, station: 3, diameter: 78},
		"the rim, a slip":   {radii: []float64{36, 37, 38, 39 + slip}, told: true, takes: true, station: 3, diameter: 78},
		"a narrow rim":      {radii: []float64{36, 37, 38, 39 - slip}, all: true, told: true, takes: true, station: 3, diameter: 78},
		"less than a slip":  {radii: []float64{36, 37, 38, 39.1}},
		"an even flare":     {radii: []float64{36, 36.1, 36.4, 36.9, 37.6}},
		"an even barrel":    {radii: []float64{36, 36.6, 36.8, 36.6}},
		"three stations":    {radii: []float64{36, 38 + slip, 40}, all: true, told: true, takes: true, station: 1, diameter: 76},
		"a barrel of three": {radii: []float64{36, 38.5, 36}},
		"a barrel of five":  {radii: []float64{36, 37.5, 38, 37.5, 36}},
		"taken as straight": {radii: []float64{36, 37, 38 + slip, 39, 40}, straightened: true},
	} {
		b := blankOf(t, test.radii...)
		if test.straightened {
			var err error
			if b, err = b.Straightened(); err != nil {
				t.Fatal(err)
			}
		}
		band := job.Band{Foot: 20, Top: 80}
		if test.all {
			band = job.Band{Foot: 0, Top: 100}
		}
		p, err := bare(jobOn(b, 6), faceOf{b, job.Side}, band)
		if err != nil {
			t.Fatal(err)
		}
		m, told := p.Misread()
		if told != test.told {
			t.Errorf("%s: reported %v, of a glass %g off its cone: %+v", name, told, p.WorstRadiusError, m)
			continue
		}
		if !told {
			continue
		}
		s := b.Stations[test.station]
		if m.Station != s || m.Sure != test.sure || m.Takes != test.takes || m.Round ||
			math.Abs(m.Read-2*s.Radius) > 1e-9 || math.Abs(m.Straight-test.diameter) > 1e-9 {
			t.Errorf("%s: %+v", name, m)
		}
		// It is true: with that reading the glass is straight.
		right := append([]glass.Station{}, b.Stations...)
		right[test.station].Radius = m.Straight / 2
		if !blank(t, right...).Profile().Straight() {
			t.Errorf("%s: with %g across it is not straight", name, m.Straight)
		}
	}
}
