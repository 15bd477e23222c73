package job

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// What was measured across and around, and what it says of the glass's radius
// and of how far it is out of round. In millimetres, by hand.
func TestRound(t *testing.T) {
	for _, c := range []struct {
		name, text          string
		radius, least, most float64
	}{
		{"one reading", `across = "80 mm"`, 40, 0, 0},
		{"a list of one", `across = ["80 mm"]`, 40, 0, 0},
		{"two readings", `across = ["80 mm", "81 mm"]`, 40.25, 80, 81},
		{"three readings, the mean of them all", `across = ["81 mm", "80 mm", "80.4 mm"]`, 40.2333333333, 80, 81},
		{"readings in inches", `across = ["3 1/8", "3 5/32"]`, 3.140625 * 25.4 / 2, 3.125 * 25.4, 3.15625 * 25.4},
		{"readings that agree", `across = ["80 mm", "80 mm"]`, 40, 80, 80},
		{"a girth", `around = "250 mm"`, 125 / math.Pi, 0, 0},
		// The girth is right about the radius; the readings say which way it is wide.
		{"a girth beside readings", "across = [\"79.6 mm\", \"80.2 mm\"]\naround = \"251.3274 mm\"", 251.3274 / 2 / math.Pi, 79.6, 80.2},
		// 251.3274 mm round is 80 mm across on the mean, so 79.6 one way is 80.4 the other.
		{"a girth beside one reading", "across = \"79.6 mm\"\naround = \"251.3274 mm\"", 251.3274 / 2 / math.Pi, 79.6, 80.4},
		{"a girth beside a wide reading", "around = \"251.3274 mm\"\nacross = \"80.4 mm\"", 251.3274 / 2 / math.Pi, 79.6, 80.4},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, err := Read("round.toml", base().with(t, "blank.station[1].across", c.text).without(t, "blank.weighs").bytes())
			if err != nil {
				t.Fatal(err)
			}
			s := j.Blanks[0].Stations[0]
			// The girth was rounded to a ten-thousandth.
			if math.Abs(s.Radius-c.radius) > 1e-9 || math.Abs(s.Min-c.least) > 1e-4 || math.Abs(s.Max-c.most) > 1e-4 {
				t.Errorf("%+v, wanted radius %g, from %g to %g", s, c.radius, c.least, c.most)
			}
		})
	}
}

// A station takes twelve readings across, and no more.
func TestMostReadings(t *testing.T) {
	with := func(n int) []byte {
		across := "across = [" + strings.Repeat(`"80 mm", `, n-1) + `"80 mm"]`
		return base().with(t, "blank.station[1].across", across).without(t, "blank.weighs").bytes()
	}
	if _, err := Read("round.toml", with(maxReadings)); err != nil {
		t.Error(err)
	}
	_, err := Read("round.toml", with(maxReadings+1))
	var wrong *Error
	if !errors.As(err, &wrong) || wrong.Key != "blank.station[1].across" || !strings.Contains(wrong.Accepted, "12") {
		t.Errorf("%v", err)
	}
}

func TestWeight(t *testing.T) {
	for text, want := range map[string]float64{
		`"412 g"`: 412, `"412g"`: 412, `"0.412 kg"`: 412, `"14 1/2 oz"`: 14.5 * 28.349523125, `"14½ oz"`: 14.5 * 28.349523125,
		`"1 lb"`: 453.59237, `" 412 g "`: 412, `'0.9 lb'`: 408.233133,
	} {
		// A blank that weighs what is said, near enough.
		f := base().with(t, "blank.weighs", "weighs = "+text).with(t, "blank.density", "density = 2.6")
		j, err := Read("weight.toml", f.bytes())
		if err != nil {
			t.Error(err)
			continue
		}
		if got := j.Blanks[0].ScaleWeight; math.Abs(got-want) > 1e-6 || math.Abs(j.Blanks[0].Weight()-want) > 1e-6 {
			t.Errorf("%s: %g g, and comes to %g", text, got, j.Blanks[0].Weight())
		}
	}
}

func TestMaterial(t *testing.T) {
	for _, c := range []struct {
		glass, density string
		name           string
		want           float64
	}{
		{"", "", "soda-lime", 2.5},
		{`glass = "crystal"`, "", "crystal", 2.45},
		{"", "density = 2.52", "glass", 2.52},
		{`glass = "lead crystal"`, "density = 2.95", "lead crystal", 2.95},
	} {
		f := base().with(t, "blank.glass", c.glass).with(t, "blank.density", c.density).without(t, "blank.weighs")
		j, err := Read("material.toml", f.bytes())
		if err != nil {
			t.Fatal(err)
		}
		if m := j.Blanks[0].Material; m.Name != c.name || m.Density != c.want {
			t.Errorf("%s %s: %+v", c.glass, c.density, m)
		}
	}
}
