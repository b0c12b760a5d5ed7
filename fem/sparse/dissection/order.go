package dissection

import "sync"

// leafNodes is the size below which a piece of the mesh is no longer cut but
// ordered by minimum degree.
const leafNodes = 8

// parallelNodes is the size from which the two halves are ordered at the same
// time; it changes the speed, not the order.
const parallelNodes = 2500

// Order returns the nodes of g in an order that keeps the factor of its matrix
// sparse: first those whose elimination joins no others, then the rest by nested
// dissection, then those of last, which must be different. Of these the ones whose
// neighbours are all among them come first, by nested dissection, and then the others, rim
// in number, as they are given. xy are plan coordinates; nil, or any that are not finite,
// make it work on the graph alone.
func (g *Graph) Order(xy [][2]float64, last []int32) (order []int32, rim int) {
	whole := *g
	if usable(xy) {
		whole.xy = xy
	}
	order = make([]int32, g.Len())
	rest, end := &whole, g.Len()-len(last)
	if len(last) > 0 {
		inner, outer := whole.part(last)
		core := whole.only(inner)
		core.dissect(order[end:end+len(inner)], &cutter{whole: core.Len()})
		copy(order[end+len(inner):], outer)
		rim = len(outer)
		part := make([]int32, g.Len())
		for _, v := range last {
			part[v] = 1
		}
		rest = whole.split(part, 1)[0]
	}
	rest, places := rest.peel(order[:end])
	rest.walked().dissect(places, &cutter{whole: rest.Len()})
	return order, rim
}

// dissect writes a nested dissection order of g to out: both halves first, the
// separator last, and so on inside the halves (George 1973).
func (g *Graph) dissect(out []int32, c *cutter) {
	if g.Len() == 0 {
		return
	}
	if g.Len() <= leafNodes {
		g.minDegree(out)
		return
	}
	if label, count := g.components(); count > 1 {
		for _, sub := range g.split(label, count) {
			sub.dissect(out[:sub.Len()], c)
			out = out[sub.Len():]
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
			out[sep] = g.Node[i]
		}
	}
	halves := g.split(side, 2)
	first, second := out[:halves[0].Len()], out[halves[0].Len():sep]
	if g.Len() < parallelNodes {
		halves[0].dissect(first, c)
		halves[1].dissect(second, c)
		return
	}
	var wg sync.WaitGroup
	wg.Go(func() { halves[0].dissect(first, &cutter{whole: c.whole}) })
	halves[1].dissect(second, c)
	wg.Wait()
}
