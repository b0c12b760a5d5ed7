package sparse

import (
	"container/heap"
	"sync"
	"sync/atomic"
)

// team shares out the work between at most a fixed number of goroutines. What is
// computed never depends on who computes it or when.
type team struct {
	slots chan struct{} // one for each worker that runs
}

func newTeam(workers int) *team {
	return &team{slots: make(chan struct{}, max(workers, 1))}
}

// splitWork is the least work worth sharing, in units of etree.Cost.
const splitWork = 40000

// split calls do(0) .. do(n-1), with the help of idle workers when the work (in
// units of etree.Cost) is worth it. The caller holds a slot. The calls must not depend
// on each other.
func (t *team) split(n int, work float64, do func(i int)) {
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
				<-t.slots
			})
		}
	}
	loop()
	wg.Wait()
}

// idle takes a free slot if there is one.
func (t *team) idle() bool {
	select {
	case t.slots <- struct{}{}:
		return true
	default:
		return false
	}
}

// each calls do(0) .. do(n-1) on the whole team.
func (t *team) each(n int, do func(i int)) {
	t.slots <- struct{}{}
	t.split(n, splitWork, do)
	<-t.slots
}

// taskQueue holds the tasks of a tree that are ready to run.
type taskQueue struct {
	mu    sync.Mutex
	wake  *sync.Cond
	ready taskHeap
	left  int // tasks not yet finished
}

// taskHeap implements heap.Interface; the smallest task is on top.
type taskHeap []int32

func (h taskHeap) Len() int           { return len(h) }
func (h taskHeap) Less(i, j int) bool { return h[i] < h[j] }
func (h taskHeap) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }

// Push and Pop work on the end of the slice, as heap.Interface asks.
func (h *taskHeap) Push(x any) { *h = append(*h, x.(int32)) }

// Pop removes the last element.
func (h *taskHeap) Pop() any {
	x := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return x
}

func newTaskQueue() *taskQueue {
	q := &taskQueue{}
	q.wake = sync.NewCond(&q.mu)
	return q
}

// pop waits for a task and takes the first in postorder, which keeps few updates
// alive; it returns false when all tasks are finished.
func (q *taskQueue) pop() (int32, bool) {
	q.mu.Lock()
	defer q.mu.Unlock()
	for len(q.ready) == 0 {
		if q.left == 0 {
			return 0, false
		}
		q.wake.Wait()
	}
	return heap.Pop(&q.ready).(int32), true
}

// finish marks a task as done; if it was the last one its parent waited for, the
// parent becomes ready.
func (q *taskQueue) finish(parent int32, waiting []int32) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.left--
	if parent >= 0 {
		waiting[parent]--
		if waiting[parent] == 0 {
			heap.Push(&q.ready, parent)
		}
	}
	q.wake.Broadcast()
}

// pool keeps buffers for reuse, by size class.
type pool struct {
	mu   sync.Mutex
	free map[int][][]float64
}

// class rounds n up to 2^a or 3 2^a.
func class(n int) int {
	c := 64
	for c < n {
		if c+c/2 >= n {
			return c + c/2
		}
		c *= 2
	}
	return c
}

// get returns a buffer of n values, which may hold anything.
func (p *pool) get(n int) []float64 {
	c := class(n)
	p.mu.Lock()
	list := p.free[c]
	if len(list) == 0 {
		p.mu.Unlock()
		return make([]float64, n, c)
	}
	b := list[len(list)-1][:n]
	p.free[c] = list[:len(list)-1]
	p.mu.Unlock()
	return b
}

// put gives a buffer back.
func (p *pool) put(b []float64) {
	p.mu.Lock()
	p.free[cap(b)] = append(p.free[cap(b)], b)
	p.mu.Unlock()
}
