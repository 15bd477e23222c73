package screen

import (
	"math"
	"strconv"
)

// Number is a length in millimetres or an angle in degrees, written to the thousandth.
type Number float64

// MarshalJSON writes the number. One that is not known is null.
func (n Number) MarshalJSON() ([]byte, error) { return number(float64(n), 1e3), nil }

// Precise is a number written to nine decimals, as a turn of a whole wrap needs.
type Precise float64

// MarshalJSON writes the number. One that is not known is null.
func (n Precise) MarshalJSON() ([]byte, error) { return number(float64(n), 1e9), nil }

func number(x, parts float64) []byte {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return []byte("null")
	}
	return strconv.AppendFloat(nil, math.Round(x*parts)/parts+0, 'f', -1, 64) // + 0: never minus zero
}
