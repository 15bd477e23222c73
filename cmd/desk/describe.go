package desk

import (
	"bytes"
	"context"
	"encoding/json"

	"roundlay/geometry"
	"roundlay/motifs"
	"roundlay/pattern/job"
	"roundlay/render/page"
	"roundlay/render/report"
	"roundlay/render/screen"
	"roundlay/render/wrap"
)

// described is all that never changes while the program runs: what a job can say, and what
// there is to choose from.
type described struct {
	Version  string            `json:"version"`
	Tables   []job.Table       `json:"tables"`
	Kinds    []kindAnswer      `json:"kinds"`
	Papers   []string          `json:"papers"`
	Sides    []string          `json:"sides"`
	Seams    []string          `json:"seams"`
	Demo     string            `json:"demo"`
	Starters map[string]string `json:"starters"`
	Cautions []string          `json:"cautions"`
}

// kindAnswer is a kind of motif as the command motifs lists it, with a picture.
type kindAnswer map[string]any

// describe says what a job can say. It is asked once.
func (d *Desk) describe(ctx context.Context, body []byte) (*Reply, error) {
	var ask struct{}
	if err := read(body, &ask); err != nil {
		return nil, err
	}
	if err := d.turnOfAbout.take(ctx); err != nil {
		return nil, err
	}
	defer d.turnOfAbout.leave()
	if d.said.Kinds == nil {
		said, err := describe(ctx)
		if err != nil {
			return nil, err
		}
		d.said = said
	}
	said := d.said
	said.Version = d.Version
	return answer(said)
}

func describe(ctx context.Context) (described, error) {
	_, demo := job.Demo()
	out := described{
		Tables: job.Tables(), Sides: wrap.Sides(), Seams: wrap.Seams(), Demo: string(demo), Cautions: page.CautionSentences(),
		Starters: map[string]string{},
	}
	for _, u := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		out.Starters[u.String()] = string(job.Starter(u))
	}
	for _, p := range page.Papers() {
		out.Papers = append(out.Papers, p.Name)
	}
	kinds, err := kindAnswers(ctx)
	out.Kinds = kinds
	return out, err
}

// kindAnswers lists the kinds of motif as the command does, each with a swatch.
func kindAnswers(ctx context.Context) ([]kindAnswer, error) {
	var listed bytes.Buffer
	if err := report.MotifsJSON(&listed, motifs.Listed()); err != nil {
		return nil, err
	}
	var all []kindAnswer
	if err := json.Unmarshal(listed.Bytes(), &all); err != nil {
		return nil, err
	}
	for i, k := range motifs.Listed() {
		p, err := wrap.SwatchPlan(ctx, k)
		if err != nil {
			return nil, err
		}
		all[i]["swatch"] = screen.Swatch(p)
	}
	return all, nil
}
