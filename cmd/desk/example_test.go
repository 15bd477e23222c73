package desk_test

import (
	"context"
	"encoding/json"
	"fmt"

	"roundlay/cmd/desk"
	"roundlay/pattern/job"
)

// A page asks after every edit how the job comes out.
func Example() {
	_, demo := job.Demo()
	body, _ := json.Marshal(map[string]any{
		"job":   string(demo),
		"edits": []map[string]any{{"op": "set", "path": "motif[1].fronds", "value": 20}},
		"want":  []string{"wrap"},
	})
	reply, err := desk.New().Answer(context.Background(), "lay", body)
	if err != nil {
		fmt.Println(err)
		return
	}
	var out struct {
		Verdict  string
		Findings []struct{ Letter, Words string }
	}
	if err := json.Unmarshal(reply.Data, &out); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(out.Verdict)
	for _, f := range out.Findings {
		fmt.Println(f.Letter, f.Words)
	}
	// Output:
	// Not clear: 2 findings.
	// A Motif 1 (leaf), frond: land of 0.012 in where 1/32 in is the least.
	// B Motif 1 (leaf), frond: the mark is too short: it comes out 0.011 in deep, and at least 0.016 in is wanted.
}
