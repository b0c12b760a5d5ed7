package element

import "archload/fem/vec3"

// variation collects the first and, if wanted, the second derivatives of a sum of products
// of vectors that go with moved nodes, by the nodes' movements δx and spins ω:
//
//	x = X + u + δx,   v = exp(ω) R V.
//
// Up to three nodes, six freedoms each. The products are those from which every strain measure
// of a shell and a beam at finite movements is made: of two differences of places (xx), of such
// a difference and a turning vector (xv), and of two turning vectors (vv).
type variation struct {
	width  int // freedoms: six a node
	second bool
	g      [18]float64
	k      [324]float64 // row-major, width wide
}

func (v *variation) addForce(at int, c float64, f [3]float64) {
	for a := range 3 {
		v.g[at+a] += c * f[a]
	}
}

// addUnit adds c to the diagonal of a block.
func (v *variation) addUnit(row, col int, c float64) {
	for a := range 3 {
		v.k[v.width*(row+a)+col+a] += c
	}
}

// addCross adds c e× to a block and its mirror image across the diagonal.
func (v *variation) addCross(row, col int, c float64, e [3]float64) {
	for a := range 3 {
		p, q := (a+1)%3, (a+2)%3
		v.k[v.width*(row+q)+col+p] += c * e[a]
		v.k[v.width*(row+p)+col+q] -= c * e[a]
		v.k[v.width*(col+p)+row+q] += c * e[a]
		v.k[v.width*(col+q)+row+p] -= c * e[a]
	}
}

// addTwice adds c (½ (d vᵀ + v dᵀ) - d·v 1) at the spin of a node: the second derivative of d · v
// by the spin of v.
func (v *variation) addTwice(at int, c float64, d, e [3]float64) {
	for a := range 3 {
		for b := range 3 {
			v.k[v.width*(at+a)+at+b] += c / 2 * (d[a]*e[b] + e[a]*d[b])
		}
	}
	v.addUnit(at, at, -c*vec3.Dot(d, e))
}

// xx adds c p · q, where p = Σ wp x and q = Σ wq x over the nodes.
func (v *variation) xx(c float64, wp, wq []float64, p, q [3]float64) {
	for i := range wp {
		v.addForce(6*i, c*wp[i], q)
		v.addForce(6*i, c*wq[i], p)
		if !v.second {
			continue
		}
		for j := range wp {
			v.addUnit(6*i, 6*j, c*(wp[i]*wq[j]+wq[i]*wp[j]))
		}
	}
}

// xv adds c d · e, where d = Σ w x over the nodes and e turns with node n.
func (v *variation) xv(c float64, w []float64, d [3]float64, n int, e [3]float64) {
	at := 6*n + 3
	v.addForce(at, c, vec3.Cross(e, d))
	for i, wi := range w {
		if wi == 0 {
			continue
		}
		v.addForce(6*i, c*wi, e)
		if v.second {
			v.addCross(6*i, at, -c*wi, e)
		}
	}
	if v.second {
		v.addTwice(at, c, d, e)
	}
}

// vv adds c e · f, where e turns with node m and f with another node n.
func (v *variation) vv(c float64, m int, e [3]float64, n int, f [3]float64) {
	i, j := 6*m+3, 6*n+3
	moment := vec3.Cross(e, f)
	v.addForce(i, c, moment)
	v.addForce(j, -c, moment)
	if !v.second {
		return
	}
	v.addTwice(i, c, e, f)
	v.addTwice(j, c, e, f)
	s := c * vec3.Dot(e, f)
	v.addUnit(i, j, s)
	v.addUnit(j, i, s)
	for a := range 3 {
		for b := range 3 {
			v.k[v.width*(i+a)+j+b] -= c * f[a] * e[b]
			v.k[v.width*(j+b)+i+a] -= c * f[a] * e[b]
		}
	}
}

// relative adds tau · ω, where ω is the turn of node n against node m, seen in the axes that
// turn with them: ω = ½ (f_2·g_3 - f_3·g_2, ...) with f those of m and g those of n.
func (v *variation) relative(tau [3]float64, m int, f *[3][3]float64, n int, g *[3][3]float64) {
	for a := range 3 {
		p, q := (a+1)%3, (a+2)%3
		// tau × e_a = tau_q e_p - tau_p e_q
		v.vv(-0.5, m, f[a], n, vec3.Sub(vec3.Scale(g[p], tau[q]), vec3.Scale(g[q], tau[p])))
	}
}

// addRow adds c r rᵀ.
func (v *variation) addRow(c float64, r *[18]float64) {
	for i := range v.width {
		for j := range v.width {
			v.k[v.width*i+j] += c * r[i] * r[j]
		}
	}
}

// byVectors passes from spins to the nodes' rotation vectors.
func (v *variation) byVectors(turns []attitude) {
	for n := range turns {
		at := 6*n + 3
		moment := [3]float64(v.g[at : at+3])
		turned := turns[n].byVector(moment)
		copy(v.g[at:], turned[:])
		if !v.second {
			continue
		}
		t := turns[n].spin()
		for r := range v.width { // columns, then rows
			row := v.k[v.width*r+at:][:3]
			old := [3]float64(row)
			for a := range 3 {
				row[a] = old[0]*t[0][a] + old[1]*t[1][a] + old[2]*t[2][a]
			}
		}
		for c := range v.width {
			old := [3]float64{v.k[v.width*at+c], v.k[v.width*(at+1)+c], v.k[v.width*(at+2)+c]}
			for a := range 3 {
				v.k[v.width*(at+a)+c] = old[0]*t[0][a] + old[1]*t[1][a] + old[2]*t[2][a]
			}
		}
		m := turns[n].bend(moment)
		for a := range 3 {
			for b := range 3 {
				v.k[v.width*(at+a)+at+b] += m[a][b]
			}
		}
	}
}

// stiffnessTo copies the second derivatives, symmetric to the last bit.
func (v *variation) stiffnessTo(k []float64) {
	for i := range v.width {
		k[v.width*i+i] = v.k[v.width*i+i]
		for j := range i {
			m := (v.k[v.width*i+j] + v.k[v.width*j+i]) / 2
			k[v.width*i+j], k[v.width*j+i] = m, m
		}
	}
}
