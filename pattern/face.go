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
	// Cone is the cone of least squared error where the paper has to fit; Misfit is the
	// largest error in radius there.
	Cone   geometry.Cone
	Misfit float64
	// Low and High are the heights of the paper's edges, Lower and Upper why it ends
	// there.
	Low, High    float64
	Lower, Upper Edge
	Band         [2]float64 // the band's ends, within those of the face

	inner *glass.Inner // nil on the outside
	own   [2]float64   // the lowest and highest height of the face itself
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

// outside is Outside without the paper's ends.
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

// Inside returns the inside of the glass, from its floor to the rim. The error says why no
// paper can be laid there.
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

// Height returns the height on the face that is opposite to height z of the outside: on
// the outside z itself, on the inside the place square through the wall. It may lie beyond
// the ends of the face.
func (f Face) Height(z float64) float64 {
	if f.inner == nil {
		return z
	}
	_, height := f.inner.Opposite(z)
	return height
}

// Outer is the inverse of Height.
func (f Face) Outer(height float64) float64 {
	if f.inner == nil {
		return height
	}
	z, _ := f.inner.Facing(height)
	return z
}

// between returns the heights on the face, within its ends, that are opposite to two
// heights of the outside.
func (f Face) between(low, high float64) [2]float64 {
	return [2]float64{max(f.Height(low), f.own[0]), min(f.Height(high), f.own[1])}
}

// Curved reports whether the face is too far from a cone for paper in one piece: then the
// paper is made of gores.
func (f Face) Curved() bool { return f.Misfit > maxMisfit }

// Straight reports whether the face's cone counts as a cylinder, as Plan.Straight does.
func (f Face) Straight() bool { return cylindrical(f.Cone, f.Band[0], f.Band[1]) }

// Gores is how paper for a curved face is divided.
type Gores struct {
	PerRepeat int
	// Gain and Loss are the most by which a gore's edges are longer, and shorter, than
	// the glass they lie on.
	Gain, Loss float64
}

// Worst returns the greater of gain and loss.
func (g Gores) Worst() float64 { return max(g.Gain, g.Loss) }

// The limits for gores, in millimetres.
const (
	maxEase = geometry.MillimetresPerInch / 64 // the largest error of a gore: the least that calipers show, and paper gives that much
	minGore = 8.0                              // the least width of a gore at its widest: narrower ones can't be handled
)

// Gores returns the fewest gores a repeat that lie flat to within maxEase where the paper
// has to fit. If those would be too narrow to handle, it returns as many as can be
// handled. Lift is the distance between the face and the paper, as a radius.
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

// goreError returns the largest error of the gores' edges within the band. It may be less
// than the error over all the heights where the paper has to fit.
func (f Face) goreError(repeats int) float64 {
	g := f.Gores(repeats, 0)
	if f.fit != f.Band {
		f.fit = f.Band
		g = f.InGores(repeats, g.PerRepeat, 0)
	}
	return g.Worst()
}

// InGores returns the gores and their errors for a given number a repeat.
func (f Face) InGores(repeats, perRepeat int, lift float64) Gores {
	g := Gores{PerRepeat: perRepeat}
	gore := geometry.Gore{Profile: f.Profile, Lift: lift, HalfWidth: math.Pi / float64(repeats*perRepeat)}
	g.Gain, g.Loss = gore.Excess(f.fit[0], f.fit[1])
	return g
}
