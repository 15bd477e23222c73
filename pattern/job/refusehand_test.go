package job

import (
	"strings"
	"testing"
)

// A slip with the hand is answered with what was probably meant.
func TestRefuseHandHints(t *testing.T) {
	for text, hint := range map[string]string{
		`rock = 12`:                             "say to which side: [0, 12] or [12, 0]",
		`rock = 0`:                              "",
		`rock = ["0", 12]`:                      "write it without quotes",
		`swell = 0.5`:                           "write it in brackets",
		`swell = [0, 0, 0]`:                     "0 only at an end",
		`swell = [0, 0]`:                        "this one leaves no mark",
		`swell = [1,1,1,1,1,1,1,1,1,1,1,1,0.5]`: "this list has 13",
	} {
		key, _, _ := strings.Cut(text, " ")
		e := refused(t, base().with(t, "motif[1]."+key, text).bytes())
		if !strings.Contains(e.Error(), hint) {
			t.Errorf("%s: %v", text, e)
		}
	}
}

// handRules says what the keys of the hand accept.
func handRules() map[string]rule {
	swell := rule{"a list of 1 to 12 shares of the depth from root to tip, each from 0 to 1, and 0 only at an end, such as [0.4, 1, 0.7]",
		[]string{`1`, `0.5`, `"0.4, 1"`, `true`, `nan`, `[]`, `[0]`, `[0, 0]`, `[1.01]`, `[1, -0.1]`, `[1, 0, 1]`, `[nan]`, `[inf, 1]`, `["1"]`,
			`[true]`, `[100]`, `[1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]`}}
	rock := rule{"a list of two, to the left and to the right of the cut, each from 0 to 30 degrees, such as [0, 12]",
		[]string{`12`, `0`, `-12`, `"12"`, `true`, `nan`, `[]`, `[12]`, `[0, 12, 0]`, `[-1, 12]`, `[0, 31]`, `[nan, 0]`, `[0, inf]`, `["0", "12"]`,
			`[0, "12°"]`, `[[0, 12], 1]`, `["left", 12]`}}
	return map[string]rule{
		"motif[1].swell":             swell,
		"motif[1].rock":              rock,
		"motif[1].parts.frond.swell": swell,
		"motif[1].parts.frond.rock":  rock,
	}
}
