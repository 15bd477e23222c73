package pattern

import (
	"fmt"
	"math"

	"roundlay/geometry"
)

// Face is one face of the glass, as paper is laid on it: the outside, or the
// inside from its floor up.
type Face struct {
	Profile *geometry.Profile
	// Cone is the one of least squared error between the band's ends, as far as
	// they lie on the face; Misfit is how far the profile leaves it there, in
	// radius.
	Cone      geometry.Cone
	Misfit    float64
	Low, High float64 // the face's own ends
	Band      [2]float64
}

// Outside returns the outside of the glass, from the table to the rim.
func (p *Plan) Outside() Face {
	return Face{
		Profile: p.Blank.Profile(), Cone: p.Cone, Misfit: p.WorstRadiusError,
		High: p.Blank.Height(), Band: [2]float64{p.Band.Foot, p.Band.Top},
	}
}

// Inside returns the inside of the glass, from its floor to the rim. The error
// says why no paper can be laid on it.
func (p *Plan) Inside() (Face, error) {
	fail := func(reason error) (Face, error) {
		return Face{}, fmt.Errorf("blank %q has no inside to lay paper on: %w", p.Blank.Name, reason)
	}
	profile, err := p.Blank.Inside()
	if err != nil {
		return fail(err)
	}
	f := Face{Profile: profile, Low: profile.Bottom(), High: profile.Top()}
	f.Band = [2]float64{max(p.Band.Foot, f.Low), p.Band.Top}
	if f.Band[1]-f.Band[0] < 1 {
		return fail(fmt.Errorf("the whole band lies below the inside floor, which is %s above the table",
			p.Job.Length.Text(f.Low)))
	}
	f.Cone, f.Misfit = profile.FitCone(f.Band[0], f.Band[1])
	return f, nil
}

// MostMisfit is how far a face may leave the cone of its paper, as a radius.
const MostMisfit = mostMisfit

// Beyond returns how far the profile leaves the cone at the worst outside the
// band, between two heights, and where.
func (f Face) Beyond(low, high float64) (worst, at float64) {
	const steps = 200
	for i := range steps + 1 {
		z := low + (high-low)*float64(i)/steps
		if z > f.Band[0] && z < f.Band[1] {
			continue
		}
		if off := math.Abs(f.Cone.RadiusAt(z) - f.Profile.Radius(z)); off > worst {
			worst, at = off, z
		}
	}
	return worst, at
}

// Curved reports whether the face leaves its cone by more than paper on a cone
// may be off, so that its paper has to be made of gores.
func (f Face) Curved() bool { return f.Misfit > mostMisfit }

// Gores is how paper for a curved face is divided.
type Gores struct {
	PerRepeat int
	// Gain and Loss are how much longer, and how much shorter, a gore's edges are
	// than the glass they lie on, at the worst.
	Gain, Loss float64
}

// Worst returns the greater of gain and loss.
func (g Gores) Worst() float64 { return max(g.Gain, g.Loss) }

// What gores are to keep to, in millimetres.
const (
	mostEase  = geometry.MillimetresPerInch / 64 // the error a gore may have: the least that calipers show, and paper gives
	leastGore = 8.0                              // a gore's width at its widest: narrower ones can't be handled
)

// Gores returns the fewest gores a repeat that lie flat within a 64th of an inch,
// or, where that would take gores too narrow to handle, as many as
// can be handled. Lift is how far off the face the paper lies, as a radius.
func (f Face) Gores(repeats int, lift float64) Gores {
	gore := geometry.Gore{Profile: f.Profile, Lift: lift}
	widest := 0.0
	for z := f.Low; z <= f.High; z++ {
		widest = max(widest, gore.RadiusAt(z))
	}
	var g Gores
	for {
		g.PerRepeat++
		half := math.Pi / float64(repeats*g.PerRepeat)
		g.Gain, g.Loss = gore.Excess(half, f.Band[0], f.Band[1])
		if g.Worst() <= mostEase || math.Pi*2*widest/float64(repeats*(g.PerRepeat+1)) < leastGore {
			return g
		}
	}
}
