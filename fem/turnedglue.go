package fem

import (
	"slices"

	"archload/fem/element"
	"archload/fem/vec3"
)

// gluedEnd is an end of a glued beam at movements of any size.
type gluedEnd struct {
	*glue
	corners [3]int      // of the plate's triangle, among the beam's nodes
	own     int         // freedom of the lean; -1 without one
	u       [18]float64 // movements of the corners
	section element.Lean
}

// endAt moves an end.
func (e *gluedBeam) endAt(end int, u []float64) *gluedEnd {
	g := &gluedEnd{glue: &e.glue[end], own: -1}
	var turn [3]float64
	for c, k := range g.at {
		at := int(e.at[end][k])
		g.corners[c] = at
		copy(g.u[6*c:6*c+6], u[6*at:6*at+6])
		turn = vec3.Add(turn, vec3.Scale([3]float64(g.u[6*c+3:6*c+6]), g.on.L[c]))
	}
	if g.lean >= 0 {
		g.own = 6*int(e.at[end][g.lean]) + leanDof
		g.section = element.NewLean(turn, g.axis, u[g.own])
	}
	return g
}

// movedEnds is ends with the plate's face and the leaning sections turned by any angle.
func (e *gluedBeam) movedEnds(u []float64) [12]float64 {
	ub := e.ends(u)
	for end := range 2 {
		g := e.endAt(end, u)
		d := g.plate.TurnedAt(g.on.L, g.on.Zeta, &g.u)
		copy(ub[6*end:], d[:])
		if g.own >= 0 {
			v := g.section.Vector()
			copy(ub[6*end+3:], v[:])
		}
	}
	return ub
}

func (e *gluedBeam) PullTo(f, u []float64) float64 {
	var fb [12]float64
	ub := e.movedEnds(u)
	energy := e.beam.PullTo(&fb, &ub)
	clear(f)
	for end := range 2 {
		g := e.endAt(end, u)
		own := g.plate.TurnedForce(g.on.L, g.on.Zeta, [3]float64(fb[6*end:6*end+3]), &g.u)
		moment := [3]float64(fb[6*end+3 : 6*end+6])
		if g.own >= 0 {
			m := g.section.Moment(moment)
			f[g.own] += m[3]
			for c, l := range g.on.L {
				for k := range 3 {
					own[6*c+3+k] += l * m[k]
				}
			}
		}
		for c, at := range g.corners {
			for k := range 6 {
				f[6*at+k] += own[6*c+k]
			}
		}
		if g.own < 0 {
			axpyRows(f, moment, e.rows[(6*end+3)*len(u):])
		}
	}
	return energy
}

// axpyRows adds c times three rows.
func axpyRows(f []float64, c [3]float64, rows []float64) {
	for k, v := range c {
		axpyRow(f, v, rows[k*len(f):(k+1)*len(f)])
	}
}

func (e *gluedBeam) TangentTo(k, u []float64) {
	var kb [144]float64
	var fb [12]float64
	ub := e.movedEnds(u)
	e.beam.TangentTo(&kb, &ub)
	e.beam.PullTo(&fb, &ub)
	rows, ends := slices.Clone(e.rows), [2]*gluedEnd{e.endAt(0, u), e.endAt(1, u)}
	for end, g := range ends {
		g.turnRows(rows[6*end*len(u):], len(u))
	}
	congruentTo(k, kb[:], rows)
	for end, g := range ends {
		g.bendTo(k, len(u), fb[6*end:6*end+6])
	}
}

// turnRows brings the rows of the beam's six movements at an end, of some width, to where it has turned.
func (g *gluedEnd) turnRows(rows []float64, width int) {
	for i, by := range g.plate.TurnedRows(g.on.L, g.on.Zeta, &g.u) {
		for c, at := range g.corners {
			copy(rows[i*width+6*at:][:6], by[6*c:6*c+6])
		}
	}
	if g.own < 0 {
		return
	}
	for i, by := range g.section.Rows() {
		row := rows[(3+i)*width:][:width]
		clear(row)
		for c, at := range g.corners {
			for j := range 3 {
				row[6*at+3+j] = g.on.L[c] * by[j]
			}
		}
		row[g.own] = by[3]
	}
}

// bendPlate adds those of the place on the plate.
func (g *gluedEnd) bendPlate(k []float64, width int, f []float64) {
	bend := g.plate.TurnedBend(g.on.L, g.on.Zeta, [3]float64(f[:3]), &g.u)
	for c, at := range g.corners {
		for i := range 6 {
			for d, to := range g.corners {
				for j := range 6 {
					k[(6*at+i)*width+6*to+j] += bend[18*(6*c+i)+6*d+j]
				}
			}
		}
	}
}

// bendTo adds the second derivatives of the beam's movements at an end times the forces there.
func (g *gluedEnd) bendTo(k []float64, width int, f []float64) {
	g.bendPlate(k, width, f)
	if g.own < 0 {
		return
	}
	lean := g.section.Bend([3]float64(f[3:6]))
	k[g.own*width+g.own] += lean[3][3]
	for c, at := range g.corners {
		for i := range 3 {
			row := 6*at + 3 + i
			k[row*width+g.own] += g.on.L[c] * lean[i][3]
			k[g.own*width+row] += g.on.L[c] * lean[3][i]
			for d, to := range g.corners {
				for j := range 3 {
					k[row*width+6*to+3+j] += g.on.L[c] * g.on.L[d] * lean[i][j]
				}
			}
		}
	}
}
