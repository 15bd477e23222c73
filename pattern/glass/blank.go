package glass

import (
	"errors"
	"math"
	"sort"

	"gonum.org/v1/gonum/interp"

	"roundlay/geometry"
)

// Station is one measured height on a blank: the height above the table, the
// outside radius and the wall, which is measured square to the glass. All are in
// millimetres and as measured: weighing the blank does not change them.
type Station struct {
	Height, Radius, Wall float64
	// Min and Max are the smallest and the greatest diameter where more than one
	// was read: they show how far the glass is out of round. Otherwise both are 0.
	Min, Max float64
}

// OutOfRound returns by how much the glass is wider one way than the other.
func (s Station) OutOfRound() float64 { return s.Max - s.Min }

// Extent is a range of heights above the table.
type Extent struct{ Low, High float64 }

// Blank is one uncut glass, measured at two or more stations from the foot up.
// Its height is the last station's. Floor is the thickness of glass under the
// inside, 0 when it was not measured. The inside surface is worked out from
// Stations and Floor when the blank is made, so they must not change afterwards.
type Blank struct {
	Name     string
	Stations []Station
	Floor    float64
	Fill     float64 // the height of the line it is filled to; 0 for none
	Material Material
	// Paper is where paper begins and ends on the outside. nil lets it go as far as it
	// lies on the glass.
	Paper *Extent
	// BaseAcross is the diameter of the flat underside, 0 where it is the foot's. Hollow is
	// what the punty mark left in it.
	BaseAcross float64
	Hollow     Hollow

	// ScaleWeight is what the scale reads, in grams, 0 where it was not weighed. Factor is
	// by what number the measured walls are multiplied to give that weight.
	ScaleWeight, Factor float64

	// Straight says that the glass is taken as straight, whatever the stations read.
	Straight bool

	profile     *geometry.Profile
	meridian    geometry.Meridian
	wall        interp.PiecewiseLinear // as measured
	inner, thin *Inner
	flat        *spread // of the outside; nil where no foot spreads
}

// ErrWall is returned for a wall that is not thinner than the glass's radius.
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

// shape gives the blank an outside and the inside that follows from it. It is
// called before the blank is weighed.
func (b *Blank) shape(outside *geometry.Profile) {
	b.profile, b.meridian = outside, geometry.NewMeridian(outside)
	b.inner = b.innerTimes(1)
	b.thin = b.inner
	b.flat = b.spreads()
}

// Inner returns the inside surface as it most likely is: if the blank was weighed,
// with the walls that give that weight. Paper is laid on it, and what the blank
// holds and weighs is worked out from it.
func (b *Blank) Inner() *Inner { return b.inner }

// ThinInner returns the inside surface that glass left is measured to: with the
// walls as Wall returns them.
func (b *Blank) ThinInner() *Inner { return b.thin }

// innerTimes returns the inside surface with all walls times a factor.
func (b *Blank) innerTimes(factor float64) *Inner {
	thickest := 0.0
	for _, s := range b.Stations {
		thickest = max(thickest, factor*s.Wall)
	}
	return newInner(square{b.profile, b.wall, factor}, b.heights(), thickest, b.Floor)
}

// Meridian returns the outside curve by the distance along it.
func (b *Blank) Meridian() geometry.Meridian { return b.meridian }

// Profile returns the outside curve through the stations.
func (b *Blank) Profile() *geometry.Profile { return b.profile }

// OutOfRound returns by how much the glass is wider one way than the other, at the
// station where that is greatest.
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
// outside. Between stations it changes in a straight line. If the blank was
// weighed, it is the thinner of the wall as measured and as corrected: a heavier
// blank does not say where it is thicker.
func (b *Blank) Wall(z float64) float64 { return b.thinner() * b.wall.Predict(z) }

// thinner returns the factor on the measured walls that glass left is worked out
// with.
func (b *Blank) thinner() float64 { return min(1, b.Factor) }

// MinWall returns the thinnest wall between two heights.
func (b *Blank) MinWall(from, to float64) float64 {
	least := math.Min(b.Wall(from), b.Wall(to))
	for _, s := range b.Stations {
		if from < s.Height && s.Height < to {
			least = math.Min(least, b.thinner()*s.Wall)
		}
	}
	return least
}

// Wanted is a wall of at least a thickness, from a height upwards.
type Wanted struct{ Wall, From float64 }

// Carries returns the greatest height up to which the wall is nowhere thinner
// than wanted. Where it is too thin at the height it is wanted from, that is the
// answer.
func (b *Blank) Carries(w Wanted) float64 {
	z, wall := w.From, b.Wall(w.From)
	if wall < w.Wall {
		return z
	}
	i := sort.Search(len(b.Stations), func(i int) bool { return b.Stations[i].Height > w.From })
	for _, s := range b.Stations[i:] {
		next := b.thinner() * s.Wall
		if next < w.Wall {
			// On the straight line from (z, wall) to the station.
			return z + (s.Height-z)*(wall-w.Wall)/(wall-next)
		}
		z, wall = s.Height, next
	}
	return z
}
