package job

import (
	"bytes"
	_ "embed" // for demo.toml
)

//go:embed demo.toml
var demo []byte

// Demo returns the job that is shown when none is given, and its name for
// messages.
func Demo() (name string, data []byte) { return "the demo job", bytes.Clone(demo) }
