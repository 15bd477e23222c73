package pattern

import (
	"errors"
	"strings"
	"testing"

	"roundlay/motifs"
	"roundlay/pattern/job"
)

// Each sum of tolls is accepted at its limit, and refused just over it in words that name the
// motif with most of it, what was read and what is accepted.
func TestBill(t *testing.T) {
	for name, c := range map[string]struct {
		at, over       toll
		blanks         int
		read, accepted string
	}{
		"cuts":        {toll{cuts: maxCuts}, toll{cuts: maxCuts + 1}, 1, "5001 cuts round the glass", "up to 5000"},
		"cuts in all": {toll{cuts: maxInAll / 4}, toll{cuts: maxInAll/4 + 1}, 4, "2501 cuts on each of 4 blanks, 10004 in all", "up to 10000 in all"},
		"groove":      {toll{groove: maxGroove}, toll{groove: maxGroove + 100}, 1, "40.1 m of groove round the glass", "up to 40 m"},
		"along":       {toll{groove: maxAlong / 4}, toll{groove: maxAlong/4 + 100}, 4, "25.1 m of groove on each of 4 blanks", "up to 100 m in all"},
		"mitred":      {toll{mitred: maxMitred}, toll{mitred: maxMitred + 100}, 1, "160.1 m of groove round the glass, under all the mitres", "up to 160 m"},
		"beside":      {toll{beside: maxBeside}, toll{beside: maxBeside + 1000}, 1, "meet or cross one another along 1001 m in all", "up to 1000 m"},
		"work":        {toll{work: maxWork, period: 10e3}, toll{work: 2 * maxWork, period: 10e3}, 1, "10 m of groove in a repeat, on one blank", "up to 5 m of such groove on each"},
		"work of set": {toll{work: maxWork / 4, period: 10e3}, toll{work: maxWork / 2, period: 10e3}, 4, "10 m of groove in a repeat, on 4 blanks", "up to 5 m of such groove on each"},
	} {
		j := jobOn(straight(t), 1, motif(t, "fan", motifs.Values{"rays": 1}, with(fine)), motif(t, "fan", motifs.Values{"rays": 2}, with(fine)))
		p := laid(t, j)
		for len(j.Blanks) < c.blanks {
			j.Blanks = append(j.Blanks, j.Blanks[0])
		}
		if err := (bill{p, []toll{{}, c.at}}).within(); err != nil {
			t.Errorf("%s, at the limit: %v", name, err)
		}
		err := bill{p, []toll{{}, c.over}}.within()
		var wrong *job.Error
		if !errors.As(err, &wrong) || wrong.Key != "motif[2]" || !strings.Contains(wrong.Read, c.read) || !strings.HasPrefix(wrong.Accepted, c.accepted) {
			t.Errorf("%s, over it: %v", name, err)
		}
	}
}
