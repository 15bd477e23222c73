package desk

import (
	"fmt"
	"testing"
)

// A person at the page has controls and no flags.
func TestOnThePage(t *testing.T) {
	said, ways := onThePage([]string{
		`The wrap is in 2 pieces. It would go on one page with --seam butt, or --margin "5 mm", or --paper a3; a margin must be no less than what the printer leaves white, which --test-page shows.`,
		"Its marks are stepped there (divide --at paper-edge).",
	})
	want := []string{
		"The wrap is in 2 pieces. It would go on one page with “Seam: butt”, or “Margin of the printer: 5 mm”, or “Paper: a3”; a margin must be no less than what the printer leaves white, which the test page shows.",
		"Its marks are stepped there.",
	}
	if fmt.Sprint(said) != fmt.Sprint(want) {
		t.Errorf("%q, wanted\n%q", said, want)
	}
	if got, want := fmt.Sprint(ways), "[{seam butt Seam: butt} {margin 5 mm Margin of the printer: 5 mm} {paper a3 Paper: a3}]"; got != want {
		t.Errorf("%s, wanted %s", got, want)
	}
}
