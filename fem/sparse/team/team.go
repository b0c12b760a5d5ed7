// Package team is how the elimination shares out its work: a fixed number of workers, a
// queue of the tasks of a tree, and buffers that go from one task to the next. What is
// computed never depends on who computes it or when.
package team

import (
	"sync"
	"sync/atomic"
)

// Team shares out work between at most a fixed number of goroutines.
type Team struct {
	slots chan struct{} // one for each worker that runs
}

// New returns a team of so many workers, one at least.
func New(workers int) *Team {
	return &Team{slots: make(chan struct{}, max(workers, 1))}
}

// splitWork is the least work worth sharing, in multiply-adds of a front.
const splitWork = 40000

// Enter takes a slot, waiting for one if all are taken; Leave gives it back.
func (t *Team) Enter() { t.slots <- struct{}{} }

// Leave gives back the slot that Enter took.
func (t *Team) Leave() { <-t.slots }

// Split calls do(0) .. do(n-1), with the help of idle workers when the work (in
// multiply-adds of a front) is worth it. The caller holds a slot. The calls must not depend
// on each other.
func (t *Team) Split(n int, work float64, do func(i int)) {
	var next atomic.Int64
	loop := func() {
		for i := next.Add(1) - 1; i < int64(n); i = next.Add(1) - 1 {
			do(int(i))
		}
	}
	var wg sync.WaitGroup
	if work >= splitWork {
		for i := 1; i < n && t.idle(); i++ {
			wg.Go(func() {
				loop()
				t.Leave()
			})
		}
	}
	loop()
	wg.Wait()
}

// idle takes a free slot if there is one.
func (t *Team) idle() bool {
	select {
	case t.slots <- struct{}{}:
		return true
	default:
		return false
	}
}

// Each calls do(0) .. do(n-1) on the whole team.
func (t *Team) Each(n int, do func(i int)) {
	t.Enter()
	t.Split(n, splitWork, do)
	t.Leave()
}
