package stage

import (
	"context"
	"runtime/debug"
	"sync"
	"time"
)

// Worker answers wants beside the window, one at a time and always the newest:
// those that came and went while it was busy are never begun.
type Worker struct {
	answer func(ctx context.Context, w Want, last *Shown) (*Shown, error)
	settle func(ctx context.Context, s *Shown) (*Shown, error)

	mu    sync.Mutex
	next  *Want  // not yet begun
	done  []News // not yet fetched
	asked bool   // something was asked that is not answered
	wake  func() // tells the window that there is news
	bell  chan struct{}
}

// News is what the worker has to say about a want.
type News struct {
	Want  Want
	Shown *Shown
	Err   error
}

// NewWorker lets an answerer work beside the window; wake is called from the
// worker's goroutine when there is news.
func NewWorker(a *Answerer, wake func()) *Worker {
	return &Worker{answer: a.Answer, settle: a.Settle, bell: make(chan struct{}, 1), wake: wake}
}

// Ask hands the worker the newest want.
func (k *Worker) Ask(w Want) {
	k.mu.Lock()
	k.next, k.asked = &w, true
	k.mu.Unlock()
	select {
	case k.bell <- struct{}{}:
	default:
	}
}

// Fetch returns what is new since the last fetch, oldest first, and whether
// anything is still being worked on.
func (k *Worker) Fetch() (fresh []News, busy bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	fresh, k.done = k.done, nil
	return fresh, k.asked
}

func (k *Worker) take() *Want {
	k.mu.Lock()
	defer k.mu.Unlock()
	w := k.next
	k.next = nil
	return w
}

// tell leaves news for the window. An answer to the newest want ends the wait.
func (k *Worker) tell(n News) {
	k.mu.Lock()
	k.done = append(k.done, n)
	k.asked = k.next != nil
	k.mu.Unlock()
	k.wake()
}

// rest is how long the hand must be still before the slower numbers are
// worked out.
const rest = 400 * time.Millisecond

// Run works until ctx ends. What takes longer (the table at full load) is done
// beside it once the hand is still, one after the other, and dropped if it moves on.
func (k *Worker) Run(ctx context.Context, last *Shown) {
	settled := make(chan *Shown, 1)
	b := slower{out: settled, settle: k.settle}
	drop := func() {}
	defer func() { drop() }()
	still := time.NewTimer(rest)
	for {
		select {
		case <-ctx.Done():
			return
		case <-k.bell:
			drop()
			last = k.answerAll(ctx, last)
			still.Reset(rest)
		case s := <-settled:
			if last == nil || !last.Want.Equal(s.Want) || last.Ranged() {
				break // an answer to what is no longer asked
			}
			last = s
			k.tell(News{s.Want, s, nil})
			if !s.Ranged() {
				drop = b.begin(ctx, last)
			}
		case <-still.C:
			if last == nil || last.Ranged() {
				break
			}
			drop = b.begin(ctx, last)
		}
	}
}

// slower works out the slower numbers on goroutines of their own, one at a time: one that is dropped may go on
// for a while, and holds some hundred megabytes until then.
type slower struct {
	settle func(ctx context.Context, s *Shown) (*Shown, error)
	out    chan<- *Shown
	turn   sync.Mutex // of the goroutine that works
}

// begin works out the next, until the function it returns is called. A fault there leaves the quick
// answer, whose numbers stand.
func (b *slower) begin(ctx context.Context, s *Shown) (drop func()) {
	quick, cancel := context.WithCancel(ctx)
	go func() {
		defer cancel()
		b.turn.Lock()
		defer b.turn.Unlock()
		if quick.Err() != nil {
			return
		}
		done, err := b.settle(quick, s)
		if err != nil {
			return
		}
		select {
		case b.out <- done:
		case <-quick.Done():
			return
		}
		if done.Ranged() { // nothing more to do: what all of it took goes back, but for what the next edits take
			debug.FreeOSMemory()
			done.ready()
		}
	}()
	return cancel
}

// answerAll answers the newest want until there is none.
func (k *Worker) answerAll(ctx context.Context, last *Shown) *Shown {
	for w := k.take(); w != nil && ctx.Err() == nil; w = k.take() {
		shown, err := k.answer(ctx, *w, last)
		if err == nil {
			last = shown
		}
		k.tell(News{*w, shown, err})
	}
	return last
}
