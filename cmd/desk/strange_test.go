package desk

import (
	"context"
	"encoding/json"
	"errors"
	"maps"
	"testing"
	"time"
)

// strangeValues are what a field may hold that nobody means.
func strangeValues() []any {
	return []any{nil, -1, 0, 1e308, -0.001, "", "x", "9999999 mm", []any{}, fields{}, true, []any{[]any{1}}, "\u202e\x00"}
}

// Whatever stands in one field of a request, there is an answer in JSON, a file, or an error
// with words; and none of it takes long.
func TestStrangeRequests(t *testing.T) {
	text := dragJob(glasses["curved"], "repeats = 2", "width = 0.5\nheight = 0.5\nfronds = 2", "")
	motion := fields{"grab": "corner", "on": "", "from": []float64{0, 40}, "to": []float64{3, 42}, "fine": true}
	lays := []fields{
		{"job": text, "edits": []fields{{"op": "set", "path": "motif[1].width", "value": 0.4, "at": 0}}, "blank": "", "side": "outside", "want": []string{"wrap"}},
		{"job": text, "edits": []fields{{"op": "drag", "path": "motif[1]", "value": motion}}, "side": "inside"},
		{"job": text, "edits": []fields{{"op": "drag", "path": "blank.station[2]", "value": fields{"to": []float64{40, 30}}}}},
		{"job": text, "edits": []fields{{"op": "add", "path": "blank.station", "value": fields{"height": "57.3 mm"}}}},
	}
	d := New()
	for _, body := range lays {
		tryStrange(t, d, "lay", body, body)
		edit := body["edits"].([]fields)[0]
		tryStrange(t, d, "lay", body, edit)
		if by, ok := edit["value"].(fields); ok {
			tryStrange(t, d, "lay", body, by)
		}
	}
	picture := fields{"job": text, "blank": "", "turn": 3, "tilt": "7", "findings": false}
	tryStrange(t, d, "picture", picture, picture)
	file := fields{
		"job": text, "what": "plan", "ending": "txt", "paper": "a4", "side": "outside", "margin": "6 mm", "printed_across": "100 mm", "printed_up": "100 mm",
		"thickness": "0.1 mm", "seam": "tab", "seam_at": 1, "mirror": false, "no_rings": false, "page": 1, "dpi": 60, "turn": 0, "tilt": 7, "round": false,
	}
	tryStrange(t, d, "download", file, file)
	file["what"], file["ending"] = "test-page", "svg"
	tryStrange(t, d, "download", file, file)
}

// tryStrange asks with every strange value in every field of a part of a request.
func tryStrange(t *testing.T, d *Desk, name string, body, part fields) {
	t.Helper()
	usual := maps.Clone(part)
	for key := range usual {
		for _, value := range strangeValues() {
			part[key] = value
			text, err := json.Marshal(body)
			if err != nil {
				t.Fatal(err)
			}
			ctx, stop := context.WithTimeout(t.Context(), 10*time.Second)
			reply, err := d.Answer(ctx, name, text)
			stop()
			switch {
			case errors.Is(err, context.DeadlineExceeded):
				t.Errorf("%s with %s = %v takes too long", name, key, value)
			case err != nil && (reply != nil || err.Error() == ""):
				t.Errorf("%s with %s = %v: %v with an error of %q", name, key, value, reply, err)
			case err == nil && reply.Name == "" && !json.Valid(reply.Data):
				t.Errorf("%s with %s = %v: not JSON", name, key, value)
			}
		}
		part[key] = usual[key]
	}
}
