package pattern

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// n level panels of a flat wheel, all in one place: each square millimetre of theirs counts for
// each two of them, n (n - 1) / 2 times what one covers.
func stacked(t *testing.T, n int) *job.Job {
	t.Helper()
	m := motif(t, "flute", motifs.Values{"panels": 1, "arch": 0}, depth(0.3), with(panel), land(0))
	m.X, m.Y, m.Width, m.Height = mm(0), mm(40), mm(10), mm(30)
	j := jobOn(straight(t), 1)
	for range n {
		j.Motifs = append(j.Motifs, m)
	}
	j.Limits.Land = 0
	return j
}

// What grooves share is what a count by hand says, within a cell at their edges.
func TestOverlaps(t *testing.T) {
	one := laid(t, stacked(t, 1))
	area, corners := 0.0, one.Cuts[0].Outlines[0].Points
	for i, a := range corners {
		area += r2.Cross(a, corners[(i+1)%len(corners)]) / 2
	}
	area = math.Abs(area)
	for _, n := range []int{1, 2, 5} {
		p := laid(t, stacked(t, n))
		m, over := newOverlay(p), 0
		for i := range p.Cuts {
			over += m.lay(i, p.Cuts[i].Samples)
		}
		want := area * float64(n*(n-1)/2)
		if got := float64(over); got < 0.7*want || got > 1.4*want {
			t.Errorf("%d panels of %.0f mm²: %d overlaps, by hand %.0f", n, area, over, want)
		}
	}
}

// Grooves that lie over one another too often are refused, in words that name the motif and say
// what would be accepted; those at the limit are not.
func TestOverlaid(t *testing.T) {
	p := laid(t, stacked(t, 2))
	m := newOverlay(p)
	m.lay(0, p.Cuts[0].Samples)
	each := m.lay(1, p.Cuts[1].Samples) // what one pair shares
	n := 1
	for (n+1)*n/2*each <= maxOverlaid {
		n++
	}
	if err := laid(t, stacked(t, n)).refuseOverlaid(); err != nil {
		t.Errorf("%d panels: %v", n, err)
	}
	err := laid(t, stacked(t, n+1)).refuseOverlaid()
	var wrong *job.Error
	if !errors.As(err, &wrong) || !strings.HasPrefix(wrong.Key, "motif[") || !strings.Contains(wrong.Read, "lie over one another in more than 30000 places") || !strings.HasPrefix(wrong.Accepted, "up to 30000 ") {
		t.Errorf("%d panels: %v", n+1, err)
	}
}
