package desk

import (
	"bytes"
	"context"

	"roundlay/cmd/desk/files"
	"roundlay/render/picture"
	"roundlay/render/screen"
)

// picture draws the glass as it will look.
func (d *Desk) picture(ctx context.Context, body []byte) (*Reply, error) {
	var ask struct {
		ofJob
		Turn     word `json:"turn"`
		Tilt     word `json:"tilt"`
		Findings bool `json:"findings"`
		Base     bool `json:"base"` // the underside, where the job has one
	}
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	o, err := files.View{Turn: string(ask.Turn), Tilt: string(ask.Tilt), Findings: ask.Findings, Base: ask.Base}.Options()
	if err != nil {
		return nil, asked(err)
	}
	j, blank, err := ask.onBlank()
	if err != nil {
		return unlaidAnswer(err)
	}
	plans, err := d.planned(ctx, j, blank)
	if err != nil {
		return unlaidAnswer(err)
	}
	drawn, err := picture.New(ctx, plans[0], o)
	if err != nil {
		return nil, err
	}
	var svg bytes.Buffer
	box, err := drawn.Alone(&svg)
	if err != nil {
		return nil, err
	}
	return answer(struct {
		SVG string           `json:"svg"`
		Box [4]screen.Number `json:"box"` // of the view: the axis is at x = 0, the table at y = 0, y up
	}{svg.String(), [4]screen.Number{screen.Number(box.Min.X), screen.Number(box.Min.Y), screen.Number(box.Max.X), screen.Number(box.Max.Y)}})
}
