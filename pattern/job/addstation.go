package job

import (
	"math"
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
)

// stationReading is what a station says of the glass, in mm: how high it is, how wide there, and
// how thick its wall is.
type stationReading struct{ height, across, wall float64 }

// stationSays reads what a station says; ok is false where not all of it can be read.
func (r *revising) stationSays(p place) (m stationReading, ok bool) {
	u := r.unit()
	height, high := lengthOf(u, p.find("height"))
	wall, walled := lengthOf(u, p.find("wall"))
	across, wide := lengthOf(u, p.find("across"))
	if !wide {
		girth, taped := lengthOf(u, p.find("around"))
		across, wide = girth/math.Pi, taped
	}
	return stationReading{height, across, wall}, high && walled && wide
}

// lengthOf reads a length, or the mean of several.
func lengthOf(u geometry.Unit, e *entry) (float64, bool) {
	if e == nil {
		return 0, false
	}
	items := e.value.items
	if e.value.kind != unstable.Array {
		items = []*value{e.value}
	}
	sum := 0.0
	for _, v := range items {
		mm, err := u.Parse(v.text)
		if err != nil {
			return 0, false
		}
		sum += mm / float64(len(items))
	}
	return sum, len(items) > 0
}

// between returns what a glass measures at a height between two stations, or beyond
// them, if its profile and its inside are straight there.
func between(a, b stationReading, height float64) stationReading {
	if b.height == a.height {
		return a
	}
	t := (height - a.height) / (b.height - a.height)
	if t > 1 {
		t = 1 // a wall that thins out would soon be none
	}
	return stationReading{height, a.across + t*(b.across-a.across), a.wall + t*(b.wall-a.wall)}
}

// addStation adds a station where the glass bends or where its height says, with what
// the glass would measure there if it were straight between those beside it.
func (r *revising) addStation(owner place, number int, asked []given) error {
	path := joined(owner.path, "station")
	var says []stationReading
	for _, p := range owner.places("station") {
		m, ok := r.stationSays(p)
		if !ok {
			return r.refuse(p.path, "it can't be read as it stands, so there is nothing to set another station by")
		}
		says = append(says, m)
	}
	if len(says) < 2 {
		return r.insert(owner, "station", len(says), filled("station", asked))
	}
	height, named := r.heightIn(asked)
	i := number - 1
	switch {
	case number == 0 && named:
		i = slices.IndexFunc(says, func(m stationReading) bool { return m.height > height })
		if i < 0 {
			i = len(says)
		}
	case number == 0:
		i = widest(says)
	}
	if i == 0 {
		return r.refuse(path, "the first station is the foot, at height 0: a new one stands above it")
	}
	if !named {
		if height = heightAt(r.unit(), says, i); i < len(says) && says[i].height-says[i-1].height < 2*minRise {
			return r.refuse(path, "there is no room between the stations at %s and %s", r.unit().Format(says[i-1].height), r.unit().Format(says[i].height))
		}
	}
	return r.insert(owner, "station", i, r.stationFor(says, i, height, asked))
}

// heightIn returns the height that was asked for, in mm.
func (r *revising) heightIn(asked []given) (float64, bool) {
	for _, g := range asked {
		if g.key == "height" {
			mm, err := r.unit().Parse(unquoted(g.value))
			return mm, err == nil
		}
	}
	return 0, false
}

// widest returns the number of the station above the widest gap.
func widest(says []stationReading) int {
	most := 1
	for i := 2; i < len(says); i++ {
		if says[i].height-says[i-1].height > says[most].height-says[most-1].height {
			most = i
		}
	}
	return most
}

// heightAt returns the height of a new station in the middle of a gap, or as far above the
// rim, as calipers show it where they can.
func heightAt(u geometry.Unit, says []stationReading, i int) float64 {
	low := says[i-1].height
	if i == len(says) {
		return u.Setting(low + (low-says[i-2].height)/2).Length
	}
	middle := (low + says[i].height) / 2
	set := u.Setting(middle).Length
	if set < low+minRise || set > says[i].height-minRise {
		return middle
	}
	return set
}

// stationFor returns the keys of a new station.
func (r *revising) stationFor(says []stationReading, i int, height float64, asked []given) []given {
	u := r.unit()
	a, b := says[i-1], says[min(i, len(says)-1)]
	if i == len(says) {
		a, b = says[i-2], says[i-1]
	}
	m := between(a, b, height)
	needed := []given{{"height", lengthTOML(u, height)}, {"wall", lengthTOML(u, setting(u, m.wall))}}
	if !slices.ContainsFunc(asked, func(g given) bool { return g.key == "around" }) {
		needed = append(needed, given{"across", lengthTOML(u, setting(u, m.across))})
	}
	return filled("station", asked, needed...)
}

// setting rounds a length to what calipers show, unless that is nothing.
func setting(u geometry.Unit, mm float64) float64 {
	if set := u.Setting(mm).Length; set >= minWall {
		return set
	}
	return mm
}
