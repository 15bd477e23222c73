package pattern

import (
	"context"
	"math"
)

// MaxSweep is the share of a groove's half width by which the ends of the wheel's contact
// can deviate from a bent line before that is a finding.
const MaxSweep = 0.5

// maxMisfit is the most, in millimetres of radius, that the profile can deviate from the
// cone its paper is drawn on. It is about 1 mm of girth.
const maxMisfit = 0.15

// buried checks that each wheel cuts with its edge alone.
func (p *Plan) buried() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.WheelFit.Buried <= 1e-6 {
			continue
		}
		at := c.Middle()
		found = append(found, Finding{
			Kind: Buried, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.Theta, Height: at.Height,
			Measured: c.Depth, Wanted: c.Depth - c.WheelFit.Buried,
		})
	}
	return found
}

// tight checks that each wheel can follow its line's bends.
func (p *Plan) tight() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.WheelFit.Share <= MaxSweep {
			continue
		}
		at := c.Nearest(c.WheelFit.At)
		found = append(found, Finding{
			Kind: Tight, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: at.Theta, Height: at.Height,
			Measured: c.WheelFit.Sweep, Wanted: MaxSweep * c.Width / 2,
		})
	}
	return found
}

// uneven checks that paper can be made for the glass: on a cone or, past that, of gores
// that lie flat and can be handled.
func (p *Plan) uneven() []Finding {
	if !p.Ungored() {
		return nil
	}
	f := Finding{Kind: Uneven, Repeat: 1, Measured: p.goreError(), Wanted: maxEase}
	profile := p.Blank.Profile()
	const steps = 400
	worst := -1.0
	for i := range steps + 1 {
		z := p.Band.Foot + (p.Band.Top-p.Band.Foot)*float64(i)/steps
		if off := math.Abs(p.Cone.RadiusAt(z) - profile.Radius(z)); off > worst {
			worst, f.Height = off, z
		}
	}
	return []Finding{f}
}

// Ungored reports whether the glass is too curved for any paper: gores wide enough to
// handle don't lie flat on it.
func (p *Plan) Ungored() bool { return p.goreError() > maxEase }

// bridged checks that each wheel fits into the hollows it crosses.
func (p *Plan) bridged() []Finding {
	var found []Finding
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if !c.Bridges() {
			continue
		}
		found = append(found, Finding{
			Kind: Bridged, Cuts: []int{c.ID}, Repeat: c.Repeat, Theta: c.Bridge.Theta, Height: c.Bridge.Height,
			Measured: c.Bridge.Depth, Wanted: c.Asked,
		})
	}
	return found
}

// LargestWheel returns the radius of the largest wheel with the same edge that fits into
// the hollow a cut bridges, 0 if none does. The error is the context's.
func (p *Plan) LargestWheel(ctx context.Context, c *Cut) (float64, error) {
	return p.cutter().LargestWheel(ctx, c.Line, p.Job.Rack[c.Wheel], c.Asked)
}
