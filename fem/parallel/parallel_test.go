package parallel

import (
	"sync/atomic"
	"testing"
)

// TestChunks: every turn is done once, whatever the sizes.
func TestChunks(t *testing.T) {
	for workers := range 4 {
		for _, n := range []int{0, 1, 7, 64, 65} {
			for _, size := range []int{1, 3, 64, 100} {
				done := make([]atomic.Int32, n)
				Chunks(workers, n, size, func(from, to int) {
					if to-from > size || from >= to {
						t.Errorf("%d workers, %d by %d: range %d to %d", workers, n, size, from, to)
					}
					for i := from; i < to; i++ {
						done[i].Add(1)
					}
				})
				for i := range done {
					if k := done[i].Load(); k != 1 {
						t.Errorf("%d workers, %d by %d: turn %d done %d times", workers, n, size, i, k)
					}
				}
			}
		}
	}
}
