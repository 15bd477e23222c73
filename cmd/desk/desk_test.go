package desk

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"roundlay/pattern/job"
)

// ask asks a desk, and returns the answer as a page sees it.
func ask(t testing.TB, d *Desk, name string, body any) map[string]any {
	t.Helper()
	text, err := json.Marshal(body)
	if err != nil {
		t.Fatal(err)
	}
	reply, err := d.Answer(t.Context(), name, text)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var out map[string]any
	if err := json.Unmarshal(reply.Data, &out); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return out
}

// fields are those of a request.
type fields map[string]any

func demo() string {
	_, text := job.Demo()
	return string(text)
}

func TestBadRequests(t *testing.T) {
	for _, c := range []struct{ name, body string }{
		{"nothing", "{}"}, {"lay", "{"}, {"lay", `{"jobs": ""}`}, {"lay", `{} {}`}, {"lay", `[]`}, {"lay", `{"want": ["all"]}`},
		{"lay", `{"side": "above"}`},
	} {
		var bad *BadRequest
		if _, err := New().Answer(t.Context(), c.name, []byte(c.body)); !errors.As(err, &bad) {
			t.Errorf("%s %s: got %v", c.name, c.body, err)
		}
	}
}

func TestDescribe(t *testing.T) {
	got := ask(t, New(), "describe", fields{})
	if n := len(got["kinds"].([]any)); n == 0 {
		t.Error("no kinds")
	}
}

func TestLayDemo(t *testing.T) {
	got := ask(t, New(), "lay", fields{"job": demo()})
	if got["mistake"] != nil || got["clear"] != true {
		t.Errorf("the demo: %v, %v", got["mistake"], got["verdict"])
	}
	for _, part := range []string{"wrap", "glass", "profile", "numbers"} {
		if got[part] == nil {
			t.Errorf("no %s", part)
		}
	}
}

// A job with a mistake is answered, with the mistake, by all that read it but download: that
// one has nothing but a file to answer with.
func TestMistakes(t *testing.T) {
	for _, text := range []string{"", "length = ", "length = \"in\"", strings.Replace(demo(), `depth = "1/32"`, `depth = "3"`, 1), strings.Replace(demo(), "repeats = 5", "repeats = 5\nband = [1, 9]", 1)} {
		for _, name := range []string{"lay", "most", "cures", "fit", "set", "picture", "pages"} {
			got := ask(t, New(), name, fields{"job": text})
			wrong, _ := got["mistake"].(map[string]any)
			if wrong == nil && name == "most" {
				continue // a mistake that only a layout can show
			}
			if wrong == nil || wrong["words"] == "" {
				t.Errorf("%s of %.40q: %v", name, text, got)
			}
		}
	}
}
