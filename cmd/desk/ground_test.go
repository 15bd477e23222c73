package desk

import (
	"bytes"
	"strings"
	"testing"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// What the page says is ground away, and remains, is what plan prints.
func TestGround(t *testing.T) {
	j, err := job.Read("demo", []byte(demo()))
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.New(t.Context(), j, j.Blanks[0])
	if err != nil {
		t.Fatal(err)
	}
	var printed bytes.Buffer
	if err := report.Plan(&printed, p); err != nil {
		t.Fatal(err)
	}
	table := ask(t, New(), "ground", fields{"job": demo()})["numbers"].([]any)[0].(map[string]any)
	rows := table["rows"].([]any)
	if len(rows) != 2 {
		t.Fatalf("%d rows", len(rows))
	}
	for i, ends := range []string{" is ground away", " remains"} {
		value := rows[i].(map[string]any)["value"].(string)
		if value == "" || !strings.Contains(strings.ReplaceAll(printed.String(), "\n", " "), value+ends) {
			t.Errorf("plan does not print %q", value+ends)
		}
	}
}
