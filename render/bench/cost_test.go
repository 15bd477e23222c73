package bench

import (
	"bytes"
	"context"
	"testing"

	"roundlay/geometry"
	"roundlay/pattern/job"
	"roundlay/render/drawing"
	"roundlay/render/printing"
	"roundlay/render/printtest"
	"roundlay/render/wrap"
)

// freshPlans lays a job out anew.
func freshPlans(b *testing.B, text string) {
	j, err := job.Read("trial", []byte(text))
	if err != nil {
		b.Fatal(err)
	}
	if _, err := printtest.Fresh(j); err != nil {
		b.Fatal(err)
	}
}

// What the sheet of a set of twelve costs, beside the planning before it and as
// many pages with a single line on each.
func BenchmarkSetOfTwelve(b *testing.B) {
	text := setJob()
	plans := plansOf(b, text)
	o := wrap.DefaultOptions(plans[0].Job.Length)
	s := sheetOf(b, plans, "")
	b.Run("plan", func(b *testing.B) {
		for b.Loop() {
			freshPlans(b, text)
		}
	})
	b.Run("wraps", func(b *testing.B) {
		for b.Loop() {
			for _, p := range plans {
				w, err := wrap.New(context.Background(), p, o)
				if err != nil {
					b.Fatal(err)
				}
				var file bytes.Buffer
				if err := w.PDF(&file); err != nil {
					b.Fatal(err)
				}
				if err := w.SVG(&file); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("sheet", func(b *testing.B) {
		for b.Loop() {
			pdfOf(b, newSheet(b, plans, ""))
		}
	})
	b.Run("bound: as many all but empty pages", func(b *testing.B) {
		empty := *s
		empty.Pages = nil
		for _, p := range s.Pages {
			var d drawing.Drawing
			d.Add(drawing.Notes, drawing.Text{At: geometry.Point{X: 20, Y: 20}, Words: "page", Size: 12})
			empty.Pages = append(empty.Pages, printing.Page{Width: p.Width, Height: p.Height, Drawing: d})
		}
		for b.Loop() {
			pdfOf(b, &empty)
		}
	})
}
