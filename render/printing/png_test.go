package printing

import "testing"

// Most is such that a page of 128 million dots is the largest. Letter by hand, at
// 1170 to the inch: 8.5 × 1170 = 9945 by 11 × 1170 = 12870 is 127,992,150; at 1171
// 9954 by 12881 is 128,217,474.
func TestMostDPI(t *testing.T) {
	if got := MostDPI(215.9, 279.4); got != 1170 {
		t.Errorf("letter: %g", got)
	}
	for width := 115.0; width < 1530; width += 7.3 {
		for height := width; height < 1530; height += 91.7 {
			most := MostDPI(width, height)
			across, up := dots(width, height, most)
			if more, higher := dots(width, height, most+1); across*up > mostDots || more*higher <= mostDots {
				t.Errorf("%g by %g mm: %g", width, height, most)
			}
		}
	}
}
