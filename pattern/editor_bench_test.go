package pattern

import (
	"syscall"
	"testing"
	"time"

	"roundlay/pattern/job"
)

// BenchmarkEdit prints side by side what it costs to lay out the demo and check it:
// all of it, and after an edit of each of its motifs in turn, by which every groove of
// the motif is cut anew. No cures are looked for.
func BenchmarkEdit(b *testing.B) {
	demo, err := job.Read(job.Demo())
	if err != nil {
		b.Fatal(err)
	}
	b.Run("all", func(b *testing.B) {
		begun := spent()
		for b.Loop() {
			if _, err := new(Editor).Lay(b.Context(), demo); err != nil {
				b.Fatal(err)
			}
		}
		b.ReportMetric(float64(spent()-begun)/float64(b.N), "cpu-ns/op")
	})
	for i, m := range demo.Motifs {
		b.Run(m.Kind.Name, func(b *testing.B) {
			e, n, begun := new(Editor), 0, spent()
			for b.Loop() {
				j := demo.Clone()
				j.Motifs[i].Depth *= 1 - 1e-6*float64(n) // another one each time
				n++
				if _, err := e.Lay(b.Context(), j); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(spent()-begun)/float64(b.N), "cpu-ns/op")
		})
	}
}

// spent returns the processor time that the process has taken: others on the machine
// don't count in it.
func spent() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
