package main

import (
	"runtime/debug"
	"testing"
)

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
