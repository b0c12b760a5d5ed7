package team

import (
	"container/heap"
	"sync"
)

// Queue holds the tasks of a tree that are ready to run.
type Queue struct {
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

// NewQueue returns an empty queue.
func NewQueue() *Queue {
	q := &Queue{}
	q.wake = sync.NewCond(&q.mu)
	return q
}

// Expect counts a task that has to be done. Tasks are told before the first is taken.
func (q *Queue) Expect() { q.left++ }

// Ready gives out a task that waits for no other. They are told in ascending order,
// so that they are a heap.
func (q *Queue) Ready(task int32) { q.ready = append(q.ready, task) }

// Pop waits for a task and takes the first in postorder, which keeps few updates
// alive; it returns false when all tasks are finished.
func (q *Queue) Pop() (int32, bool) {
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

// Finish marks a task as done; if it was the last one its parent waited for, the
// parent becomes ready.
func (q *Queue) Finish(parent int32, waiting []int32) {
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
