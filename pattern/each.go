package pattern

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// each calls do for every number below n, on all processors. The calls must not depend on
// one another. Each goroutine calls equip once for a do of its own, then takes the next
// few numbers until none are left. When the context is done no more are taken; each waits
// for the calls under way and returns the context's error.
func each(ctx context.Context, n int, equip func() (do func(i int))) error {
	processors := runtime.GOMAXPROCS(0)
	few := 1 + n/(32*processors)
	var taken atomic.Int64
	share := func() {
		do := equip()
		for {
			to := int(taken.Add(int64(few)))
			for i := to - few; i < min(to, n); i++ {
				if ctx.Err() != nil {
					return
				}
				do(i)
			}
			if to >= n {
				return
			}
		}
	}
	var others sync.WaitGroup
	for range min(processors, (n+few-1)/few) - 1 {
		others.Go(share)
	}
	share()
	others.Wait()
	return ctx.Err()
}
