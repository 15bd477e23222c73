package groove_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// What a groove may cost: samples a millimetre, samples for its ends, outline points for
// each sample, and time.
const (
	samplesAMillimetre = 4
	samplesAtEnds      = 400
	pointsASample      = 8
	pointsAtEnds       = 128             // what a wheel of 30 mm set askew takes beyond a line's ends
	endlessly          = 2 * time.Minute // what hasn't ended by then does not end: the heaviest take a second
)

// extremeWheels returns every edge, each with what else of it may be small or large.
func extremeWheels() []groove.Wheel {
	return []groove.Wheel{
		{Edge: groove.Mitre, Angle: degrees(20)},
		{Edge: groove.Mitre, Angle: degrees(170)},
		{Edge: groove.Mitre, Angle: degrees(90), Tip: 0.4},
		{Edge: groove.Mitre, Angle: degrees(90), TipRadius: 0.4},
		{Edge: groove.Round, Convex: 0.6},
		{Edge: groove.Round, Convex: 200},
		{Edge: groove.Flat},
		{Edge: groove.Gang, Angle: degrees(90), Mitres: 2, Spacing: 0.3},
		{Edge: groove.Gang, Angle: degrees(60), Mitres: 12, Spacing: 1},
	}
}

// extremeVessels returns straight, tapered and curved glass.
func extremeVessels() []*vessel {
	return []*vessel{
		straightVessel(15, 0, -90, 90), straightVessel(60, 0, -90, 90),
		straightVessel(50, 0.4, -90, 90), straightVessel(50, -0.4, -90, 90),
		ringVessel(-55, 0, 100, 1, 75), ringVessel(125, 0, 100, -1, 90),
		waveVessel(40, 0, 0, tightest, 60, -90, 90), waveVessel(40, 0, 30, tightest, 60, -90, 90),
		flareVessel(18, 30, 0, tightest, -90, 90), flareVessel(18, -30, 0, 40, -90, 90),
	}
}

// Each pair of extremes and more at once: whatever is asked, the answer is made
// of numbers, of places in a row and of lengths that can be, and its cost is bounded.
func TestCurvedExtremes(t *testing.T) {
	t.Parallel()
	for i, v := range extremeVessels() {
		if testing.Short() && i%3 > 0 {
			continue
		}
		on := turning{vessel: v, share: 0.5, length: 1}
		on.prepare(-70, 70) // a chart with room for the longest line
		on.lining = v.lined(v.bottom+10, func(z float64) float64 { return 3 + z/60 })
		on.cutter() // for all that follow
		turn := i
		for _, wheel := range extremeWheels() {
			for _, radius := range []float64{2, 300} {
				for _, thick := range []float64{0.5, 30} {
					wheel.Radius, wheel.Thick = radius, thick
					for _, depth := range []float64{0.01, 5} {
						extremeLines(t, on, wheel, depth, turn)
						turn++
					}
					turn++ // the other lines at the other depth
				}
			}
		}
	}
}

// extremeLines tries a wheel along the shortest and the longest lines, each in
// one of four directions in turn: on every glass, every edge at either depth goes
// along either line in all four.
func extremeLines(t *testing.T, on turning, wheel groove.Wheel, depth float64, turn int) {
	angles := []float64{0, math.Pi / 4, math.Pi / 2, 5 * math.Pi / 4}
	for i, length := range []float64{0.5, 150} {
		s := &on
		s.wheel, s.depth, s.angle, s.length = wheel, depth, angles[(turn+2*i)%len(angles)], length
		s.draw()
		endless := time.AfterFunc(endlessly, func() { panic(fmt.Sprintf("it does not end: %v", s)) })
		g, cause := s.tried()
		endless.Stop()
		if cause != nil {
			t.Errorf("panic, or no wheel: %v: %v", cause, s)
			continue
		}
		for _, fault := range s.faults(g) {
			t.Errorf("%s: %v", fault, s)
		}
	}
}

// tried asks the package, of the largest wheel that goes in as well, and catches its
// panic.
func (s *turning) tried() (g reported, cause any) {
	defer func() { cause = recover() }()
	g = s.reported(0.1)
	if g.bridge != nil {
		if radius := s.goesIn(); !(radius >= 0 && radius <= s.wheel.Radius) {
			return g, fmt.Sprintf("a wheel of radius %g goes in", radius)
		}
	}
	return g, nil
}

// faults says what is wrong with a groove, whatever was asked.
func (s *turning) faults(g reported) (faults []string) {
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	if where := notNumber(reflect.ValueOf(g), "groove"); where != "" {
		fault("%s is not a number", where)
		return faults
	}
	if !(g.depth >= 0) || g.Volume < 0 || g.Width < 0 || !(g.Length > 0) {
		fault("%g long, %g deep, %g wide, %g mm³", g.Length, g.depth, g.Width, g.Volume)
	}
	n := len(g.Samples)
	if most := samplesAtEnds + int(samplesAMillimetre*max(s.line.length(), g.Length)); n < 2 || n > most {
		fault("%d samples, at most %d", n, most)
	}
	for i := 1; i < n; i++ {
		a, b := g.Samples[i-1], g.Samples[i]
		if min(a.Height, b.Height) < s.vessel.bottom || max(a.Height, b.Height) > s.vessel.top {
			continue // beyond the ends of the glass
		}
		apart := r3.Norm(r3.Sub(s.chart.space(b.At), s.chart.space(a.At)))
		if !(b.Along > a.Along && b.Along-a.Along <= 1+1e-6 && apart <= 1.001) {
			fault("samples %d and %d are %g apart, %g along", i-1, i, apart, b.Along-a.Along)
			break
		}
	}
	for i, o := range g.Outlines {
		if len(o.Points) < 3 || len(o.Points) > pointsASample*n+pointsAtEnds {
			fault("outline %d has %d points for %d samples", i, len(o.Points), n)
		}
	}
	return faults
}

// notNumber returns the name of a figure that is not a number, or not finite,
// anywhere in a value.
func notNumber(v reflect.Value, name string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return name
		}
	case reflect.Struct:
		for i := range v.NumField() {
			// What is left under a gang none of whose mitres reach the glass has no end.
			field, of := v.Field(i), v.Type().Field(i).Name
			if (of == "Min" || of == "left") && field.Kind() == reflect.Float64 && math.IsInf(field.Float(), 1) {
				continue
			}
			if where := notNumber(field, name+"."+of); where != "" {
				return where
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if where := notNumber(v.Index(i), fmt.Sprintf("%s[%d]", name, i)); where != "" {
				return where
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return notNumber(v.Elem(), name)
		}
	}
	return ""
}
