package pattern

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/motifs/strokes"
	"roundlay/pattern/job"
	"roundlay/pattern/jobtest"
)

// Drawings at random, through the whole chain: on straight, tapered, bellied and waisted
// glass, with every edge, in sizes from a fingertip's to half the glass's, as deep as a
// scratch or as the wall, turned, mirrored, in their own proportions or squeezed. Each is
// refused in words or laid out and checked; then every figure is one, and every cut's line
// lies in its box.
func TestDrawnAtRandom(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(13, 7))
	laid, cuts, findings := 0, 0, 0
	for _, radii := range [][]float64{{40, 40}, {34, 44}, {36, 43, 37}, {44, 36, 43}} {
		for wheel := range jobtest.Rack() {
			for range 4 {
				m, data := drawnAtRandom(random, wheel)
				blank := jobtest.BlankOf(t, radii...)
				p, err := New(t.Context(), jobtest.On(blank, 3, m), blank)
				if err != nil {
					var wrong *job.Error
					if !errors.As(err, &wrong) {
						t.Errorf("%q, wheel %d on %v: %v", data, wheel, radii, err)
					}
					continue
				}
				laid++
				cuts, findings = cuts+len(p.Cuts), findings+len(p.Findings)
				if wrong := unsound(p, m); wrong != "" {
					t.Errorf("%q, wheel %d on %v: %s", data, wheel, radii, wrong)
				}
			}
		}
	}
	t.Logf("%d of 80 laid out: %d cuts, %d findings", laid, cuts, findings)
	if laid < 60 || findings < 60 {
		t.Errorf("only %d laid out, with %d findings", laid, findings)
	}
}

// drawnAtRandom returns a motif made of path data at random, and the data.
func drawnAtRandom(random *rand.Rand, wheel int) (m job.Motif, data []string) {
	number := func() string { return fmt.Sprintf(" %.4g", 100*random.Float64()) }
	numbers := func(n int) string {
		var b strings.Builder
		for range n {
			b.WriteString(number())
		}
		return b.String()
	}
	for {
		data = data[:0]
		for range 1 + random.IntN(4) {
			path := "M" + numbers(2)
			for range 1 + random.IntN(4) {
				path += []string{
					"L" + numbers(2), "C" + numbers(6), "S" + numbers(4), "Q" + numbers(4), "T" + numbers(2), "Z", "h" + numbers(1),
					"A" + numbers(2) + " 30 1 0" + numbers(2),
				}[random.IntN(8)]
			}
			data = append(data, path)
		}
		d, err := strokes.ReadPaths(data, strokes.Options{Centre: random.IntN(4) == 0})
		if err != nil {
			continue // without a stroke
		}
		size := []float64{6, 15, 40}[random.IntN(3)]
		m = job.Motif{
			Kind: motifs.Drawing(d), Values: motifs.Values{}, Wheel: wheel, Depth: []float64{0.05, 0.4, 1.5}[random.IntN(3)],
			X: of(0), Y: of(0.5), Height: mm(size), Mirror: random.IntN(2) == 0,
		}
		switch random.IntN(3) {
		case 0:
			m.Width = mm(size * (0.2 + random.Float64()))
		case 1:
			m.Height, m.Width = job.Measure{}, mm(min(size, 30*m.Kind.Aspect))
		}
		if random.IntN(2) == 0 {
			jobtest.Turn(360 * random.Float64())(&m)
		}
		if random.IntN(3) == 0 {
			m.Shape = job.True
		}
		return m, data
	}
}

// bite is how much deeper than asked a broad edge in a hollow may bite without being said to
// bridge it, in millimetres. Package groove says so past 0.05 and a fifth of the depth: 0.06
// for the shallowest of these cuts, 0.05 deep. The deeper ones stay within the fifth.
func bite(depth float64) float64 { return max(0.06, depth/5) }

// unsound says what is wrong with a plan of one drawing, "" where nothing is.
func unsound(p *Plan, m job.Motif) string {
	// Where a broad wheel turns in a sharp bend its groove is wider than the wheel, but not by
	// much more than the wheel's own contact.
	widest := 2.5 * p.Job.Rack[m.Wheel].Thick
	strays := map[int]bool{}
	for _, f := range p.Findings {
		if !finite(f.Measured, f.Wanted, f.Theta, f.Height) {
			return fmt.Sprintf("a finding of %v", f)
		}
		for _, id := range f.Cuts {
			strays[id] = strays[id] || f.Kind == Tight || f.Kind == Bridged
		}
	}
	for _, c := range p.Cuts {
		if !finite(c.Length, c.Depth, c.Width) || c.Length <= 0 || c.Depth <= 0 || c.Depth > m.Depth+bite(m.Depth) && !c.Bridges() {
			return fmt.Sprintf("cut %d is %g long, %g deep and %g wide", c.ID, c.Length, c.Depth, c.Width)
		}
		for _, s := range c.Samples {
			if !finite(s.At.X, s.At.Y, s.Theta, s.Height, s.Depth, s.Left, s.Right) || s.Depth < -1e-9 || s.HalfWidth() < -1e-9 || max(s.Left, s.Right) > widest {
				return fmt.Sprintf("cut %d has %+v", c.ID, s)
			}
		}
		if !strays[c.ID] {
			if wrong := outside(p, m, &c); wrong != "" {
				return wrong
			}
		}
	}
	return ""
}

// outside says where a cut's line leaves the motif's box, "" where it doesn't. It goes by the
// circle round the box. The ends of a bent line, on which the wheel stays straight, may
// miss it by half of the groove's half width: more is a finding. A straight cut goes the
// shortest way on the glass, and on these glasses no such way bends more than one in 20 mm.
func outside(p *Plan, m job.Motif, c *Cut) string {
	box := p.Box(m)
	middle := p.Surface.RadiusAt(p.Surface.HeightAt(box.Middle.Y))
	half := math.Hypot(box.Width, box.Height) / 2
	for i, s := range c.Samples {
		radius, within := middle, half+c.Width/4+0.01
		if m.Shape == job.True { // it keeps its lengths, not its angle
			radius, within = p.Surface.RadiusAt(s.Height), within+0.02*half
		}
		if i > 0 && i < len(c.Samples)-1 {
			within += half * half / 2 / 20
		}
		if off := math.Hypot(radius*s.Theta-box.Middle.X, p.Surface.AlongAt(s.Height)-box.Middle.Y); off > within {
			return fmt.Sprintf("cut %d is %g mm from the middle of a box of %g by %g", c.ID, off, box.Width, box.Height)
		}
	}
	return ""
}

// finite reports whether all are numbers.
func finite(all ...float64) bool {
	for _, x := range all {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
