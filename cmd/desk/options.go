package desk

import (
	"regexp"
	"strings"
)

// optionAnswer is an option of paper as the page sets it, and how its control says it.
type optionAnswer struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	Words string `json:"words"`
}

// controls names the page's controls for the flags of the commands that draw paper.
var controls = map[string]string{"seam": "Seam", "margin": "Margin of the printer", "paper": "Paper", "side": "Side"}

var (
	flagged = regexp.MustCompile(`--(seam|margin|paper|side) (?:"([^"]+)"|([\w.]+))`)
	// of a command that the page has no control for, what it would do is left out
	otherwise = strings.NewReplacer(
		"which --test-page shows", "which the test page shows",
		" (divide --at paper-edge)", "",
		" (--at and --blank choose another circle)", "",
	)
)

// onThePage returns remarks on paper with the controls of the page in place of a command's
// flags, and what those flags set.
func onThePage(remarks []string) ([]string, []optionAnswer) {
	said, ways := []string{}, []optionAnswer{}
	for _, words := range remarks {
		for _, m := range flagged.FindAllStringSubmatch(words, -1) {
			value := m[2] + m[3]
			ways = append(ways, optionAnswer{m[1], value, controls[m[1]] + ": " + value})
		}
		words = flagged.ReplaceAllStringFunc(words, func(flag string) string {
			m := flagged.FindStringSubmatch(flag)
			return "“" + controls[m[1]] + ": " + m[2] + m[3] + "”"
		})
		said = append(said, otherwise.Replace(words))
	}
	return said, ways
}
