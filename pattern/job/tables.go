package job

import (
	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/groove"
)

func topTable() Table {
	return Table{About: "the job", Keys: []Key{
		{Name: "title", Sort: OfText, Min: 1, Max: maxTitle, Default: "Untitled", inches: `"My glass"`, mm: `"My glass"`,
			About: "the heading of the sheets"},
		{Name: "length", Sort: OfWord, Words: []string{geometry.Inch.String(), geometry.Millimetre.String()}, Needed: true, inches: `"in"`, mm: `"mm"`,
			About: "the unit of your calipers"},
		{Name: "include", Sort: OfTexts, inches: `["shop.toml"]`, mm: `["shop.toml"]`,
			About: "files beside the job: their rack, shop, limits, layout and motifs are read before the job's own, which win"},
		{Name: "blank", Sort: OfTables, Needed: true, About: "the uncut glass"},
		{Name: "limits", Sort: OfTables, About: "what you won't go beyond"},
		{Name: "wheel", Sort: OfTables, Needed: true, About: "the rack of wheels"},
		{Name: "shop", Sort: OfTables, About: "how you work"},
		{Name: "layout", Sort: OfTables, Needed: true, About: "how the glass is divided"},
		{Name: "base", Sort: OfTables, About: "how the underside is divided, where that is cut too"},
		{Name: "motif", Sort: OfTables, Needed: true, About: "the design"},
	}}
}

func blankTable() Table {
	return Table{Name: "blank", About: "the uncut glass", Many: true, Keys: []Key{
		{Name: "name", Sort: OfText, Min: 1, Max: maxName, Default: unnamedBlank, inches: `"tumbler"`, mm: `"tumbler"`,
			About: "what you call it; in a set each needs a name of its own"},
		{Name: "floor", Sort: OfLength, Min: 0.1, Max: maxAcross, inches: `"1/2"`, mm: "12.5",
			About: "thickness of the glass under the inside; leave it out if you can't measure it"},
		{Name: "fill", Sort: OfLength, Min: 0.1, Max: maxAcross, inches: `"3 1/4"`, mm: "82",
			About: "the height of the line it is filled to, above the table"},
		{Name: "glass", Sort: OfWord, Words: materialNames(), Default: materialNames()[0], inches: `"soda-lime"`, mm: `"soda-lime"`,
			About: "what glass it is; it decides the weight"},
		{Name: "density", Sort: OfNumber, Min: 2, Max: 8, inches: "2.5", mm: "2.5",
			About: "the glass's own density in g/cm³, if you know it"},
		{Name: "weighs", Sort: OfWeight, Min: minWeight, Max: maxWeight, inches: `"11 oz"`, mm: `"312 g"`,
			About: "what this blank weighs uncut: all its walls are corrected by one factor to agree with it"},
		{Name: "straight", Sort: OfSwitch, Default: "false", inches: "true", mm: "true",
			About: "true: the glass is taken as straight, along the line nearest to its stations; check lists how far each is off it"},
		{Name: "paper", Sort: OfHeights, Words: []string{tableWord, footWord, rimWord}, Max: maxAcross, Default: "table, rim", inches: `["2 1/4", "rim"]`, mm: `[60, "rim"]`,
			About: `heights between which the paper lies, as on the bowl of a stemmed glass; "table" and "rim" are the glass's ends`},
		{Name: "base", Sort: OfLength, Min: minBase, Max: maxAcross, inches: `"2 1/4"`, mm: "58",
			About: "the diameter of the flat underside; without it, the foot's"},
		{Name: "hollow", Sort: OfHeights, Min: 0.1, Max: maxAcross, inches: `["5/8", "1/16"]`, mm: "[16, 1.5]",
			About: "across and depth of the hollow that the punty mark left in the underside"},
		{Name: "station", Sort: OfTables, Needed: true,
			About: "from the foot up: at least the foot and the rim, and more where the glass bends"},
	}}
}

func stationTable() Table {
	return Table{Name: "station", About: "a height at which the glass was measured", Many: true, Keys: []Key{
		{Name: "height", Sort: OfLength, Max: maxAcross, Needed: true,
			About: "above the table: the first is 0, the last is the rim"},
		{Name: "across", Sort: OfLengths, Min: 1, Max: maxAcross,
			About: "the outside diameter there; where the glass is out of round, several"},
		{Name: "around", Sort: OfLength, Min: 1, Max: maxGirth,
			About: "the outside girth there, by tape: in place of across, or beside it"},
		{Name: "wall", Sort: OfLength, Min: minWall, Max: maxAcross / 2, Needed: true,
			About: "the thickness of the glass there, square to it"},
	}}
}

func limitsTable() Table {
	return Table{Name: "limits", About: "what you won't go beyond", Keys: []Key{
		{Name: "land", Sort: OfLength, Max: maxDepth, Default: "1/32 in", inches: `"1/32"`, mm: "0.8",
			About: "least uncut glass between two cuts"},
		{Name: "leave", Sort: OfLength, Max: maxDepth, Default: "1/16 in", inches: `"1/16"`, mm: "1.6",
			About: "least glass left under a cut"},
		{Name: "rim", Sort: OfLength, Max: maxAcross, Default: "3/8 in", inches: `"3/8"`, mm: "9.5",
			About: "glass kept clear of cuts below the rim"},
		{Name: "foot", Sort: OfLength, Max: maxAcross, Default: "1/4 in", inches: `"1/4"`, mm: "6.4",
			About: "glass kept clear of cuts above the table"},
		{Name: "edge", Sort: OfLength, Max: maxAcross, Default: "1/8 in", inches: `"1/8"`, mm: "3.2",
			About: "glass kept clear of cuts inside the edge of the base"},
		{Name: "clear", Sort: OfShare, Max: 1, Default: "0.5", inches: "0.5", mm: "0.5",
			About: "of two cuts that join, the least share of the shorter that has land beside it: 0 to 1"},
		{Name: "polish", Sort: OfLength, Max: maxPolish, Default: "0", inches: "0", mm: "0",
			About: "how much smoothing and polishing widen a cut on each side"},
		{Name: "reach", Sort: OfShare, Max: 1, Default: "0.5", inches: "0.5", mm: "0.5",
			About: "a mark too short for its full depth must still come to this share of it: 0 to 1"},
	}}
}

func wheelTable() Table {
	mitre, round, gang := groove.Mitre.String(), groove.Round.String(), groove.Gang.String()
	return Table{Name: "wheel", About: "a wheel of your rack", Many: true, Keys: []Key{
		{Name: "name", Sort: OfText, Min: 1, Max: maxName, Needed: true, inches: `"mitre"`, mm: `"mitre"`,
			About: "what you call it; the motifs ask for it by this name"},
		{Name: "edge", Sort: OfWord, Words: groove.Edges(), Needed: true, inches: `"mitre"`, mm: `"mitre"`,
			About: "how its edge is dressed"},
		{Name: "across", Sort: OfLength, Min: minWheel, Max: maxAcross, Needed: true, inches: "3", mm: "75",
			About: "its diameter"},
		{Name: "thick", Sort: OfLength, Min: 0.1, Max: maxThick, Needed: true, inches: `"1/4"`, mm: "6",
			About: "from face to face; a flat edge is this wide"},
		{Name: "angle", Sort: OfDegrees, Min: 20, Max: 170, Needed: true, For: []string{mitre, gang}, inches: "90", mm: "90",
			About: "the angle of the V, in degrees"},
		{Name: "tip", Sort: OfLength, Max: maxAcross, Default: "0", For: []string{mitre, gang}, inches: `"1/64"`, mm: "0.4",
			About: "the width of a flat dressed on the point"},
		{Name: "tip_radius", Sort: OfLength, Max: maxAcross, For: []string{mitre, gang}, inches: `"1/64"`, mm: "0.4",
			About: "in place of tip, the radius of a round dressed on the point"},
		{Name: "radius", Sort: OfLength, Min: 0.1, Max: maxAcross, Needed: true, For: []string{round}, inches: `"1/4"`, mm: "6",
			About: "the radius of its edge"},
		{Name: "mitres", Sort: OfWhole, Min: 2, Max: 64, Needed: true, For: []string{gang}, inches: "3", mm: "3",
			About: "how many Vs stand side by side"},
		{Name: "spacing", Sort: OfLength, Min: 0.05, Max: maxAcross, Needed: true, For: []string{gang}, inches: `"1/8"`, mm: "3",
			About: "from the middle of one V to the next"},
		{Name: "rate", Sort: OfLength, Min: MinRate, Max: MaxRate, inches: `"1 1/2"`, mm: "40",
			About: "how much groove you cut in a minute with this wheel, where it isn't the shop's rate"},
		{Name: "wears", Sort: OfWear, inches: `["1/64", "100 ft"]`, mm: `["0.4 mm", "30 m"]`,
			About: "how much of its diameter it loses, and in how much groove"},
	}}
}

func shopTable() Table {
	return Table{Name: "shop", About: "how you work", Keys: []Key{
		{Name: "rate", Sort: OfLength, Min: MinRate, Max: MaxRate, inches: `"1 1/2"`, mm: "40",
			About: "how much groove you cut in a minute; time a piece to learn it"},
		{Name: "order", Sort: OfWheels, inches: `["mitre", "olive"]`, mm: `["mitre", "olive"]`,
			About: "the wheels to use first, in this order; without it, the one that cuts deepest"},
		{Name: "finish", Sort: OfWord, Words: Finishes(), Default: Undecided.String(), inches: `"felt"`, mm: `"felt"`,
			About: "what is done to the grooves; the bench sheet says what it asks"},
		{Name: "change", Sort: OfTime, Max: maxChange, inches: `"8 min"`, mm: `"8 min"`,
			About: "how long it takes to change the wheel, in minutes"},
		{Name: "finishing", Sort: OfTime, Max: maxFinishing, inches: `"20 min"`, mm: `"20 min"`,
			About: "how long it takes to finish one piece after it is cut, in minutes"},
		{Name: "spoil", Sort: OfShare, Max: maxSpoil, Default: "0", inches: "0.1", mm: "0.1",
			About: "the share of pieces that break or are spoiled"},
		{Name: "spread", Sort: OfShare, Max: maxSpread, Default: "0.25", inches: "0.25", mm: "0.25",
			About: "how far your times may be off either way, as a share; a quote is that wide"},
		{Name: "hour", Sort: OfNumber, Min: minHour, Max: maxHour, inches: "38", mm: "38",
			About: "what an hour costs, in your own money"},
		{Name: "pieces", Sort: OfWhole, Min: 1, Max: maxPieces, inches: "6", mm: "6",
			About: "how many pieces of each blank are wanted, and the quote counts; one, if you don't say"},
	}}
}

func layoutTable() Table {
	return Table{Name: "layout", About: "how the glass is divided", Keys: []Key{
		{Name: "repeats", Sort: OfWhole, Min: 1, Max: maxRepeats, Needed: true, inches: "5", mm: "5",
			About: "how many times the design goes round"},
		{Name: "bare", Sort: OfRepeats, inches: "[2]", mm: "[2]",
			About: "repeats left free for every motif that doesn't list them in its on"},
		{Name: "band", Sort: OfHeights, Max: maxAcross, inches: `["1/2", "2 3/4"]`, mm: "[12, 70]",
			About: "the heights given to the design; without it, all the glass that can be cut"},
		{Name: "match", Sort: OfWord, Words: Matches(), Default: Set.String(), inches: `"set"`, mm: `"set"`,
			About: `several blanks: "set" gives all of them one band and one size of motif, "own" gives each what it can carry`},
	}}
}

func baseTable() Table {
	return Table{Name: "base", About: "how the underside is divided", Keys: []Key{
		{Name: "repeats", Sort: OfWhole, Min: 1, Max: maxRepeats, Needed: true, inches: "8", mm: "8",
			About: "in how many sectors; the motifs with face = \"base\" stand in each"},
		{Name: "band", Sort: OfHeights, Min: 0.1, Max: maxAcross, inches: `["1/4", "7/8"]`, mm: "[6, 22]",
			About: "the distances from the middle given to the design; without it, all of the base that can be cut"},
	}}
}

func motifTable() Table {
	return Table{Name: "motif", About: "a thing that stands in a repeat", Many: true, Keys: []Key{
		{Name: "kind", Sort: OfKind, Words: kindNames(motifs.Readable()), Needed: true, inches: `"leaf"`, mm: `"leaf"`,
			About: "what it is"},
		{Name: "name", Sort: OfText, Min: 1, Max: maxName, inches: `"fern"`, mm: `"fern"`,
			About: "what you call it, in lists and on paper too; with the name of an included motif, this one changes only what it gives"},
		{Name: "wheel", Sort: OfWheel, Needed: true, inches: `"mitre"`, mm: `"mitre"`,
			About: "the name of a wheel in the rack"},
		{Name: "depth", Sort: OfLength, Min: 0.01, Max: maxDepth, Needed: true, inches: `"1/32"`, mm: "0.8",
			About: "how deep it is cut"},
		{Name: "face", Sort: OfWord, Words: Faces(), Default: Side.String(), inches: `"side"`, mm: `"side"`,
			About: `"side", or "base" for the underside: it stands in a sector there, upright from the middle outwards`},
		{Name: "middle", Sort: OfSwitch, Default: "false", inches: "false", mm: "false",
			About: "true: on the base, it stands once over the middle; width and height are then shares of the base's band from edge to edge"},
		{Name: "inside", Sort: OfMotif, inches: "1", mm: "1",
			About: "the number of an earlier motif whose space this one fills: at, width and height are then shares of that one's box, and it follows it in on, shape and turn"},
		{Name: "at", Sort: OfPlace, Default: "0, 0.5", inches: "[0, 0.5]", mm: "[0, 0.5]",
			About: "its middle, counted up from the band's foot and not from the table: across from -0.5 to 0.5 of a repeat, up from 0 to 1 of the band; or lengths"},
		{Name: "width", Sort: OfMeasure, Min: MinShare, Max: MaxWide, Default: "1", inches: "0.7", mm: "0.7",
			About: "its share of the repeat, or a length"},
		{Name: "height", Sort: OfMeasure, Min: MinShare, Max: 1, Default: "1", inches: "0.9", mm: "0.9",
			About: "its share of the band, or a length"},
		{Name: "turn", Sort: OfDegrees, Min: -360, Max: 360, Default: "0", inches: "0", mm: "0",
			About: "degrees, anticlockwise as you look at the glass"},
		{Name: "mirror", Sort: OfSwitch, Default: "false", inches: "false", mm: "false",
			About: "true: left and right change places"},
		{Name: "on", Sort: OfRepeats, Words: Ons(), Default: Each.String(), inches: `"each"`, mm: `"each"`,
			About: `"each" repeat, or the "odd" or "even" ones, where the repeats are even in number; or a list of them: [1, 4]`},
		{Name: "land", Sort: OfLength, Max: maxDepth, inches: "0", mm: "0",
			About: "its own limit, where it differs from the job's"},
		{Name: "clear", Sort: OfShare, Max: 1, inches: "0.4", mm: "0.4",
			About: "its own limit, where it differs from the job's"},
		{Name: "shape", Sort: OfWord, Words: Shapes(), Default: Taper.String(), inches: `"taper"`, mm: `"taper"`,
			About: `"taper": it narrows where the glass does; "true": it keeps its own shape`},
		{Name: "swell", Sort: OfShares, Max: 1, inches: "[0.4, 1, 0.7]", mm: "[0.4, 1, 0.7]",
			About: "the hand: the depth along each cut from its root to its tip, as shares of depth, smooth between them; [1] is even"},
		{Name: "rock", Sort: OfRock, Max: MaxRock, inches: "[0, 12]", mm: "[0, 12]",
			About: "the hand: how far the glass is rolled to the left and to the right of each cut, root to tip, in degrees; mirrored with the motif and in its left half"},
		{Name: "parts", Sort: OfTables, About: "what a part of it has for itself, each under its name: [motif.parts.frond]"},
		{Name: "cut_order", Sort: OfWhole, Min: 1, Max: maxMotifs, inches: "1", mm: "1",
			About: "of the motifs cut with its wheel, this one comes first, second, …; without it, deep before shallow"},
	}}
}

func partTable() Table {
	return Table{Name: "part", About: "what one part of a motif has for itself", Many: true, Keys: []Key{
		{Name: "wheel", Sort: OfWheel, inches: `"mitre"`, mm: `"mitre"`,
			About: "the name of a wheel in the rack, where it isn't the motif's"},
		{Name: "depth", Sort: OfLength, Min: 0.01, Max: maxDepth, inches: `"1/64"`, mm: "0.4",
			About: "how deep this part is cut"},
		{Name: "land", Sort: OfLength, Max: maxDepth, inches: "0", mm: "0",
			About: "its own limit, where it differs from the motif's"},
		{Name: "clear", Sort: OfShare, Max: 1, inches: "0.4", mm: "0.4",
			About: "its own limit, where it differs from the motif's"},
		{Name: "swell", Sort: OfShares, Max: 1, inches: "[0.4, 1, 0.7]", mm: "[0.4, 1, 0.7]",
			About: "the depth along this part from its root to its tip, as shares of its depth"},
		{Name: "rock", Sort: OfRock, Max: MaxRock, inches: "[0, 12]", mm: "[0, 12]",
			About: "how far the glass is rolled to the left and to the right of this part, in degrees"},
	}}
}
