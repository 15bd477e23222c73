package pattern

import "math"

// mostSweep is how much of a groove's half width the ends of the wheel's
// contact may stand off a bent line before it is a finding.
const mostSweep = 0.5

// mostMisfit is how far the profile may leave the cone its paper is drawn on:
// 0.15 mm of radius is about 1 mm of girth.
const mostMisfit = 0.15

// buried checks that each wheel cuts with its edge alone.
func (p *Plan) buried() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.Strain.Buried <= 1e-6 {
			continue
		}
		at := c.Middle()
		found = append(found, Finding{
			Kind: Buried, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.Theta, Height: at.Height,
			Measured: c.Depth, Wanted: c.Depth - c.Strain.Buried,
		})
	}
	return found
}

// tight checks that each wheel can follow its line's bends.
func (p *Plan) tight() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.Strain.Share <= mostSweep {
			continue
		}
		at := c.Nearest(c.Strain.At)
		found = append(found, Finding{
			Kind: Tight, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.Theta, Height: at.Height,
			Measured: c.Strain.Sweep, Wanted: mostSweep * c.Width / 2,
		})
	}
	return found
}

// mostStretch is how far a land may be off, as a share of the least land, for
// being measured on the cone of its band and not on the glass.
const mostStretch = 1.0 / 3

// uneven checks that paper for the glass can be made: past what a cone holds, in
// gores that lie flat and can be handled.
func (p *Plan) uneven() []Finding {
	if !p.Ungored() {
		return nil
	}
	f := Finding{Kind: Uneven, Repeat: 1, Measured: p.goreError(), Wanted: mostEase}
	profile := p.Blank.Profile()
	const steps = 400
	worst := -1.0
	for i := range steps + 1 {
		z := p.Band.Foot + (p.Band.Top-p.Band.Foot)*float64(i)/steps
		if off := math.Abs(p.Surface.RadiusAt(z) - profile.Radius(z)); off > worst {
			worst, f.Height = off, z
		}
	}
	return []Finding{f}
}

// Ungored reports whether no gores that can be handled lie flat on the glass.
func (p *Plan) Ungored() bool { return p.goreError() > mostEase }

// LandError returns how far a land beside any cut may be off at the worst, for
// being measured on the cone.
func (p *Plan) LandError() float64 {
	worst := 0.0
	for _, c := range p.Cuts {
		off, _, _ := p.landError(c)
		worst = max(worst, off)
	}
	return worst
}

// stretched checks, on a curved glass, that the lands beside each cut are on the
// glass near enough what they are on the cone they are measured on.
func (p *Plan) stretched() []Finding {
	if p.WorstRadiusError <= mostMisfit {
		return nil
	}
	var found []Finding
	for _, c := range p.Cuts {
		land := p.land(c.Motif, c.Motif)
		f := Finding{Kind: Uneven, Cuts: []int{c.ID}, Repeat: c.Repeat, Wanted: mostStretch * land}
		f.Measured, f.Theta, f.Height = p.landError(c)
		if land > 0 && f.Measured > f.Wanted {
			found = append(found, f)
		}
	}
	return found
}

// landError returns how far the least land beside a cut may be off at the worst,
// and where. On the glass the way from the middle of one groove to the middle of
// the next is longer or shorter than on the cone, the grooves are as wide, and
// the land takes all of the difference.
func (p *Plan) landError(c Cut) (worst, theta, height float64) {
	land := p.land(c.Motif, c.Motif)
	for _, s := range c.Samples {
		if off := p.stretch(s.Height) * (land + s.Left + s.Right); off > worst {
			worst, theta, height = off, s.Theta, s.Height
		}
	}
	return worst, theta, height
}

// stretch returns how much longer or shorter the glass is at a height than the
// cone there, round it or along the profile: a share of its length.
func (p *Plan) stretch(z float64) float64 {
	profile := p.Blank.Profile()
	round := profile.Radius(z)/p.Surface.RadiusAt(z) - 1
	along := math.Hypot(1, profile.Slope(z))*math.Cos(p.Surface.HalfAngle) - 1
	return max(math.Abs(round), math.Abs(along))
}
