package glass

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// walked is the inside surface found without any formula of the program's: by
// walking up the outside in steps of some thousandths of a millimetre, turning
// from each step by a right angle, and going in by the wall; with the floor's disc
// in points as close.
type walked struct {
	points []spot // first those of the walls, as many as curve says
	curve  int
}

const stride = 0.006 // mm

// walk walks along a blank whose measured walls are multiplied by a factor.
func walk(b *Blank, factor float64) walked {
	r := b.Profile().Radius
	wall := func(z float64) float64 {
		last := b.Stations[0]
		for _, s := range b.Stations {
			if z < s.Height {
				return factor * (last.Wall + (s.Wall-last.Wall)*max(z-last.Height, 0)/max(s.Height-last.Height, 1e-9))
			}
			last = s
		}
		return factor * last.Wall
	}
	at := func(z float64) spot {
		const near = 1e-4
		low, high := z-near, z+near // of one smooth piece, at a station too
		dr, dz := r(high)-r(low), high-low
		length := math.Hypot(dr, dz)
		return spot{r(z) - wall(z)*dz/length, z + wall(z)*dr/length}
	}
	bottom, thickest := b.Floor, 0.0
	for _, s := range b.Stations {
		thickest = max(thickest, factor*s.Wall)
	}
	if bottom <= 0 {
		bottom = -2 * thickest
	}
	var w walked
	last, corner := at(bottom-2*thickest), 0.0
	for z := bottom - 2*thickest; z < b.Height()+2*thickest; {
		step := stride
		next := at(z + step)
		for step > 1e-7 && math.Hypot(next.radius-last.radius, next.height-last.height) > stride {
			step /= 2
			next = at(z + step)
		}
		z += step
		if (last.height-bottom)*(next.height-bottom) <= 0 && next.radius > 0 {
			corner = max(corner, next.radius)
		}
		if last = next; next.radius >= 0 && next.height >= bottom && next.height <= b.Height() {
			w.points = append(w.points, next)
		}
	}
	w.curve = len(w.points)
	if b.Floor > 0 {
		for x := 0.0; x < corner; x += stride {
			w.points = append(w.points, spot{x, b.Floor})
		}
	}
	return w
}

// distance returns how far the nearest point is.
func (w walked) distance(radius, height float64) float64 {
	nearest := math.Inf(1)
	for _, p := range w.points {
		dr, dh := p.radius-radius, p.height-height
		nearest = min(nearest, dr*dr+dh*dh)
	}
	return math.Sqrt(nearest)
}

// hollow reports whether the curve passes a height an odd number of times further
// out than a radius.
func (w walked) hollow(radius, height float64) bool {
	odd := false
	for i := 1; i < w.curve; i++ {
		a, b := w.points[i-1], w.points[i]
		if (a.height > height) != (b.height > height) && a.radius > radius {
			odd = !odd
		}
	}
	return odd
}

// holds sums discs up to a height.
func (w walked) holds(to float64) float64 {
	volume := 0.0
	for i := 1; i < w.curve; i++ {
		a, b := w.points[i-1], w.points[i]
		volume += math.Pi * math.Pow((a.radius+b.radius)/2, 2) * (min(b.height, to) - min(a.height, to))
	}
	return volume
}

// kinds of glass, by radii at even heights as shares of the rim's.
var kinds = map[string]func(random *rand.Rand, up float64) float64{
	"straight": func(_ *rand.Rand, up float64) float64 { return 1 },
	"taper":    func(_ *rand.Rand, up float64) float64 { return 0.7 + 0.3*up },
	"flared":   func(_ *rand.Rand, up float64) float64 { return 0.2 + 1.6*up },
	"narrow":   func(_ *rand.Rand, up float64) float64 { return 1.6 - 1.1*up },
	"barrel":   func(_ *rand.Rand, up float64) float64 { return 1 - 1.2*(up-0.5)*(up-0.5) },
	"waist":    func(_ *rand.Rand, up float64) float64 { return 0.7 + 1.2*(up-0.5)*(up-0.5) },
	"foot":     func(_ *rand.Rand, up float64) float64 { return 1 + 0.5*math.Exp(-12*up) },
	"bulb":     func(_ *rand.Rand, up float64) float64 { return 0.6 + 0.5*math.Sin(math.Pi*up) },
	"any":      func(random *rand.Rand, _ float64) float64 { return 0.8 + 0.5*random.Float64() },
}

// trialGlass returns a random blank of a kind: its walls thin upwards, are uneven,
// or change fast; its floor is measured or not.
func trialGlass(t *testing.T, random *rand.Rand, kind string) *Blank {
	t.Helper()
	rim, high := 25+25*random.Float64(), 50+70*random.Float64()
	n := 2 + random.IntN(2)
	if !slices.Contains([]string{"straight", "taper", "flared", "narrow"}, kind) {
		n = 4 + random.IntN(6)
	}
	thick := 3 + 7*random.Float64()
	walls := random.IntN(3)
	var stations []Station
	for i := range n {
		up := float64(i) / float64(n-1)
		r := rim * kinds[kind](random, up)
		w := thick * (1 - 0.75*up)
		switch {
		case walls == 1:
			w = 1 + thick*random.Float64()
		case walls == 2 && i > 0:
			w = 1.5
		}
		stations = append(stations, at(high*up, r, min(w, 0.6*r)))
		if walls == 2 && i == 0 { // a wall that changes fast
			up = 3 / high
			stations = append(stations, at(high*up, rim*kinds[kind](random, up), min(thick, 0.6*r)))
		}
	}
	floor := 0.0
	if random.IntN(3) > 0 {
		floor = 2 + 15*random.Float64()
	}
	return blankOf(t, floor, stations...)
}

// TestDistance looks for the nearest of the walked points from places in the glass
// and a little beyond, on random blanks of all kinds.
func TestDistance(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 4))
	const glasses, places = 12, 40
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		thick, thin, folded := 0.0, 0.0, 0
		for range glasses {
			b := trialGlass(t, random, kind)
			inner, brute := b.ThinInner(), walk(b, 1)
			if inner.folded {
				folded++
			}
			for range places {
				z := b.Height() * random.Float64()
				slope := (b.profile.Radius(z+1e-4) - b.profile.Radius(z-1e-4)) / 2e-4
				in := b.Wall(z) * 1.3 * random.Float64()
				radius, height := b.profile.Radius(z)-in/math.Hypot(1, slope), z+in*slope/math.Hypot(1, slope)
				got, want := inner.Distance(radius, height), brute.distance(radius, height)
				off := math.Abs(got) - want
				if want > 2*stride && (got < 0) != brute.hollow(radius, min(height, b.Height()-stride)) { // over the rim as at it
					t.Errorf("%s %+v, floor %g: from (%.4f, %.4f) there are %.4f, on the wrong side", kind, b.Stations, b.Floor, radius, height, got)
				}
				thick, thin = max(thick, off), min(thin, off)
				if math.Abs(off) > 0.005 {
					t.Errorf("%s %+v, floor %g: from (%.4f, %.4f), opposite %.4f, there are %.4f, walked %.4f",
						kind, b.Stations, b.Floor, radius, height, z, got, want)
				}
			}
		}
		t.Logf("%s: up to %.4f too thick, %.4f too thin; %d of %d turn back", kind, thick, -thin, folded, glasses)
	}
}

// TestStray: no place opposite the outside is further than Stray from the pieces.
func TestStray(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 5))
	worst := 0.0
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		for range 25 {
			b := trialGlass(t, random, kind)
			for z := 0.0; z < b.Height(); z += 0.05 {
				radius, height := b.ThinInner().Opposite(z)
				if height < b.Floor || height > b.Height() {
					continue
				}
				off := math.Abs(b.ThinInner().Distance(radius, height))
				if worst = max(worst, off); off > Stray {
					t.Fatalf("%s %+v: opposite %.3f the pieces are %.5f off", kind, b.Stations, z, off)
				}
			}
		}
	}
	t.Logf("at the worst %.5f mm", worst)
}
