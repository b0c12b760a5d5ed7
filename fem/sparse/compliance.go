package sparse

import "archload/fem/sparse/team"

// Column is a sparse vector: Vals[i] at degree of freedom Dofs[i] (6 node + 0..5).
// Repeated degrees of freedom add up.
type Column struct {
	Dofs []int32
	Vals []float64
}

// Compliance returns the dense matrix C, row-major and exactly symmetric, with
// C[i][j] = cols[i]ᵀ K⁻¹ cols[j]. The columns are zero outside the `last` nodes of
// the analysis: these were eliminated last, with factor L, and so
// cᵢᵀ K⁻¹ cⱼ = (L⁻¹ cᵢ)ᵀ (L⁻¹ cⱼ) without the rest of the mesh. A column stays zero but in
// the fronts that it touches and those above them. It panics if a column
// touches another node or its slices differ in length.
func (f *Factor) Compliance(cols []Column) []float64 {
	n := len(cols)
	c := make([]float64, n*n)
	if n == 0 {
		return c
	}
	r := f.newReduction(cols)
	defer r.end()
	u, by := r.products(cols), r.by
	row := make([]int, n) // where those of u begin
	for a := range row {
		row[a] = triOff(a/panelRows) + a%panelRows
	}
	team.New(f.workers).Each((n+copyRows-1)/copyRows, func(g int) {
		for a := copyRows * g; a < min(copyRows*(g+1), n); a++ {
			to := c[by[a]*n : (by[a]+1)*n]
			for b, j := range by[:a] {
				to[j] = -u[row[a]+panelRows*b]
			}
			for b := a; b < n; b++ {
				to[by[b]] = -u[row[b]+panelRows*a]
			}
		}
	})
	return c
}

// copyRows is how many rows of the compliance are copied at a time.
const copyRows = 32

// products is -C as a lower triangle of the columns in their order, in memory of the reduction.
func (r *reduction) products(cols []Column) []float64 {
	r.u = r.pool.Get(triLen(Block * r.units))
	count, group := groups(0, panels(Block*r.units))
	width := Block * (r.f.a.n - r.f.a.end)
	work := float64(panelRows*count) * float64(width*width)
	crew := team.New(r.f.workers)
	crew.Enter()
	crew.Split(len(r.blocks), work, func(b int) { r.fill(b, cols) })
	crew.Split(count, work, func(g int) { r.eliminate(group(g)) })
	crew.Split(count, work, func(g int) { r.multiply(group(count - 1 - g)) }) // the longest rows first
	return r.u
}
