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

// sideOf reads on which side of the glass the wrap is drawn. Patches go on the outside.
func sideOf(side string) (wrap.Side, error) {
	if side == "" {
		return wrap.Outside, nil
	}
	s, err := wrap.ParseSide(side)
	if err != nil {
		return s, badRequest("side: %v", err)
	}
	return s, nil
}

// insideOf reads whether that is the inside.
func insideOf(side string) (bool, error) {
	s, err := sideOf(side)
	return s == wrap.Inside, err
}
