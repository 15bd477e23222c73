package groove_test

import "math"

// over returns how far an upright wheel, set down at a distance along the line as deep as the
// swell asks, bites beyond the line's start (way -1) or its end.
func (s *handed) over(along, way float64) float64 {
	far := along
	if way > 0 {
		far = s.line.length() - along
	}
	return s.covers(s.line.at(along), s.depthTo(along), way) - far
}

// fairest returns the place along the line from which the wheel, as deep as the swell asks there,
// bites as far beyond the start as beyond the end, and how far within both it stays. Farther
// off the swell may ask so little that a wheel would have room there: it is not looked for, as
// one touch takes more glass than a line drawn in a dip of the swell.
func (s *handed) fairest() (along, room float64) {
	length := s.line.length()
	along = length / 2
	for range 4 { // at another depth the place is hardly another
		depth := s.depthTo(along)
		nearer := func(x float64) bool { // to the start
			w := s.line.at(x)
			return s.covers(w, depth, -1)-x > s.covers(w, depth, 1)-(length-x)
		}
		along = bisectTo(1e-5, 0, length, nearer)
	}
	return along, -max(s.over(along, -1), s.over(along, 1))
}

// works finds where the wheel has to stand so that no mark of it, upright and as deep as the
// swell asks, runs out beyond an end of the line. Where there is no such place it is one touch.
func (s *handed) works() handwork {
	fairest, room := s.fairest()
	if room <= 0 {
		return s.pressedDown(room)
	}
	k := handwork{room: room}
	k.first, k.last = s.stands(fairest, -1), s.stands(fairest, 1)
	s.spreadOut(&k, 0.1)
	for i := 0; i < len(k.at); i += 20 {
		w, deep := s.line.at(k.at[i].along), k.at[i].depth
		k.reach = max(k.reach, s.covers(w, deep, 1), s.covers(w, deep, -1))
	}
	return k
}

// pressedDown is one touch of the wheel: on the straight line between the ends.
func (s *handed) pressedDown(room float64) handwork {
	pressed := *s.turning
	pressed.depth = s.peak()
	k := handwork{touch: true, room: room}
	depth, along, ok := pressed.press()
	if !ok {
		k.unclear = "no depth of a touch has the line's length"
		return k
	}
	k.first, k.last = along, along
	k.at = []gripped{s.grip(along, depth)}
	k.reach = s.covers(s.line.at(along), depth, 1)
	return k
}

// stands returns the place nearest to the fairest one at which the wheel's mark reaches an end
// of the line.
func (s *handed) stands(fairest, way float64) float64 {
	const step = 0.25
	end := 0.0
	if way > 0 {
		end = s.line.length()
	}
	n := math.Ceil(math.Abs(end-fairest) / step)
	for i := 1.0; i <= n; i++ {
		to := fairest + (end-fairest)*i/n
		if s.over(to, way) >= 0 {
			return bisectTo(1e-6, to, fairest+(end-fairest)*(i-1)/n, func(x float64) bool { return s.over(x, way) >= 0 })
		}
	}
	return end
}
