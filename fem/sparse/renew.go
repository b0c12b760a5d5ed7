package sparse

import "slices"

// Renew computes the factor of m, which differs in some blocks from was, the matrix whose
// Cholesky factor f is: what Factorize gives, to the last bit, in the time of the fronts
// that changed blocks enter and of those above them. The others are shared with f, which
// stays as it is. What these bring to the ones above is kept for the next time; where it is
// not yet known their subtrees are eliminated once more, so that the first of several
// changes at the same places costs the most. Errors are those of Factorize.
func (f *Factor) Renew(was, m *Matrix, workers int) (*Factor, error) {
	if f.signs != nil || !was.SamePattern(m) {
		return Factorize(m, f.a, workers)
	}
	changed := f.a.changed(was, m)
	g := &Factor{a: f.a, kern: f.kern, workers: max(workers, 1), parts: slices.Clone(f.parts), tri: slices.Clone(f.tri)}
	g.kept = f.keptFor(changed)
	todo, keep := make([]bool, len(changed)), make([]bool, len(changed))
	for k := len(todo) - 1; k >= 0; k-- {
		up := f.a.fronts[k].parent
		todo[k] = changed[k] || up >= 0 && todo[up] && g.kept[k] == nil
		keep[k] = !changed[k] && up >= 0 && changed[up]
	}
	for k, yes := range todo {
		if yes {
			g.parts[k] = nil
		}
	}
	c := g.computation(m, true, todo)
	c.keep = keep
	copy(c.updates, g.kept)
	if err := c.run(); err != nil {
		return nil, err
	}
	return g, nil
}

// changed tells of every front whether a block that differs between two matrices enters
// it or a front below it.
func (a *Analysis) changed(was, m *Matrix) []bool {
	out := make([]bool, len(a.fronts))
	for k := range a.fronts {
		f := &a.fronts[k]
		out[k] = out[k] || slices.ContainsFunc(a.entries[f.entry:f.entry+f.entryN], func(e entry) bool {
			at := blockLen * int(e.block)
			return !slices.Equal(was.val[at:at+blockLen], m.val[at:at+blockLen])
		})
		if out[k] && f.parent >= 0 {
			out[f.parent] = true
		}
	}
	return out
}

// keptFor are the updates known of fronts that are not changed: all, or if they would take
// more memory than the factor those that a changed front asks for.
func (f *Factor) keptFor(changed []bool) [][]float64 {
	kept, size := make([][]float64, len(changed)), 0
	for k, u := range f.kept {
		if !changed[k] {
			kept[k] = u
			size += len(u)
		}
	}
	for k := range kept {
		if up := f.a.fronts[k].parent; size > f.a.sizes.factor && up >= 0 && !changed[up] {
			kept[k] = nil
		}
	}
	return kept
}
