package groove_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"roundlay/pattern/groove"
)

// handShare is what a volume by hand may differ by from the count, as a share.
const handShare = 0.01

// swollen is a hand that does everything.
var swollen = groove.Hand{Swell: []float64{0.3, 1, 0.6, 0.8}, Rock: [2]float64{degrees(6), degrees(18)}}

// counted returns the glass that a wheel by hand takes, by counting points: one at random in
// each of the cells of a box round the mark.
func (s *handed) counted(rnd *rand.Rand, k handwork, wide, deep float64) float64 {
	const across, down, beyond = 50, 30, 2.0
	middle := s.line.at(s.line.length() / 2)
	up, left := s.vessel.normal(middle.at), s.vessel.left(middle)
	long := s.line.length() + 2*beyond
	along := int(math.Ceil(long / 0.25))
	hits := 0
	for i := range along {
		from := -long/2 + (float64(i)+0.5)*long/float64(along)
		near := s.near(k, from+s.line.length()/2)
		for j := range across {
			for d := range down {
				u := -long/2 + (float64(i)+rnd.Float64())*long/float64(along)
				v := wide * ((float64(j)+rnd.Float64())/across*2 - 1)
				// As deep as the surface of a glass may lie below its middle here, and the wheel.
				w := 0.2 - deep*(float64(d)+rnd.Float64())/down
				p := r3.Add(middle.at, r3.Add(r3.Scale(u, middle.ahead), r3.Add(r3.Scale(v, left), r3.Scale(w, up))))
				if s.vessel.holds(p) && inside(s.body, near, p) {
					hits++
				}
			}
		}
	}
	return float64(hits) / float64(along*across*down) * long * 2 * wide * deep
}

var column = straightVessel(45, 0, -60, 60)

// handedCases are cuts by hand of every edge, on straight, tapered and curved glass.
func handedCases() []*handed {
	mitre := groove.Wheel{Edge: groove.Mitre, Radius: 60, Thick: 8, Angle: degrees(90)}
	dressed := mitre
	dressed.Tip = 0.6
	round := groove.Wheel{Edge: groove.Round, Radius: 50, Thick: 6, Convex: 4}
	flat := groove.Wheel{Edge: groove.Flat, Radius: 55, Thick: 3}
	gang := groove.Wheel{Edge: groove.Gang, Radius: 50, Thick: 5, Angle: degrees(80), Mitres: 3, Spacing: 1.5}
	taper := straightVessel(42, 0.2, -60, 60)
	barrel := ringVessel(-15, 0, 60, 1, 50)
	var all []*handed
	for _, c := range []struct {
		on    *vessel
		wheel groove.Wheel
		angle float64
	}{{column, mitre, 0}, {column, dressed, 0.7}, {column, round, 0}, {column, flat, 0.4}, {column, gang, 0}, {taper, mitre, 0.9}, {barrel, round, 0.5}, {barrel, gang, 0}} {
		s := &handed{turning: &turning{vessel: c.on, wheel: c.wheel, angle: c.angle, length: 26, share: 0.5, depth: 1}, hand: swollen}
		s.prepare(-20, 20)
		s.dress()
		all = append(all, s)
	}
	return all
}

// TestHandVolume compares the glass ground away by hand with a count of points, both as the
// groove says it and as its relief shows it.
func TestHandVolume(t *testing.T) {
	t.Parallel()
	for i, s := range handedCases() {
		line, err := s.drawing().ByHand(s.hand)
		if err != nil {
			t.Fatal(err)
		}
		cutter := s.cutter()
		g := cutter.Cut(line, s.wheel, s.depth, 0)
		want := s.counted(rand.New(rand.NewPCG(9, uint64(i))), s.works(), g.Width, g.Depth+3.2)
		if off := g.Volume/want - 1; math.Abs(off) > handShare {
			t.Errorf("case %d: %.3f mm³, counted %.3f, off by %.4f: %v", i, g.Volume, want, off, s)
		}
		if s.wheel.Edge == groove.Gang || s.vessel != column {
			continue // a gang's hollows overlap, and only a straight glass's chart keeps areas
		}
		if shown := reliefVolume(cutter.Relief(&g, s.wheel), 45); math.Abs(shown/want-1) > handShare {
			t.Errorf("case %d: the relief shows %.3f mm³, counted %.3f: %v", i, shown, want, s)
		}
	}
}

// reliefVolume sums a relief on a glass of a radius, in small cells between its sections.
func reliefVolume(relief groove.Relief, radius float64) float64 {
	const parts = 60
	sum := 0.0
	for _, hollow := range relief {
		for i := 1; i < len(hollow); i++ {
			a, b := hollow[i-1], hollow[i]
			for j := range parts {
				at := func(c groove.Cross, share float64) r2.Vec {
					return r2.Add(c.Left, r2.Scale(share, r2.Sub(c.Right, c.Left)))
				}
				from, to := float64(j)/parts, float64(j+1)/parts
				p, q, r, s := at(a, from), at(a, to), at(b, to), at(b, from)
				area := math.Abs(r2.Cross(r2.Sub(r, p), r2.Sub(s, q))) / 2
				deep := (a.Depth((from+to)/2) + b.Depth((from+to)/2)) / 2
				sum += area * deep * (1 - deep/(2*radius)) // columns come closer below the surface
			}
		}
	}
	return sum
}
