package dissection

// part parts the nodes that are to come last into those with a neighbour outside them, the
// rim, and those that only the rim joins with the rest of the graph, both in the order given.
// What hangs together without touching the rim counts for it.
func (g *Graph) part(last []int32) (inner, rim []int32) {
	const outside, unseen, seen = 0, 1, 2
	mark := make([]uint8, g.Len())
	for _, v := range last {
		mark[v] = unseen
	}
	touches := make([]bool, g.Len())
	var queue []int32
	for _, v := range last {
		for _, w := range g.Neighbours(v) {
			touches[v] = touches[v] || mark[w] == outside
		}
		if touches[v] {
			queue = append(queue, v)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		for _, w := range g.Neighbours(queue[0]) {
			if mark[w] == unseen && !touches[w] {
				mark[w] = seen
				queue = append(queue, w)
			}
		}
	}
	for _, v := range last {
		if mark[v] == seen {
			inner = append(inner, v)
		} else {
			rim = append(rim, v)
		}
	}
	return inner, rim
}

// only returns the graph of some nodes alone.
func (g *Graph) only(nodes []int32) *Graph {
	part := make([]int32, g.Len())
	for i := range part {
		part[i] = 1
	}
	for _, v := range nodes {
		part[v] = 0
	}
	return g.split(part, 1)[0]
}
