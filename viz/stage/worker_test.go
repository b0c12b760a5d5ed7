package stage

import (
	"context"
	"sync/atomic"
	"testing"
	"time"
)

// What is dropped while it is worked out ends before the next begins: never are there two at a time.
func TestSettlesOneAtATime(t *testing.T) {
	var now, most atomic.Int32
	let, out := make(chan bool), make(chan *Shown, 1)
	b := slower{out: out, settle: func(_ context.Context, s *Shown) (*Shown, error) {
		most.Store(max(most.Load(), now.Add(1)))
		defer now.Add(-1)
		<-let // works on, though it is dropped
		return s, nil
	}}
	s := &Shown{Designs: []*Answered{{}}}
	for range 3 {
		drop := b.begin(t.Context(), s)
		time.Sleep(10 * time.Millisecond)
		drop()
	}
	b.begin(t.Context(), s)
	close(let)
	select {
	case <-out:
	case <-time.After(time.Minute):
		t.Fatal("the last one never came")
	}
	if most.Load() != 1 {
		t.Errorf("%d are worked out at a time, want 1", most.Load())
	}
}
