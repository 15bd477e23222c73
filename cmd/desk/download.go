package desk

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"roundlay/cmd/desk/files"
	"roundlay/pattern"
	"roundlay/pattern/glass"
	"roundlay/pattern/job"
	"roundlay/render/report"
	"roundlay/render/wrap"
)

// downloadRequest asks for a file, with the options that the command for it has.
type downloadRequest struct {
	ofJob
	printRequest
	What     string  `json:"what"`
	Ending   string  `json:"ending"`
	Page     *int    `json:"page"`
	DPI      float64 `json:"dpi"` // files.UsualDPI if not given
	Turn     word    `json:"turn"`
	Tilt     word    `json:"tilt"`
	Round    bool    `json:"round"`
	Findings bool    `json:"findings"`
}

// printRequest is how paper is made and printed.
type printRequest struct {
	Paper         word `json:"paper"`
	Margin        word `json:"margin"`
	Side          word `json:"side"`
	Thickness     word `json:"thickness"`
	Seam          word `json:"seam"`
	SeamAt        *int `json:"seam_at"`
	PrintedAcross word `json:"printed_across"`
	PrintedUp     word `json:"printed_up"`
	Mirror        bool `json:"mirror"`
	NoRings       bool `json:"no_rings"`
}

func (r printRequest) paper() files.Paper {
	return files.Paper{Paper: string(r.Paper), Margin: string(r.Margin)}
}

// options reads the words for a job.
func (r printRequest) options(j *job.Job) (wrap.Options, error) {
	o, err := files.Print{
		Paper: r.paper(), Side: string(r.Side), Thickness: string(r.Thickness), Seam: string(r.Seam), SeamAt: r.SeamAt,
		PrintedAcross: string(r.PrintedAcross), PrintedUp: string(r.PrintedUp), Mirror: r.Mirror, NoRings: r.NoRings,
	}.Options(j)
	return o, asked(err)
}

// file is one kind of file that can be taken away.
type file struct {
	what    string
	endings []string // the first is usual
	make    func(d *Desk, ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error)
}

// baseView is the picture of the underside.
const baseView = "base-view"

func kindsOfFile() []file {
	return []file{
		{"wrap", []string{"pdf", "svg", "png"}, (*Desk).wrapFile},
		{"test-page", []string{"pdf", "svg", "png"}, (*Desk).testPageFile},
		{"sheet", []string{"pdf"}, (*Desk).sheetFile},
		{"view", []string{"svg", "png", "pdf"}, (*Desk).viewFile},
		{baseView, []string{"svg", "png", "pdf"}, (*Desk).viewFile},
		{"cuts", []string{"csv"}, (*Desk).cutsFile},
		{"plan", []string{"txt", "json"}, (*Desk).planFile},
	}
}

// download makes a file, the same as the command for it does. A paper or a picture is of one
// blank, the first if none is named; a sheet and a list are of all blanks then.
func (d *Desk) download(ctx context.Context, body []byte) (*Reply, error) {
	var ask downloadRequest
	if err := d.take(body, &ask); err != nil {
		return nil, err
	}
	all := kindsOfFile()
	i := slices.IndexFunc(all, func(f file) bool { return f.what == ask.What })
	if i < 0 {
		var known []string
		for _, f := range all {
			known = append(known, f.what)
		}
		return nil, badRequest("what: read %q; accepted: %s", ask.What, strings.Join(known, ", "))
	}
	if ask.Ending == "" {
		ask.Ending = all[i].endings[0]
	}
	if !slices.Contains(all[i].endings, ask.Ending) {
		return nil, badRequest("ending: read %q; accepted for %s: %s", ask.Ending, ask.What, strings.Join(all[i].endings, ", "))
	}
	j, blank, err := ask.onBlank()
	if err != nil {
		return nil, err
	}
	return all[i].make(d, ctx, j, blank, ask)
}

// reply is a finished file.
func (ask downloadRequest) reply(stem string, data []byte, err error) (*Reply, error) {
	if err != nil {
		return nil, asked(err)
	}
	types := map[string]string{
		"pdf": "application/pdf", "svg": "image/svg+xml", "png": "image/png",
		"csv": "text/csv; charset=utf-8", "json": "application/json", "txt": "text/plain; charset=utf-8",
	}
	return &Reply{ContentType: types[ask.Ending], Name: stem + "." + ask.Ending, Data: data}, nil
}

// shown says which page of a paper is asked for, as the command reads it: none where
// the file holds all of them.
func (ask downloadRequest) shown(o wrap.Options) (files.Shown, error) {
	show := files.Shown{DPI: ask.DPI}
	if show.DPI == 0 {
		show.DPI = files.UsualDPI
	}
	if err := files.FitsDPI(show.DPI, o.Options); err != nil {
		return show, asked(err)
	}
	switch {
	case ask.Page != nil && ask.Ending == "pdf":
		return show, badRequest("page: is for a picture of one page, svg or png")
	case ask.Page != nil && *ask.Page < 1:
		return show, badRequest("page: read %d; accepted: a page of the paper, from 1", *ask.Page)
	case ask.Page != nil:
		show.Page = *ask.Page
	case ask.Ending == "png":
		show.Page = 1
	}
	return show, nil
}

func (d *Desk) wrapFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	o, err := ask.options(j)
	if err != nil {
		return nil, err
	}
	show, err := ask.shown(o)
	if err != nil {
		return nil, err
	}
	w, _, err := d.paper(ctx, j, blank, o)
	if err != nil {
		return nil, err
	}
	data, err := files.Wrap(w, "."+ask.Ending, show)
	return ask.reply(files.WrapFile(j, blank, o.Side), data, err)
}

// paper draws the paper of a blank.
func (d *Desk) paper(ctx context.Context, j *job.Job, blank *glass.Blank, o wrap.Options) (*wrap.Wrap, *pattern.Plan, error) {
	plans, err := d.cured(ctx, j, blank)
	if err != nil {
		return nil, nil, err
	}
	w, err := wrap.New(ctx, plans[0], o)
	return w, plans[0], asked(files.Refused(err))
}

func (d *Desk) testPageFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	o, err := ask.options(j)
	if err != nil {
		return nil, err
	}
	show, err := ask.shown(o)
	if err != nil {
		return nil, err
	}
	w, err := d.testPage(ctx, j, blank, o)
	if err != nil {
		return nil, err
	}
	data, err := files.Wrap(w, "."+ask.Ending, show)
	return ask.reply(files.TestPageFile, data, err)
}

// testPage draws the page that tries a printer.
func (d *Desk) testPage(ctx context.Context, j *job.Job, blank *glass.Blank, o wrap.Options) (*wrap.Wrap, error) {
	plans, err := d.planned(ctx, j, blank)
	if err != nil {
		return nil, err
	}
	w, err := wrap.NewTestPage(ctx, plans[0], o)
	return w, asked(files.Refused(err))
}

func (d *Desk) sheetFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	o, err := ask.paper().Options(j.Length)
	if err != nil {
		return nil, asked(err)
	}
	blanks := ask.several(j, blank)
	plans, err := d.cured(ctx, j, blanks...)
	if err != nil {
		return nil, err
	}
	data, err := files.Sheet(ctx, plans, o, nil)
	return ask.reply(files.SheetFile(j, blanks), data, err)
}

// several returns the blanks of a file that may be of all of them.
func (ask downloadRequest) several(j *job.Job, blank *glass.Blank) []*glass.Blank {
	if ask.Blank == "" {
		return j.Blanks
	}
	return []*glass.Blank{blank}
}

func (d *Desk) viewFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	o, err := files.View{Turn: string(ask.Turn), Tilt: string(ask.Tilt), Round: ask.Round, Findings: ask.Findings, Base: ask.What == baseView}.Options()
	if err != nil {
		return nil, asked(err)
	}
	plans, err := d.planned(ctx, j, blank)
	if err != nil {
		return nil, err
	}
	data, err := files.Picture(ctx, plans[0], o, "."+ask.Ending)
	name := files.ViewFile(j, blank)
	if ask.What == baseView {
		name = files.BaseViewFile(j, blank)
	}
	return ask.reply(name, data, err)
}

func (d *Desk) cutsFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	blanks := ask.several(j, blank)
	plans, err := d.planned(ctx, j, blanks...)
	if err != nil {
		return nil, err
	}
	var data bytes.Buffer
	err = report.CutList(&data, plans)
	return ask.reply(files.ListFile(j, blanks, "cuts"), data.Bytes(), err)
}

func (d *Desk) planFile(ctx context.Context, j *job.Job, blank *glass.Blank, ask downloadRequest) (*Reply, error) {
	var data bytes.Buffer
	if ask.Ending == "json" {
		plans, err := d.cured(ctx, j, blank)
		if err == nil {
			err = report.PlanJSON(&data, plans[0])
		}
		return ask.reply(files.ListFile(j, []*glass.Blank{blank}, "plan"), data.Bytes(), err)
	}
	blanks := ask.several(j, blank)
	plans, err := d.planned(ctx, j, blanks...)
	if err == nil {
		err = plansIn(&data, plans)
	}
	return ask.reply(files.ListFile(j, blanks, "plan"), data.Bytes(), err)
}

// plansIn writes plans one after another, as the command plan prints them.
func plansIn(to io.Writer, plans []*pattern.Plan) error {
	for i, p := range plans {
		if i > 0 {
			fmt.Fprintln(to)
		}
		if err := report.Plan(to, p); err != nil {
			return err
		}
	}
	return nil
}
