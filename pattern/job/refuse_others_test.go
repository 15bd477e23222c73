package job

import (
	"cmp"
	"strings"
	"testing"
)

// What one key accepts depends on others, or on where the key stands.
func TestRefuse(t *testing.T) {
	for _, c := range []struct {
		name, text           string // of the line that is changed
		without, with        string // a line to take out; one to put in below the changed one, "+"
		at, key              string // the line of the mistake, and its key; the changed one if empty
		read, accepted, hint string // parts of what is said
	}{
		// Heights and sizes.
		{name: "blank.station[1].height", text: `height = "1/4"`, accepted: "0", hint: "the first station is the foot: height = 0"},
		{name: "blank.station[1].height", text: `height = -0.25`, accepted: "a length from 0 in"},
		{name: "blank.station[2].height", text: `height = 0`, accepted: "a height above the station before it, 0 in", hint: "from the foot up"},
		{name: "blank.station[2].height", text: `height = "0.05 mm"`, accepted: "a height above the station before it, 0 in"},
		{name: "blank.station[2].height", text: `height = 40`, read: "40", accepted: "to 39 in"},
		{name: "blank.station[2].height", text: `height = "1001 mm"`, accepted: "to 39 in"},
		{name: "blank.station[1].across", text: `across = 40`, accepted: "to 39 in"},
		{name: "blank.station[2].around", text: `around = 124`, accepted: "to 123 in"},
		{name: "blank.station[1].wall", text: `wall = 1.5`, accepted: "a wall thinner than half of the glass, 1 1/2 in"},
		{name: "blank.station[1].wall", text: `wall = "1 1/2 in"`, accepted: "a wall thinner than half of the glass, 1 1/2 in",
			hint: `it is 3 in across there; for a solid stem, write a little less than half of it, such as "1 31/64 in"`},
		{name: "blank.station[2].wall", text: `wall = 2`, accepted: "a wall thinner than half of the glass, 1 5/8 in"},
		{name: "blank.station[2].around", text: `around = "10 1/4"`, with: `across = 3`, key: "blank.station[2].around",
			read: "a girth of 10 1/4 in, which is 3 17/64 in across", accepted: "a girth near that of 3 in across, which is 9 27/64 in"},
		{name: "blank.station[1].across", text: `across = []`, read: "a list of 0", accepted: "or a list of 1 to 12"},
		{name: "blank.station[1].across", text: `across = [` + strings.Repeat("3, ", 13) + `]`, read: "a list of 13", accepted: "or a list of 1 to 12"},
		{name: "blank.station[1].across", text: `across = [3, "3 1/64", "x"]`, key: "blank.station[1].across[3]", accepted: "a length from "},
		{name: "blank.station[1].across", text: `across = [3, -3]`, key: "blank.station[1].across[2]", accepted: "a length from "},
		{name: "blank.station[1].across", text: `across = [3, "3 5/16"]`, read: "readings from 3 in to 3 5/16 in", accepted: "no more than a tenth apart"},
		{name: "blank.floor", text: `floor = 3.5`, accepted: "a thickness below the height of the glass, 3 1/2 in"},
		{name: "blank.floor", text: `floor = "4 in"`, accepted: "a thickness below the height of the glass"},
		{name: "layout.band", text: `band = ["2 3/4", "1/2"]`, key: "layout.band[2]", read: `"1/2"`, accepted: "a height above the band's foot, 2 3/4 in", hint: "from the foot up"},
		{name: "layout.band", text: `band = [1, 1.01]`, key: "layout.band[2]", accepted: "a height above the band's foot, 1 in"},
		{name: "layout.band", text: `band = [1, 3.6]`, key: "layout.band[2]", accepted: `a height on the glass "tumbler", at most 3 1/2 in`},
		{name: "layout.band", text: `band = [-1, 3]`, key: "layout.band[1]", read: "-1", accepted: "a length from 0 in"},
		{name: "layout.band", text: `band = [1, nan]`, key: "layout.band[2]", read: "nan", accepted: "a length from 0 in"},
		{name: "layout.band", text: `band = [1, "x"]`, key: "layout.band[2]", read: `"x"`, accepted: "a length from 0 in"},

		// What the glass holds and weighs.
		{name: "blank.fill", text: `fill = "1/2"`, accepted: "a height above the table, over the floor of 1/2 in and up to the rim at 3 1/2 in"},
		{name: "blank.fill", text: `fill = "3 9/16"`, accepted: "up to the rim at 3 1/2 in"},
		// Where paper is to be.
		{name: "blank.paper", text: `paper = ["tabel", "rim"]`, key: "blank.paper[1]", read: `"tabel"`, accepted: `"table", "rim", or a length from 0 in`},
		{name: "blank.paper", text: `paper = [-1, "rim"]`, key: "blank.paper[1]", read: "-1", accepted: `"table", "rim", or a length from 0 in`},
		{name: "blank.paper", text: `paper = [0, nan]`, key: "blank.paper[2]", read: "nan", accepted: `"table", "rim", or a length`},
		{name: "blank.paper", text: `paper = [0, true]`, key: "blank.paper[2]", read: "true", accepted: `"table", "rim", or a length`},
		{name: "blank.paper", text: `paper = [0, ["rim"]]`, key: "blank.paper[2]", read: "a list of 1", accepted: `"table", "rim", or a length`},
		{name: "blank.paper", text: `paper = ["rim", "table"]`, key: "blank.paper[1]", accepted: "a height below the rim", hint: "the paper's lower edge comes first"},
		{name: "blank.paper", text: `paper = [3, 1]`, key: "blank.paper[2]", read: "1", accepted: "a height above the paper's lower edge, 3 13/64 in at least", hint: "paper runs from the foot up"},
		{name: "blank.paper", text: `paper = [0, 4]`, key: "blank.paper[2]", read: "4", accepted: `a height on the glass, 3 1/2 in at most, or "rim"`},
		{name: "blank.glass", text: `glass = "lead cristal"`, accepted: `"lead crystal"`, hint: `"lead crystal"`},
		{name: "blank.weighs", text: `weighs = 412`, accepted: "a weight with its unit", hint: "say the unit too"},
		{name: "blank.weighs", text: `weighs = "412"`, accepted: "a weight with its unit", hint: "say the unit too"},
		{name: "blank.weighs", text: `weighs = "100 g"`, accepted: "which is the weight with walls 0.7 to 1.4 times as thick as measured; as measured it is 483 g", hint: "measure the walls"},
		{name: "blank.weighs", text: `weighs = "2 oz"`, accepted: "from 14.1 oz to 20.7 oz, which is the weight with walls 0.7 to 1.4 times as thick as measured; as measured it is 17.0 oz"},
		{name: "blank.weighs", text: `weighs = "3 kg"`, accepted: "which is the weight with walls 0.7 to 1.4 times as thick as measured; as measured it is 0.483 kg", hint: "measure the walls"},
		{name: "blank.weighs", text: `weighs = "2 oz"`, accepted: "from 14.1 oz to 20.7 oz, which is the weight with walls 0.7 to 1.4 times as thick as measured; as measured it is 17.0 oz"},
		{name: "blank.floor", text: ``, at: "blank", key: "blank.floor", read: "nothing", accepted: "a length from "},
		{name: "blank.floor", text: ``, without: "blank.weighs", at: "blank", key: "blank.floor", read: "nothing"},

		// The shop.
		{name: "shop.rate", text: `rate = 400`, accepted: "a length from 0.04 in to 393 in"},
		{name: "shop.order", text: `order = ["olive", "miter"]`, key: "shop.order[2]", read: `"miter"`, accepted: `from "mitre", "olive", "lines" or "panel"`, hint: `"mitre"`},
		{name: "shop.order", text: `order = ["olive", "mitre", "olive"]`, key: "shop.order[3]", read: `"olive"`, hint: "this one is in the list already"},
		{name: "shop.order", text: `order = ["olive", 2]`, key: "shop.order[2]", read: "2"},
		{name: "shop.order", text: `order = [["olive"]]`, key: "shop.order[1]", read: "a list of 1"},

		// The rack.
		{name: "wheel[2].name", text: `name = "mitre"`, read: `"mitre"`, accepted: "a name no other wheel has"},
		{name: "wheel[1].name", text: `name = "` + strings.Repeat("m", 61) + `"`, accepted: "1 to 60 characters", hint: "this one has 61"},
		{name: "wheel[1].across", text: `across = "1001 mm"`, accepted: "to 39 in"},
		{name: "wheel[1].thick", text: `thick = "151 mm"`, accepted: "to 5.9 in"},
		{name: "wheel[1].thick", text: `thick = 4`, accepted: "a thickness below what the wheel is across, 4 in"},
		{name: "wheel[1].edge", text: `edge = "miter"`, accepted: `"mitre", "round", "flat" or "gang"`, hint: `"mitre"`},
		{name: "wheel[1].edge", text: `edge = "Mitre"`, hint: `"mitre"`, accepted: `"mitre"`},
		{name: "wheel[2].radius", text: `radius = "1/4"`, with: `angle = 90`, at: "+", key: "wheel[2].angle",
			read: `"angle" on a wheel whose edge is "round"`, accepted: `where the edge is "mitre" or "gang"`},
		{name: "wheel[1].angle", text: `angle = 90`, with: `radius = 1`, at: "+", key: "wheel[1].radius",
			read: `"radius" on a wheel whose edge is "mitre"`, accepted: `where the edge is "round"`},
		{name: "wheel[4].thick", text: `thick = 1`, with: `mitres = 3`, at: "+", key: "wheel[4].mitres", accepted: `where the edge is "gang"`},
		{name: "wheel[4].thick", text: `thick = 1`, with: `spacing = 3`, at: "+", key: "wheel[4].spacing", accepted: `where the edge is "gang"`},
		{name: "wheel[4].thick", text: `thick = 1`, with: `angle = 3`, at: "+", key: "wheel[4].angle", accepted: `where the edge is "mitre" or "gang"`},
		{name: "wheel[3].spacing", text: `spacing = "3/16"`, accepted: "a spacing below 0.1875 in, so that 3 mitres fit a wheel 3/8 in thick"},
		{name: "wheel[3].spacing", text: `spacing = 1`, accepted: "a spacing below 0.1875 in"},
		{name: "wheel[1].angle", text: `angle = 90`, with: `tip = "1/4"`, at: "+", key: "wheel[1].tip", accepted: "a tip narrower than the V"},
		{name: "wheel[1].angle", text: `angle = 90`, with: `tip_radius = "5/16"`, at: "+", key: "wheel[1].tip_radius", accepted: "a tip narrower than the V"},
		{name: "wheel[2].radius", text: `radius = "1/4"`, with: `tip = "1/64"`, at: "+", key: "wheel[2].tip", accepted: `where the edge is "mitre" or "gang"`},
		{name: "wheel[3].mitres", text: `mitres = 1`, accepted: "a whole number from 2 to 64"},
		{name: "wheel[3].mitres", text: `mitres = 65`, accepted: "a whole number from 2 to 64"},
		// Three inches thick and four across: the V reaches the axle at 2 atan(1.5/2) = 73.74 degrees.
		{name: "wheel[1].angle", text: `angle = 73`, without: "wheel[1].thick", with: `thick = 3`, accepted: "an angle above 74 degrees"},

		// The layout.
		{name: "layout.repeats", text: `repeats = 0`, read: "0", accepted: "a whole number from 1 to 360"},
		{name: "layout.repeats", text: `repeats = 361`, accepted: "a whole number from 1 to 360"},
		{name: "layout.match", text: `match = "sets"`, accepted: `"set" or "own"`, hint: `"set"`},
		{name: "layout.match", text: `match = "all"`, accepted: `"set" or "own"`},
		{name: "layout.repeats", text: `repeats = "most"`, accepted: "a whole number", hint: `"most" is for the counts of a motif`},
		{name: "layout.repeats", text: `repeats = "six"`, accepted: "a whole number", hint: "in digits, without quotes"},
		{name: "motif[1].width", text: `width = "most"`, accepted: "a fraction", hint: `"most" is for the counts of a motif`},
		{name: "motif[1].lean", text: `lean = "most"`, accepted: "a number", hint: `"most" is for the counts of a motif`},
		{name: "blank.floor", text: `floor = "5/8 feet"`, accepted: "a length", hint: `the unit "feet" is not known: in, mm or cm`},
		{name: "blank.station[1].across", text: `across = "26 5/8"`, read: `"26 5/8"`, accepted: "up to 3 times what the glass is across elsewhere, 3 1/4 in", hint: "one of the two was misread"},
		{name: "blank.station[2].around", text: `around = "102 1/4"`, read: `"102 1/4"`, accepted: "the girth of a diameter up to 3 times what the glass is across elsewhere, 3 in"},
		{name: "layout.repeats", text: `repeats = "6"`, accepted: "a whole number", hint: "without quotes"},
		{name: "layout.repeats", text: `repeats = 007`, key: "repeats", read: "repeats = 007", accepted: "leading zero"},
		{name: "motif[1].on", text: `on = "odd"`, without: "layout.repeats", at: "layout", key: "layout.repeats", read: "nothing"},

		{name: "layout.bare", text: `bare = 2`, read: "2", accepted: "a list of repeats", hint: "write [2]"},
		{name: "layout.bare", text: `bare = [1, 7]`, key: "layout.bare[2]", read: "7", accepted: "each once, from 1 to 6"},
		{name: "layout.bare", text: `bare = [0]`, key: "layout.bare[1]", read: "0", accepted: "from 1 to 6"},
		{name: "layout.bare", text: `bare = [-1]`, key: "layout.bare[1]", read: "-1", accepted: "from 1 to 6"},
		{name: "layout.bare", text: `bare = [1.5]`, key: "layout.bare[1]", read: "1.5", accepted: "from 1 to 6"},
		{name: "layout.bare", text: `bare = [nan]`, key: "layout.bare[1]", read: "nan", accepted: "from 1 to 6"},
		{name: "layout.bare", text: `bare = [1e400]`, key: "layout.bare[1]", accepted: "from 1 to 6"},
		{name: "layout.bare", text: `bare = ["2"]`, key: "layout.bare[1]", read: `"2"`, hint: "write it without quotes"},
		{name: "layout.bare", text: `bare = [3, 1, 3]`, key: "layout.bare[3]", read: "3", hint: "this one is in the list already"},
		{name: "layout.bare", text: `bare = [2, 4, 6]`, at: "motif[1]", key: "motif[1].on",
			read: "even repeats, all of them left free by layout.bare", accepted: "a repeat to stand on: a list of repeats by their numbers, each once, from 1 to 6"},
		{name: "layout.repeats", text: `repeats = 1`, key: "layout.bare[1]", at: "layout.bare", read: "2", accepted: "each once, from 1 to 1"},
		{name: "motif[1].on", text: `on = [1, 7]`, key: "motif[1].on[2]", read: "7", accepted: "or a list of repeats by their numbers, each once, from 1 to 6"},
		{name: "motif[1].on", text: `on = [4, 4]`, key: "motif[1].on[2]", read: "4", hint: "this one is in the list already"},
		{name: "motif[1].on", text: `on = 4`, read: "4", hint: "write [4]"},
		{name: "motif[1].on", text: `on = "eahc"`, hint: `"each"`},
		{name: "motif[1].on", text: `on = ["each"]`, key: "motif[1].on[1]", read: `"each"`, hint: "in digits, without quotes"},
		{name: "motif[1].on", text: `on = [7]`, without: "layout.repeats", at: "layout", key: "layout.repeats", read: "nothing"},
		{name: "motif[2].inside", text: `inside = 1`, with: `on = [1]`, at: "+", key: "motif[2].on", accepted: "no on in a motif that is inside another"},

		// The motifs.
		{name: "motif[1].kind", text: `kind = "leef"`, hint: `"leaf"`, accepted: `"leaf", "sprig", "wheat"`},
		{name: "motif[1].wheel", text: `wheel = "miter"`, hint: `"mitre"`, accepted: "the name of a wheel in the rack"},
		{name: "motif[1].depth", text: `depth = "51 mm"`, accepted: "from 0.001 in to 1.9 in"},
		{name: "motif[1].at", text: `at = [0.51, 0.5]`, key: "motif[1].at[1]", read: "0.51", accepted: "a fraction from -0.5 to 0.5"},
		{name: "motif[1].at", text: `at = [-0.51, 0.5]`, key: "motif[1].at[1]", accepted: "a fraction from -0.5 to 0.5"},
		{name: "motif[1].at", text: `at = [0, 1.1]`, key: "motif[1].at[2]", accepted: "a fraction from 0 to 1"},
		{name: "motif[1].at", text: `at = [0, nan]`, key: "motif[1].at[2]", accepted: "a fraction from 0 to 1"},
		{name: "motif[1].at", text: `at = [inf, 0]`, key: "motif[1].at[1]", accepted: "a fraction from -0.5 to 0.5"},
		{name: "motif[1].at", text: `at = ["100 in", 0]`, key: "motif[1].at[1]", accepted: "in quotes a length from -61 in to 61 in"},
		{name: "motif[1].at", text: `at = [0, "-1 in"]`, key: "motif[1].at[2]", accepted: "in quotes a length from 0 in"},
		{name: "motif[1].cut_order", text: `cut_order = 257`, accepted: "a whole number from 1 to 256"},
		{name: "motif[1].shape", text: `shape = true`, read: "true", accepted: `"taper" or "true"`, hint: "in quotes"},
		{name: "motif[1].mirror", text: `mirror = "true"`, accepted: "true or false", hint: "without quotes"},
		{name: "motif[1].fronds", text: `fronds = "all"`, read: `"all"`, accepted: `a whole number from 1 to 40, or "most"`},
		{name: "motif[1].fronds", text: `fronds = 1000`, accepted: "a whole number from "},
		{name: "motif[1].fronds", text: `rays = 5`, key: "motif[1].rays", hint: `"rays" belongs to a motif of the kind "fan"`, accepted: "the keys kind, name, wheel"},
		{name: "motif[1].cut_order", text: `inside = 1`, key: "motif[1].inside", read: "1", accepted: "no such key in the first motif"},
		{name: "motif[2].inside", text: `inside = 2`, read: "2", accepted: "the number of a motif before this one, which is 1"},
		{name: "motif[2].inside", text: `inside = 1`, with: `on = "odd"`, at: "+", key: "motif[2].on", accepted: "no on in a motif that is inside another", hint: "it follows motif 1"},
		{name: "motif[2].inside", text: `inside = 1`, with: `shape = "taper"`, at: "+", key: "motif[2].shape", accepted: "no shape in a motif that is inside another"},

		// Their parts.
		{name: "motif[1].parts.frond", text: `[motif.parts.fronds]`, key: "motif[1].parts.fronds", read: `a part "fronds"`,
			accepted: `the parts of a leaf, "stem" or "frond"`, hint: `the nearest is "frond"`},
		{name: "motif[1].parts.frond", text: `[motif.parts]`, at: "motif[1].parts.frond.wheel", key: "motif[1].parts.wheel", read: `a part "wheel"`,
			accepted: `the parts of a leaf, "stem" or "frond"`, hint: "say of which part: [motif.parts.stem]"},
		{name: "motif[1].parts.frond", text: `[motif.parts.stem.frond]`, key: "motif[1].parts.stem.frond", read: `a key "frond"`, accepted: "the keys wheel, depth, land, clear"},
		{name: "motif[2].inside", text: `parts = 3`, key: "motif[2].parts", read: "3", accepted: "a table for each part, [motif.parts.ray]"},
		{name: "motif[2].inside", text: `parts.ray = "olive"`, key: "motif[2].parts.ray", read: `"olive"`,
			accepted: "a table [motif.parts.ray] with the keys wheel, depth, land, clear"},
		{name: "motif[1].parts.frond.depth", text: `dpeth = 1`, key: "motif[1].parts.frond.dpeth", hint: `"depth"`, accepted: "the keys wheel, depth, land, clear"},
		{name: "motif[1].parts.frond.depth", text: `turn = 1`, key: "motif[1].parts.frond.turn", accepted: "the keys wheel, depth, land, clear, swell, rock"},
		{name: "motif[1].parts.frond.wheel", text: `wheel = "miter"`, hint: `"mitre"`, accepted: "the name of a wheel in the rack"},
		{name: "motif[1].parts.frond.depth", text: `depth = "51 mm"`, accepted: "from 0.001 in to 1.9 in"},

		// Keys out of place.
		{name: "limits.land", text: `repeats = 3`, key: "limits.repeats", read: `"repeats"`, accepted: "the keys land, leave", hint: `"repeats" belongs to a layout`},
		{name: "limits.land", text: `title = "x"`, key: "limits.title", hint: `"title" belongs at the top, before the first table`},
		{name: "title", text: `across = 3`, hint: `"across" belongs to a station, or to a wheel`, key: "across"},
		{name: "title", text: `"" = 3`, key: `""`, read: `a key ""`, accepted: "the keys title, length"},
		{name: "title", text: `"a\nb" = 3`, key: `"a\nb"`, read: `a key "a\nb"`},
		{name: "title", text: `blank.name = "b"`, at: "blank", read: `"blank" a second time`},
	} {
		t.Run(c.name+" "+c.text, func(t *testing.T) {
			var f fixture
			for _, line := range base() {
				switch line.name {
				case c.name:
					line.text = c.text
					f = append(f, line, fixture{{"+", c.with}}[0])
				case c.without:
				default:
					f = append(f, line)
				}
			}
			at := cmp.Or(c.at, c.name)
			e := refused(t, f.bytes())
			if line, key := f.line(t, at), cmp.Or(c.key, at); e.Line != line || e.Key != key {
				t.Errorf("wanted line %d, key %q: %v", line, key, e)
			}
			if !strings.Contains(e.Read, c.read) || !strings.Contains(e.Accepted, c.accepted) || !strings.Contains(e.Hint, c.hint) {
				t.Error(e)
			}
		})
	}
}
