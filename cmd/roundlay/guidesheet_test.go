package main

import (
	"bytes"
	"path/filepath"

	"roundlay/pattern/job"
	"roundlay/pattern/search"
	"roundlay/render/bench"
	"roundlay/render/lettering"
	"roundlay/render/page"
	"roundlay/render/printing"
)

// sheetPicture makes a picture of the second page of a job's sheet, that of the blank to
// practise on, for the page of the guide that shows it: sheet itself makes a PDF only.
func (r *reader) sheetPicture(name, of string) {
	j, err := job.Read(of, []byte(r.has(filepath.Join(r.folder, of))))
	if err != nil {
		r.Fatal(err)
	}
	plans, err := search.Lay(r.Context(), j, j.Blanks...)
	if err != nil {
		r.Fatal(err)
	}
	sheet, err := bench.New(r.Context(), plans, page.DefaultOptions(j.Length), nil)
	if err != nil {
		r.Fatal(err)
	}
	letters, err := lettering.Load()
	if err != nil {
		r.Fatal(err)
	}
	var picture bytes.Buffer
	if err := printing.SVG(&picture, sheet.Title, sheet.Pages[1], letters); err != nil {
		r.Fatal(err)
	}
	r.write(filepath.Join(r.folder, name), picture.String())
}
