package pattern

import (
	"fmt"
	"math"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// MinBand is the lowest band anything is laid out in, in millimetres.
const MinBand = 1.0

// A job that can be read and yet not be laid out has a wrong value somewhere.
// These name the one that most likely is, as the reader of the job does.

// blankKey is how errors name a blank of the job.
func blankKey(j *job.Job, b *glass.Blank) string {
	return job.Item("blank", max(0, slices.Index(j.Blanks, b)))
}

// noRoom refuses margins that leave no glass between them: the larger of those
// the job gives, or else the height of a glass too low for the usual ones.
func noRoom(j *job.Job, b *glass.Blank) error {
	u, l := j.Length, j.Limits
	key, read, rest := "limits.foot", u.Format(l.Foot), b.Height()-l.Rim-MinBand
	if j.Given("limits.rim") && (l.Rim >= l.Foot || !j.Given("limits.foot")) {
		key, read, rest = "limits.rim", u.Format(l.Rim), b.Height()-l.Foot-MinBand
	}
	why := fmt.Sprintf("blank %q: no glass may be cut: it is %s high, and limits.foot and limits.rim keep %s and %s of it clear",
		b.Name, u.Format(b.Height()), u.Format(l.Foot), u.Format(l.Rim))
	if rest < 0 || !j.Given(key) {
		key = fmt.Sprintf("%s.%s.height", blankKey(j, b), job.Item("station", len(b.Stations)-1))
		return j.Refuse(key, u.Format(b.Height()), "a height of "+u.FormatUp(l.Foot+l.Rim+MinBand)+" and more", why)
	}
	return j.Refuse(key, read, "a length up to "+u.FormatDown(rest), why)
}

// tooThin refuses what leaves no wall to cut: the glass to be left or the depth of
// a motif that not even the lowest band puts on a wall thick enough, whichever
// takes more of it, or else a wall too thin for the usual. Foot is where the
// lowest band begins.
func tooThin(j *job.Job, b *glass.Blank, foot float64) error {
	i, wall := unborne(j, b, foot)
	u, leave, depth := j.Length, j.Limits.Leave, j.Motifs[i].Depth
	from := "the foot margin"
	if foot > j.Limits.Foot {
		from = "the paper's lower edge"
	}
	why := fmt.Sprintf("blank %q: no glass may be cut: above %s the wall has to be %s for motif %d (%s), %s deep with %s left, and begins with %s",
		b.Name, from, u.FormatUp(leave+depth), i+1, j.Motifs[i].Kind.Name, u.FormatChosen(depth), u.FormatChosen(leave), u.FormatDecimal(wall))
	switch {
	case j.Given("limits.leave") && leave >= depth && wall-depth >= u.Step():
		return j.Refuse("limits.leave", u.FormatChosen(leave), "a length up to "+u.FormatDown(wall-depth), why)
	case wall-leave >= u.Step():
		return j.Refuse(job.Item("motif", i)+".depth", u.FormatChosen(depth), "a depth up to "+u.FormatDown(wall-leave), why)
	}
	// The station at or below the foot of that band.
	k := 0
	for k+1 < len(b.Stations) && b.Stations[k+1].Height <= foot {
		k++
	}
	key := fmt.Sprintf("%s.%s.wall", blankKey(j, b), job.Item("station", k))
	return j.Refuse(key, u.Format(b.Stations[k].Wall), "walls of "+u.FormatUp(leave+depth)+" and more above "+from, why)
}

// unborne returns the deepest motif that a blank's wall does not carry in the
// lowest band from a foot up, and the thinnest wall there; where it carries them
// all, the deepest.
func unborne(j *job.Job, b *glass.Blank, foot float64) (motif int, wall float64) {
	band := job.Band{Foot: foot, Top: foot + MinBand}
	c := climb{j, b, thinFor(j, b)}
	p, worst, depth := uncut(j, b, band), -1, 0.0
	for i, m := range j.Motifs {
		if _, bad := c.meets(p, i); bad && m.Depth > depth {
			worst, depth = i, m.Depth
		}
	}
	if worst < 0 {
		depth = deepest(j)
		worst = slices.IndexFunc(j.Motifs, func(m job.Motif) bool { return m.Depth == depth })
	}
	return worst, b.MinWall(band.Foot, band.Top)
}

// offPaper refuses paper that holds nothing of a band.
func offPaper(j *job.Job, b *glass.Blank, band job.Band) error {
	u := j.Length
	return j.Refuse(blankKey(j, b)+".paper", fmt.Sprintf("paper from %s to %s", u.Format(b.Paper.Low), u.Format(b.Paper.High)),
		fmt.Sprintf("paper that holds some of the band, from %s to %s", u.Format(band.Foot), u.Format(band.Top)),
		fmt.Sprintf("blank %q: nothing could be carried over with it", b.Name))
}

// noCone refuses the station whose diameter leaves the others by most.
func noCone(j *job.Job, b *glass.Blank, band job.Band) error {
	u := j.Length
	i, expected := astray(b.Stations)
	station := fmt.Sprintf("%s.%s", blankKey(j, b), job.Item("station", i))
	key := station + ".across"
	if !j.Given(key) && j.Given(station+".around") {
		key = station + ".around"
	}
	accepted := "a diameter in line with the other stations"
	if expected > 0 {
		accepted += ", near " + u.Format(2*expected)
	}
	return j.Refuse(key, u.Format(2*b.Stations[i].Radius), accepted,
		fmt.Sprintf("blank %q: no cone can be laid on its profile between %s and %s", b.Name, u.Format(band.Foot), u.Format(band.Top)))
}

// astray returns the station whose radius is furthest from the middle one of
// all, and what it would be on the straight line through the others.
func astray(stations []glass.Station) (worst int, expected float64) {
	radii := make([]float64, len(stations))
	for i, s := range stations {
		radii[i] = s.Radius
	}
	middle, most := median(radii), -1.0
	for i, r := range radii {
		if off := math.Abs(r - middle); off > most {
			most, worst = off, i
		}
	}
	return worst, lineWithout(stations, worst)
}

// lineWithout returns the radius at a station's height on the line of least
// squares through the other stations; of two stations, the other one's.
func lineWithout(stations []glass.Station, but int) float64 {
	n, height, radius := 0.0, 0.0, 0.0
	for i, s := range stations {
		if i != but {
			n, height, radius = n+1, height+s.Height, radius+s.Radius
		}
	}
	height, radius = height/n, radius/n
	up, out := 0.0, 0.0
	for i, s := range stations {
		if i != but {
			up, out = up+(s.Height-height)*(s.Height-height), out+(s.Height-height)*(s.Radius-radius)
		}
	}
	if up == 0 {
		return radius
	}
	return radius + (stations[but].Height-height)*out/up
}
