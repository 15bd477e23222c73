package job

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

// fill repeats a text, numbered where it has a %d, up to the largest file read.
func fill(head, text, tail string) string {
	var b strings.Builder
	b.WriteString(head)
	for i := 0; ; i++ {
		piece := text
		if strings.Contains(text, "%d") {
			piece = fmt.Sprintf(text, i)
		}
		if b.Len()+len(piece)+len(tail) > MaxBytes {
			return b.String() + tail
		}
		b.WriteString(piece)
	}
}

// hostile lists files as large as any that is read, each of which would take
// minutes if the time grew with the square of its size, or overflow the stack.
func hostile() map[string]string {
	top := "length = \"mm\"\n"
	noise := make([]byte, MaxBytes)
	random := rand.NewChaCha8([32]byte{1})
	_, _ = random.Read(noise)
	return map[string]string{
		"brackets":                fill("", "[", ""),
		"a list in a list":        fill("x = ", "[", ""),
		"closed lists":            "x = " + strings.Repeat("[", 9999) + strings.Repeat("]", 9999),
		"closed lists, too deep":  "x = " + strings.Repeat("[", 400_000) + strings.Repeat("]", 400_000),
		"a table in a table":      fill("", "a={", ""),
		"closed tables":           strings.Repeat("a={", 9999) + strings.Repeat("}", 9999),
		"a dotted key":            fill("a", ".a", "=1"),
		"a dotted header":         fill("[a", ".a", "]"),
		"dotted headers":          fill("", "[a.b.c.d.e.f.g.h.i.j%d]\n", ""),
		"keys":                    fill("", "a%d=1\n", ""),
		"keys of limits":          fill(top+"[limits]\n", "a%d=1\n", ""),
		"keys of a motif":         fill(top+"[[motif]]\n", "a%d=1\n", ""),
		"keys in braces":          fill(top+"limits={", "a%d=1,", "}"),
		"a key once more":         fill("", "a%d=1\n", "a0=1"),
		"headers":                 fill("", "[a%d]\n", ""),
		"motifs":                  fill(top, "[[motif]]\n", ""),
		"motifs in braces":        fill(top+"motif=[", "{},", "]"),
		"motifs of one key":       fill(top, "[[motif]]\na%d=1\n", ""),
		"wheels":                  fill(top, "[[wheel]]\nname=\"%d\"\n", ""),
		"blanks":                  fill(top, "[[blank]]\nname=\"%d\"\n", ""),
		"stations":                fill(top+"[blank]\nstation=[", "{height=%d,across=9,wall=1},\n", "]"),
		"stations by header":      fill(top, "[[blank.station]]\nheight=%d\n", ""),
		"numbers":                 fill(top+"layout.band=[", "1,", "]"),
		"a number":                fill(top+"layout.repeats=", "1", ""),
		"a float":                 fill(top+"layout.repeats=", "1", ".5"),
		"a number in quotes":      fill(top+"limits.land=\"", "1", "\""),
		"a word in quotes":        fill(top+"limits.land=\"", "x ", "\""),
		"an edge":                 fill(top+"[[wheel]]\nedge=\"", "mitre", "\""),
		"a wheel's name":          fill(top+"[[motif]]\nwheel=\"", "mitre", "\""),
		"a kind":                  fill(top+"[[motif]]\nkind=\"", "leaf", "\""),
		"a title":                 fill("title=\"", "é", "\"\nlength=\"mm\""),
		"a title of escapes":      fill("title=\"", "\\n", "\"\nlength=\"mm\""),
		"a title of many lines":   fill("title='''", "\n", "'''\nlength=\"mm\""),
		"an open title":           fill("title='''", "\n", ""),
		"a key":                   fill("", "a", "=1"),
		"a key in quotes":         fill("\"", "\\n", "\"=1"),
		"equals signs":            fill("a", "=", ""),
		"notes":                   fill("", "# nothing\n", ""),
		"new lines":               fill("", "\n", ""),
		"blanks and new lines":    fill("", " \t\r\n", ""),
		"a line that never ends":  fill("x = 3 ", "x", ""),
		"zeros":                   fill("", "\x00", ""),
		"noise":                   string(noise),
		"text, then one bad byte": fill("", "# nothing\n", "\xff"),
		"UTF-16":                  fill("\xff\xfe", "l\x00", ""),
		"escape codes":            fill("", "\x1b[31m", ""),
	}
}

func TestHostile(t *testing.T) {
	// Not a measure of speed: anything that isn't linear would take far longer.
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	for name, text := range hostile() {
		done := make(chan error, 1)
		go func() {
			_, err := Read("hostile.toml", []byte(text))
			done <- err
		}()
		select {
		case err := <-done:
			if err == nil {
				t.Errorf("%s: read without an error", name)
				continue
			}
			onlyError(t, err)
		case <-ctx.Done():
			t.Fatalf("%s: not read in time", name)
		}
	}
}

// The largest job that is accepted is read, and quickly.
func TestReadMost(t *testing.T) {
	var b strings.Builder
	b.WriteString("length = \"mm\"\nlayout.repeats = 360\n")
	for i := range maxBlanks {
		fmt.Fprintf(&b, "[[blank]]\nname = \"blank %d\"\nstation = [\n", i)
		for j := range maxStations {
			fmt.Fprintf(&b, "  {height = %d, across = 80, wall = 3},\n", j)
		}
		b.WriteString("]\n")
	}
	for i := range maxWheels {
		fmt.Fprintf(&b, "[[wheel]]\nname = \"wheel %d\"\nedge = \"flat\"\nacross = 100\nthick = 10\n", i)
	}
	for i := range maxMotifs {
		fmt.Fprintf(&b, "[[motif]]\nkind = \"leaf\"\nwheel = \"wheel %d\"\ndepth = 1\n", i%maxWheels)
	}
	j, err := Read("most.toml", []byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Blanks) != maxBlanks || len(j.Blanks[0].Stations) != maxStations || len(j.Rack) != maxWheels || len(j.Motifs) != maxMotifs {
		t.Error("something was lost")
	}

	for name, more := range map[string]string{
		"motif[257]": "[[motif]]\nkind = \"leaf\"\nwheel = \"wheel 0\"\ndepth = 1\n",
		"wheel[65]":  "[[wheel]]\nname = \"w\"\nedge = \"flat\"\nacross = 100\nthick = 10\n",
		"blank[65]":  "[[blank]]\nname = \"b\"\nstation = [ {height = 0, across = 80, wall = 3}, {height = 9, across = 80, wall = 3} ]\n",
	} {
		e := refused(t, []byte(b.String()+more))
		if e.Key != name || e.Line != 1+strings.Count(b.String(), "\n") || !strings.HasPrefix(e.Accepted, "at most ") {
			t.Errorf("%s: %v", name, e)
		}
	}
}
