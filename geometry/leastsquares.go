package geometry

// LeastSquares returns the straight line through points (x, y) with the least sum of squared
// errors in y: its value at x = 0, and its slope. There are two or more points, not all at the
// same x. Sums are taken one number after the other, so that every processor rounds alike.
func LeastSquares(x, y []float64) (atZero, slope float64) {
	n := float64(len(x))
	var meanX, meanY float64
	for i := range x {
		meanX += x[i]
		meanY += y[i]
	}
	meanX /= n
	meanY /= n
	var spread, both float64
	for i := range x {
		off := x[i] - meanX
		spread += off * off
		both += off * (y[i] - meanY)
	}
	slope = both / spread
	return meanY - slope*meanX, slope
}
