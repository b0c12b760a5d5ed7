// Package parallel shares a loop out among goroutines. The loop's turns must not
// depend on each other, so that its result does not depend on how many there are.
package parallel

import (
	"sync"
	"sync/atomic"
)

// Chunks calls do for the ranges [0, size), [size, 2 size) and so on up to n, in
// about this order, on at most some workers at a time; it returns when all have
// ended. Fewer than two workers run it in the caller's goroutine.
func Chunks(workers, n, size int, do func(from, to int)) {
	count := (n + size - 1) / size
	var next atomic.Int64
	work := func() {
		for k := int(next.Add(1)) - 1; k < count; k = int(next.Add(1)) - 1 {
			do(k*size, min((k+1)*size, n))
		}
	}
	if workers = min(workers, count); workers < 2 {
		work()
		return
	}
	var wg sync.WaitGroup
	for range workers {
		wg.Go(work)
	}
	wg.Wait()
}
