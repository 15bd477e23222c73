package desk

import (
	"regexp"
	"strings"
	"sync"
)

// optionAnswer is an option of paper as the page sets it, and how its control says it.
type optionAnswer struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	Words string `json:"words"`
}

// control names the page's control for a flag of the commands that draw paper.
func control(flag string) string {
	switch flag {
	case "seam":
		return "Seam"
	case "margin":
		return "Margin of the printer"
	case "paper":
		return "Paper"
	}
	return "Side"
}

var (
	flagged = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`--(seam|margin|paper|side) (?:"([^"]+)"|([\w.]+))`)
	})
	// of a command that the page has no control for, what it would do is left out
	otherwise = sync.OnceValue(func() *strings.Replacer {
		return strings.NewReplacer(
			"which --test-page shows", "which the test page shows",
			" (divide --at paper-edge)", "",
			" (--at and --blank choose another circle)", "",
		)
	})
)

// onThePage returns remarks on paper with the controls of the page in place of a command's
// flags, and what those flags set.
func onThePage(remarks []string) ([]string, []optionAnswer) {
	said, ways := []string{}, []optionAnswer{}
	for _, words := range remarks {
		for _, m := range flagged().FindAllStringSubmatch(words, -1) {
			value := m[2] + m[3]
			ways = append(ways, optionAnswer{m[1], value, control(m[1]) + ": " + value})
		}
		words = flagged().ReplaceAllStringFunc(words, func(flag string) string {
			m := flagged().FindStringSubmatch(flag)
			return "“" + control(m[1]) + ": " + m[2] + m[3] + "”"
		})
		said = append(said, otherwise().Replace(words))
	}
	return said, ways
}
