package desk

import (
	"context"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/report"
	"roundlay/render/screen"
	"roundlay/render/wrap"
)

// layRequest asks how a job comes out after some edits.
type layRequest struct {
	jobText
	Edits []Edit `json:"edits"`
	Blank string `json:"blank"` // the first if not given
	// Number is the blank's among those of the job, from 1: it is meant where an edit has given
	// it another name.
	Number int      `json:"number"`
	Side   string   `json:"side"` // of the wrap: outside, inside, patches or, where the job has one, base
	Want   []string `json:"want"` // all parts if not given
}

// The parts of an answer that can be asked for.
const (
	wantWrap    = "wrap"
	wantGlass   = "glass"
	wantProfile = "profile"
	wantNumbers = "numbers"
	wantForm    = "form"
	wantHands   = "hands"
)

// layAnswer is the job after the edits. Where it has a mistake, or where counts are waited
// for, what follows those is left out.
type layAnswer struct {
	Job     string    `json:"job"`
	Form    *job.Form `json:"form,omitempty"`
	Mistake *mistake  `json:"mistake"`
	Waiting string    `json:"waiting,omitempty"` // for "most": ask that first
	*laid             // nil with a mistake
}

// laid is what a job comes out as on one blank.
type laid struct {
	Blank    string          `json:"blank"`
	Blanks   []blankAnswer   `json:"blanks"`
	Face     string          `json:"face"`  // that the wrap is of: side or base
	Faces    []string        `json:"faces"` // that the job cuts
	Unit     string          `json:"unit"`
	Title    string          `json:"title"`
	Clear    bool            `json:"clear"`
	Verdict  string          `json:"verdict"`
	Findings []finding       `json:"findings"`
	Notes    []string        `json:"notes"`
	Numbers  []report.Table  `json:"numbers,omitempty"`
	Wrap     *screen.Wrap    `json:"wrap,omitempty"`
	Glass    *screen.Glass   `json:"glass,omitempty"`
	Profile  *screen.Profile `json:"profile,omitempty"`
	Hands    []screen.Hand   `json:"hands,omitempty"`
}

// blankAnswer names a blank of the job, with the number of its findings where it is known.
type blankAnswer struct {
	Name     string `json:"name"`
	Findings *int   `json:"findings,omitempty"`
}

// lay lays a job out on one blank after some edits.
func (d *Desk) lay(ctx context.Context, body []byte) (*Reply, error) {
	var ask layRequest
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	want, err := ask.wanted()
	if err != nil {
		return nil, err
	}
	side, err := sideOf(ask.Side)
	if err != nil {
		return nil, err
	}
	out := layAnswer{Job: ask.Job}
	j, err := out.revise(ask, want[wantForm])
	if err != nil {
		return nil, err
	}
	if j == nil {
		return answer(out)
	}
	p, err := d.laidOut(ctx, j, ask, &out)
	if err != nil {
		return nil, err
	}
	if p == nil {
		return answer(out)
	}
	out.laid = shown(p, side, want)
	return answer(out)
}

// wanted returns the parts that are asked for.
func (ask layRequest) wanted() (map[string]bool, error) {
	known := []string{wantWrap, wantGlass, wantProfile, wantNumbers, wantForm, wantHands}
	if ask.Want == nil {
		ask.Want = known
	}
	return oneOfEach("want", ask.Want, known)
}

// laidOut lays a job out, and notes on the answer why it can't be.
func (d *Desk) laidOut(ctx context.Context, j *job.Job, ask layRequest, out *layAnswer) (*pattern.Plan, error) {
	blank, err := ask.blankOf(j)
	if err != nil {
		return nil, err
	}
	r, waits, err := d.counts.findSoon(ctx, j)
	if waits {
		out.Waiting = wantMost
		return nil, nil
	}
	var plans []*pattern.Plan
	if err == nil {
		if err := d.turn.take(ctx); err != nil {
			return nil, err
		}
		plans, err = d.editor.Lay(ctx, r.Job, blank)
		d.turn.leave()
	}
	if wrong, ok := mistaken(err); ok {
		out.Mistake = wrong
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	plans[0].NoneClears = r.NoneClears
	return plans[0], nil
}

// blankOf returns the blank to lay out of what the job has become.
func (ask layRequest) blankOf(j *job.Job) (*glass.Blank, error) {
	b, err := blankNamed(j, ask.Blank)
	if err != nil && ask.Number > 0 {
		return j.Blanks[min(ask.Number, len(j.Blanks))-1], nil
	}
	return b, err
}

// facesOf names the faces that a plan's job cuts.
func facesOf(p *pattern.Plan) []string {
	var names []string
	for _, face := range p.Job.Cut() {
		names = append(names, face.String())
	}
	return names
}

// shown turns a plan into the parts of an answer.
func shown(p *pattern.Plan, side wrap.Side, want map[string]bool) *laid {
	out := &laid{
		Blank: p.Blank.Name, Unit: p.Job.Length.String(), Title: p.Job.Title, Clear: p.Clear(),
		Verdict: report.Short(p), Notes: report.Notes(p),
	}
	groups := p.Lettered()
	for _, b := range p.Job.Blanks {
		one := blankAnswer{Name: b.Name}
		if n := groups; b == p.Blank {
			one.Findings = &n
		}
		out.Blanks = append(out.Blanks, one)
	}
	face, inside := p, side == wrap.Inside
	if side == wrap.Base && p.Base != nil {
		face = p.Base
	}
	out.Face, out.Faces = face.Face.String(), facesOf(p)
	flat := flatOf(face, inside)
	if inside {
		// Where the glass has no inside that paper could lie on, the outside is drawn.
		if _, err := screen.NewFlat(p, true); err != nil {
			out.Notes = append(out.Notes, err.Error()+".")
		}
	}
	out.Notes, _ = onThePage(out.Notes)
	out.Findings = findings(p, flatOf(p, inside))
	if more := groups - len(out.Findings); more > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("And %d more findings, not listed here.", more))
	}
	if want[wantNumbers] {
		out.Numbers = report.Tables(p)
	}
	if want[wantWrap] {
		w := screen.NewWrap(flat)
		out.Wrap = &w
	}
	if want[wantGlass] {
		g := screen.NewGlass(p)
		out.Glass = &g
	}
	if want[wantProfile] {
		f := profile(p)
		out.Profile = &f
	}
	if want[wantHands] {
		out.Hands = screen.NewHands(p.Job)
	}
	return out
}
