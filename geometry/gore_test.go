package geometry

import (
	"math"
	"testing"
)

// ball returns the profile of a ball of radius 40 mm between 50° of latitude
// south and north, its middle at the height of 40 mm.
func ball(t *testing.T) *Profile {
	t.Helper()
	var heights, radii []float64
	for i := range 401 {
		sin, cos := math.Sincos(latitude(float64(i)/200 - 1))
		heights, radii = append(heights, 40+40*sin), append(radii, 40*cos)
	}
	return profile(t, heights, radii)
}

func latitude(share float64) float64 { return share * 50 * math.Pi / 180 }

func profile(t *testing.T, heights, radii []float64) *Profile {
	t.Helper()
	return profileOf(t, heights, radii)
}

// A gore of a taper is the taper's own flat map.
func TestGoreOfACone(t *testing.T) {
	p := profile(t, []float64{0, 120}, []float64{30, 45})
	cone, _ := p.FitCone(0, 120)
	gore := Gore{Profile: p, HalfWidth: 0.6}
	for _, theta := range []float64{-0.6, 0, 0.3, 1} {
		for _, z := range []float64{0, 31, 120} {
			a, b := gore.Forward(theta, z), cone.Forward(theta, z)
			if math.Hypot(a.X-b.X, a.Y-b.Y) > 1e-6 {
				t.Errorf("at %g, %g the gore has %v, the cone %v", theta, z, a, b)
			}
		}
	}
	if gain, loss := gore.Excess(0, 120); gain > 1e-6 || loss > 1e-6 {
		t.Errorf("its edges are %g longer, %g shorter than the taper's", gain, loss)
	}
}

// The gores of globes: half as wide as (πR/n)·cos φ at the distance Rφ along the
// middle, measured round. Straight across, and at the height the edge has on
// paper, they differ from that by less than what the gore admits to.
func TestGoreOfABall(t *testing.T) {
	p := ball(t)
	equator := p.Along(40)
	for _, n := range []int{12, 20, 30} {
		half := math.Pi / float64(n)
		gore := Gore{Profile: p, HalfWidth: half}
		gain, loss := gore.Excess(p.Bottom(), p.Top())
		var round, across float64
		for i := range 101 {
			phi := latitude(float64(i)/50 - 1)
			want := math.Pi * 40 / float64(n) * math.Cos(phi)
			z := 40 + 40*math.Sin(phi)
			// Along the arc, by many short steps.
			length := 0.0
			for k := range 200 {
				a, b := gore.Forward(half*float64(k)/200, z), gore.Forward(half*float64(k+1)/200, z)
				length += math.Hypot(b.X-a.X, b.Y-a.Y)
			}
			round = max(round, math.Abs(length-want))
			edge := gore.Forward(half, z)
			across = max(across, math.Abs(edge.X-math.Pi*40/float64(n)*math.Cos((edge.Y-equator)/40)))
		}
		t.Logf("%d gores: %.5f mm off round, %.4f across; edges %.4f longer, %.4f shorter", n, round, across, gain, loss)
		if round > 0.002 {
			t.Errorf("%d gores: half widths are %.4f mm off round", n, round)
		}
		if across > max(gain, loss) {
			t.Errorf("%d gores: half widths are %.4f mm off across, more than the %.4f admitted", n, across, max(gain, loss))
		}
	}
}

// What a gore admits to is the truth: no distance between two of its places is
// farther off the one on the ball, along a great circle, and that of its edges
// is as far.
func TestGoreAdmitsItsError(t *testing.T) {
	p := ball(t)
	for _, n := range []int{10, 20} {
		half := math.Pi / float64(n)
		gore := Gore{Profile: p, HalfWidth: half}
		gain, loss := gore.Excess(p.Bottom(), p.Top())
		var worst float64
		const steps = 12
		place := func(i int) (theta, phi float64) {
			return half * (2*float64(i%(steps+1))/steps - 1), latitude(2*float64(i/(steps+1))/steps - 1)
		}
		for i := range (steps + 1) * (steps + 1) {
			for k := range i {
				ta, pa := place(i)
				tb, pb := place(k)
				a, b := gore.Forward(ta, 40+40*math.Sin(pa)), gore.Forward(tb, 40+40*math.Sin(pb))
				flat := math.Hypot(b.X-a.X, b.Y-a.Y)
				haversine := math.Pow(math.Sin((pb-pa)/2), 2) + math.Cos(pa)*math.Cos(pb)*math.Pow(math.Sin((tb-ta)/2), 2)
				round := 80 * math.Asin(math.Sqrt(haversine))
				worst = max(worst, math.Abs(flat-round))
			}
		}
		t.Logf("%d gores: admits %.4f and %.4f mm, distances are up to %.4f off", n, gain, loss, worst)
		if worst > max(gain, loss)+0.002 {
			t.Errorf("%d gores: a distance is %.4f mm off, and %.4f is admitted", n, worst, max(gain, loss))
		}
		// Edges are meridians: R·Δφ on the ball. The series for the excess,
		// ∫ (rθ)²K/2 ds = Rθ²/2 ∫ cos²φ dφ, is good to the next order in θ².
		phi := latitude(1)
		series := 40 * half * half / 2 * (phi + math.Sin(2*phi)/2)
		if math.Abs(gain-series) > half*half*series+0.002 {
			t.Errorf("%d gores: edges gain %.4f mm, and the series says %.4f", n, gain, series)
		}
	}
}

// Gores are joined where they are widest, and lie nowhere on each other; those
// of a waist can't be.
func TestGoresJoin(t *testing.T) {
	for name, test := range map[string]struct {
		heights, radii []float64
		joint          float64 // below zero where there is none
	}{
		"barrel": {[]float64{0, 25, 50, 75, 100}, []float64{35, 40, 42, 40, 36}, 50},
		"tulip":  {[]float64{0, 25, 50, 75, 100}, []float64{25, 31, 35, 37.5, 39}, 100},
		"bell":   {[]float64{0, 25, 50, 75, 100}, []float64{39, 37.5, 35, 31, 25}, 0},
		"waist":  {[]float64{0, 25, 50, 75, 100}, []float64{40, 35, 33, 35, 40}, -1},
		"flare":  {[]float64{0, 50, 100}, []float64{30, 32, 45}, -1},
	} {
		const half = math.Pi / 15
		gore := Gore{Profile: profile(t, test.heights, test.radii), Lift: 0.05, HalfWidth: half}
		joint, ok := gore.Join(0, 100)
		if ok != (test.joint >= 0) || ok && math.Abs(joint-test.joint) > 100.0/64 {
			t.Errorf("%s: joined at %g (%v), want %g", name, joint, ok, test.joint)
		}
		if !ok {
			continue
		}
		// Neighbours as they are laid: no place of one's right edge is to the right
		// of the other's left edge at the same height on paper.
		cone := gore.Tangent(joint)
		left, right := cone.Turned(-half), cone.Turned(half)
		for z := 0.0; z <= 100; z++ {
			a, b := left.Apply(gore.Forward(half, z)), right.Apply(gore.Forward(-half, z))
			if gap := b.X - a.X; gap < -0.012 || math.Abs(gap-2*gore.Gap(cone, z)) > 1e-6 {
				t.Errorf("%s: at %g the gores are %.4f mm apart, Gap says %.4f", name, z, gap, 2*gore.Gap(cone, z))
			}
		}
	}
}

// The edges of gores of a waist are too short. On a catenoid r = c cosh(z/c), with
// the curvature -c²/r⁴, ∫ (rθ)²K/2 ds = -cθ² arctan(sinh(z/c)) over both its halves,
// good to the next order in θ²; and no part of an edge gains.
func TestGoreOfAWaist(t *testing.T) {
	const c, up = 30.0, 45.0
	var heights, radii []float64
	for i := range 361 {
		z := up * (float64(i)/180 - 1)
		heights, radii = append(heights, up+z), append(radii, c*math.Cosh(z/c))
	}
	for _, n := range []int{20, 40} {
		half := math.Pi / float64(n)
		gain, loss := Gore{Profile: profile(t, heights, radii), HalfWidth: half}.Excess(0, 2*up)
		series := c * half * half * math.Atan(math.Sinh(up/c))
		if gain > 1e-6 || math.Abs(loss-series) > half*half*series+0.002 {
			t.Errorf("%d gores: edges gain %.5f mm and lose %.5f, and the series says 0 and %.5f", n, gain, loss, series)
		}
	}
}

// Of a bulge above a waist an edge gains there and loses here. Each is the worst
// of all its parts: as found by trying every part, walked in steps of 1 mm.
func TestGoreGainsAndLoses(t *testing.T) {
	p := profile(t, []float64{0, 20, 40, 60, 80, 100}, []float64{36, 31, 33, 40, 43, 38})
	const half = math.Pi / 10
	gore := Gore{Profile: p, HalfWidth: half}
	longer := make([]float64, 100) // of the edge, mm by mm, than the profile
	for z := range longer {
		const fine = 200
		for k := range fine {
			a, b := float64(z)+float64(k)/fine, float64(z)+float64(k+1)/fine
			from, to := gore.Forward(half, a), gore.Forward(half, b)
			longer[z] += math.Hypot(to.X-from.X, to.Y-from.Y) - math.Hypot(b-a, p.Radius(b)-p.Radius(a))
		}
	}
	var most, least float64
	for from := range longer {
		sum := 0.0
		for _, by := range longer[from:] {
			sum += by
			most, least = max(most, sum), min(least, sum)
		}
	}
	gain, loss := gore.Excess(0, 100)
	if math.Abs(gain-most) > 0.002 || math.Abs(loss+least) > 0.002 || most < 0.2 || least > -0.2 {
		t.Errorf("an edge gains %.4f mm and loses %.4f, walked %.4f and %.4f", gain, loss, most, -least)
	}
}

// Gores lie on the surface as far as their edges are out by no more than is
// allowed, up and down: there they are, and half a millimetre further they are not.
func TestGoreLies(t *testing.T) {
	const half, allowed = math.Pi / 12, 0.1
	for name, radii := range map[string][]float64{
		"barrel": {35, 40, 42, 40, 36}, "waist": {40, 35, 33, 35, 40}, "wave": {36, 31, 40, 34, 39},
	} {
		gore := Gore{Profile: profile(t, []float64{0, 25, 50, 75, 100}, radii), HalfWidth: half}
		for _, to := range []float64{0, 100} {
			z := gore.Lies(45, to, allowed)
			out := func(z float64) float64 { return max(gore.Excess(min(z, 45), max(z, 45))) }
			if z == to || out(z) > allowed {
				t.Errorf("%s: from 45 mm towards %g gores lie as far as %g, where they are %.4f mm out", name, to, z, out(z))
			}
			if beyond := z + math.Copysign(0.5, to-45); out(beyond) <= allowed {
				t.Errorf("%s: from 45 mm towards %g gores lie beyond %g too, %.4f mm out at %g", name, to, z, out(beyond), beyond)
			}
		}
		if z := gore.Lies(45, 45.2, 10); z != 45.2 {
			t.Errorf("%s: gores that are hardly out lie as far as %g, not 45.2", name, z)
		}
	}
}
