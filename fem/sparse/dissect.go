package sparse

import "sync"

// leafNodes is the size below which a piece of the mesh is no longer cut but
// ordered by minimum degree.
const leafNodes = 8

// parallelNodes is the size from which the two halves are ordered at the same
// time; it changes the speed, not the order.
const parallelNodes = 2500

// dissect writes a nested dissection order of g to out: both halves first, the
// separator last, and so on inside the halves (George 1973).
func (g *graph) dissect(out []int32, c *cutter) {
	if g.len() == 0 {
		return
	}
	if g.len() <= leafNodes {
		g.minDegree(out)
		return
	}
	if label, count := g.components(); count > 1 {
		for _, sub := range g.split(label, count) {
			sub.dissect(out[:sub.len()], c)
			out = out[sub.len():]
		}
		return
	}
	side := c.cut(g)
	if side == nil {
		g.byDegree(out)
		return
	}
	sep := len(out)
	for i := len(side) - 1; i >= 0; i-- {
		if side[i] == separator {
			sep--
			out[sep] = g.node[i]
		}
	}
	halves := g.split(side, 2)
	first, second := out[:halves[0].len()], out[halves[0].len():sep]
	if g.len() < parallelNodes {
		halves[0].dissect(first, c)
		halves[1].dissect(second, c)
		return
	}
	var wg sync.WaitGroup
	wg.Go(func() { halves[0].dissect(first, &cutter{whole: c.whole}) })
	halves[1].dissect(second, c)
	wg.Wait()
}
