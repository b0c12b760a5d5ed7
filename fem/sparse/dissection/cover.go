package dissection

// bipartite is a graph between nl left and nr right nodes: the right neighbours
// of left node i are adj[ptr[i]:ptr[i+1]].
type bipartite struct {
	nl, nr   int
	ptr, adj []int32
}

// matching is a matching of a bipartite graph with the work space of the
// algorithm of Hopcroft and Karp (1973).
type matching struct {
	bipartite
	left, right []int32 // partner or -1
	level       []int32 // distance of a left node from the free left nodes
	next        []int32 // next edge to try
	queue       []int32
}

// minCover returns a smallest set of nodes that touches every edge, by Koenig's
// theorem: of the nodes Z reached from free left nodes on alternating paths, the
// left ones outside Z and the right ones inside.
func (b bipartite) minCover() (left, right []bool) {
	m := newMatching(b)
	left, right = make([]bool, b.nl), make([]bool, b.nr)
	for i := range left {
		left[i] = true
	}
	stack := make([]int32, 0, b.nl)
	for i, r := range m.left {
		if r < 0 {
			left[i] = false
			stack = append(stack, int32(i))
		}
	}
	for len(stack) > 0 {
		u := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, r := range b.adj[b.ptr[u]:b.ptr[u+1]] {
			if right[r] {
				continue
			}
			right[r] = true
			if v := m.right[r]; v >= 0 && left[v] {
				left[v] = false
				stack = append(stack, v)
			}
		}
	}
	return left, right
}

// newMatching returns a largest matching.
func newMatching(b bipartite) *matching {
	m := &matching{
		bipartite: b,
		left:      make([]int32, b.nl), right: make([]int32, b.nr),
		level: make([]int32, b.nl), next: make([]int32, b.nl),
	}
	for i := range m.left {
		m.left[i] = -1
	}
	for i := range m.right {
		m.right[i] = -1
	}
	for m.layer() {
		copy(m.next, b.ptr)
		for u, r := range m.left {
			if r < 0 {
				m.augment(int32(u))
			}
		}
	}
	return m
}

// layer computes the levels and reports whether an augmenting path exists.
func (m *matching) layer() bool {
	m.queue = m.queue[:0]
	for u, r := range m.left {
		m.level[u] = -1
		if r < 0 {
			m.level[u] = 0
			m.queue = append(m.queue, int32(u))
		}
	}
	found := false
	for h := 0; h < len(m.queue); h++ {
		u := m.queue[h]
		for _, r := range m.adj[m.ptr[u]:m.ptr[u+1]] {
			v := m.right[r]
			if v < 0 {
				found = true
			} else if m.level[v] < 0 {
				m.level[v] = m.level[u] + 1
				m.queue = append(m.queue, v)
			}
		}
	}
	return found
}

// augment looks for a path from left node u down the levels to a free right
// node and flips it. It recurses at most as deep as the path is long.
func (m *matching) augment(u int32) bool {
	for m.next[u] < m.ptr[u+1] {
		r := m.adj[m.next[u]]
		m.next[u]++
		v := m.right[r]
		if v < 0 || (m.level[v] == m.level[u]+1 && m.augment(v)) {
			m.left[u], m.right[r] = r, u
			return true
		}
	}
	return false
}
