package delaunay

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
)

// sweeper takes every free vertex once, with the result of taking them by their numbers, though
// it goes by places: what a vertex becomes depends on its neighbours alone, those of lower
// numbers as they have become and the others as they were. So a vertex may be taken as soon as
// its lower neighbours have been. Going by places keeps what is needed close in memory, and lets
// parts of the plan be taken at the same time: a vertex that has to wait for one of another
// part waits for the next round, with parts that lie otherwise, and at last for one without.
type sweeper struct {
	*Triangulation
	free  []int32 // by places
	part  []int32 // of each vertex, in this round
	state []uint8 // of each vertex
	early []bool  // vertices taken before this round, or not to be taken at all
	move  func(w *walker, v int32) bool
}

// States of a vertex in a sweep.
const (
	taken   = iota
	waiting // not looked at yet
	held    // waits for one of another part
)

// fewest is how many vertices are worth a part of their own. In eight by eight parts of 350
// vertices each, one vertex in five waits for the second round and one in 150 for the last.
const fewest = 100

// walker is one goroutine's memory: the neighbours of the vertices at work, those of the
// innermost last, and their places.
type walker struct {
	*sweeper
	near  []int32
	ring  []Point
	moved bool
}

// newSweeper sorts free vertices by places: by squares of some vertices, row by row.
func newSweeper(tr *Triangulation, free []int32) *sweeper {
	s := &sweeper{Triangulation: tr, free: slices.Clone(free), part: make([]int32, len(tr.P)), state: make([]uint8, len(tr.P)), early: make([]bool, len(tr.P))}
	square := make([]int32, len(tr.P))
	for i := range s.early {
		s.early[i] = true
	}
	s.lay(square, max(1, int(math.Sqrt(float64(len(free))/64))), 0)
	slices.SortStableFunc(s.free, func(u, v int32) int { return cmp.Compare(square[u], square[v]) })
	return s
}

// lay numbers the free vertices by squares, so many along each side of the plan, moved by a
// share of their width.
func (s *sweeper) lay(number []int32, along int, shift float64) (count int) {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, v := range s.free {
		for k, x := range s.P[v] {
			lo[k], hi[k] = min(lo[k], x), max(hi[k], x)
		}
	}
	width := max(hi[0]-lo[0], hi[1]-lo[1]) / float64(along)
	for _, v := range s.free {
		i, j := 0, 0
		if width > 0 {
			i, j = int((s.P[v][0]-lo[0])/width+shift), int((s.P[v][1]-lo[1])/width+shift)
		}
		number[v] = int32(j*(along+2) + i)
	}
	return (along + 2) * (along + 2)
}

// sweep takes every free vertex once and says whether any was moved.
func (s *sweeper) sweep(move func(w *walker, v int32) bool) bool {
	s.move = move
	for _, v := range s.free {
		s.state[v], s.early[v] = waiting, false
	}
	moved := false
	rest := s.free
	if workers := runtime.GOMAXPROCS(0); workers > 1 && len(s.free) >= 4*fewest {
		along := int(math.Ceil(math.Sqrt(float64(min(4*workers, len(s.free)/fewest)))))
		for _, shift := range []float64{0, 0.5} {
			moved = s.round(rest, s.lay(s.part, along, shift), workers) || moved
			rest = s.left(rest)
		}
	}
	for _, v := range rest {
		s.part[v] = 0
	}
	return s.round(rest, 1, 1) || moved
}

// left lists those of some vertices that were held, and makes them wait for the next round.
func (s *sweeper) left(list []int32) (rest []int32) {
	for _, v := range list {
		if s.state[v] == taken {
			s.early[v] = true
			continue
		}
		s.state[v] = waiting
		rest = append(rest, v)
	}
	return rest
}

// round takes, of a list of vertices, those that need not wait for another part's; s.part has the
// part of each, below count.
func (s *sweeper) round(list []int32, count, workers int) bool {
	of := make([][]int32, count)
	for _, v := range list {
		of[s.part[v]] = append(of[s.part[v]], v)
	}
	var next atomic.Int64
	var moved atomic.Bool
	work := func() {
		w := &walker{sweeper: s}
		for k := int(next.Add(1)) - 1; k < count; k = int(next.Add(1)) - 1 {
			for _, v := range of[k] {
				if s.state[v] == waiting {
					w.visit(v)
				}
			}
		}
		if w.moved {
			moved.Store(true)
		}
	}
	var wg sync.WaitGroup
	for range workers - 1 {
		wg.Go(work)
	}
	work()
	wg.Wait()
	return moved.Load()
}

// visit takes a vertex after its lower neighbours; if it has to wait, it returns false.
func (w *walker) visit(v int32) bool {
	from := len(w.near)
	w.link(v)
	end := len(w.near)
	for i := from; i < end; i++ {
		u := w.near[i]
		if u > v || w.early[u] {
			continue
		}
		if w.part[u] != w.part[v] || w.state[u] == held || w.state[u] == waiting && !w.visit(u) {
			w.state[v], w.near = held, w.near[:from]
			return false
		}
	}
	w.ring = w.ring[:0]
	for _, u := range w.near[from:end] {
		w.ring = append(w.ring, w.P[u])
	}
	w.near = w.near[:from]
	w.moved = w.move(w, v) || w.moved
	w.state[v] = taken
	return true
}

// link appends the neighbours of v, anticlockwise.
func (w *walker) link(v int32) {
	t0 := w.at[v]
	for t := t0; ; {
		o := &w.T[t]
		k := w.index(t, v)
		w.near = append(w.near, o.V[(k+1)%3])
		if t = o.N[(k+1)%3]; t == t0 || t == None {
			return
		}
	}
}
