package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Misreading is a station that alone makes an otherwise straight glass curved.
type Misreading struct {
	Station glass.Station
	// Read is what the job says of it, Straight what it would have to say for the
	// glass to be straight: girths if Round, else diameters.
	Read, Straight float64
	Round          bool
	// Sure is that a glass is hardly made that way: it bulges, or is hollow, at one
	// station between others on a line. At a foot, at a rim or with three stations
	// in all it may well be.
	Sure bool
	// Takes is that the job may take the glass as straight meanwhile.
	Takes bool
}

// How far off a reading may be across to be asked about where the glass may well be
// shaped like that: a 32nd of an inch, where a rule is misread, or two of them at a
// foot or a rim, where the others by themselves lie on a line.
const (
	maxSlip    = geometry.MillimetresPerInch / 32
	maxEndSlip = 2 * maxSlip
)

// Misread returns the station that makes the glass curved, so that paper on a cone
// won't do in the band or ends short of the glass, though all the others lie on one
// straight line as near as calipers tell.
func (p *Plan) Misread() (Misreading, bool) {
	b := p.Blank
	if b.Straight || !p.leavesCone() {
		return Misreading{}, false
	}
	i, radius, ok := b.Odd(maxMisfit)
	if !ok || !(radius > b.Stations[i].Wall) {
		return Misreading{}, false
	}
	s, last := b.Stations[i], len(b.Stations)-1
	atEnd := i == 0 || i == last
	m := Misreading{Station: s, Read: 2 * s.Radius, Straight: 2 * radius, Sure: last > 2 && !atEnd}
	most := maxSlip
	if atEnd {
		most = maxEndSlip
	}
	if !m.Sure && math.Abs(m.Read-m.Straight) > most+1e-6 {
		return Misreading{}, false
	}
	if m.Round = p.Job.Given(blankKey(p.Job, b) + "." + job.Item("station", i) + ".around"); m.Round {
		m.Read, m.Straight = math.Pi*m.Read, math.Pi*m.Straight
	}
	_, err := b.Straightened()
	m.Takes = err == nil
	return m, true
}

// leavesCone reports whether the glass parts from its paper's cone: in the band, or
// beyond it, where the paper then ends.
func (p *Plan) leavesCone() bool {
	if p.WorstRadiusError > maxMisfit {
		return true
	}
	outside := p.Outside()
	return outside.Lower.Why == Parts || outside.Upper.Why == Parts
}
