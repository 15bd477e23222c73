package main

import (
	"runtime/debug"
	"strings"
	"testing"
	"unicode/utf8"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"Grüße 杯.pdf": "Grüße 杯.pdf",
		"a\x1b[2Jb":   `a\x1b[2Jb`,
		"a\nb\x7f":    `a\x0ab\x7f`,
		"a\xffb":      `a\xffb`,
		"a\u202egnp":  `a\u202egnp`, // turns the writing round
		"�":           "�",
	} {
		if got := printable(text); got != want {
			t.Errorf("%q is shown as %q; want %q", text, got, want)
		}
	}
}

// Whatever title and name a job may have, the longest file name made of them is
// one that file systems take: 255 bytes.
func TestLongNames(t *testing.T) {
	for _, sign := range []string{"a", "é", "杯", "𠀀"} {
		b := []*glass.Blank{{Name: strings.Repeat(sign, 60)}, {Name: strings.Repeat(sign, 59)}}
		j := &job.Job{Title: strings.Repeat(sign, 120), Blanks: b}
		one, other := blankFile(j, b[0]), blankFile(j, b[1])
		if name := one + "-inside-wrap.pdf"; len(name) > 255 || !utf8.ValidString(name) || !strings.HasPrefix(name, sign+sign+sign) {
			t.Errorf("%q has %d bytes", name, len(name))
		}
		if one == other {
			t.Errorf("two blanks are called %s", one)
		}
	}
	short := &job.Job{Title: "Hedgerow tumblers, 2nd", Blanks: make([]*glass.Blank, 1)}
	if got := blankFile(short, nil); got != "hedgerow-tumblers-2nd" {
		t.Error(got)
	}
}

func TestVersion(t *testing.T) {
	for want, info := range map[string]*debug.BuildInfo{
		"roundlay, of a version that was not recorded":                                                   nil,
		"roundlay (devel), commit not recorded, built with go1.26":                                       {GoVersion: "go1.26", Main: debug.Module{Version: "(devel)"}},
		"roundlay v1.2.0, commit 0123456789ab of 2031-02-03, built with go1.26":                          built("v1.2.0", "false"),
		"roundlay v1.2.0+dirty, commit 0123456789ab of 2031-02-03 with changes since, built with go1.26": built("v1.2.0+dirty", "true"),
	} {
		if got := version(info); got != want {
			t.Errorf("%s; want %s", got, want)
		}
	}
}

func built(version, modified string) *debug.BuildInfo {
	return &debug.BuildInfo{GoVersion: "go1.26", Main: debug.Module{Version: version}, Settings: []debug.BuildSetting{
		{Key: "vcs.revision", Value: "0123456789abcdef"}, {Key: "vcs.time", Value: "2031-02-03T04:05:06Z"}, {Key: "vcs.modified", Value: modified},
	}}
}
