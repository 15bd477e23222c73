package printing

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r2"

	"roundlay/geometry"
	"roundlay/render/printtest"
)

// The bytes stay the same from one second to the next, from one letters to
// another, and when the same letters are used again.
func TestPDFIsTheSameEachTime(t *testing.T) {
	letters := load(t)
	first := samplePDF(t, letters)
	time.Sleep(1100 * time.Millisecond) // time stamps of PDF and of fonts count seconds
	if !bytes.Equal(first, samplePDF(t, letters)) {
		t.Error("the same letters, used again, make other bytes")
	}
	if !bytes.Equal(first, samplePDF(t, load(t))) {
		t.Error("letters loaded again make other bytes")
	}
	if date := regexp.MustCompile(`D:\d{4}|/(Creation|Mod)Date`).Find(first); date != nil {
		t.Errorf("the file has a date: %s", date)
	}
}

func TestPDFAsksForItsTrueSize(t *testing.T) {
	mutool := printtest.Program(t, "mutool")
	file := printtest.File(t, "sample.pdf", samplePDF(t, load(t)))
	out, _ := printtest.Run(t, mutool, "show", file, "trailer/Root/ViewerPreferences")
	for _, want := range []string{"/PrintScaling /None", "/DisplayDocTitle true"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("the viewer's preferences lack %s:\n%s", want, out)
		}
	}
	out, _ = printtest.Run(t, mutool, "show", file, "trailer/Root")
	for _, want := range []string{"/Lang (en)", "/PageLabels"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("the catalog lacks %s:\n%s", want, out)
		}
	}
}

func TestPDFSaysWhatItIs(t *testing.T) {
	file := printtest.File(t, "sample.pdf", samplePDF(t, load(t)))
	out, notes := printtest.Run(t, printtest.Program(t, "pdfinfo"), "-f", "1", "-l", "2", file)
	info := regexp.MustCompile(` +`).ReplaceAllString(string(out), " ")
	// 148 by 170 mm and A4 on its side, in points of 1/72 in.
	for _, want := range []string{"Title: " + sampleTitle, "Pages: 2", "Page 1 size: 419.528 x 481.89 pts", "Page 2 size: 841.89 x 595.276 pts"} {
		if !strings.Contains(info, want) {
			t.Errorf("no %q in:\n%s", want, info)
		}
	}
	if strings.Contains(info, "Date") || len(notes) > 0 {
		t.Errorf("a date, or a complaint:\n%s%s", info, notes)
	}
}

func TestPDFHasRealWords(t *testing.T) {
	file := printtest.File(t, "sample.pdf", samplePDF(t, load(t)))
	out, notes := printtest.Run(t, printtest.Program(t, "pdftotext"), file, "-")
	for _, want := range append(signs, "set the dividers to 2 45/64 in", "quarter turn", "upright words", "second page") {
		if !strings.Contains(string(out), want) {
			t.Errorf("no %q in:\n%s", want, out)
		}
	}
	fonts, more := printtest.Run(t, printtest.Program(t, "pdffonts"), file)
	lines := strings.Split(strings.TrimSpace(string(fonts)), "\n")[2:]
	if len(lines) != 2 {
		t.Errorf("fonts other than the two weights:\n%s", fonts)
	}
	for _, line := range lines {
		// Embedded, a subset, and with a way back to letters.
		if strings.Count(line, "yes") != 3 {
			t.Errorf("font %s", line)
		}
	}
	if len(notes)+len(more) > 0 {
		t.Errorf("complaints:\n%s%s", notes, more)
	}
}

func TestPDFPleasesReaders(t *testing.T) {
	file := printtest.File(t, "sample.pdf", samplePDF(t, load(t)))
	t.Run("Ghostscript", func(t *testing.T) {
		out, notes := printtest.Run(t, printtest.Program(t, "gs"),
			"-dPDFSTOPONERROR", "-dPDFSTOPONWARNING", "-dBATCH", "-dNOPAUSE", "-sDEVICE=nullpage", file)
		if bad := regexp.MustCompile(`(?i)warning|error`).Find(append(out, notes...)); bad != nil {
			t.Errorf("%s%s", out, notes)
		}
	})
	t.Run("MuPDF", func(t *testing.T) {
		_, notes := printtest.Run(t, printtest.Program(t, "mutool"), "info", file)
		if len(notes) > 0 {
			t.Errorf("%s", notes)
		}
	})
	t.Run("poppler", func(t *testing.T) {
		_, notes := printtest.Run(t, printtest.Program(t, "pdftoppm"), "-r", "20", file)
		if len(notes) > 0 {
			t.Errorf("%s", notes)
		}
	})
}

func TestPDFCirclesAreTrue(t *testing.T) {
	page := printtest.Trace(t, samplePDF(t, load(t)))[0]
	found := false
	for _, s := range page.Strokes {
		if len(s.Points) < 100 {
			continue
		}
		found = true
		if !s.Closed {
			t.Error("the circle is open")
		}
		for i, a := range s.Points {
			b := s.Points[(i+1)%len(s.Points)]
			for _, p := range []geometry.Point{a, r2.Scale(0.5, r2.Add(a, b))} {
				if off := math.Abs(r2.Norm(r2.Sub(p, circleMiddle)) - circleRadius); off > 0.002 {
					t.Fatalf("the circle is %.4f mm off at %v", off, p)
				}
			}
		}
	}
	if !found {
		t.Error("there is no circle")
	}
	if len(page.Fills) != 2 {
		t.Errorf("%d fills of one grey, want 2", len(page.Fills))
	}
}
