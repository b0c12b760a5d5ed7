package dissection

// aroundMost bounds the nodes that Around takes in, relative to those that it surrounds: every one
// of them lies on the way of what is asked of the last nodes.
const aroundMost = 4

// Around returns the nodes of last, in their order, and after them those that lie between these and the
// shortest rim that surrounds them: the smallest set of nodes that every path out of last goes
// through. It is looked for no farther away than about aroundMost times as many nodes reach; of equals it is
// the nearest. A patch of last nodes that is ragged, or finely meshed within a coarser
// mesh, has a longer rim of its own, and all that is eliminated outside pays for that by its square.
func (g *Graph) Around(last []int32) []int32 {
	s := g.newSurrounder(last)
	if s == nil {
		return last
	}
	for s.augment() {
	}
	out := append(make([]int32, 0, 2*len(last)), last...)
	for v, from := range s.from[:g.Len()] {
		if from != unreached && s.far[v] != 0 {
			out = append(out, int32(v))
		}
	}
	return out
}

// surrounder finds a smallest set of nodes between some nodes and those far away, as many as there
// are paths from the ones to the others that share no node (Menger), by augmenting paths (Ford and
// Fulkerson 1956). Node v is an entry v and an exit n + v, between which one path passes.
type surrounder struct {
	*Graph
	last   []int32
	far    []int32 // edges from the nearest node of last; those to be kept out are outside
	before []int32 // the node before each on its path: free, or first where a path begins
	from   []int32 // by entry and exit: where the search came from
	queue  []int32
}

const (
	outside   = -1 // far
	free      = -1 // before
	first     = -2 // before, from
	unreached = -1 // from
)

// newSurrounder looks as far as it may; nil if nothing is left beyond.
func (g *Graph) newSurrounder(last []int32) *surrounder {
	n := g.Len()
	s := &surrounder{Graph: g, last: last, far: make([]int32, n), before: make([]int32, n), from: make([]int32, 2*n)}
	for v := range s.far {
		s.far[v], s.before[v] = outside, free
	}
	for _, v := range last {
		s.far[v] = 0
	}
	layer, within, beyond := last, len(last), false
	for step := int32(1); len(layer) > 0; step++ {
		var next []int32
		for _, v := range layer {
			for _, w := range g.Neighbours(v) {
				if s.far[w] == outside {
					s.far[w] = step
					next = append(next, w)
				}
			}
		}
		if within += len(next); within > aroundMost*len(last) {
			for _, w := range next {
				s.far[w] = outside
			}
			beyond = len(next) > 0
			break
		}
		layer = next
	}
	if !beyond {
		return nil
	}
	return s
}

// augment finds one more path, or says that there is none; then from tells what can still be reached: of
// the nodes of a smallest set the entries alone.
func (s *surrounder) augment() bool {
	n := int32(s.Len())
	for i := range s.from {
		s.from[i] = unreached
	}
	s.queue = s.queue[:0]
	for _, v := range s.last {
		s.reach(v, first)
	}
	for h := 0; h < len(s.queue); h++ {
		at := s.queue[h]
		if at < n {
			switch up := s.before[at]; {
			case up == free:
				s.reach(n+at, at)
			case up >= 0: // the path that comes by here may go another way from the node before
				s.reach(n+up, at)
			}
			continue
		}
		v := at - n
		for _, w := range s.Neighbours(v) {
			if s.far[w] == outside {
				s.lay(at)
				return true
			}
			s.reach(w, at)
		}
		if s.before[v] != free {
			s.reach(v, at)
		}
	}
	return false
}

// reach adds an entry or exit to the search.
func (s *surrounder) reach(at, from int32) {
	if s.from[at] == unreached {
		s.from[at] = from
		s.queue = append(s.queue, at)
	}
}

// lay lays the path that the search has found to an exit.
func (s *surrounder) lay(at int32) {
	n := int32(s.Len())
	for at != first {
		from := s.from[at]
		switch {
		case at >= n: // from an entry
		case from == first:
			s.before[at] = first
		case from-n == at: // its path has gone another way
			s.before[at] = free
		default:
			s.before[at] = from - n
		}
		at = from
	}
}
