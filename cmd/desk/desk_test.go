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

// readJob reads a job without files beside it.
func readJob(text string) (*job.Job, error) { return jobText{Job: text}.read() }

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

// A file beside the job that isn't there is asked for where the job names it.
func TestIncludeMissing(t *testing.T) {
	text := strings.Replace(demo(), "length = \"in\"", "length = \"in\"\ninclude = [\"shop.toml\"]", 1)
	got := ask(t, New(), "lay", fields{"job": text, "edits": []fields{{"op": "set", "path": "limits.land", "value": "3/64"}}})
	wrong, _ := got["mistake"].(map[string]any)
	if wrong == nil || wrong["path"] != "include[1]" || wrong["line"] == 0.0 || !strings.Contains(wrong["hint"].(string), "drop the file on the page") {
		t.Errorf("%v", got["mistake"])
	}
	if !strings.Contains(got["job"].(string), "land = \"3/64\"") || got["form"] == nil {
		t.Error("the job can't be changed")
	}
	// A mistake in such a file has no line in the job.
	_, err := job.ReadWith(jobName, []byte(text), func(string) ([]byte, error) { return []byte("[limits]\nlend = 1\n"), nil })
	if wrong, ok := mistaken(err); !ok || wrong.File != "shop.toml" || wrong.Line != 0 || !strings.HasPrefix(wrong.Words, "shop.toml:2: limits.lend: ") {
		t.Errorf("%+v", wrong)
	}
}

// A reading that its neighbours contradict is questioned at its own station.
func TestDoubtedStation(t *testing.T) {
	for of, text := range map[string]string{
		"blank": strings.Replace(demo(), `wall = "11/64"`, `wall = "1 1/64"`, 1),
	} {
		got := ask(t, New(), "lay", fields{"job": text, "want": []string{"profile"}})
		var doubted []string
		for _, s := range got["profile"].(map[string]any)["stations"].([]any) {
			if s := s.(map[string]any); s["doubt"] != "" {
				doubted = append(doubted, s["path"].(string))
			}
		}
		if len(doubted) != 1 || doubted[0] != of+".station[3]" {
			t.Errorf("%s: doubted are %v: %v", of, doubted, got["notes"])
		}
	}
}

// Only what is wanted is answered; the job's own words always are.
func TestWanted(t *testing.T) {
	got := ask(t, New(), "lay", fields{"job": demo(), "want": []string{"glass"}})
	for part, wanted := range map[string]bool{"glass": true, "wrap": false, "profile": false, "numbers": false, "form": false, "findings": true, "verdict": true} {
		if (got[part] != nil) != wanted {
			t.Errorf("%s is there: %t", part, got[part] != nil)
		}
	}
}

// The blank that is shown stays in sight while it is given another name, letter by letter.
func TestRenamedBlank(t *testing.T) {
	d := New()
	for _, c := range []struct {
		blank, name string
		number      int
	}{{"no. 3", "no. 3b", 3}, {"no. 3b", "no. 3bc", 3}, {"gone", "no. 3", 3}} {
		got := ask(t, d, "lay", fields{
			"job": twelve(), "blank": c.blank, "number": c.number, "want": []string{},
			"edits": []fields{{"op": "set", "path": "blank[3].name", "value": c.name}},
		})
		if got["blank"] != c.name {
			t.Errorf("%s, number %d, renamed %s: shown is %v", c.blank, c.number, c.name, got["blank"])
		}
	}
	// The last was taken away.
	got := ask(t, d, "lay", fields{"job": twelve(), "blank": "no. 12", "number": 12, "want": []string{}, "edits": []fields{{"op": "drop", "path": "blank[12]"}}})
	if got["blank"] != "no. 11" {
		t.Errorf("shown is %v", got["blank"])
	}
}

// Edits are made one after another. Where one can't be made, the mistake says so, and the
// text is that before it.
func TestEdits(t *testing.T) {
	d := New()
	got := ask(t, d, "lay", fields{"job": demo(), "want": []string{"form"}, "edits": []fields{
		{"op": "copy", "path": "motif[2]"}, {"op": "set", "path": "motif[4].rays", "value": 3}, {"op": "set", "path": "limits.land", "value": "3/64"},
	}})
	text := got["job"].(string)
	if got["mistake"] != nil || got["form"] == nil || strings.Count(text, "[[motif]]") != 4 || !strings.Contains(text, "rays = 3") || !strings.Contains(text, `land = "3/64"`) {
		t.Errorf("%v\n%s", got["mistake"], text)
	}
	got = ask(t, d, "lay", fields{"job": demo(), "edits": []fields{{"op": "set", "path": "motif[1].fronds", "value": 9}, {"op": "set", "path": "motif[9].fronds", "value": 9}}})
	wrong, _ := got["mistake"].(map[string]any)
	if wrong == nil || wrong["path"] != "motif[9].fronds" || !strings.Contains(got["job"].(string), "fronds = 9") {
		t.Errorf("%v\n%s", got["mistake"], got["job"])
	}
	// A value that the job doesn't take is a mistake of the text, which has it.
	got = ask(t, d, "lay", fields{"job": demo(), "edits": []fields{{"op": "set", "path": "motif[1].fronds", "value": "many"}}})
	if wrong, _ = got["mistake"].(map[string]any); wrong == nil || wrong["path"] != "motif[1].fronds" || got["form"] == nil {
		t.Errorf("%v", got["mistake"])
	}
}
