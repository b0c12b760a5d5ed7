package team

import (
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
)

// TestSplit: each part is done once, by so many workers at most as the team has, whether
// the work is worth sharing or not.
func TestSplit(t *testing.T) {
	for _, workers := range []int{0, 1, 3} {
		for _, work := range []float64{0, splitWork} {
			team := New(workers)
			times := make([]atomic.Int32, 200)
			var busy atomic.Int32
			var mu sync.Mutex
			most := int32(0)
			team.Enter()
			team.Split(len(times), work, func(i int) {
				mu.Lock()
				most = max(most, busy.Add(1))
				mu.Unlock()
				runtime.Gosched() // lets the others come in
				times[i].Add(1)
				busy.Add(-1)
			})
			team.Leave()
			for i := range times {
				if n := times[i].Load(); n != 1 {
					t.Errorf("%d workers, work %g: part %d was done %d times", workers, work, i, n)
				}
			}
			allowed := int32(max(workers, 1))
			if work < splitWork {
				allowed = 1
			}
			if most > allowed {
				t.Errorf("%d workers, work %g: %d at once", workers, work, most)
			}
			if len(team.slots) != 0 {
				t.Errorf("%d workers, work %g: %d slots are still taken", workers, work, len(team.slots))
			}
		}
	}
}

// TestSplitIsShared: an idle worker helps. Two parts that wait for each other end only if they
// run at once.
func TestSplitIsShared(t *testing.T) {
	var both sync.WaitGroup
	both.Add(2)
	New(2).Each(2, func(int) { both.Done(); both.Wait() })
}

// TestQueue: no task is given out before those it waits for are finished, and of the ready ones
// the first in postorder is. The tree: 0 and 1 are the children of 2; 3 and 2 those of 4.
func TestQueue(t *testing.T) {
	parent, waiting := []int32{2, 2, 4, 4, -1}, []int32{0, 0, 2, 0, 2}
	q := NewQueue()
	for range parent {
		q.Expect()
	}
	for _, leaf := range []int32{0, 1, 3} {
		q.Ready(leaf)
	}
	var order []int32
	for task, ok := q.Pop(); ok; task, ok = q.Pop() {
		order = append(order, task)
		q.Finish(parent[task], waiting)
	}
	if want := []int32{0, 1, 2, 3, 4}; !slices.Equal(order, want) {
		t.Errorf("the order is %v, not %v", order, want)
	}
}

// TestQueueWakes: who waits for a task gets the parent when its last child is finished, and an
// end when there is nothing left.
func TestQueueWakes(t *testing.T) {
	q := NewQueue()
	q.Expect()
	q.Expect()
	q.Ready(0)
	waiting := []int32{0, 1}
	if task, ok := q.Pop(); task != 0 || !ok {
		t.Fatalf("the first task is %d, %v", task, ok)
	}
	got := make(chan int32, 2)
	var ended sync.WaitGroup
	for range 2 {
		ended.Go(func() {
			for task, ok := q.Pop(); ok; task, ok = q.Pop() {
				got <- task
				q.Finish(-1, waiting)
			}
		})
	}
	q.Finish(1, waiting)
	ended.Wait()
	if len(got) != 1 || <-got != 1 {
		t.Error("the parent was not given out once")
	}
}

// TestPool: a buffer that was given back is given out again, to who asks for its class of size
// and to no other.
func TestPool(t *testing.T) {
	var p Pool
	for _, n := range []int{1, 64, 65, 96, 97, 1000, 4097} {
		b := p.Get(n)
		if len(b) != n || cap(b) != class(n) || class(n) >= max(2*n, 65) {
			t.Fatalf("a buffer of %d: length %d, room %d", n, len(b), cap(b))
		}
		p.Put(b)
		if larger := p.Get(cap(b) + 1); &larger[0] == &b[0] {
			t.Errorf("a buffer of %d was given for %d", cap(b), cap(b)+1)
		}
		if again := p.Get(n); &again[0] != &b[0] || len(again) != n {
			t.Errorf("a buffer of %d was not used again", n)
		}
	}
}
