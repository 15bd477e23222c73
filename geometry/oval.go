package geometry

import (
	"math"
	"sort"
)

// Oval is a section that is not quite round, taken as an ellipse. Wide is half of
// its greatest diameter, Narrow half of its smallest.
type Oval struct{ Wide, Narrow float64 }

// Stepping is what an oval does to dividers that are set for a circle.
type Stepping struct {
	// Shortest and Longest are the chords of an equal part. They differ with where
	// the part lies on the oval.
	Shortest, Longest float64
	// Off is how far along the arc a stepped mark deviates from the place that
	// divides the girth equally. Gap is what the last step leaves, positive where it
	// stops short. Both are for the start that makes them worst.
	Off, Gap float64
}

// Step divides the oval into parts equal along its outline, and steps it with a
// setting, from starts all round it. Off and Gap are NaN for fewer than three
// parts: with two, a setting for the mean diameter does not fit every oval.
func (o Oval) Step(setting float64, parts int) Stepping {
	const starts = 16 // in the quarter after which an ellipse repeats itself
	m := o.measured()
	s := Stepping{Shortest: math.Inf(1)}
	equal := m.girth / float64(parts)
	for i := range starts + 1 {
		start := m.girth / 4 * float64(i) / starts
		at, stepped := m.angle(start), m.angle(start)
		for k := 1; k <= parts; k++ {
			next := m.angle(start + equal*float64(k))
			chord := o.between(at, next)
			s.Shortest, s.Longest, at = min(s.Shortest, chord), max(s.Longest, chord), next
			stepped = o.step(stepped, setting, equal)
			off := m.along(stepped) - start - equal*float64(k)
			if k < parts {
				s.Off = max(s.Off, math.Abs(off))
			} else if math.Abs(off) > math.Abs(s.Gap) {
				s.Gap = -off
			}
		}
	}
	if parts < 3 {
		s.Off, s.Gap = math.NaN(), math.NaN()
	}
	return s
}

// step returns where a chord from one place on the outline ends. arc is a first
// guess at how far along the outline that is.
func (o Oval) step(from, chord, arc float64) float64 {
	to := from + arc/o.speed(from)
	for range 20 {
		// Newton's rule: the chord grows by the part of the outline's speed that
		// runs along it.
		sin, cos := math.Sincos(to)
		x, y := o.Wide*(cos-math.Cos(from)), o.Narrow*(sin-math.Sin(from))
		length := math.Hypot(x, y)
		rate := (-x*o.Wide*sin + y*o.Narrow*cos) / length
		if !(rate > 0) {
			break // no chord of this length starts here
		}
		step := (length - chord) / rate
		to -= step
		if math.Abs(step) < 1e-13 {
			break
		}
	}
	return to
}

// between returns the straight distance between two places on the outline.
func (o Oval) between(t, u float64) float64 {
	return math.Hypot(o.Wide*(math.Cos(u)-math.Cos(t)), o.Narrow*(math.Sin(u)-math.Sin(t)))
}

// speed returns how fast the place (Wide cos t, Narrow sin t) moves with t.
func (o Oval) speed(t float64) float64 {
	sin, cos := math.Sincos(t)
	return math.Hypot(o.Wide*sin, o.Narrow*cos)
}

// measured is an oval with the length of its outline up to each of many places.
type measured struct {
	oval  Oval
	arcs  []float64
	girth float64
}

const ovalCells = 256

func (o Oval) measured() measured {
	m := measured{oval: o, arcs: make([]float64, ovalCells+1)}
	for i := range ovalCells {
		m.arcs[i+1] = m.arcs[i] + m.arc(cell(i), cell(i+1))
	}
	m.girth = m.arcs[ovalCells]
	return m
}

func cell(i int) float64 { return 2 * math.Pi * float64(i) / ovalCells }

// arc returns the length of outline between two places less than a cell apart,
// by Simpson's rule. For an ellipse at most twice as wide as narrow, over so short
// a distance, the error is below 1e-9 of the outline.
func (m measured) arc(from, to float64) float64 {
	return (to - from) / 6 * (m.oval.speed(from) + 4*m.oval.speed((from+to)/2) + m.oval.speed(to))
}

// along returns the length of outline up to the place t, over several turns if
// need be.
func (m measured) along(t float64) float64 {
	turns := math.Floor(t / (2 * math.Pi))
	t -= turns * 2 * math.Pi
	i := min(int(t/(2*math.Pi)*ovalCells), ovalCells-1)
	return turns*m.girth + m.arcs[i] + m.arc(cell(i), t)
}

// angle undoes along.
func (m measured) angle(along float64) float64 {
	turns := math.Floor(along / m.girth)
	along -= turns * m.girth
	i := min(max(sort.SearchFloat64s(m.arcs, along)-1, 0), ovalCells-1)
	t := cell(i)
	for range 20 {
		step := (m.arcs[i] + m.arc(cell(i), t) - along) / m.oval.speed(t)
		t -= step
		if math.Abs(step) < 1e-13 {
			break
		}
	}
	return turns*2*math.Pi + t
}
