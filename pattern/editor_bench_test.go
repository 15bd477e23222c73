package pattern

import (
	"fmt"
	"math"
	"syscall"
	"testing"
	"time"

	"roundlay/pattern/job"
)

// BenchmarkEdit prints side by side what it costs to lay out the demo and check it:
// all of it, and after an edit of each of its motifs in turn by which every groove of
// the motif is cut anew. No cures are looked for. Beside the mean it prints the quickest
// and the processor time, which a busy machine changes least.
func BenchmarkEdit(b *testing.B) {
	demo, err := job.Read(job.Demo())
	if err != nil {
		b.Fatal(err)
	}
	b.Run("all", func(b *testing.B) {
		measured(b, func() error { _, err := new(Editor).Lay(b.Context(), demo); return err })
	})
	for i, m := range demo.Motifs {
		b.Run(fmt.Sprintf("motif=%d,%s", i+1, m.Kind.Name), func(b *testing.B) {
			e, j := new(Editor), demo.Clone()
			if _, err := e.Lay(b.Context(), j); err != nil {
				b.Fatal(err)
			}
			measured(b, func() error {
				j = j.Clone()
				j.Motifs[i].Depth *= 1 - 1e-7 // another one each time
				_, err := e.Lay(b.Context(), j)
				return err
			})
		})
	}
}

// measured does a piece of work over and over.
func measured(b *testing.B, work func() error) {
	quickest, spent := time.Duration(math.MaxInt64), processorTime(b)
	n := 0
	for b.Loop() {
		begun := time.Now()
		if err := work(); err != nil {
			b.Fatal(err)
		}
		quickest = min(quickest, time.Since(begun))
		n++
	}
	b.ReportMetric(float64(quickest), "quickest-ns")
	b.ReportMetric(float64(processorTime(b)-spent)/float64(n), "processor-ns/op")
}

// processorTime returns the processor time that the process has taken.
func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
