package sparse

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
	u, by := f.products(cols)
	for a, i := range by {
		for b, j := range by[:a+1] {
			v := -u[triOff(a/panelRows)+a%panelRows+panelRows*b]
			c[i*n+j], c[j*n+i] = v, v
		}
	}
	return c
}

// products is -C as a lower triangle of the columns in the order by.
func (f *Factor) products(cols []Column) (u []float64, by []int) {
	if len(f.a.last) == 0 {
		panic("sparse: Compliance: the analysis has no last nodes")
	}
	r := f.newReduction(cols)
	u = make([]float64, triLen(Block*r.units))
	count, group := groups(0, panels(Block*r.units))
	work := float64(panelRows*count) * float64(r.width*r.width)
	team := newTeam(f.workers)
	team.slots <- struct{}{}
	team.split(count, work, func(g int) { r.eliminate(group(g)) })
	team.split(count, work, func(g int) {
		lo, hi := group(count - 1 - g) // the longest rows first
		r.multiply(u, lo, hi)
	})
	return u, r.by
}
