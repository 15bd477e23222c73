package desk

import (
	"context"
	"encoding/json"
	"fmt"
	"strconv"

	"roundlay/pattern/job"
	"roundlay/render/report"
)

// cureAnswer is what would clear one finding.
type cureAnswer struct {
	Letter string      `json:"letter"`
	Cure   string      `json:"cure"` // what to do, or why nothing is known, where there are no ways
	Ways   []wayAnswer `json:"ways"`
}

// wayAnswer is one way to clear a finding. A wheel to buy has no edits.
type wayAnswer struct {
	Words  string `json:"words"`
	Edits  []Edit `json:"edits"`
	Brings string `json:"brings"`
}

// cures seeks the cures of what is found on a blank.
func (d *Desk) cures(ctx context.Context, body []byte) (*Reply, error) {
	var ask ofJob
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, blank, err := ask.onBlank()
	if err != nil {
		return unlaidAnswer(err)
	}
	plans, err := d.cured(ctx, j, blank)
	if err != nil {
		return unlaidAnswer(err)
	}
	p := plans[0]
	out := struct {
		Findings []cureAnswer `json:"findings"`
	}{[]cureAnswer{}}
	for _, face := range p.Faces() {
		for _, g := range face.Groups() {
			one := cureAnswer{g.Letter, report.PageUncured(face, g.Worst()), []wayAnswer{}}
			for _, way := range report.Ways(face, g.Worst()) {
				one.Ways = append(one.Ways, wayAnswer{way.Page, editsOf(p.Job, way.Changes), way.Brings})
			}
			out.Findings = append(out.Findings, one)
		}
	}
	return answer(out)
}

// editsOf returns changes of a job as edits of its text.
func editsOf(j *job.Job, changes []job.Change) []Edit {
	all := []Edit{}
	after := j.With(changes...)
	for _, c := range changes {
		all = append(all, Edit{Op: "set", Path: changePath(c), Value: typed(c.Says(after))})
	}
	return all
}

// changePath names the key that a change is of, as messages do.
func changePath(c job.Change) string {
	switch c.Motif {
	case job.OfLayout:
		return "layout." + c.Key
	case job.OfBase:
		return "base." + c.Key
	case job.OfLimits:
		return "limits." + c.Key
	}
	return fmt.Sprintf("%s.%s", job.Item("motif", c.Motif), c.Key)
}

// typed returns a value as it stands in a job's file as JSON. The two are written alike, but
// for signs in a text that can't be printed.
func typed(value string) json.RawMessage {
	if json.Valid([]byte(value)) {
		return json.RawMessage(value)
	}
	text, err := strconv.Unquote(value)
	if err != nil {
		text = value
	}
	quoted, _ := json.Marshal(text) // a text always can be
	return quoted
}
