package strokes

// Length returns how long the stroke is.
func (s Stroke) Length() float64 {
	sum := 0.0
	for _, c := range s.Curves {
		sum += length(c)
	}
	return sum
}
