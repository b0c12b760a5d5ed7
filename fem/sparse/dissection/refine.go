package dissection

const (
	refineNodes  = 60 // smallest graph whose cuts are refined
	refinePasses = 4
)

// refiner improves a separator node by node, after Fiduccia and Mattheyses (1982): a
// node of the separator goes to one side and draws its neighbours on the other side
// in. Every pass moves each node at most once, takes the best move also when it is
// a loss, and in the end returns to the best separator met.
type refiner struct {
	g     *Graph
	side  []int32
	nodes [3]int32   // number on each side and in the separator
	sep   []int32    // the separator
	at    []int32    // where a node stands in sep
	touch [][2]int16 // of a node of the separator: neighbours on either side
	moved []bool     // left the separator in this pass; false between passes
	log   []change   // of this pass
}

// change is one node's move.
type change struct{ node, from int32 }

// refine improves the side of every node of g, n of each kind, and returns the
// score.
func (r *refiner) refine(g *Graph, side []int32, n [3]int32) float64 {
	r.g, r.side, r.nodes, r.sep = g, side, n, r.sep[:0]
	if len(r.at) < g.Len() {
		r.at, r.touch, r.moved = make([]int32, g.Len()), make([][2]int16, g.Len()), make([]bool, g.Len())
	}
	for i, s := range side {
		if s == separator {
			r.enter(int32(i))
		}
	}
	best := r.score()
	for range refinePasses {
		before := best
		if best = r.pass(best); !(best < before) {
			break
		}
	}
	return best
}

func (r *refiner) score() float64 {
	return score(r.nodes[separator], r.nodes[leftSide], r.nodes[rightSide])
}

// enter lists a node of the separator and counts its neighbours.
func (r *refiner) enter(v int32) {
	r.at[v] = int32(len(r.sep))
	r.sep = append(r.sep, v)
	var n [3]int16
	for _, u := range r.g.Neighbours(v) {
		n[r.side[u]]++
	}
	r.touch[v] = [2]int16{n[leftSide], n[rightSide]}
}

// leave takes a node off the list.
func (r *refiner) leave(v int32) {
	last := r.sep[len(r.sep)-1]
	r.sep[r.at[v]] = last
	r.at[last] = r.at[v]
	r.sep = r.sep[:len(r.sep)-1]
}

// pass makes one pass and returns the best score, to which it goes back.
func (r *refiner) pass(best float64) float64 {
	r.log = r.log[:0]
	kept, idle := 0, 0
	patience := 10 + len(r.sep)/4
	for idle < patience {
		v, to := r.choose()
		if v < 0 {
			break
		}
		r.move(v, to)
		idle++
		if s := r.score(); s < best {
			best, kept, idle = s, len(r.log), 0
		}
	}
	for _, c := range r.log {
		r.moved[c.node] = false
	}
	for k := len(r.log) - 1; k >= kept; k-- {
		r.set(r.log[k].node, r.log[k].from)
	}
	return best
}

// choose returns the move that leaves the smallest separator, of equals the one to
// the smaller side, then the first of the list; -1 if there is none.
func (r *refiner) choose() (v, to int32) {
	v = -1
	most := [2]int32{}
	limit := int32((1 - minShare) * float64(r.g.Len()))
	light := int32(leftSide)
	if r.nodes[rightSide] < r.nodes[leftSide] {
		light = rightSide
	}
	for s := range most {
		most[s] = limit - r.nodes[s]
	}
	cost := int16(1<<15 - 1)
	for _, u := range r.sep {
		if r.moved[u] {
			continue
		}
		t := r.touch[u]
		if c := t[1-light]; c < cost && most[light] > 0 {
			v, to, cost = u, light, c
		}
		if c := t[light]; c < cost && most[1-light] > 0 {
			v, to, cost = u, 1-light, c
		}
	}
	return v, to
}

// move brings a node of the separator to a side and its neighbours on the other
// side into the separator.
func (r *refiner) move(v, to int32) {
	r.moved[v] = true
	r.log = append(r.log, change{v, separator})
	r.set(v, to)
	for _, u := range r.g.Neighbours(v) {
		if r.side[u] == 1-to {
			r.log = append(r.log, change{u, 1 - to})
			r.set(u, separator)
		}
	}
}

// set changes the side of a node and keeps all counts.
func (r *refiner) set(v, to int32) {
	from := r.side[v]
	r.nodes[from]--
	r.nodes[to]++
	r.side[v] = to
	for _, u := range r.g.Neighbours(v) {
		if r.side[u] != separator {
			continue
		}
		if from != separator {
			r.touch[u][from]--
		}
		if to != separator {
			r.touch[u][to]++
		}
	}
	if from == separator {
		r.leave(v)
	}
	if to == separator {
		r.enter(v)
	}
}
