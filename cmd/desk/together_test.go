package desk

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"golang.org/x/sync/errgroup"
)

// A desk that is asked all sorts of things at once, of two jobs, answers each as a desk that is
// asked one after the other. With the race detector this looks at what a desk keeps.
func TestAskedTogether(t *testing.T) {
	type question struct {
		name string
		body []byte
		want []byte
	}
	var all []*question
	for _, text := range []string{demo(), strings.Replace(demo(), "width = 0.68", "width = 0.66", 1)} {
		for _, r := range requests() {
			if testing.Short() && (r.name == "cures" || r.name == "fit") {
				continue // they keep nothing, and take long with the race detector
			}
			body := fields{"job": text}
			switch r.name {
			case "describe":
				body = fields{}
			case "download":
				body["what"], body["ending"] = "wrap", "pdf"
			}
			asked, err := json.Marshal(body)
			if err != nil {
				t.Fatal(err)
			}
			q := &question{name: r.name, body: asked}
			reply, err := New().Answer(t.Context(), q.name, q.body)
			if err != nil {
				t.Fatalf("%s: %v", q.name, err)
			}
			q.want = reply.Data
			all = append(all, q)
		}
	}
	d := New()
	var together errgroup.Group
	for range 2 {
		for _, q := range all {
			together.Go(func() error {
				reply, err := d.Answer(t.Context(), q.name, q.body)
				switch {
				case err != nil:
					t.Errorf("%s: %v", q.name, err)
				case !bytes.Equal(reply.Data, q.want):
					t.Errorf("%s: %.300q, want %.300q", q.name, reply.Data, q.want)
				}
				return nil
			})
		}
	}
	together.Wait()
}
