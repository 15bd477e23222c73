package main

import (
	"runtime"
	"runtime/debug"
	"strings"
)

// released is "VERSION, commit COMMIT of DATE", which .ci/release sets when it builds a
// binary to pass on; "" in any other build.
var released string

// thisVersion names the running program.
func thisVersion() string {
	if released != "" {
		return "roundlay " + released + ", built with " + runtime.Version()
	}
	info, _ := debug.ReadBuildInfo()
	return version(info)
}

// version names this build: version, commit and the commit's date, as far as the build
// recorded them.
func version(info *debug.BuildInfo) string {
	if info == nil {
		return "roundlay, of a version that was not recorded"
	}
	known := map[string]string{}
	for _, s := range info.Settings {
		known[s.Key] = s.Value
	}
	words := "roundlay " + info.Main.Version
	if info.Main.Version == "" {
		words = "roundlay (devel)"
	}
	commit := known["vcs.revision"]
	if commit == "" {
		return words + ", commit not recorded, built with " + info.GoVersion
	}
	words += ", commit " + commit[:min(12, len(commit))]
	if date, _, _ := strings.Cut(known["vcs.time"], "T"); date != "" {
		words += " of " + date
	}
	if known["vcs.modified"] == "true" {
		words += " with changes since"
	}
	return words + ", built with " + info.GoVersion
}
