package desk

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"
)

// Every request ends soon after its context does, and says so; what is asked afterwards is
// answered as on a new desk.
func TestCancelled(t *testing.T) {
	const soon = 2 * time.Second // on a busy machine; a stroke of work takes some milliseconds
	slow := strings.Replace(twelve(), "fronds = 10", "fronds = \"most\"", 1)
	d := New()
	for _, r := range requests() {
		body := fields{"job": slow}
		switch r.name {
		case "describe":
			body = fields{}
		case "download":
			body["what"] = "sheet"
		}
		text, err := json.Marshal(body)
		if err != nil {
			t.Fatal(err)
		}
		for _, after := range []time.Duration{0, 3 * time.Millisecond, 40 * time.Millisecond} {
			ctx, stop := context.WithTimeout(t.Context(), after)
			begun := time.Now()
			_, err := d.Answer(ctx, r.name, text)
			took := time.Since(begun) - after
			stop()
			if err == nil && after > 0 && r.name == "describe" {
				continue // it is done by then
			}
			if err != nil && !errors.Is(err, context.DeadlineExceeded) {
				t.Errorf("%s, stopped after %v: %v", r.name, after, err)
			}
			if err == nil && r.name != "lay" {
				t.Errorf("%s, stopped after %v, was answered", r.name, after)
			}
			if took > soon {
				t.Errorf("%s, stopped after %v, went on for %v", r.name, after, took)
			}
		}
	}
	if got := ask(t, d, "lay", fields{"job": demo(), "want": []string{}}); got["clear"] != true {
		t.Errorf("after all that the demo is %v", got)
	}
}

// A layout that has to wait for another one waits no longer than its context lasts.
func TestWaitsItsTurn(t *testing.T) {
	d := New()
	if err := d.turn.take(t.Context()); err != nil {
		t.Fatal(err)
	}
	text, _ := json.Marshal(fields{"job": demo()})
	ctx, stop := context.WithTimeout(t.Context(), 20*time.Millisecond)
	defer stop()
	if _, err := d.Answer(ctx, "lay", text); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("while another has the turn: %v", err)
	}
	d.turn.leave()
	if _, err := d.Answer(t.Context(), "lay", text); err != nil {
		t.Error(err)
	}
}

// A count that takes long to find is waited for, with nothing drawn in its place; once it is
// found, the job is laid out with it, also when only comments differ.
func TestMostIsWaitedFor(t *testing.T) {
	text := strings.NewReplacer("fronds = 10", "fronds = \"most\"", "rays = 9", "rays = \"most\"").Replace(twelve())
	d := New()
	got := ask(t, d, "lay", fields{"job": text})
	if got["waiting"] != "most" || got["wrap"] != nil || got["form"] == nil {
		t.Errorf("waiting for %v, drawn %v", got["waiting"], got["wrap"] != nil)
	}
	found := ask(t, d, "most", fields{"job": text})["found"].([]any)
	first := found[0].(map[string]any)
	if len(found) != 2 || first["path"] != "motif[1].fronds" {
		t.Errorf("found %v", found)
	}
	got = ask(t, d, "lay", fields{"job": "# my set\n" + text})
	if got["waiting"] != nil || got["wrap"] == nil {
		t.Errorf("after it is found: waiting for %v, %v", got["waiting"], got["mistake"])
	}
	other := ask(t, d, "lay", fields{"job": strings.Replace(text, "height = 0.7", "height = 0.6", 1)})
	if other["waiting"] != "most" {
		t.Error("the number is used for another job")
	}
}
