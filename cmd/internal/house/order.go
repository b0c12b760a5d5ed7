package main

import (
	"math/bits"
	"math/rand/v2"
	"slices"
)

// exactFiles is the largest knot of files whose best order is found exactly; the
// search holds 2^exactFiles numbers.
const exactFiles = 20

// order returns the nodes of a graph in a line, lowest first, such that few edges
// run back up: users[b] lists the nodes that use b, and each of them should come
// after b. That is the minimum feedback arc set. Knots, the strongly connected
// components, are independent of one another: all that lie between two knots run one
// way. Knots of up to exactFiles nodes are solved exactly, larger ones by a search
// that gives the same answer every time, but not surely the best.
func order(users [][]int) []int {
	var line []int
	for _, knot := range knots(users) {
		switch {
		case len(knot) == 1:
			line = append(line, knot...)
		case len(knot) <= exactFiles:
			line = append(line, exact(knot, users)...)
		default:
			line = append(line, search(knot, users)...)
		}
	}
	return line
}

// knots returns the strongly connected components, the lowest first: Tarjan,
// "Depth-first search and linear graph algorithms", SIAM J. Comput. 1 (1972), whose
// components come out with the highest users first.
func knots(users [][]int) [][]int {
	n := len(users)
	t := tarjan{users: users, found: make([]int, n), low: make([]int, n), placed: make([]bool, n)}
	for v := range n {
		if t.found[v] == 0 {
			t.visit(v)
		}
	}
	slices.Reverse(t.knots)
	return t.knots
}

// tarjan is the state of one search for components.
type tarjan struct {
	users  [][]int
	found  []int // when a node was found, from 1; 0 means not yet
	low    []int // the earliest found node that its subtree reaches and that has no component yet
	placed []bool
	clock  int
	stack  []int
	knots  [][]int
}

func (t *tarjan) visit(v int) {
	t.clock++
	t.found[v], t.low[v] = t.clock, t.clock
	t.stack = append(t.stack, v)
	for _, w := range t.users[v] {
		if t.found[w] == 0 {
			t.visit(w)
			t.low[v] = min(t.low[v], t.low[w])
		} else if !t.placed[w] {
			t.low[v] = min(t.low[v], t.found[w])
		}
	}
	if t.low[v] != t.found[v] {
		return
	}
	from := slices.Index(t.stack, v)
	knot := slices.Clone(t.stack[from:])
	t.stack = t.stack[:from]
	for _, w := range knot {
		t.placed[w] = true
	}
	slices.Sort(knot)
	t.knots = append(t.knots, knot)
}

// exact returns the best order of a knot by dynamic programming over its subsets:
// if the nodes of a set stand lowest, the fewest edges back among them, plus those
// into the next node, do not depend on how the rest stands (Lawler, "A comment on
// minimum feedback arc sets", IEEE Trans. Circuit Theory 11 (1964)).
func exact(knot []int, users [][]int) []int {
	n := len(knot)
	by := make([]uint32, n) // the users of a node, as a set of places in knot
	for i, v := range knot {
		for _, w := range users[v] {
			if j, in := slices.BinarySearch(knot, w); in {
				by[i] |= 1 << j
			}
		}
	}
	fewest := make([]int16, 1<<n)
	last := make([]int8, 1<<n) // the node on top of a set
	for set := uint32(1); set < 1<<n; set++ {
		least := int16(-1)
		for rest := set; rest != 0; rest &= rest - 1 {
			i := bits.TrailingZeros32(rest)
			below := set &^ (1 << i)
			if cost := fewest[below] + int16(bits.OnesCount32(by[i]&below)); least < 0 || cost < least {
				least, last[set] = cost, int8(i)
			}
		}
		fewest[set] = least
	}
	line := make([]int, n)
	set := uint32(1)<<n - 1
	for h := n - 1; h >= 0; h-- {
		line[h] = knot[last[set]]
		set &^= 1 << last[set]
	}
	return line
}

// rounds is how often search shakes the best order of a large knot.
const rounds = 400

// search returns a good order of a knot: from the greedy one, nodes are moved one at
// a time to their best places until none can be bettered, then the best order so far
// is shaken and the same done again.
func search(knot []int, users [][]int) []int {
	k := newMatrix(knot, users)
	chance := rand.New(rand.NewPCG(1, 2))
	line := k.greedy()
	k.improve(line)
	best, least := slices.Clone(line), k.back(line)
	for range rounds {
		copy(line, best)
		for range 2 + chance.IntN(6) {
			shift(line, chance.IntN(len(line)), chance.IntN(len(line)))
		}
		k.improve(line)
		if back := k.back(line); back <= least {
			copy(best, line)
			least = back
		}
	}
	for i, place := range best {
		best[i] = knot[place]
	}
	return best
}

// matrix tells of a knot which node, by its place in it, uses which.
type matrix [][]bool

func newMatrix(knot []int, users [][]int) matrix {
	m := make(matrix, len(knot))
	for i := range m {
		m[i] = make([]bool, len(knot))
	}
	for j, v := range knot {
		for _, w := range users[v] {
			if i, in := slices.BinarySearch(knot, w); in {
				m[i][j] = true
			}
		}
	}
	return m
}

// greedy builds an order from both ends: next at the bottom comes a node that uses
// none of the rest, or at the top one that none of the rest uses, or else at the
// bottom the node with the greatest excess of users over used (Eades, Lin, Smyth, "A
// fast and effective heuristic for the feedback arc set problem", Inf. Process. Lett.
// 47 (1993)).
func (m matrix) greedy() []int {
	var bottom, top []int
	rest := make([]int, len(m))
	for i := range rest {
		rest[i] = i
	}
	for len(rest) > 0 {
		next, raise, excess := 0, false, -len(m)
		for r, i := range rest {
			uses, users := m.among(i, rest)
			if raise = users == 0; raise || uses == 0 {
				next = r
				break
			}
			if users-uses > excess {
				next, excess = r, users-uses
			}
		}
		if raise {
			top = append(top, rest[next])
		} else {
			bottom = append(bottom, rest[next])
		}
		rest = slices.Delete(rest, next, next+1)
	}
	slices.Reverse(top)
	return append(bottom, top...)
}

// among counts how many of the rest node i uses, and how many use it.
func (m matrix) among(i int, rest []int) (uses, users int) {
	for _, j := range rest {
		if m[i][j] {
			uses++
		}
		if m[j][i] {
			users++
		}
	}
	return uses, users
}

// back counts the uses of a node above.
func (m matrix) back(line []int) int {
	n := 0
	for h, i := range line {
		for _, j := range line[h+1:] {
			if m[i][j] {
				n++
			}
		}
	}
	return n
}

// improve moves nodes until no move of one node lessens the uses that run back.
func (m matrix) improve(line []int) {
	for better := true; better; {
		better = false
		for h := range line {
			if to := m.place(line, h); to != h {
				shift(line, h, to)
				better = true
			}
		}
	}
}

// place returns the best height for the node at height h, h itself if none is better.
func (m matrix) place(line []int, h int) int {
	i, best, least := line[h], h, 0
	cost := 0 // against staying
	for to := h + 1; to < len(line); to++ {
		cost += gain(m, i, line[to])
		if cost < least {
			best, least = to, cost
		}
	}
	cost = 0
	for to := h - 1; to >= 0; to-- {
		cost -= gain(m, i, line[to])
		if cost < least {
			best, least = to, cost
		}
	}
	return best
}

// gain returns by how much the uses that run back grow when i moves up past j.
func gain(m matrix, i, j int) int {
	g := 0
	if m[j][i] {
		g++
	}
	if m[i][j] {
		g--
	}
	return g
}

// shift takes the element at from out and puts it in at to.
func shift(line []int, from, to int) {
	v := line[from]
	if from < to {
		copy(line[from:to], line[from+1:to+1])
	} else {
		copy(line[to+1:from+1], line[to:from])
	}
	line[to] = v
}
