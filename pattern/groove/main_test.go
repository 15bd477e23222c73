package groove_test

import (
	"flag"
	"os"
	"runtime/debug"
	"testing"
)

// Tests take less time where the heap is collected when it has grown to five times what
// lives. Benchmarks collect as the program does.
func TestMain(m *testing.M) {
	flag.Parse()
	if flag.Lookup("test.bench").Value.String() == "" {
		debug.SetGCPercent(400)
	}
	os.Exit(m.Run())
}
