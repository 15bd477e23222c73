package drawing

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"roundlay/geometry"
)

// The lengths are reckoned by hand. A chain of 6, 1.5, 1, 1.5 has a period of
// 10; an open line holds some periods and the first dash again.
func TestDashesFillTheirLine(t *testing.T) {
	chain := []float64{6, 1.5, 1, 1.5}
	for _, test := range []struct {
		name string
		in   Stroke
		want [][2]float64 // from where to where along the x axis
	}{
		{"two periods and a dash", Stroke{Points: points{{}, {X: 26}}, Pen: Pen{Width: 0.2, Dash: chain}},
			[][2]float64{{0, 6}, {7.5, 8.5}, {10, 16}, {17.5, 18.5}, {20, 26}}},
		// 12.8 is 0.8 times one period and a dash, and nearer to that than to none.
		{"shortened", Stroke{Points: points{{}, {X: 12.8}}, Pen: Pen{Width: 0.2, Dash: chain}},
			[][2]float64{{0, 4.8}, {6, 6.8}, {8, 12.8}}},
		{"in the middle of a piece", Stroke{Points: points{{X: 3}, {X: 5}, {X: 29}}, Pen: Pen{Width: 0.2, Dash: chain}},
			[][2]float64{{3, 9}, {10.5, 11.5}, {13, 19}, {20.5, 21.5}, {23, 29}}},
		// One period and a dash of 2 and 1.2 is 5.2; a gap would come down to 0.23.
		{"too short", Stroke{Points: points{{}, {X: 1}}, Pen: Pen{Width: 0.2, Dash: []float64{2, 1.2}}},
			[][2]float64{{0, 1}}},
		// An odd list goes on the other way round: 3 drawn, 3 left out.
		{"one length", Stroke{Points: points{{}, {X: 9}}, Pen: Pen{Width: 0.2, Dash: []float64{3}}},
			[][2]float64{{0, 3}, {6, 9}}},
	} {
		var want [][]geometry.Point
		for _, d := range test.want {
			want = append(want, points{{X: d[0]}, {X: d[1]}})
		}
		got := test.in.Dashes()
		for i, d := range got { // points on the way do not matter here
			got[i] = Thinned(d, Flatness)
		}
		if diff := cmp.Diff(want, got, near); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.name, diff)
		}
	}
}

// A closed line of 16 holds five periods of 2 and 1.2, none across its start.
func TestDashesGoRound(t *testing.T) {
	s := Stroke{Points: points{{}, {X: 4}, {X: 4, Y: 4}, {Y: 4}}, Closed: true, Pen: Pen{Width: 0.2, Dash: []float64{2, 1.2}}}
	want := [][]geometry.Point{
		{{}, {X: 2}},
		{{X: 3.2}, {X: 4}, {X: 4, Y: 1.2}},
		{{X: 4, Y: 2.4}, {X: 4, Y: 4}, {X: 3.6, Y: 4}},
		{{X: 2.4, Y: 4}, {X: 0.4, Y: 4}},
		{{Y: 3.2}, {Y: 1.2}},
	}
	if diff := cmp.Diff(want, s.Dashes(), near); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestAWholeLineHasNoDashes(t *testing.T) {
	if got := (Stroke{Points: points{{}, {X: 4}}, Pen: Pen{Width: 1}}).Dashes(); got != nil {
		t.Errorf("dashes %v", got)
	}
}
