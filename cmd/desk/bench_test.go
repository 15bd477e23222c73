package desk

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"
)

// twelve is a set of twelve blanks with thirty cuts to a repeat.
func twelve() string { return setOf(12) }

// setOf is a set of so many of them.
func setOf(blanks int) string {
	var b strings.Builder
	b.WriteString("title = \"Twelve for a long table\"\nlength = \"in\"\n")
	for i := range blanks {
		fmt.Fprintf(&b, "[[blank]]\nname = \"no. %d\"\nfloor = \"1/2\"\nstation = [{height=0, across=%.2f, wall=\"3/8\"}, {height=%.2f, across=%.2f, wall=\"5/64\"}]\n",
			i+1, 2.5+0.01*float64(i%5), 3.8+0.02*float64(i%7), 3+0.01*float64(i%4))
	}
	b.WriteString("[[wheel]]\nname = \"small mitre\"\nedge = \"mitre\"\nacross = 3\nthick = \"1/4\"\nangle = 90\n[layout]\nrepeats = 5\n" +
		"[[motif]]\nkind = \"leaf\"\nwheel = \"small mitre\"\ndepth = 0.03125\nat = [0, 0.62]\nwidth = 0.68\nheight = 0.7\nfronds = 10\n" +
		"[[motif]]\nkind = \"fan\"\nwheel = \"small mitre\"\ndepth = \"1/64\"\nat = [0, 0.12]\nwidth = 0.9\nheight = 0.2\nrays = 9\n")
	return b.String()
}

// dense is a field of small diamonds in which all of five thousand cuts recur.
func dense() string {
	return "title = \"Dense\"\nlength = \"mm\"\n[blank]\nfloor = 9\nstation = [{height=0, across=80, wall=8}, {height=150, across=80, wall=5}]\n" +
		"[limits]\nland = 0\nclear = 0\n[[wheel]]\nname = \"m\"\nedge = \"mitre\"\nacross = 60\nthick = 6\nangle = 60\n[layout]\nrepeats = 10\n" +
		"[[motif]]\nkind = \"diamond\"\nwheel = \"m\"\ndepth = 0.2\nacross = 10\nup = 25\n"
}

func gallery(b testing.TB, name string) string {
	text, err := os.ReadFile("../../testdata/gallery/" + name + ".toml")
	if err != nil {
		b.Fatal(err)
	}
	return string(text)
}

// BenchmarkLay prints side by side what the page waits for: the answer to an edit by which
// every groove of a motif is cut anew, and to a drag of it; to an edit that changes nothing;
// and on an empty desk. Beside the mean it prints the quickest, and the processor time,
// which a busy machine changes least, and how large the answer is.
func BenchmarkLay(b *testing.B) {
	for _, of := range []struct{ name, text string }{
		{"demo", demo()}, {"quilted", gallery(b, "quilted-highball")}, {"trellis", gallery(b, "trellis-beaker")}, {"twelve", twelve()}, {"dense", dense()},
		{"barrel", dragJob(glasses["curved"], "repeats = 5\nband = [15, 85]", "width = 0.8\nheight = 0.8\nfronds = 12", "width = 0.3\nheight = 0.4")},
	} {
		j, err := readJob(of.text)
		if err != nil {
			b.Fatal(err)
		}
		depth := j.Motifs[0].Depth
		measure := func(name string, fresh bool, edit func(n int) []fields) {
			b.Run(of.name+"/"+name, func(b *testing.B) {
				d, quickest, size, spent := New(), time.Duration(math.MaxInt64), 0, processorTime(b)
				n := 0
				for ; b.Loop(); n++ {
					if fresh {
						d = New()
					}
					body, err := json.Marshal(fields{"job": of.text, "edits": edit(n)})
					if err != nil {
						b.Fatal(err)
					}
					begun := time.Now()
					r, err := d.Answer(b.Context(), "lay", body)
					if err != nil {
						b.Fatal(err)
					}
					quickest, size = min(quickest, time.Since(begun)), len(r.Data)
				}
				b.ReportMetric(float64(quickest), "quickest-ns")
				b.ReportMetric(float64(processorTime(b)-spent)/float64(n), "processor-ns/op")
				b.ReportMetric(float64(size)/1024, "KiB")
			})
		}
		measure("edit", false, func(n int) []fields {
			return []fields{{"op": "set", "path": "motif[1].depth", "value": fmt.Sprintf("%.6f mm", depth*(1-1e-4*float64(n%1000+1)))}}
		})
		measure("drag", false, func(n int) []fields {
			return []fields{{"op": "drag", "path": "motif[1]", "value": fields{"grab": "middle", "from": []float64{0, 30}, "to": []float64{0.5 + 0.01*float64(n%100), 30}, "fine": true}}}
		})
		measure("nothing", false, func(int) []fields { return nil })
		measure("all", true, func(int) []fields { return nil })
	}
}

// processorTime returns the processor time that the process has taken.
func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
