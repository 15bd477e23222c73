package pattern

import (
	"math/rand/v2"
	"testing"
)

// Four repeats of a bar of 30 mm at 20 mm a minute, and of one of 40 mm at 40: 120 mm in 6
// minutes and 160 mm in 4, so 10 minutes a piece with two wheels.
func quoted(t *testing.T, pieces int) []*Plan {
	t.Helper()
	j := jobOn(straight(t), 4,
		bar(t, 0, 30, 30, depth(0.5), with(mitre)),
		bar(t, 8, 30, 40, depth(0.5), with(fine)),
	)
	j.Shop.Rate, j.Rack[fine].Rate = 20, 40
	p := laid(t, j)
	plans := make([]*Plan, pieces)
	for i := range plans {
		plans[i] = p
	}
	return plans
}

func TestQuote(t *testing.T) {
	plans := quoted(t, 6)
	shop := &plans[0].Job.Shop
	change, finishing := 5.0, 20.0
	shop.Change, shop.Finishing, shop.Spoil, shop.Spread, shop.Hour = &change, &finishing, 0.25, 0.2, 30

	// Six good ones of those begun, of which a quarter is spoiled: 8 are begun on average.
	// These take 8 × (10 + 20) = 240 minutes. Two wheels put on once take 10 minutes, for
	// each of the 8 pieces 80. So 250 and 320 minutes, less and more a fifth: 200 and 384.
	// At 30 an hour that is 100 and 192.
	q, ok := NewQuote(plans)
	if !ok || q.Pieces != 6 || !near(q.Begun, 8, 1e-9) || q.Blanks != 8 || !near(q.Cutting, 60, 1e-9) || q.Wheels != 2 || q.Changes != 12 {
		t.Errorf("%+v, %t", q, ok)
	}
	for _, c := range []struct{ got, want float64 }{
		{q.Minutes.Least, 200}, {q.Minutes.Most, 384}, {q.Price.Least, 100}, {q.Price.Most, 192},
	} {
		if !near(c.got, c.want, 1e-9) {
			t.Errorf("%g, wanted %g: %+v", c.got, c.want, q)
		}
	}

	// A single piece, with nothing known but the rate and what an hour costs, as it is.
	shop.Change, shop.Finishing, shop.Spoil, shop.Spread = nil, nil, 0, 0
	q, ok = NewQuote(plans[:1])
	if !ok || q.Begun != 1 || q.Blanks != 1 || q.Safe != 1 || !near(q.Minutes.Least, 10, 1e-9) || q.Minutes.Most != q.Minutes.Least || !near(q.Price.Most, 5, 1e-9) {
		t.Errorf("one piece: %+v, %t", q, ok)
	}
	// Three pieces of each of two blanks, without changes or finishing: 60 minutes, two
	// wheels put on once or twelve times. With a change of 5 minutes 70 to 120.
	shop.Pieces, shop.Change = 3, &change
	q, ok = NewQuote(plans[:2])
	if !ok || q.Pieces != 6 || q.Each != 3 || q.Blanks != 6 || q.Wheels != 2 || q.Changes != 12 ||
		!near(q.Cutting, 60, 1e-9) || !near(q.Minutes.Least, 70, 1e-9) || !near(q.Minutes.Most, 120, 1e-9) {
		t.Errorf("three of each: %+v, %t", q, ok)
	}
	shop.Rate = 0
	if q, ok := NewQuote(plans); ok {
		t.Errorf("a quote without a rate: %+v", q)
	}
}

// Two good ones where every other is spoiled: of 6 begun, 57 in 64 have two good ones, of 7
// it is 120 in 128 (coins, all but those with no head or one). Four where a tenth is:
// of 5 begun 0.9⁴ + 4 × 0.1 × 0.9⁴ = 0.919 have them. One where a tenth is: one in ten is
// bad, and nine times in ten one blank is enough.
func TestEnough(t *testing.T) {
	for _, c := range []struct {
		good  int
		spoil float64
		want  int
	}{{2, 0.5, 7}, {4, 0.1, 5}, {1, 0.1, 1}, {1, 0.11, 2}, {12, 0, 12}} {
		if got := enough(c.good, c.spoil); got != c.want {
			t.Errorf("%d good of which %g are spoiled: %d", c.good, c.spoil, got)
		}
	}
}

// The same by drawing lots: how often enough of them come out well, and how many are begun.
func TestEnoughByLot(t *testing.T) {
	const sets = 20000
	random := rand.New(rand.NewPCG(7, 11))
	for _, c := range []struct {
		good  int
		spoil float64
	}{{12, 0.1}, {6, 0.35}, {1, 0.9}, {64, 0.05}} {
		blanks, sum := enough(c.good, c.spoil), 0
		will, fewer := 0, 0 // sets for which these and one less are enough
		for range sets {
			drawn := 0
			for good := 0; good < c.good; drawn++ {
				if random.Float64() >= c.spoil {
					good++
				}
			}
			sum += drawn
			if drawn <= blanks {
				will++
			}
			if drawn < blanks {
				fewer++
			}
		}
		// Three standard errors of a share of 0.9 among so many sets are 0.0064.
		if float64(will)/sets < 0.9-0.0064 || float64(fewer)/sets > 0.9+0.0064 {
			t.Errorf("%d good, %g spoiled: %d are enough in %d of %d, one less in %d", c.good, c.spoil, blanks, will, sets, fewer)
		}
		if mean := float64(sum) / sets; !near(mean, begun(c.good, c.spoil), 0.03*mean) {
			t.Errorf("%d good, %g spoiled: %g begun, by lot %g", c.good, c.spoil, begun(c.good, c.spoil), mean)
		}
	}
}
