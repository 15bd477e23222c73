package desk

import (
	"context"

	"roundlay/pattern"
	"roundlay/render/report"
	"roundlay/render/screen"
)

// memberAnswer is one blank of a set.
type memberAnswer struct {
	Name     string       `json:"name"`
	Clear    bool         `json:"clear"`
	Verdict  string       `json:"verdict"`
	Findings []setFinding `json:"findings"`
	Small    string       `json:"small"` // a small picture, as SVG
	Why      string       `json:"why"`   // by what it differs from the others; "" for a single blank
}

// setFinding is a finding on a blank of a set.
type setFinding struct {
	Letter string `json:"letter"`
	Words  string `json:"words"`
}

// set lays a job out on all of its blanks and compares them.
func (d *Desk) set(ctx context.Context, body []byte) (*Reply, error) {
	var ask struct{ jobText }
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	j, err := ask.read()
	if err != nil {
		return unlaidAnswer(err)
	}
	plans, err := d.planned(ctx, j)
	if err != nil {
		return unlaidAnswer(err)
	}
	out := struct {
		Blanks []memberAnswer `json:"blanks"`
		Words  []string       `json:"words"`
	}{Blanks: []memberAnswer{}, Words: []string{}}
	for _, p := range plans {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		out.Blanks = append(out.Blanks, member(p))
	}
	if len(plans) > 1 {
		s, err := pattern.NewSet(ctx, plans)
		if err != nil {
			return unlaidAnswer(err)
		}
		out.Words = report.SetWords(s)
		for _, standing := range s.Standings() {
			for i := range out.Blanks {
				if out.Blanks[i].Name == standing.Member.Blank.Name {
					out.Blanks[i].Why = report.Why(plans[0].Job.Length, standing)
				}
			}
		}
	}
	return answer(out)
}

func member(p *pattern.Plan) memberAnswer {
	one := memberAnswer{
		Name: p.Blank.Name, Clear: p.Clear(), Verdict: report.Short(p), Findings: []setFinding{}, Small: screen.Small(p),
	}
	for _, face := range p.Faces() {
		for _, g := range face.Groups() {
			one.Findings = append(one.Findings, setFinding{g.Letter, report.Trouble(face, g)})
		}
	}
	return one
}
