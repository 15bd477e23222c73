package pattern

// Rate returns how much groove is cut in a minute with a wheel of the rack: its own rate, or
// the shop's; 0 where neither is known.
func (p *Plan) Rate(wheel int) float64 {
	if own := p.Job.Rack[wheel].Rate; own > 0 {
		return own
	}
	return p.Job.Shop.Rate
}

// PassMinutes returns how long a pass takes at the wheel, all round the glass; 0 where the
// rate isn't known.
func (p *Plan) PassMinutes(pass Pass) float64 {
	rate := p.Rate(pass.Wheel)
	if rate == 0 {
		return 0
	}
	return p.Length(pass) / rate
}

// Times is how long one piece takes.
type Times struct {
	Cutting float64 // minutes at the wheel, without the changes of wheel
	Wheels  []int   // numbers of the wheels that are put on, in the order of the rack
	// Unknown lists those of them whose rate isn't known. Cutting is then without them.
	Unknown []int
	// OwnRates says that a wheel in use has a rate of its own.
	OwnRates bool
}

// Known reports whether all of the time at the wheel is known.
func (t Times) Known() bool { return len(t.Unknown) == 0 }

// Times returns how long the plan's face takes.
func (p *Plan) Times() Times { return p.timesOf([]*Plan{p}) }

// WholeTimes returns how long all faces take.
func (p *Plan) WholeTimes() Times { return p.timesOf(p.Faces()) }

func (p *Plan) timesOf(faces []*Plan) Times {
	var t Times
	for wheel, length := range p.grooveOn(faces) {
		if length == 0 {
			continue
		}
		t.Wheels = append(t.Wheels, wheel)
		t.OwnRates = t.OwnRates || p.Job.Rack[wheel].Rate > 0
		if rate := p.Rate(wheel); rate > 0 {
			t.Cutting += length / rate
		} else {
			t.Unknown = append(t.Unknown, wheel)
		}
	}
	return t
}

// grooveOn returns how much groove is cut on some faces with each wheel of the rack.
func (p *Plan) grooveOn(faces []*Plan) []float64 {
	lengths := make([]float64, len(p.Job.Rack))
	for _, face := range faces {
		for i := range face.Cuts {
			lengths[face.Cuts[i].Wheel] += face.Cuts[i].Length * float64(face.Periods())
		}
	}
	return lengths
}
