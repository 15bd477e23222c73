package pattern

import (
	"fmt"
	"math"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// MinBand is the height of the lowest band that a job can be laid out in, in millimetres.
const MinBand = 1.0

// A job that can be read but not laid out has a wrong value somewhere. The functions below
// return errors that name the value most likely to be wrong, in the form of job.Read's.

// blankKey returns the name of a blank in errors.
func blankKey(j *job.Job, b *glass.Blank) string {
	return job.Item("blank", max(0, slices.Index(j.Blanks, b)))
}

// noRoom returns the error for margins that leave no glass between them. It names the
// larger of the margins that the job gives or, if the defaults alone don't fit, the
// height of the glass.
func noRoom(j *job.Job, b *glass.Blank) error {
	u, l := j.Length, j.Limits
	key, read, rest := "limits.foot", u.Format(l.Foot), b.Height()-l.Rim-MinBand
	if j.Given("limits.rim") && (l.Rim >= l.Foot || !j.Given("limits.foot")) {
		key, read, rest = "limits.rim", u.Format(l.Rim), b.Height()-l.Foot-MinBand
	}
	why := fmt.Sprintf("blank %q: no glass can be cut: it is %s high, and limits.foot and limits.rim keep %s and %s of it clear",
		b.Name, u.Format(b.Height()), u.Format(l.Foot), u.Format(l.Rim))
	if rest < 0 || !j.Given(key) {
		key = fmt.Sprintf("%s.%s.height", blankKey(j, b), job.Item("station", len(b.Stations)-1))
		return j.Refuse(key, u.Format(b.Height()), "a height of "+u.FormatUp(l.Foot+l.Rim+MinBand)+" and more", why)
	}
	return j.Refuse(key, read, "a length up to "+u.FormatDown(rest), why)
}

// tooThin returns the error for a wall too thin for a motif even in the lowest band, which
// begins at foot. It names the larger of the glass to be left and the motif's depth, or
// the wall itself if lowering neither helps.
func tooThin(j *job.Job, b *glass.Blank, foot float64) error {
	i, wall := unborne(j, b, foot)
	u, leave, depth := j.Length, j.Limits.Leave, j.Motifs[i].Deepest()
	from := "the foot margin"
	if foot > j.Limits.Foot {
		from = "the paper's lower edge"
	}
	why := fmt.Sprintf("blank %q: no glass can be cut: above %s the wall has to be %s for motif %d (%s), %s deep with %s left, and begins with %s",
		b.Name, from, u.FormatUp(leave+depth), i+1, j.Motifs[i].Called(), u.FormatChosen(depth), u.FormatChosen(leave), u.FormatDecimal(wall))
	switch {
	case j.Given("limits.leave") && leave >= depth && wall-depth >= u.Step():
		return j.Refuse("limits.leave", u.FormatChosen(leave), "a length up to "+u.FormatDown(wall-depth), why)
	case wall-leave >= u.Step():
		return j.Refuse(depthKey(j, i), u.FormatChosen(depth), "a depth up to "+u.FormatDown(wall-leave), why)
	}
	// The station at or below the foot of the band.
	k := 0
	for k+1 < len(b.Stations) && b.Stations[k+1].Height <= foot {
		k++
	}
	key := fmt.Sprintf("%s.%s.wall", blankKey(j, b), job.Item("station", k))
	return j.Refuse(key, u.Format(b.Stations[k].Wall), "walls of "+u.FormatUp(leave+depth)+" and more above "+from, why)
}

// depthKey returns the key of a motif's greatest depth: its own, or that of a part.
func depthKey(j *job.Job, i int) string {
	m := j.Motifs[i]
	for _, p := range m.Parts {
		if p.Depth != nil && *p.Depth == m.Deepest() {
			return partKey(i, p.Name) + ".depth"
		}
	}
	return job.Item("motif", i) + ".depth"
}

// partKey returns the key of what a part of a motif has for itself.
func partKey(i int, part string) string { return job.Item("motif", i) + ".parts." + part }

// unborne returns the deepest motif that a blank's wall doesn't carry in the lowest band
// above foot, and the thinnest wall there. If the wall carries all motifs, it returns the
// deepest.
func unborne(j *job.Job, b *glass.Blank, foot float64) (motif int, wall float64) {
	band := job.Band{Foot: foot, Top: foot + MinBand}
	c := climb{j, b, thinFor(j, b)}
	p, worst, depth := uncut(j, b, band), -1, 0.0
	for i, m := range j.Motifs {
		if m.Face != job.Side {
			continue
		}
		if _, bad := c.meets(p, i); bad && m.Deepest() > depth {
			worst, depth = i, m.Deepest()
		}
	}
	if worst < 0 {
		depth = deepest(j)
		worst = slices.IndexFunc(j.Motifs, func(m job.Motif) bool { return m.Face == job.Side && m.Deepest() == depth })
	}
	return worst, b.MinWall(band.Foot, band.Top)
}

// offPaper returns the error for paper that has nothing of the band on it.
func offPaper(j *job.Job, b *glass.Blank, band job.Band) error {
	u := j.Length
	return j.Refuse(blankKey(j, b)+".paper", fmt.Sprintf("paper from %s to %s", u.Format(b.Paper.Low), u.Format(b.Paper.High)),
		fmt.Sprintf("paper that holds some of the band, from %s to %s", u.Format(band.Foot), u.Format(band.Top)),
		fmt.Sprintf("blank %q: none of the pattern lies on this paper", b.Name))
}

// noCone returns the error for a band without a cone. It names the station whose diameter
// is furthest from the rest.
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

// astray returns the station whose radius is furthest from the median, and its radius on
// the straight line through the others.
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

// lineWithout returns the radius at a station's height on the least-squares line through
// the other stations; with two stations, the other one's radius.
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
