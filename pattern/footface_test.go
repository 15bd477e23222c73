package pattern

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"roundlay/pattern/glass"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// spreadFoot returns a stemmed glass on a random thin foot, and the heights between which the
// foot's upper face rises to the stem.
func spreadFoot(t *testing.T, random *rand.Rand) (*glass.Blank, job.Band) {
	t.Helper()
	between := func(low, high float64) float64 { return low + random.Float64()*(high-low) }
	wide, edge, stem := between(28, 40), between(0.8, 3), between(5, 9)
	face := job.Band{Foot: edge, Top: edge + between(2.5, 10)}
	stations := []glass.Station{
		{Height: 0, Radius: wide, Wall: between(6, 25)}, {Height: edge, Radius: wide, Wall: between(6, 25)},
		{Height: face.Top, Radius: stem, Wall: between(3, 4.8)}, {Height: 70, Radius: stem, Wall: 3}, {Height: 90, Radius: 40, Wall: 4}, {Height: 150, Radius: 42, Wall: 2},
	}
	if random.IntN(2) == 0 { // bent half-way up
		share := between(0.35, 0.65)
		stations = slices.Insert(stations, 2, glass.Station{
			Height: edge + share*(face.Top-edge)*between(0.8, 1.2), Radius: wide + share*(stem-wide), Wall: between(6, 12),
		})
	}
	// Where the floor wasn't measured, the walls alone say where the inside is.
	b, err := glass.NewBlank("footed", []float64{0, 80}[random.IntN(2)], stations)
	if err != nil {
		t.Fatal(err)
	}
	if random.IntN(3) == 0 {
		b.Hollow = glass.Hollow{Across: between(20, 2*wide-10), Depth: between(0.2, 1)}
	}
	return b, face
}

// leftBySearch returns the glass between the bottom of a sharp cut and all that it ends at,
// found by trying: the underside, and the inside one wall under every height of the outside.
// It also returns that of the places on what leans by less than 60° alone.
func leftBySearch(b *glass.Blank, c Cut) (all, flat float64) {
	const fine = 0.02
	profile := b.Profile()
	lean := func(z float64) (r, cos, sin float64) { // of the outside's slope, by differences
		const small = 1e-4
		r = profile.Radius(z)
		slope := (profile.Radius(z+small) - profile.Radius(max(z-small, 0))) / (z + small - max(z-small, 0))
		return r, 1 / math.Hypot(1, slope), slope / math.Hypot(1, slope)
	}
	var inside [][2]float64
	for z := 0.0; z < 60; z += fine {
		r, cos, sin := lean(z)
		w := b.Wall(z)
		if up := z + w*sin; up >= b.Floor {
			inside = append(inside, [2]float64{r - w*cos, up})
		}
	}
	all, flat = math.Inf(1), math.Inf(1)
	bottom := func(s groove.Sample) (out, up float64, level bool) {
		r, cos, sin := lean(s.Height)
		return r - s.Depth*cos, s.Height + s.Depth*sin, -sin > 0.51
	}
	for i := range c.Samples[1:] {
		fromOut, fromUp, one := bottom(c.Samples[i])
		toOut, toUp, other := bottom(c.Samples[i+1])
		for share := 0.0; share <= 1; share += 0.1 {
			out, up := fromOut+share*(toOut-fromOut), fromUp+share*(toUp-fromUp)
			if up < 0 {
				return 0, 0
			}
			left := up
			if b.Hollow.Depth > 0 {
				left = min(left, math.Hypot(max(up-b.Hollow.Depth, 0), max(out-b.Hollow.Across/2, 0)))
			}
			for _, at := range inside {
				left = min(left, math.Hypot(at[0]-out, at[1]-up))
			}
			all = min(all, left)
			if one && other {
				flat = min(flat, left)
			}
		}
	}
	return all, flat
}

// A cut on the upper face of a thin foot is measured to the underside too.
func TestLeftOnFootsFace(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 7))
	compared, thinner, unsafe, careful := 0, 0, 0.0, 0.0
	for range 150 {
		b, face := spreadFoot(t, random)
		long := math.Hypot(face.Top-face.Foot, b.Profile().Radius(face.Foot)-b.Profile().Radius(face.Top))
		length := long * (0.15 + 0.45*random.Float64())
		j := jobOn(b, 3, bar(t, 0, length/2+random.Float64()*(long-length), length, depth(0.3+1.5*random.Float64()), with(fine)))
		j.Rack[fine].Radius = 2.5 + 6*random.Float64()
		j.Layout.Band = &face
		j.Limits.Foot = 0
		p := checked(t, j)
		c := p.Cuts[0]
		if c.Bridges() || c.Touch {
			continue
		}
		all, flat := leftBySearch(b, c)
		if math.IsInf(flat, 1) {
			continue
		}
		compared++
		if j.Blanks[0].ThinInner().Distance(b.Profile().Radius(c.Remains.Height), c.Remains.Height)-c.Depth > flat+0.05 {
			thinner++
		}
		unsafe, careful = max(unsafe, c.Left-flat), max(careful, all-c.Left)
		if c.Left > flat+0.05 || c.Left < all-0.05 {
			t.Errorf("%+v: %.3f left, by search %.3f, %.3f where it is flat (%v, hollow %v)", b.Stations, c.Left, all, flat, face, b.Hollow)
		}
		thin := slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Kind == Thin })
		if math.Abs(flat-j.Limits.Leave) > 0.05 && flat < j.Limits.Leave && !thin {
			t.Errorf("%.3f left, and no finding", flat)
		}
	}
	t.Logf("%d compared, of which in %d the wall alone would leave more: at most %.3f told too much, %.3f too little", compared, thinner, unsafe, careful)
	if compared < 80 || thinner < 40 {
		t.Errorf("%d compared, %d thinner", compared, thinner)
	}
}

// A broad edge is measured all across, and a cut right through the foot leaves nothing.
func TestLeftThroughFootsFace(t *testing.T) {
	b := onStem(t, nil).Blanks[0]
	for _, wheel := range []int{fine, panel, lines} {
		for _, deep := range []float64{1, 4.9} {
			j := jobOn(b, 3, bar(t, 0, 11, 20, depth(deep), with(wheel)))
			j.Rack[wheel].Radius, j.Limits.Foot = 6, 0
			j.Layout.Band = &job.Band{Foot: 2, Top: 10}
			c := checked(t, j).Cuts[0]
			if all, _ := leftBySearch(b, c); c.Left > all+0.05 || deep > 4 && c.Left > 0.05 {
				t.Errorf("wheel %d, %g deep: %.3f left, under its line %.3f", wheel, deep, c.Left, all)
			}
		}
	}
}

// A flute that runs out over the foot of a glass that leans in a little isn't told to leave
// nothing, and its glass left is that of the wall.
func TestLeftOnASideThatLeansIn(t *testing.T) {
	b, err := glass.NewBlank("leaning", 9, []glass.Station{{Height: 0, Radius: 40, Wall: 6}, {Height: 100, Radius: 34, Wall: 6}})
	if err != nil {
		t.Fatal(err)
	}
	j := jobOn(b, 3, bar(t, 0, 10, 30, depth(1), with(fine)))
	j.Layout.Band, j.Limits.Foot = &job.Band{Foot: 0, Top: 60}, 0
	if c := checked(t, j).Cuts[0]; !near(c.Left, 5, 0.02) { // Stray, and the wheel's tail
		t.Errorf("%.3f left of a wall of 6", c.Left)
	}
}
