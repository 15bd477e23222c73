package serve

import (
	"strings"
	"testing"
)

// A new file's name is as long as maxName, its ending included, and no longer.
func TestLongestName(t *testing.T) {
	for _, name := range []func(string) (string, error){plainName, besideName} {
		longest := strings.Repeat("a", maxName-len(tomlEnding)) + tomlEnding
		if got, err := name(longest); err != nil || got != longest {
			t.Errorf("%d letters: %v", len(longest), err)
		}
		if _, err := name("a" + longest); err == nil || !strings.Contains(err.Error(), "accepted: at most 195 letters") {
			t.Errorf("%d letters: %v", len(longest)+1, err)
		}
	}
}
