package element

// byMeasures sets c, which is zero, to the strain rows as linear forms in the measures: what
// membraneRows, shearRows and curvatureRows say in the facet's freedoms. bow is bowShares.
func (f *facet) byMeasures(c *[numRows][numMeasures]float64, bow *[3][3]float64) {
	for k := range 3 {
		c[rowStretch+k][byStretch+k] = 1
		c[rowDrill+k][byDrill] = 1
	}
	turns := f.turnsOf()
	for e := range f.edges {
		ed, at := &f.edges[e], byTurn+3*e
		slope, along := ed.slope(), [3]float64{ed.c, ed.s, 0}
		wide := ed.alpha * ed.length * ed.length / (12 * f.area)
		strain := [3]float64{ed.s * ed.s, ed.c * ed.c, -2 * ed.s * ed.c}
		for a := range 3 {
			mean := -ed.bow / 36 * along[a]
			for k := range 3 {
				bent := -bow[e][k] * ed.bow * slope[a]
				c[rowStretch+k][at+a] = wide*strain[k]*ed.normal[a] + bent
				mean += turns[k] * bent
			}
			for corner := range 3 {
				c[rowDrill+corner][at+a] = mean
			}
			c[rowDrill+ed.j][at+a] += ed.normal[a] / 3
			c[rowDrill+ed.i][at+a] -= ed.normal[a] / 3
		}
	}
	f.shearByGaps(c[rowStretch+3 : rowStretch+5])
	f.curvatureByTurns(c)
}

// slope gives the slope's change along the edge from the turn of its ends: b_t = c b_x + s b_y.
func (ed *edge) slope() [3]float64 { return [3]float64{-ed.s, ed.c, 0} }

// bowShares returns of each edge the strain xx, yy, xy per strain along it, over 12.
func (f *facet) bowShares() (share [3][3]float64) {
	var m [3][3]float64
	for e := range f.edges {
		ed := &f.edges[e]
		m[e] = [3]float64{ed.c * ed.c, ed.s * ed.s, ed.c * ed.s}
	}
	inv := invert3(m)
	for e := range share {
		for k := range 3 {
			share[e][k] = inv[k][e] / 12
		}
	}
	return share
}

// turnsOf is by how much the bow's strain xx, yy and xy turns the edges, as meanDrillRow has it.
func (f *facet) turnsOf() (w [3]float64) {
	for i := range f.edges {
		c, s := f.edges[i].c, f.edges[i].s
		w[0] -= c * s / 3
		w[1] += c * s / 3
		w[2] += (c*c - s*s) / 6
	}
	return w
}

// shearByGaps sets the mean shear strain xz, yz, as shearRows has it.
func (f *facet) shearByGaps(c [][numMeasures]float64) {
	er := [3]float64{2.0 / 3, 1.0 / 3, -1.0 / 3}
	es := [3]float64{1.0 / 3, 2.0 / 3, 1.0 / 3}
	a, b, det := f.xy[1], f.xy[2], 2*f.area
	for k := range er {
		c[0][byGap+k] = (b[1]*er[k] - a[1]*es[k]) / det
		c[1][byGap+k] = (a[0]*es[k] - b[0]*er[k]) / det
	}
}

// curvatureByTurns sets curvature and twist, as curvatureRows has them: a corner's rotation less
// the mean is a third of the turn that arrives less that which leaves.
func (f *facet) curvatureByTurns(c *[numRows][numMeasures]float64) {
	for e := range f.edges {
		ed := &f.edges[e]
		x, y := byTurn+3*e, byTurn+3*e+1
		g := [2]float64{(f.grad[ed.j][0] - f.grad[ed.i][0]) / 3, (f.grad[ed.j][1] - f.grad[ed.i][1]) / 3}
		c[rowBend][y] = g[0]
		c[rowBend+1][x] = -g[1]
		c[rowBend+2][y], c[rowBend+2][x] = g[1], -g[0]
		c[rowTwist][y], c[rowTwist][x] = g[1], g[0]
	}
}
