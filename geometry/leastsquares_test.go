package geometry

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// By hand: the means are 2 and 3; the sums of squares 2 and of products 3.
func TestLeastSquaresByHand(t *testing.T) {
	atZero, slope := LeastSquares([]float64{1, 2, 3}, []float64{1, 4, 4})
	if atZero != 0 || slope != 1.5 {
		t.Errorf("line %v + %v x, want 0 + 1.5 x", atZero, slope)
	}
}

// gonum's fit is the outside source. It adds in an order that differs between processors.
func TestLeastSquaresBesideGonum(t *testing.T) {
	x, y := make([]float64, 257), make([]float64, 257)
	for i := range x {
		x[i] = 80 * float64(i) / 256
		y[i] = 31 + 0.07*x[i] + math.Sin(x[i])
	}
	atZero, slope := LeastSquares(x, y)
	wantZero, wantSlope := stat.LinearRegression(x, y, nil, false)
	if math.Abs(atZero-wantZero) > 1e-11 || math.Abs(slope-wantSlope) > 1e-13 {
		t.Errorf("line %v + %v x, gonum's %v + %v x", atZero, slope, wantZero, wantSlope)
	}
}
