package pattern

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// each does a piece of work for every number below n on all processors, where
// every piece stands by itself. A processor equips itself once, and then takes
// the next few pieces that nobody has taken. When the context is done no more are
// taken; each returns its error once those under way have come to their end.
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
