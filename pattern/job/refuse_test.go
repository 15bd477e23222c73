package job

import (
	"fmt"
	"strings"
	"testing"
)

// rule is what a key accepts, as far as the mistakes below go.
type rule struct {
	accepted string   // in every message about it
	wrong    []string // values it refuses, besides those every key refuses
}

// Values that are wrong in many places: not finite, negative, zero, absurdly large,
// of another type or in a unit no one knows.
var (
	notNumbers = []string{`nan`, `+nan`, `inf`, `-inf`, `1e9`, `-1e9`, `1e400`, `99999999999999999999`, `true`, `""`, `1979-05-27`, `07:32:00`, `1979-05-27T07:32:00Z`}
	notLengths = append([]string{`"nan"`, `"inf"`, `"1e9 in"`, `"-1e9"`, `"3 furlongs"`, `"3 kg"`, `"1/0"`, `"3 1/8 in x"`, `"3,5"`, `"\u0000"`, `"a\nb"`, `"` + strings.Repeat("9", 5000) + `"`}, notNumbers...)
	negative   = []string{`-1`, `-0.001`, `"-1/32"`, `"−1 mm"`}
	zero       = []string{`0`, `0.0`, `"0"`, `"0/4 in"`}
	badWeights = join(notNumbers, []string{`412`, `"412"`, `"412 stone"`, `"g"`, `"x g"`, `"412 mm g"`, `"4\" g"`, `"-412 g"`, `"0 g"`, `"0.5 g"`, `"51 kg"`, `"1/0 oz"`, `"4,12 g"`, `"nan g"`, `"` + strings.Repeat("9", 500) + ` g"`, `["412 g"]`})
	badTexts   = []string{`""`, `"  "`, `3`, `true`, `nan`, `"a\nb"`, `"a\tb"`, "\"a\u2028b\"", `"a\u007f"`, `"` + strings.Repeat("é", 121) + `"`}
)

func join(lists ...[]string) []string {
	var all []string
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}

// rules says what each key of the base accepts, and whether it is needed.
func rules() map[string]struct {
	rule
	needed bool
} {
	size := rule{"a length from ", join(notLengths, negative, zero)}
	limit := rule{"a length from 0 in to ", join(notLengths, negative)}
	share := rule{"a number from 0 to 1", join(notNumbers, []string{`-0.1`, `1.1`, `"0.5"`})}
	degrees := rule{"in degrees", join(notNumbers, []string{`-361`, `361`, `"90"`})}
	text := rule{"a line of text in quotes", badTexts}
	type key = struct {
		rule
		needed bool
	}
	word := func(words string) rule {
		return rule{words, []string{`""`, `3`, `nan`, `true`, `"zebra crossing"`, `"a\nb"`}}
	}
	angle := rule{"a number from 20 to 170", join(degrees.wrong, []string{`0`, `-90`, `19.9`, `170.1`})}
	count := rule{"a whole number from ", join(notNumbers, []string{`-1`, `0`, `2.5`, `361`, `"6"`, `"more"`, `"Mots"`})}
	edges := `"mitre", "round", "flat" or "gang"`
	times := join(notNumbers, negative, []string{`"x"`, `"5 s"`, `"3 mm"`, `"1:75"`, `"200 h"`, `6001`, `["8 min"]`, `"` + strings.Repeat("9", 500) + `"`})
	repeats := []string{`3`, `"3"`, `"1, 4"`, `true`, `nan`, `[]`, `{}`, `[[1]]`}
	rack := `the name of a wheel in the rack, "mitre", "olive", "lines" or "panel"`
	all := map[string]key{
		"title":                      {text, false},
		"length":                     {word(`"in" or "mm"`), true},
		"blank.name":                 {text, false},
		"blank.floor":                {size, true}, // for the sake of what follows
		"blank.fill":                 {size, false},
		"blank.paper":                {rule{"a list of two heights", []string{`3`, `"rim"`, `true`, `nan`, `[]`, `["rim"]`, `["table", 1, "rim"]`, `{}`}}, false},
		"blank.glass":                {word(`"soda-lime", "crystal", "lead crystal" or "full lead crystal"`), false},
		"blank.density":              {rule{"a number from 2 to 8", join(notNumbers, negative[:2], []string{`0`, `1.99`, `8.01`, `"2.5"`})}, false},
		"blank.weighs":               {rule{"a weight with its unit in quotes", badWeights}, false},
		"blank.straight":             {rule{"true or false", []string{`"true"`, `1`, `0`, `nan`, `""`}}, false},
		"blank.base":                 {size, false},
		"blank.hollow":               {rule{"a list of two lengths", []string{`3`, `"3"`, `true`, `nan`, `[]`, `["1/2"]`, `[0.5, 0.1, 0.1]`}}, false},
		"blank.station[1].height":    {limit, true},
		"blank.station[1].across":    {rule{"across, the diameter, or around, the girth|a length from ", size.wrong}, true},
		"blank.station[1].wall":      {size, true},
		"blank.station[2].height":    {rule{"a height above the station before it|a length from ", size.wrong}, true},
		"blank.station[2].around":    {rule{"across, the diameter, or around, the girth|a length from ", size.wrong}, true},
		"blank.station[2].wall":      {size, true},
		"limits.land":                {limit, false},
		"limits.leave":               {limit, false},
		"limits.rim":                 {limit, false},
		"limits.foot":                {limit, false},
		"limits.edge":                {limit, false},
		"limits.clear":               {share, false},
		"limits.polish":              {limit, false},
		"limits.reach":               {share, false},
		"wheel[1].name":              {text, true},
		"wheel[1].edge":              {word(edges), true},
		"wheel[1].across":            {size, true},
		"wheel[1].thick":             {size, true},
		"wheel[1].angle":             {angle, true},
		"wheel[1].rate":              {size, false},
		"wheel[1].wears":             {rule{"a list of two: the diameter lost, and in how much groove, such as [\"1/64\", \"100 ft\"]", []string{`0.4`, `"1/64"`, `true`, `nan`, `[]`, `["1/64"]`, `["1/64", "100 ft", 3]`}}, false},
		"wheel[2].radius":            {size, true},
		"wheel[3].angle":             {angle, true},
		"wheel[3].mitres":            {count, true},
		"wheel[3].spacing":           {size, true},
		"wheel[4].thick":             {size, true},
		"shop.rate":                  {size, false},
		"shop.order":                 {rule{"a list of wheels of the rack, each once", []string{`"mitre"`, `3`, `nan`, `true`, `[]`, `{}`}}, false},
		"shop.finish":                {word(`"undecided", "as cut", "felt", "acid" or "reheat"`), false},
		"shop.change":                {rule{`a time from 0 to 10 h: minutes, such as 95 or "95 min", or hours too`, times}, false},
		"shop.finishing":             {rule{`a time from 0 to 100 h: minutes, such as 95 or "95 min", or hours too`, times}, false},
		"shop.spoil":                 {rule{"a number from 0 to 0.9", join(share.wrong, []string{`0.91`})}, false},
		"shop.spread":                {rule{"a number from 0 to 0.9", join(share.wrong, []string{`0.91`})}, false},
		"shop.hour":                  {rule{"a number from 0.01 to 100000", join(notNumbers, negative[:2], []string{`0`, `"38"`, `"38 £"`})}, false},
		"shop.pieces":                {rule{"a whole number from 1 to 10000", join(notNumbers, []string{`-1`, `0`, `2.5`, `10001`, `"6"`, `"most"`})}, false},
		"layout.repeats":             {count, true},
		"layout.bare":                {rule{"a list of repeats by their numbers, each once, from 1 to 6, such as [2]", repeats}, false},
		"layout.band":                {rule{"a list of two heights", []string{`3`, `"3"`, `true`, `[]`, `[1]`, `[1, 2, 3]`, `nan`}}, false},
		"base.repeats":               {count, true},
		"base.band":                  {rule{"a list of two distances", []string{`3`, `"3"`, `true`, `[]`, `[1]`, `[1, 2, 3]`, `nan`}}, false},
		"motif[3].face":              {word(`"side" or "base"`), false},
		"motif[4].middle":            {rule{"true or false", []string{`"true"`, `1`, `0`, `nan`, `""`}}, false},
		"motif[1].kind":              {word(`"leaf", "sprig", "wheat"`), true},
		"motif[1].name":              {text, false},
		"motif[1].wheel":             {rule{rack, []string{`""`, `3`, `nan`, `"zebra crossing"`}}, true},
		"motif[1].depth":             {size, true},
		"layout.match":               {word(`"set" or "own"`), false},
		"motif[1].at":                {rule{"a list of two", []string{`3`, `"3"`, `true`, `[]`, `[1]`, `[0, 0, 0]`, `nan`}}, false},
		"motif[1].width":             {rule{"a fraction from 0.001 to 2, or in quotes a length from ", join(notLengths, negative, zero, []string{`2.01`})}, false},
		"motif[1].height":            {rule{"a fraction from 0.001 to 1, or in quotes a length from ", join(notLengths, negative, zero, []string{`1.01`})}, false},
		"motif[1].turn":              {degrees, false},
		"motif[1].mirror":            {rule{"true or false", []string{`"true"`, `1`, `0`, `nan`, `""`}}, false},
		"motif[1].on":                {rule{`"each", "odd" or "even", or a list of repeats by their numbers, each once, from 1 to 6`, join(repeats, []string{`""`, `"zebra crossing"`, `"a\nb"`})}, false},
		"motif[1].land":              {limit, false},
		"motif[1].clear":             {share, false},
		"motif[1].shape":             {word(`"taper" or "true"`), false},
		"motif[1].cut_order":         {count, false},
		"motif[1].parts.frond.wheel": {rule{rack, []string{`""`, `3`, `nan`, `"zebra crossing"`}}, false},
		"motif[1].parts.frond.depth": {size, false},
		"motif[1].parts.frond.land":  {limit, false},
		"motif[1].parts.frond.clear": {share, false},
		"motif[2].inside":            {rule{"the number of a motif before this one, which is 1", join(notNumbers, []string{`0`, `2`, `-1`, `1.5`, `"1"`, `"leaf"`})}, false},
		"motif[1].fronds":            {count, false},
		"motif[1].lean":              {rule{"a number from ", join(notNumbers, []string{`-1`, `0`, `"45"`, `"most"`})}, false},
		"motif[1].terminal":          {rule{"true or false", []string{`"true"`, `1`, `0`, `nan`, `"most"`}}, false},
	}
	for name, rule := range handRules() {
		all[name] = key{rule, false}
	}
	return all
}

// split parts the name of a key from that of its table.
func split(name string) (table, key string) {
	if i := strings.LastIndex(name, "."); i >= 0 {
		return name[:i], name[i+1:]
	}
	return "", name
}

// line returns the line on which a table or a key stands; the top is line 1.
func (f fixture) line(t *testing.T, name string) int {
	if name == "" {
		return 1
	}
	return 1 + f.index(t, name)
}

func TestRefuseEachKey(t *testing.T) {
	everyKey := []string{`{}`, `{a = 1}`, `[[1]]`, `[[[]]]`, `"` + strings.Repeat("mitre ", 2000) + `"`}
	for name, rule := range rules() {
		table, key := split(name)
		t.Run(name, func(t *testing.T) {
			for _, wrong := range join(rule.wrong, everyKey) {
				f := base().with(t, name, key+" = "+wrong)
				e := refused(t, f.bytes())
				item := strings.HasPrefix(wrong, "[") && strings.HasPrefix(e.Key, name+"[")
				if e.Line != f.line(t, name) || e.Key != name && !item {
					t.Errorf("%s = %.40s: line %d, wanted %d: %v", key, wrong, e.Line, f.line(t, name), e)
				}
				if !acceptsAny(e, rule.accepted) {
					t.Errorf("%s = %.40s: %v", key, wrong, e)
				}
			}

			f := base().without(t, name)
			if _, err := Read("tumbler.toml", f.bytes()); !rule.needed && err != nil {
				t.Errorf("missing, though it may be: %v", err)
			} else if rule.needed {
				e := refused(t, f.bytes())
				missing := name
				if key == "around" {
					missing = table + ".across"
				}
				if e.Line != f.line(t, table) || e.Key != missing || e.Read != "nothing" || !acceptsAny(e, rule.accepted) {
					t.Errorf("missing: %v", e)
				}
			}

			misspelt := key[:len(key)-1] + "x" + key[len(key)-1:]
			f = base().with(t, name, strings.Replace(base()[base().index(t, name)].text, key, misspelt, 1))
			e := refused(t, f.bytes())
			full := misspelt
			if table != "" {
				full = table + "." + misspelt
			}
			if e.Line != f.line(t, name) || e.Key != full || e.Hint != fmt.Sprintf("the nearest is %q", key) {
				t.Errorf("misspelt: line %d, wanted %d: %v", e.Line, f.line(t, name), e)
			}

			i := base().index(t, name)
			f = append(base()[:i+1:i+1], base()[i:]...)
			if e := refused(t, f.bytes()); e.Line != i+2 || e.Key != key || !strings.Contains(e.Read, "a second time") {
				t.Errorf("twice: %v", e)
			}
		})
	}
}

// acceptsAny reports whether a message accepts one of several things.
func acceptsAny(e *Error, accepted string) bool {
	for _, one := range strings.Split(accepted, "|") {
		if strings.Contains(e.Accepted, one) {
			return true
		}
	}
	return false
}
