package job

import "testing"

func TestRewrite(t *testing.T) {
	fronds := Edit{Motif: 0, Key: "fronds", Value: "5", Note: "was 9"}
	for _, c := range []struct {
		name, before string
		edit         Edit
		after        string
	}{
		{"a value", "[[motif]]\ndepth = 1\nfronds = 9 # my fronds\nlean = 3\n", fronds,
			"[[motif]]\ndepth = 1\n# was 9\nfronds = 5 # my fronds\nlean = 3\n"},
		{"without a last new line", "[[motif]]\ndepth = 1\n  fronds=9", fronds,
			"[[motif]]\ndepth = 1\n  # was 9\n  fronds=5"},
		{"a text with signs in it", "[[motif]]\ndepth = 1\nfronds = \"a # \\\" = ]\" # my fronds\n", fronds,
			"[[motif]]\ndepth = 1\n# was 9\nfronds = 5 # my fronds\n"},
		{"a key in quotes", "[[motif]]\ndepth = 1\n\"fronds\" = 9\n", fronds,
			"[[motif]]\ndepth = 1\n# was 9\n\"fronds\" = 5\n"},
		{"a new key", "[[motif]]\n  depth = 1 # deep\n", fronds,
			"[[motif]]\n  depth = 1 # deep\n  # was 9\n  fronds = 5\n"},
		{"carriage returns and a byte order mark", "\ufeff[[motif]]\r\ndepth = 1\r\nfronds = 9\r\n", fronds,
			"\ufeff[[motif]]\r\ndepth = 1\r\n# was 9\r\nfronds = 5\r\n"},
		{"in braces", "motif = [\n  {kind=\"leaf\", depth=1, fronds=9},\n]\n", fronds,
			"motif = [\n  # was 9\n  {kind=\"leaf\", depth=1, fronds=5},\n]\n"},
		{"new in braces", "motif = [\n  {kind=\"leaf\", depth=1},\n]\n", fronds,
			"motif = [\n  # was 9\n  {kind=\"leaf\", depth=1, fronds = 5},\n]\n"},
		{"the second motif", "[[motif]]\ndepth = 1\n[[motif]]\ndepth = 2\n", Edit{Motif: 1, Key: "depth", Value: "3", Note: "was 2"},
			"[[motif]]\ndepth = 1\n[[motif]]\n# was 2\ndepth = 3\n"},
		{"a list over several lines", "[layout]\nrepeats = 3\nband = [ # here\n  1, # ]\n  2\n] # there\n", Edit{Motif: -1, Key: "band", Value: "[3, 4]", Note: "was"},
			"[layout]\nrepeats = 3\n# was\nband = [3, 4] # there\n"},
		{"a new band", "[layout]\nrepeats = 3\n", Edit{Motif: -1, Key: "band", Value: "[3, 4]", Note: "not given"},
			"[layout]\nrepeats = 3\n# not given\nband = [3, 4]\n"},
		{"dotted", "layout.repeats = 3\n", Edit{Motif: -1, Key: "band", Value: "[3, 4]", Note: "not given"},
			"layout.repeats = 3\n# not given\nlayout.band = [3, 4]\n"},
		{"the shop's first", "[layout]\nrepeats = 3", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed"},
			"[layout]\nrepeats = 3\n\n[shop]\n# timed\nrate = 40\n"},
		{"the shop's, of an empty table", "[shop] # mine\n# rate = 3\n\n[layout]\nrepeats = 3\n", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed"},
			"[shop] # mine\n# timed\nrate = 40\n# rate = 3\n\n[layout]\nrepeats = 3\n"},
		{"the shop's, of an empty table at the end", "[shop]", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed"},
			"[shop]\n# timed\nrate = 40"},
		{"the shop's, beside another", "[shop]\norder = [\n\"a\"]\n", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed"},
			"[shop]\norder = [\n\"a\"]\n# timed\nrate = 40\n"},
		{"the limits', of a file without", "[layout]\nrepeats = 3\n", Edit{Motif: OfLimits, Key: "reach", Value: "0.15", Note: "was"},
			"[layout]\nrepeats = 3\n\n[limits]\n# was\nreach = 0.15\n"},
		{"over an older note", "[shop]\n# my rate\n# timed: long ago\nrate = 39.5\n", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed: now", Over: "timed: "},
			"[shop]\n# my rate\n# timed: now\nrate = 40\n"},
		{"under a note of one's own", "[shop]\n# timed by hand\nrate = 39.5\n", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed: now", Over: "timed: "},
			"[shop]\n# timed by hand\n# timed: now\nrate = 40\n"},
		{"the shop's own", "shop = {order=[\"a\"], rate = 39.5}\n", Edit{Motif: OfShop, Key: "rate", Value: "40", Note: "timed"},
			"# timed\nshop = {order=[\"a\"], rate = 40}\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Rewrite([]byte(c.before), []Edit{c.edit})
			if err != nil || string(got) != c.after {
				t.Errorf("%v, wanted:\n%s\ngot:\n%s", err, c.after, got)
			}
		})
	}
	for _, text := range []string{"[layout]\nmatch = 3\n", "", "motif = 3\n", "motif = []\n"} {
		if got, err := Rewrite([]byte(text), []Edit{fronds}); err == nil {
			t.Errorf("%q became %q", text, got)
		}
	}
}

// Several at once, in a job in which every key has a line of its own.
func TestChangeSeveral(t *testing.T) {
	before := base()
	edits := []Edit{
		{Motif: 0, Key: "wheel", Value: `"olive"`, Note: "one"}, {Motif: 0, Key: "fronds", Value: "5", Note: "two"}, {Motif: 1, Key: "height", Value: "0.5", Note: "three"},
		{Motif: -1, Key: "repeats", Value: "8", Note: "four"}, {Motif: 0, Key: "depth", Value: `"1/64 in"`, Note: "five"},
	}
	data, err := Rewrite(before.bytes(), edits)
	if err != nil {
		t.Fatal(err)
	}
	j, err := Read("changed.toml", data)
	if err != nil {
		t.Fatal(err)
	}
	was, err := Read("base.toml", before.bytes())
	if err != nil {
		t.Fatal(err)
	}
	m := j.Motifs[0]
	if m.Wheel != 1 || m.Values["fronds"] != 5 || m.Depth != was.Motifs[0].Depth/2 || j.Motifs[1].Height != (Measure{0.5, true}) || j.Layout.Repeats != 8 {
		t.Errorf("read back as %+v", j)
	}
}
