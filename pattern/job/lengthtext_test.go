package job

import (
	"math"
	"testing"

	"roundlay/geometry"
)

// A length that someone wrote is told in the unit they wrote it in, and is read back
// as the same.
func TestLengthText(t *testing.T) {
	for _, c := range []struct {
		unit            geometry.Unit
		written, wanted string
	}{
		{geometry.Inch, "1/32", "1/32 in"},
		{geometry.Inch, "0.035", "0.035 in"},
		{geometry.Inch, "0.0833", "0.0833 in"},
		{geometry.Inch, "3/128", "0.0234375 in"},
		{geometry.Inch, "0.8 mm", "0.8 mm"},
		{geometry.Inch, "0.75 mm", "0.75 mm"},
		{geometry.Inch, "0.08333333", "0.0833333 in"}, // less than a millionth of a millimetre off
		{geometry.Millimetre, "0.8", "0.8 mm"},
		{geometry.Millimetre, "0.75", "0.75 mm"},
		{geometry.Millimetre, "0.125", "0.125 mm"},
		{geometry.Millimetre, "0.635", "0.635 mm"},
		{geometry.Millimetre, "1/32 in", "1/32 in"},
	} {
		mm, err := c.unit.Parse(c.written)
		if err != nil {
			t.Fatal(err)
		}
		got := lengthText(c.unit, mm)
		if got != c.wanted {
			t.Errorf("%s in %s is told as %s, wanted %s", c.written, c.unit, got, c.wanted)
		}
		if again, err := c.unit.Parse(got); err != nil || math.Abs(again-mm) > 1e-6 {
			t.Errorf("%s is read as %v mm, %v", got, again, err)
		}
	}
}
