package job

import (
	"slices"
	"sync"

	"roundlay/pattern/groove"
)

// Table describes a table of a job file.
type Table struct {
	Name  string `json:"name"` // as it stands in a file; "" is the top
	About string `json:"about"`
	Many  bool   `json:"many"` // whether a job can have several
	Keys  []Key  `json:"keys"`
}

// Key describes a key of a table.
type Key struct {
	Name  string   `json:"name"`
	About string   `json:"about"`
	Sort  Sort     `json:"sort"`
	Words []string `json:"words"` // those it takes; of heights, those beside a length
	// Min and Max are the least and the most it takes: lengths in mm, weights in g,
	// times in minutes, texts in characters, measures and places as shares. There is no
	// range where Max is not above Min.
	Min float64 `json:"min"`
	Max float64 `json:"max"`
	// Default is what holds where the key isn't given, as a person would type it in
	// either unit; "" where nothing does.
	Default string   `json:"default"`
	Needed  bool     `json:"needed"`
	For     []string `json:"for"` // the wheel edges it is for; none is all

	inches, mm string // how the starter job writes the value
}

// Sort says what a key takes.
type Sort string

// The sorts of keys.
const (
	OfText    Sort = "text"
	OfTexts   Sort = "texts" // a list of them
	OfWord    Sort = "word"
	OfSwitch  Sort = "switch"
	OfWheel   Sort = "wheel"   // the name of a wheel in the rack
	OfWheels  Sort = "wheels"  // a list of them
	OfLength  Sort = "length"  // a bare number is in the job's unit
	OfLengths Sort = "lengths" // one, or a list of several readings
	OfHeights Sort = "heights" // a list of two
	OfRepeats Sort = "repeats" // a list of repeats by number; or one of its words, if it has any
	OfNumber  Sort = "number"
	OfWhole   Sort = "whole"
	OfShare   Sort = "share" // 0 to 1
	OfDegrees Sort = "degrees"
	OfMeasure Sort = "measure" // a bare number is a share, with a unit a length
	OfPlace   Sort = "place"   // a list of two measures
	OfShares  Sort = "shares"  // a list of them
	OfRock    Sort = "rock"    // a list of two degrees, left and right
	OfKind    Sort = "kind"    // of a motif
	OfMotif   Sort = "motif"   // the number of an earlier motif
	OfWeight  Sort = "weight"
	OfTime    Sort = "time"   // a bare number is minutes
	OfWear    Sort = "wear"   // a list of two: the diameter lost, and in how much groove
	OfTables  Sort = "tables" // tables of their own
)

// Tables describes every table of a job and every key, but for those of a motif's
// kind, in the order in which they are usually written. It is the one list of them:
// what is read, what the starter job notes, and what a form shows.
func Tables() []Table {
	all := []Table{
		topTable(), blankTable(), stationTable(), limitsTable(),
		wheelTable(), shopTable(), layoutTable(), baseTable(), motifTable(), partTable(),
	}
	for _, t := range all {
		for i := range t.Keys {
			// Whoever reads them as JSON finds lists, if empty ones.
			t.Keys[i].Words = append([]string{}, t.Keys[i].Words...)
			t.Keys[i].For = append([]string{}, t.Keys[i].For...)
		}
	}
	return all
}

// described holds Tables, which never change.
var described = sync.OnceValue(Tables)

// tableOf returns the description of a table.
func tableOf(name string) (Table, bool) {
	i := slices.IndexFunc(described(), func(t Table) bool { return t.Name == name })
	if i < 0 {
		return Table{}, false
	}
	return described()[i], true
}

// key returns the description of one of its keys.
func (t Table) key(name string) (Key, bool) {
	i := slices.IndexFunc(t.Keys, func(k Key) bool { return k.Name == name })
	if i < 0 {
		return Key{}, false
	}
	return t.Keys[i], true
}

// suits reports whether a key is for wheels of an edge. Where the edge is none that is
// known, it is.
func (k Key) suits(edge string) bool {
	return len(k.For) == 0 || slices.Contains(k.For, edge) || !slices.Contains(groove.Edges(), edge)
}

// tableNames lists the tables of a job in the order in which they are usually
// written; "" is the top of the file.
func tableNames() []string {
	var names []string
	for _, t := range described() {
		names = append(names, t.Name)
	}
	return names
}

// keysOf returns the keys of a table. A motif also has those of its kind.
func keysOf(table string) []string {
	t, _ := tableOf(table)
	names := make([]string, len(t.Keys))
	for i, k := range t.Keys {
		names[i] = k.Name
	}
	return names
}
