package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"roundlay/geometry"
)

// writing says how the values of a sort are written. Key is one of that sort, which takes the
// examples.
type writing struct {
	sort       Sort
	takes      string
	such       []string
	table, key string
}

func writings() []writing {
	return []writing{
		{OfText, "a line of text in quotes", []string{`"Hedgerow tumblers"`}, "", "title"},
		{OfTexts, "a list of texts", []string{`["shop.toml"]`}, "", "include"},
		{OfWord, "one of the words listed, in quotes", []string{`"mitre"`}, "wheel", "edge"},
		{OfSwitch, "true or false", []string{"true", "false"}, "motif", "mirror"},
		{OfLength, "a number in the unit that `length` names, or in quotes with a fraction or a unit of its own", []string{"3", `"3 1/8"`, `"3 1/8 in"`, `'3-1/8"'`, `"79.4 mm"`, `"7.94 cm"`}, "wheel", "across"},
		{OfLengths, "one length, or a list of several readings", []string{`"3 in"`, `["3 in", "3 1/32 in"]`}, "station", "across"},
		{OfHeights, "a list of two lengths, or words in place of them", []string{`["1/2 in", "2 3/4 in"]`, `["12 mm", "70 mm"]`}, "layout", "band"},
		{OfMeasure, "a number is a share; in quotes, with a unit or a fraction, a length", []string{"0.7", `"12 mm"`, `"1/2 in"`}, "motif", "width"},
		{OfPlace, "a list of two measures: across from the repeat's middle, and up from the band's foot", []string{"[0, 0.5]", `["2 mm", 0.5]`}, "motif", "at"},
		{OfShare, "a number from 0 to 1", []string{"0.5"}, "limits", "clear"},
		{OfShares, fmt.Sprintf("a list of shares, up to %d", maxShares), []string{"[0.4, 1, 0.7]"}, "motif", "swell"},
		{OfNumber, "a number", []string{"2.5"}, "blank", "density"},
		{OfWhole, "a whole number", []string{"5"}, "motif", "cut_order"},
		{OfDegrees, "a number of degrees", []string{"90"}, "wheel", "angle"},
		{OfRock, "a list of two: degrees to the left and to the right", []string{"[0, 12]"}, "motif", "rock"},
		{OfRepeats, "a list of repeats by their numbers, or a word where words are listed", []string{"[2]", "[1, 3]"}, "motif", "on"},
		{OfWheel, "the name of a wheel in the rack, in quotes", []string{`"mitre"`}, "motif", "wheel"},
		{OfWheels, "a list of wheels", []string{`["mitre"]`}, "shop", "order"},
		{OfKind, "the name of a kind of motif, in quotes", []string{`"leaf"`}, "motif", "kind"},
		{OfMotif, "the number of an earlier motif, from 1", []string{"1"}, "motif", "inside"},
		{OfWeight, "a weight in quotes with its unit: g, kg, oz or lb", []string{`"412 g"`, `"14 1/2 oz"`}, "blank", "weighs"},
		{OfTime, "a number of minutes, or in quotes hours too", []string{"95", `"8 min"`, `"1 h 20 min"`, `"1:20"`, `"1 1/2 h"`}, "shop", "change"},
		{OfWear, "a list of two lengths, of which the second may be in feet or metres: what the diameter loses, and in how much groove", []string{`["1/64", "100 ft"]`, `["0.4 mm", "30 m"]`}, "wheel", "wears"},
		{OfTables, "tables of its own", []string{"[limits]"}, "", ""},
	}
}

// Each sort of the tables is told, and what is told is read: the range of a value may be another
// key's, but its form is taken.
func TestGuideWritings(t *testing.T) {
	told := map[Sort]bool{}
	for _, w := range writings() {
		told[w.sort] = true
		if w.sort == OfTables {
			continue
		}
		table, ok := tableOf(w.table)
		key, has := table.key(w.key)
		if !ok || !has || key.Sort != w.sort {
			t.Errorf("%s: %s of %q is %s", w.sort, w.key, w.table, key.Sort)
			continue
		}
		form := verdictOf(t, table, key, "{}")
		for _, such := range w.such {
			if said := verdictOf(t, table, key, such); said == form && said != "" {
				t.Errorf("%s: %s is refused: %s", w.sort, such, said)
			}
		}
	}
	for _, table := range Tables() {
		for _, key := range table.Keys {
			if !told[key.Sort] {
				t.Errorf("%s of %q: %s is not told", key.Name, table.Name, key.Sort)
			}
		}
	}
}

func verdictOf(t *testing.T, table Table, key Key, value string) string {
	t.Helper()
	data, path := probes(t, table, key, value)
	return verdict(t, data, path)
}

// takenWords says what a key takes: its sort, with its words and its range.
func takenWords(k Key) string {
	if k.Sort == OfKind {
		return "a kind: see [motifs](#motifs)"
	}
	words := string(k.Sort)
	if len(k.Words) > 0 {
		quoted := make([]string, len(k.Words))
		for i, w := range k.Words {
			quoted[i] = "`\"" + w + "\"`"
		}
		list := strings.Join(quoted, ", ")
		if words = list; k.Sort != OfWord {
			words = fmt.Sprintf("%s, or %s", k.Sort, list)
		}
	}
	if r := rangeOf(k); r != "" {
		words += "; " + r
	}
	return words
}

// rangeOf says from what to what a key goes, lengths in either unit.
func rangeOf(k Key) string {
	if k.Max <= k.Min || k.Sort == OfShare && k.Min == 0 && k.Max == 1 {
		return ""
	}
	from := func(least, most string) string { return least + " to " + most }
	switch k.Sort {
	case OfText:
		return fmt.Sprintf("up to %g characters", k.Max)
	case OfTime:
		return fmt.Sprintf("up to %g h", k.Max/60)
	case OfWeight:
		return fmt.Sprintf("%g g to %g kg", k.Min, k.Max/1000)
	case OfLength, OfLengths, OfHeights:
		mm, in := geometry.Millimetre, geometry.Inch
		return fmt.Sprintf("%s (%s)", from(end(k.Min, mm, 1), end(k.Max, mm, -1)), from(end(k.Min, in, 1), end(k.Max, in, -1)))
	case OfShares, OfRock:
		return fmt.Sprintf("each %g to %g", k.Min, k.Max)
	}
	return from(fmt.Sprintf("%g", k.Min), fmt.Sprintf("%g", k.Max))
}

// What a key takes is told with its words and its range. By hand, of lengths: a rim of up to
// 1000 mm is 39 in, rounded down to whole inches; a wall of 0.1 mm is 0.004 in, rounded up. A
// length, degrees, a whole number and a text always have a range.
func TestGuideRanges(t *testing.T) {
	for where, want := range map[[2]string]string{
		{"limits", "rim"}:   "length; 0 mm to 1000 mm (0 in to 39 in)",
		{"station", "wall"}: "length; 0.1 mm to 500 mm (0.004 in to 19 in)",
		{"wheel", "angle"}:  "degrees; 20 to 170",
		{"wheel", "edge"}:   "`\"mitre\"`, `\"round\"`, `\"flat\"`, `\"gang\"`",
		{"motif", "on"}:     "repeats, or `\"each\"`, `\"odd\"`, `\"even\"`",
		{"shop", "change"}:  "time; up to 10 h",
		{"blank", "name"}:   "text; up to 60 characters",
	} {
		table, _ := tableOf(where[0])
		key, _ := table.key(where[1])
		if got := takenWords(key); got != want {
			t.Errorf("%s: %s; want %s", where, got, want)
		}
	}
	for _, table := range Tables() {
		for _, key := range table.Keys {
			if unsaid := slices.Contains([]Sort{OfLength, OfDegrees, OfWhole, OfText}, key.Sort) && rangeOf(key) == ""; unsaid {
				t.Errorf("%s of %q: no range", key.Name, table.Name)
			}
		}
	}
}
