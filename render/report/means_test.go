package report

import (
	"testing"

	"roundlay/pattern"
)

// Every kind of finding is explained, each in words of its own.
func TestMeans(t *testing.T) {
	seen := map[string]pattern.Kind{}
	for k := pattern.Crowded; k <= pattern.Unseen; k++ {
		words := Means(k)
		if other, twice := seen[words]; twice || words == "" {
			t.Errorf("%v means %q, as does %v", k, words, other)
		}
		seen[words] = k
	}
}
