// Package glass is the uncut glass: what the calipers said of it, its outside
// curve and the thickness of its wall.
package glass

import (
	"errors"
	"math"
	"sort"

	"gonum.org/v1/gonum/interp"

	"roundlay/geometry"
)

// Station is one measured height on a blank: the height above the table, the
// outside radius and the wall measured square to the glass, in millimetres, all as
// measured whatever the blank weighs.
type Station struct {
	Height, Radius, Wall float64
	// Least and Most are the least and the greatest diameter, where more was read
	// than one: they tell how far the glass is out of round. Otherwise both are 0.
	Least, Most float64
}

// OutOfRound returns by how much the glass is wider one way than the other.
func (s Station) OutOfRound() float64 { return s.Most - s.Least }

// Extent is a range of heights above the table.
type Extent struct{ Low, High float64 }

// Blank is one uncut glass, measured at two or more stations from the foot up.
// Its height is the last station's. Floor is the thickness of glass under the
// inside; 0 when it was not measured. The inside surface is made of both when the
// blank is: they are not to be changed afterwards.
type Blank struct {
	Name     string
	Stations []Station
	Floor    float64
	Fill     float64 // the height of the line it is filled to; 0 for none
	Material Material
	// Paper is where paper is to begin and end on the outside, nil where it is to go
	// as far as it lies on the glass.
	Paper *Extent

	// Weighs is what the scale says of it, in grams, 0 where it was not weighed.
	// Factor is how many times as thick as measured its walls then are on the whole.
	Weighs, Factor float64

	// Straight says that the glass is taken as straight, whatever its stations read.
	Straight bool

	profile     *geometry.Profile
	meridian    geometry.Meridian
	wall        interp.PiecewiseLinear // as measured
	inner, thin *Inner
}

// ErrWall is returned for a wall that is not thinner than the glass is round.
var ErrWall = errors.New("a wall must be thicker than zero and thinner than the glass's radius")

// NewBlank returns the blank measured at the given stations, of soda-lime glass.
func NewBlank(name string, floor float64, stations []Station) (*Blank, error) {
	heights, walls := make([]float64, len(stations)), make([]float64, len(stations))
	circles := make([]geometry.Circle, len(stations))
	for i, s := range stations {
		heights[i], walls[i] = s.Height, s.Wall
		circles[i] = geometry.Circle{Radius: s.Radius, Height: s.Height}
		if !(s.Wall > 0 && s.Wall < s.Radius) {
			return nil, ErrWall
		}
	}
	profile, err := geometry.NewProfile(circles)
	if err != nil {
		return nil, err
	}
	b := &Blank{
		Name: name, Stations: stations, Floor: floor, Material: Materials()[0], Factor: 1,
	}
	if err := b.wall.Fit(heights, walls); err != nil {
		return nil, err
	}
	b.shape(profile)
	return b, nil
}

// shape gives the blank an outside, and the inside that follows from it: before
// it is weighed.
func (b *Blank) shape(outside *geometry.Profile) {
	b.profile, b.meridian = outside, geometry.NewMeridian(outside)
	b.inner = b.innerTimes(1)
	b.thin = b.inner
}

// Inner returns the inside surface as it most likely is: with the walls that make
// the blank weigh what the scale says, where it was weighed. Paper is laid on it,
// and what the blank holds and weighs is reckoned by it.
func (b *Blank) Inner() *Inner { return b.inner }

// ThinInner returns the inside surface that glass left is reckoned against: with
// the walls as Wall returns them.
func (b *Blank) ThinInner() *Inner { return b.thin }

// innerTimes returns the inside surface with all walls times a factor.
func (b *Blank) innerTimes(factor float64) *Inner {
	thickest := 0.0
	for _, s := range b.Stations {
		thickest = max(thickest, factor*s.Wall)
	}
	return newInner(square{b.profile, b.wall, factor}, b.heights(), thickest, b.Floor)
}

// Meridian returns the outside curve told by the distance along it.
func (b *Blank) Meridian() geometry.Meridian { return b.meridian }

// Profile returns the outside curve through the stations.
func (b *Blank) Profile() *geometry.Profile { return b.profile }

// OutOfRound returns the most by which the glass is wider one way than the other
// at any station.
func (b *Blank) OutOfRound() float64 {
	most := 0.0
	for _, s := range b.Stations {
		most = max(most, s.OutOfRound())
	}
	return most
}

// Height returns the height of the rim.
func (b *Blank) Height() float64 { return b.profile.Top() }

// Wall returns the thickness of the glass at height z, measured square to the
// outside: between stations it changes in a straight line. Of a blank that was
// weighed it is the thinner of what was measured and what the scale makes of it,
// for a scale that reads more says nothing of any one place.
func (b *Blank) Wall(z float64) float64 { return b.thinner() * b.wall.Predict(z) }

// thinner returns the factor on the walls as measured that glass left goes by.
func (b *Blank) thinner() float64 { return min(1, b.Factor) }

// LeastWall returns the thinnest wall between two heights.
func (b *Blank) LeastWall(from, to float64) float64 {
	least := math.Min(b.Wall(from), b.Wall(to))
	for _, s := range b.Stations {
		if from < s.Height && s.Height < to {
			least = math.Min(least, b.thinner()*s.Wall)
		}
	}
	return least
}

// Carries returns the greatest height up to which, from the given one, the wall
// is nowhere thinner than the given thickness. It returns from itself where the
// glass is too thin there already.
func (b *Blank) Carries(thickness, from float64) float64 {
	if b.Wall(from) < thickness {
		return from
	}
	i := sort.Search(len(b.Stations), func(i int) bool { return b.Stations[i].Height > from })
	z, wall := from, b.Wall(from)
	for _, s := range b.Stations[i:] {
		next := b.thinner() * s.Wall
		if next < thickness {
			// On the straight line from (z, wall) to the station.
			return z + (s.Height-z)*(wall-thickness)/(wall-next)
		}
		z, wall = s.Height, next
	}
	return z
}
