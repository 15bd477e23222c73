package groove

// Wear is how fast a wheel wears: its diameter loses Lost in so much groove, all in
// millimetres. The zero Wear is of a wheel of which that isn't known.
type Wear struct{ Lost, Groove float64 }

// Known reports whether it is known how fast the wheel wears.
func (w Wear) Known() bool { return w.Groove > 0 }

// After returns the diameter lost when a length of groove has been cut.
func (w Wear) After(groove float64) float64 { return w.Lost * groove / w.Groove }

// Takes returns the length of groove in which a diameter is lost.
func (w Wear) Takes(lost float64) float64 { return lost * w.Groove / w.Lost }

// Worn returns the wheel with a smaller radius. Its edge is taken to be dressed to the shape
// it had.
func (w Wheel) Worn(radius float64) Wheel {
	w.Radius = radius
	return w
}
