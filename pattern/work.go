package pattern

import "roundlay/pattern/groove"

// work returns the time to measure one place of a groove, in microseconds on a
// workshop's computer, as BenchmarkWork measures it. Broad edges and bent lines take
// longer: a broad edge is measured all across, a bent line from both sides. A cut that swells
// or is rolled takes most: each place is looked at from all about it, at all rolls.
func (p *Plan) work(wheel groove.Wheel, bent bool, hand groove.Hand) float64 {
	of := [...]struct{ even, swells, rolled placeWork }{
		groove.Mitre: {placeWork{3, 14, 5, 40}, placeWork{25, 30, 40, 55}, placeWork{60, 60, 95, 115}},
		groove.Round: {placeWork{4, 24, 30, 80}, placeWork{35, 40, 50, 80}, placeWork{90, 100, 165, 165}},
		groove.Flat:  {placeWork{10, 32, 60, 110}, placeWork{40, 50, 65, 110}, placeWork{90, 90, 145, 145}},
		groove.Gang:  {placeWork{3, 18, 13, 50}, placeWork{30, 35, 55, 65}, placeWork{125, 125, 150, 155}},
	}[wheel.Edge]
	work := of.even
	switch {
	case hand.Rock != [2]float64{}:
		work = of.rolled
	case !hand.Even():
		work = of.swells
	}
	return work.at(p.Surface.Flat(), bent) * mitresOf(wheel)
}

// placeWork is what a place of a groove takes, by the line and by the glass that it is on.
type placeWork struct{ straight, bent, curved, curvedBent float64 }

func (w placeWork) at(flat, bent bool) float64 {
	switch {
	case flat && bent:
		return w.bent
	case flat:
		return w.straight
	case bent:
		return w.curvedBent
	}
	return w.curved
}
