package element

// pulled is a triangle at movements u, all vectors in the facet's axes, in which the measures of
// movedShell and what pulls at them are short sums: what an iteration asks for most often.
type pulled struct {
	f      *facet
	turns  [3]attitude
	shift  [3][3][3]float64 // of each corner: the change of the facet's axes that turn with it
	axes   [3][3][3]float64 // those axes
	h      [2][3]float64    // u,1 and u,2
	along  [2][3]float64    // x,1 and x,2
	turn   [3][3]float64    // measures byTurn, of each edge
	gap    [3]float64       // measures byGap
	drill  float64          // measure byDrill
	bow    [3][3]float64    // bowShares
	toward [3]float64       // turnsOf

	force  [3][3]float64 // on each corner, N
	moment [3][3]float64 // conjugate to its spin, N·mm
}

// PullTo sets f to the derivative of the strain energy by the freedoms u, N and N·mm, and
// returns the energy, N·mm. u are movements of any size, mm, and rotation vectors below a
// full turn, rad; a rigid motion of any size strains nothing. To first order it is K u with
// energy ½ uᵀ K u.
func (s *Shell) PullTo(f, u *[18]float64) (energy float64) {
	w := pulled{f: &s.frame}
	w.move(u)
	w.measure()
	e := w.strains()
	for r, v := range s.eased {
		e[r] -= v
	}
	force := s.forces(&e)
	for r := range force {
		energy += s.frame.area / 2 * e[r] * force[r]
		force[r] *= s.frame.area
	}
	w.pull(&force)
	w.toGlobal(f)
	return energy
}

// move brings movements and rotations into the facet's axes.
func (w *pulled) move(u *[18]float64) {
	ax := &w.f.axes
	for i := range 3 {
		var x, th [3]float64
		for a := range 3 {
			e := &ax[a]
			x[a] = e[0]*u[6*i] + e[1]*u[6*i+1] + e[2]*u[6*i+2]
			th[a] = e[0]*u[6*i+3] + e[1]*u[6*i+4] + e[2]*u[6*i+5]
		}
		w.turns[i] = newAttitude(th)
		w.turns[i].shiftsTo(&w.shift[i])
		w.axes[i] = w.shift[i]
		g := &w.f.grad[i]
		for a := range 3 {
			w.axes[i][a][a]++
			w.h[0][a] += g[0] * x[a]
			w.h[1][a] += g[1] * x[a]
		}
	}
	w.along = w.h
	w.along[0][0]++
	w.along[1][1]++
}

// shiftsTo sets d to R e - e of the axes e of theta's own frame, a row each.
func (t *attitude) shiftsTo(d *[3][3]float64) { t.seriesTo(d, t.a, t.b) }

// seriesTo sets d to the columns of p θ× + q θ×θ×, as rows.
func (t *attitude) seriesTo(d *[3][3]float64, p, q float64) {
	x, y, z := t.theta[0], t.theta[1], t.theta[2]
	xy, yz, zx := q*x*y, q*y*z, q*z*x
	x, y, z, xx, yy, zz := p*x, p*y, p*z, q*x*x, q*y*y, q*z*z
	d[0] = [3]float64{-yy - zz, xy + z, zx - y}
	d[1] = [3]float64{xy - z, -zz - xx, yz + x}
	d[2] = [3]float64{zx + y, yz - x, -xx - yy}
}

// measure fills the measures, free of the cancellation of what does not change, as movedShell has them.
func (w *pulled) measure() {
	for k := range w.f.edges {
		i, j := w.f.edges[k].i, w.f.edges[k].j
		d, g := &w.shift[i], &w.shift[j]
		w.turn[k] = [3]float64{
			(g[1][2] - d[1][2] - g[2][1] + d[2][1] + inner(&d[2], &g[1]) - inner(&d[1], &g[2])) / 2,
			(g[2][0] - d[2][0] - g[0][2] + d[0][2] + inner(&d[0], &g[2]) - inner(&d[2], &g[0])) / 2,
			(g[0][1] - d[0][1] - g[1][0] + d[1][0] + inner(&d[1], &g[0]) - inner(&d[0], &g[1])) / 2,
		}
	}
	for k, ends := range gapEdges {
		p, q := &w.f.xy[ends[0]], &w.f.xy[ends[1]]
		x, y := q[0]-p[0], q[1]-p[1]
		m, n := &w.shift[ends[0]][2], &w.shift[ends[1]][2]
		sum := w.h[0][2]*x + w.h[1][2]*y
		for a := range 3 {
			sum += (w.along[0][a]*x + w.along[1][a]*y) * (m[a] + n[a]) / 2
		}
		w.gap[k] = sum
	}
	w.drill = (w.h[1][0] - w.h[0][1]) / 2
	for i := range w.shift {
		w.drill += (inner(&w.shift[i][0], &w.along[1]) - inner(&w.shift[i][1], &w.along[0])) / 6
	}
}

func inner(a, b *[3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// strains are byMeasures of the measures, and the squares of the edges' changes of slope (movedShell.strain).
func (w *pulled) strains() (e [numRows]float64) {
	f := w.f
	w.bow, w.toward = f.bowShares(), f.turnsOf()
	e[rowStretch] = w.h[0][0] + inner(&w.h[0], &w.h[0])/2
	e[rowStretch+1] = w.h[1][1] + inner(&w.h[1], &w.h[1])/2
	e[rowStretch+2] = w.h[0][1] + w.h[1][0] + inner(&w.h[0], &w.h[1])
	mean := w.drill
	for k := range f.edges {
		ed, bow, t := &f.edges[k], &w.bow[k], &w.turn[k]
		slope, along, drill := ed.c*t[1]-ed.s*t[0], ed.c*t[0]+ed.s*t[1], inner(&ed.normal, t)
		wide, bent := ed.wide(f)*drill, -ed.bow*slope
		e[rowStretch] += wide*ed.s*ed.s + bow[0]*(bent+slope*slope/2)
		e[rowStretch+1] += wide*ed.c*ed.c + bow[1]*(bent+slope*slope/2)
		e[rowStretch+2] += -2*wide*ed.s*ed.c + bow[2]*(bent+slope*slope/2)
		mean += inner(&w.toward, bow)*bent - ed.bow/36*along
		e[rowDrill+ed.j] += drill / 3
		e[rowDrill+ed.i] -= drill / 3
		x, y := (f.grad[ed.j][0]-f.grad[ed.i][0])/3, (f.grad[ed.j][1]-f.grad[ed.i][1])/3
		e[rowBend] += x * t[1]
		e[rowBend+1] -= y * t[0]
		e[rowBend+2] += y*t[1] - x*t[0]
		e[rowTwist] += y*t[1] + x*t[0]
	}
	for k := range 3 {
		e[rowDrill+k] += mean
	}
	r, s := f.gapShares(&w.gap)
	a, b, det := &f.xy[1], &f.xy[2], 2*f.area
	e[rowStretch+3], e[rowStretch+4] = (b[1]*r-a[1]*s)/det, (a[0]*s-b[0]*r)/det
	return e
}

// wide is the mean strain across an edge's direction for each unit of its drilling turn.
func (ed *edge) wide(f *facet) float64 { return ed.alpha * ed.length * ed.length / (12 * f.area) }

// gapShares are the shear strains along the edges 1-2 and 1-3, times these, of shearByGaps.
func (f *facet) gapShares(gap *[3]float64) (r, s float64) {
	return (2*gap[0] + gap[1] - gap[2]) / 3, (gap[0] + 2*gap[1] + gap[2]) / 3
}

// pull finds forces and moments from those conjugate to the strains, times the area: the transpose of
// strains, then of measure.
func (w *pulled) pull(n *[numRows]float64) {
	w.pullStretch(n)
	w.pullGaps(n)
	f := w.f
	drills := n[rowDrill] + n[rowDrill+1] + n[rowDrill+2]
	for k := range f.edges {
		ed, bow, t := &f.edges[k], &w.bow[k], &w.turn[k]
		slope := ed.c*t[1] - ed.s*t[0]
		drill := ed.wide(f)*(ed.s*ed.s*n[rowStretch]+ed.c*ed.c*n[rowStretch+1]-2*ed.s*ed.c*n[rowStretch+2]) + (n[rowDrill+ed.j]-n[rowDrill+ed.i])/3
		bent := (bow[0]*n[rowStretch]+bow[1]*n[rowStretch+1]+bow[2]*n[rowStretch+2])*(slope-ed.bow) - drills*inner(&w.toward, bow)*ed.bow
		along := -ed.bow / 36 * drills
		x, y := (f.grad[ed.j][0]-f.grad[ed.i][0])/3, (f.grad[ed.j][1]-f.grad[ed.i][1])/3
		w.pullTurn(ed.i, ed.j, [3]float64{
			ed.normal[0]*drill - ed.s*bent + ed.c*along - y*n[rowBend+1] - x*n[rowBend+2] + x*n[rowTwist],
			ed.normal[1]*drill + ed.c*bent + ed.s*along + x*n[rowBend] + y*n[rowBend+2] + y*n[rowTwist],
			ed.normal[2] * drill,
		})
	}
}

// pullStretch pulls at the corners' plane and its mean drilling turn.
func (w *pulled) pullStretch(n *[numRows]float64) {
	var by [2][3]float64 // conjugate to u,1 and u,2
	c := (n[rowDrill] + n[rowDrill+1] + n[rowDrill+2]) / 6
	for a := range 3 {
		by[0][a] = n[rowStretch]*w.along[0][a] + n[rowStretch+2]*w.along[1][a] - c*(w.axes[0][1][a]+w.axes[1][1][a]+w.axes[2][1][a])
		by[1][a] = n[rowStretch+1]*w.along[1][a] + n[rowStretch+2]*w.along[0][a] + c*(w.axes[0][0][a]+w.axes[1][0][a]+w.axes[2][0][a])
	}
	for i := range 3 {
		g := &w.f.grad[i]
		for a := range 3 {
			w.force[i][a] += g[0]*by[0][a] + g[1]*by[1][a]
		}
		addCrossed(&w.moment[i], c, &w.axes[i][0], &w.along[1])
		addCrossed(&w.moment[i], -c, &w.axes[i][1], &w.along[0])
	}
}

// pullGaps pulls at the shear gaps.
func (w *pulled) pullGaps(n *[numRows]float64) {
	a, b, det := &w.f.xy[1], &w.f.xy[2], 2*w.f.area
	r := (b[1]*n[rowStretch+3] - b[0]*n[rowStretch+4]) / det / 3
	s := (a[0]*n[rowStretch+4] - a[1]*n[rowStretch+3]) / det / 3
	for k, t := range [3]float64{2*r + s, r + 2*s, s - r} {
		i, j, c := gapEdges[k][0], gapEdges[k][1], t/2
		p, q := &w.f.xy[i], &w.f.xy[j]
		x, y := q[0]-p[0], q[1]-p[1]
		var d [3]float64
		m, o := &w.axes[i][2], &w.axes[j][2]
		for a := range 3 {
			d[a] = w.along[0][a]*x + w.along[1][a]*y
			f := c * (m[a] + o[a])
			w.force[i][a] -= f
			w.force[j][a] += f
		}
		addCrossed(&w.moment[i], c, m, &d)
		addCrossed(&w.moment[j], c, o, &d)
	}
}

// pullTurn pulls with tau at the turn of corner j against corner i, as variation.relative has it.
func (w *pulled) pullTurn(i, j int, tau [3]float64) {
	f, g := &w.axes[i], &w.axes[j]
	var moment [3]float64
	for a := range 3 {
		p, q := next[a], next[next[a]]
		var e [3]float64
		for c := range 3 {
			e[c] = tau[q]*g[p][c] - tau[p]*g[q][c]
		}
		addCrossed(&moment, -0.5, &f[a], &e)
	}
	for a, m := range moment {
		w.moment[i][a] += m
		w.moment[j][a] -= m
	}
}

// next is the axis after another.
var next = [3]int{1, 2, 0}

// addCrossed adds c a × b.
func addCrossed(to *[3]float64, c float64, a, b *[3]float64) {
	to[0] += c * (a[1]*b[2] - a[2]*b[1])
	to[1] += c * (a[2]*b[0] - a[0]*b[2])
	to[2] += c * (a[0]*b[1] - a[1]*b[0])
}

// toGlobal passes from spins to rotation vectors and from the facet's axes to the global ones.
func (w *pulled) toGlobal(f *[18]float64) {
	ax := &w.f.axes
	for i := range 3 {
		var spin [3][3]float64 // T - 1, its columns as rows
		w.turns[i].seriesTo(&spin, w.turns[i].b, w.turns[i].c)
		n, m := &w.force[i], &w.moment[i]
		by := [3]float64{m[0] + inner(&spin[0], m), m[1] + inner(&spin[1], m), m[2] + inner(&spin[2], m)}
		for a := range 3 {
			f[6*i+a] = ax[0][a]*n[0] + ax[1][a]*n[1] + ax[2][a]*n[2]
			f[6*i+3+a] = ax[0][a]*by[0] + ax[1][a]*by[1] + ax[2][a]*by[2]
		}
	}
}
