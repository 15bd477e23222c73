package desk

import (
	"context"
	"encoding/json"
	"errors"
	"testing"
	"time"
)

// FuzzAnswer asks anything of every request. Whatever is asked, there is an answer in JSON
// or a file, or an error.
func FuzzAnswer(f *testing.F) {
	text, _ := json.Marshal(dragJob(glasses["curved"], "repeats = 3", "width = 0.5\nheight = 0.5", ""))
	for i := range requests() {
		f.Add(i, []byte(`{"job": `+string(text)+`}`))
	}
	for _, edits := range []string{
		`[{"op": "set", "path": "motif[1].at", "value": [0.1, "30 mm"]}]`,
		`[{"op": "drag", "path": "motif[1]", "value": {"grab": "corner", "from": [1, 2], "to": [1e9, -1e300], "fine": true}}]`,
		`[{"op": "drag", "path": "motif[1]", "value": {"grab": "turn", "on": "glass", "from": [0, 0], "to": [720, -5]}}]`,
		`[{"op": "drag", "path": "blank.station[2]", "value": {"to": [-1e308, 1e308]}}]`,
		`[{"op": "add", "path": "blank.station", "value": {"height": "57.3 mm"}}, {"op": "copy", "path": "motif[1]"}, {"op": "drop", "path": "motif[1]"}]`,
		`[{"op": "stroke", "path": "motif", "value": {"points": [[0, 40], [1, 41], [3, 60], [0, 40]], "step": 0.3}}, {"op": "stroke", "path": "motif[2]", "value": {"points": [[-9, 4], [9, 6]]}}]`,
		`[{"op": "add", "path": "motif", "value": {"kind": "fan", "inside": 1}}, {"op": "remove", "path": "motif[1].width"}]`,
	} {
		f.Add(1, []byte(`{"job": `+string(text)+`, "side": "inside", "edits": `+edits+`}`))
	}
	f.Add(7, []byte(`{"what": "wrap", "ending": "png", "page": 0, "dpi": 1e9, "seam_at": -1, "margin": 7, "job": `+string(text)+`}`))
	f.Add(7, []byte(`{"what": "plan", "ending": "json", "job": `+string(text)+`}`))
	f.Fuzz(func(t *testing.T, which int, body []byte) {
		all := requests()
		r := all[((which%len(all))+len(all))%len(all)]
		ctx, stop := context.WithTimeout(t.Context(), time.Second)
		defer stop()
		reply, err := New().Answer(ctx, r.name, body)
		switch {
		case err != nil && reply != nil, err == nil && reply == nil:
			t.Errorf("%s: %v with %v", r.name, reply, err)
		case errors.Is(err, context.DeadlineExceeded):
		case err != nil && err.Error() == "":
			t.Errorf("%s: an error without words", r.name)
		case err == nil && reply.Name == "" && !json.Valid(reply.Data):
			t.Errorf("%s: not JSON: %.200s", r.name, reply.Data)
		}
	})
}
