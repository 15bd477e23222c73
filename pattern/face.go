package pattern

import (
	"fmt"
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
)

// Face is one face of the glass, as paper is laid on it: the outside, or the
// inside from its floor up.
type Face struct {
	Profile *geometry.Profile
	// Cone is the one of least squared error where the paper has to fit; Misfit is
	// how far the profile leaves it there, in radius.
	Cone   geometry.Cone
	Misfit float64
	// Low and High are the heights the paper spans, Lower and Upper why it ends
	// there.
	Low, High    float64
	Lower, Upper Edge
	Band         [2]float64 // the band's ends, as far as they lie on the face

	inner *glass.Inner // of the inside
	own   [2]float64   // the heights of the face itself
	// fit is where the paper has to fit: on the band, or wherever the job asks for it.
	fit   [2]float64
	asked bool
}

// Outside returns the outside of the glass.
func (p *Plan) Outside() Face {
	f := p.outside()
	f.end(p.Repeats, rulerStep(p.Job.Length))
	return f
}

// outside is the outside before it is known where its paper ends.
func (p *Plan) outside() Face {
	f := Face{
		Profile: p.Blank.Profile(), Cone: p.Cone, Misfit: p.WorstRadiusError,
		own: [2]float64{0, p.Blank.Height()}, Band: [2]float64{p.Band.Foot, p.Band.Top},
	}
	f.fit = f.Band
	if paper := p.Blank.Paper; paper != nil {
		f.ask(paper.Low, paper.High)
	}
	return f
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
	f := Face{Profile: profile, inner: p.Blank.Inner(), own: [2]float64{profile.Bottom(), profile.Top()}}
	f.Band = f.between(p.Band.Foot, p.Band.Top)
	if f.Band[1]-f.Band[0] < MinBand {
		return fail(fmt.Errorf("the whole band lies below the inside floor, which is %s above the table",
			p.Job.Length.Format(f.own[0])))
	}
	f.fit = f.Band
	if paper := p.Blank.Paper; paper != nil {
		asked := f.between(paper.Low, paper.High)
		if paper.High == p.Blank.Height() {
			asked[1] = f.own[1]
		}
		f.ask(asked[0], asked[1])
		if f.Band[1]-f.Band[0] < MinBand {
			return fail(fmt.Errorf("of the band, the paper asked for (blank.paper) has only what lies below the inside floor, which is %s above the table",
				p.Job.Length.Format(f.own[0])))
		}
	} else {
		f.Cone, f.Misfit = profile.FitCone(f.fit[0], f.fit[1])
	}
	f.end(p.Repeats, rulerStep(p.Job.Length))
	return f, nil
}

// Height returns the height on the face of what is at height z of the outside: the
// same on the outside; on the inside the place square through the wall. That may
// lie beyond the face's ends.
func (f Face) Height(z float64) float64 {
	if f.inner == nil {
		return z
	}
	_, height := f.inner.Opposite(z)
	return height
}

// outer undoes Height.
func (f Face) outer(height float64) float64 {
	if f.inner == nil {
		return height
	}
	z, _ := f.inner.Facing(height)
	return z
}

// between returns what of the face is opposite to the outside between two heights.
func (f Face) between(low, high float64) [2]float64 {
	return [2]float64{max(f.Height(low), f.own[0]), min(f.Height(high), f.own[1])}
}

// Curved reports whether the face leaves its cone by more than paper on a cone
// may be off, so that its paper has to be made of gores.
func (f Face) Curved() bool { return f.Misfit > maxMisfit }

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
	maxEase = geometry.MillimetresPerInch / 64 // the error a gore may have: the least that calipers show, and paper gives
	minGore = 8.0                              // a gore's width at its widest: narrower ones can't be handled
)

// Gores returns the fewest gores a repeat that lie flat within a 64th of an inch
// where the paper has to fit or, where that would take gores too narrow to handle,
// as many as can be handled. Lift is how far off the face the paper lies, as a
// radius.
func (f Face) Gores(repeats int, lift float64) Gores {
	widest, on := 0.0, f.own
	if f.asked {
		on = f.fit
	}
	for z := on[0]; z <= on[1]; z++ {
		widest = max(widest, f.Profile.Radius(z)+lift)
	}
	for n := 1; ; n++ {
		g := f.InGores(repeats, n, lift)
		if g.Worst() <= maxEase || math.Pi*2*widest/float64(repeats*(n+1)) < minGore {
			return g
		}
	}
}

// goreError returns how far gores' edges are out within the band, which may be
// less than where the paper has to fit.
func (f Face) goreError(repeats int) float64 {
	g := f.Gores(repeats, 0)
	if f.fit != f.Band {
		f.fit = f.Band
		g = f.InGores(repeats, g.PerRepeat, 0)
	}
	return g.Worst()
}

// InGores returns what so many gores a repeat come to.
func (f Face) InGores(repeats, perRepeat int, lift float64) Gores {
	g := Gores{PerRepeat: perRepeat}
	gore := geometry.Gore{Profile: f.Profile, Lift: lift, HalfWidth: math.Pi / float64(repeats*perRepeat)}
	g.Gain, g.Loss = gore.Excess(f.fit[0], f.fit[1])
	return g
}
