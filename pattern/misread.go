package pattern

import (
	"math"

	"roundlay/geometry"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// Misreading is the one station that makes an otherwise straight glass curved.
type Misreading struct {
	Station glass.Station
	// Read is the job's reading there, Straight the reading with which the glass would be
	// straight: girths if Round, else diameters.
	Read, Straight float64
	Round          bool
	// Sure says that glasses are hardly made that way: with a bulge or a hollow at one
	// station between others that lie on a line. At a foot, at a rim, or with only three
	// stations, the shape may be real.
	Sure bool
	// Takes says that the job can call the glass straight until it is measured again.
	Takes bool
}

// Where the shape may be real, a reading is reported only if its diameter is off by no
// more than this: a 32nd of an inch, as a rule is misread; at a foot or a rim, where the
// other stations lie on a line, two of them.
const (
	maxSlip    = geometry.MillimetresPerInch / 32
	maxEndSlip = 2 * maxSlip
)

// Misread returns the one station that makes the glass curved, if all the others lie on a
// straight line as nearly as calipers show. A glass counts as curved if paper on a cone
// doesn't fit in the band, or ends short of the glass.
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

// leavesCone reports whether the glass leaves its paper's cone, in the band or beyond it.
func (p *Plan) leavesCone() bool {
	if p.WorstRadiusError > maxMisfit {
		return true
	}
	outside := p.Outside()
	return outside.Lower.Why == PartsFromGlass || outside.Upper.Why == PartsFromGlass
}
