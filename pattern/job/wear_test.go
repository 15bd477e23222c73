package job

import (
	"math"
	"testing"
)

// A foot is 304.8 mm exactly (international yard and pound agreement, 1959).
func TestWears(t *testing.T) {
	for text, want := range map[string]float64{
		`"100 ft"`: 30480, `"100ft"`: 30480, `"12 1/2 ft"`: 3810, `"30 m"`: 30000, `"30m"`: 30000, `"0.5 m"`: 500,
		`"3000 cm"`: 30000, `"30000 mm"`: 30000, `"1200 in"`: 30480, `'1200"'`: 30480, `1200`: 30480, `"1200"`: 30480,
	} {
		j, err := Read("six.toml", base().with(t, "wheel[1].wears", `wears = ["0.4 mm", `+text+`]`).bytes())
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if got := j.Rack[0].Wear; got.Lost != 0.4 || math.Abs(got.Groove-want) > 1e-9 {
			t.Errorf("%s is read as %+v, wanted %g mm of groove", text, got, want)
		}
	}
}
