package report

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// No number in JSON is minus zero, which some readers take for text.
func TestNumberJSON(t *testing.T) {
	for x, want := range map[number]string{number(math.Copysign(0, -1)): "0", -1e-9: "0", -4.9e-7: "0", -6e-7: "-0.000001", 0: "0", -1.5: "-1.5"} {
		if got, err := json.Marshal(x); err != nil || string(got) != want {
			t.Errorf("%g is written %s, %v; want %s", float64(x), got, err, want)
		}
	}
}

// A finding on the whole glass is of no cuts: of an empty list.
func TestFindingOfNoCuts(t *testing.T) {
	p := &pattern.Plan{Job: &job.Job{}, Findings: []pattern.Finding{{Kind: pattern.Uneven, Repeat: 1, Measured: 2, Wanted: 1}}, Period: 1, Repeats: 1}
	if got, err := json.Marshal(findings(p)); err != nil || !strings.Contains(string(got), `"cuts":[]`) {
		t.Errorf("%s, %v", got, err)
	}
}

// What a spreadsheet would work out, it shows; all else stays as it is.
func TestPlainText(t *testing.T) {
	for name, want := range map[string]string{
		"=1+1": "'=1+1", "+3": "'+3", "-2 mitre": "'-2 mitre", "@b": "'@b", " =1": "' =1", "＝1": "'＝1",
		"3in mitre": "3in mitre", "a=b": "a=b", "'=1": "'=1",
	} {
		var b strings.Builder
		w := csv.NewWriter(&b)
		w.Write([]string{plainText(name)})
		w.Flush()
		if got := strings.Trim(b.String(), "\"\n"); got != want {
			t.Errorf("%q is written %q; want %q", name, got, want)
		}
	}
}
