package desk

import (
	"slices"
	"strings"

	"roundlay/render/wrap"
)

// oneOfEach returns which of the words that are known a list has.
func oneOfEach(field string, list, known []string) (map[string]bool, error) {
	all := map[string]bool{}
	for _, word := range list {
		if !slices.Contains(known, word) {
			return nil, badRequest("%s: read %q; accepted: %s", field, word, strings.Join(known, ", "))
		}
		all[word] = true
	}
	return all, nil
}

// insideOf reads on which side of the glass the wrap is drawn. Patches go on the outside.
func insideOf(side string) (bool, error) {
	if side == "" {
		return false, nil
	}
	s, err := wrap.ParseSide(side)
	if err != nil {
		return false, badRequest("side: %v", err)
	}
	return s == wrap.Inside, nil
}
