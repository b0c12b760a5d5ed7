package surface

import (
	"cmp"
	"math"

	"archload/fem/parallel"
	"archload/mesh/plane"
)

// The roughness of a fitted surface is the integral of its squared third
// derivatives over the plate, with the one along the normal n of the outline
// made cheap in a strip along the outline: a recurve trough runs parallel to
// the edge, so it is rough across the edge and smooth along it. With t square
// to n, the integrand is
//
//	a² f_nnn² + 3 f_nnt² + 3 f_ntt² + f_ttt²,
//
// which is rotation-free for a = 1.
const (
	edgeWeight  = 0.03 // a at the outline, 1
	stripInner  = 35.0 // distance from the outline to which a keeps that value, mm, for a recurve 22 mm in
	stripFade   = 20.0 // width over which it rises to 1, mm, likewise
	usualAt     = 22.0 // distance of the recurve's floor from the outline, mm
	outerMargin = 6.0  // the integral reaches this far beyond the outline, mm
	faintWeight = 1e-6 // of the same integral with a = 1 over the whole box: keeps it regular outside
	flatWeight  = 1e-8 // /mm², of squared second derivatives: decides what fewer than six data leave open
	flatOpen    = 1e-4 // /mm², the same where no rim height holds the edge: no wild running on beyond the data
	quadPerCell = 2    // midpoints of the quadrature along a cell's edge
)

// roughness tells where the integrand is weakened, and what is added to it.
type roughness struct {
	rim   *rimLine // outline; the integral ends outerMargin beyond it
	strip float64  // scale of the strip, recurve distance over usualAt, 1; 0: a = 1 everywhere
	flat  float64  // weight of squared second derivatives, /mm²
}

// weight returns a at a distance d from the outline.
func (r roughness) weight(d float64) float64 {
	if r.strip == 0 {
		return 1
	}
	u := min(max((d/r.strip-stripInner)/stripFade, 0), 1)
	return edgeWeight + (1-edgeWeight)*u*u*(3-2*u)
}

// even is the distance from the outline beyond which a = 1, mm.
func (r roughness) even() float64 {
	if r.strip == 0 {
		return -outerMargin
	}
	return r.strip * (stripInner + stripFade)
}

// thirds are the stencils of the third derivatives of f at a place of a cell,
// by x three times, twice, once and not at all, else by y; 1/mm³.
type thirds [4][16]float64

// cubes returns the third-derivative stencils at the quadrature midpoints.
func (g grid) cubes() (t [quadPerCell][quadPerCell]thirds) {
	scale := 1 / (g.size * g.size * g.size)
	for p := range quadPerCell {
		bx := basis((float64(p) + 0.5) / quadPerCell)
		for q := range quadPerCell {
			by := basis((float64(q) + 0.5) / quadPerCell)
			for k := range 4 {
				for c := range 16 {
					t[p][q][k][c] = bx[3-k][c%4] * by[k][c/4] * scale
				}
			}
		}
	}
	return t
}

// turned returns the coefficients by which f_nnn, f_nnt, f_ntt and f_ttt
// follow from the third derivatives by x and y in the order of thirds; n is
// the first axis, t = n turned by 90 degrees.
func turned(n plane.Point) (r [4][4]float64) {
	c, s := n[0], n[1] // n = (c, s), t = (−s, c)
	r[0] = [4]float64{c * c * c, 3 * c * c * s, 3 * c * s * s, s * s * s}
	r[1] = [4]float64{-c * c * s, c*c*c - 2*c*s*s, 2*c*c*s - s*s*s, c * s * s}
	r[2] = [4]float64{c * s * s, s*s*s - 2*c*c*s, c*c*c - 2*c*s*s, c * c * s}
	r[3] = [4]float64{-s * s * s, 3 * c * s * s, -3 * c * c * s, c * c * c}
	return r
}

// gram returns Σ w_k r_kᵀ r_k for the four rotated derivatives.
func gram(n plane.Point, a, area float64) (m [4][4]float64) {
	rows := turned(n)
	for k, w := range [4]float64{a * a * area, 3 * area, 3 * area, area} {
		for i := range 4 {
			for j := range 4 {
				m[i][j] += w * rows[k][i] * rows[k][j]
			}
		}
	}
	return m
}

// addGram adds the upper half of tᵀ m t to dst.
func addGram(dst *[16][16]float64, t *thirds, m *[4][4]float64) {
	for b := range 16 {
		var v [4]float64 // m t, column b
		for i := range 4 {
			v[i] = m[i][0]*t[0][b] + m[i][1]*t[1][b] + m[i][2]*t[2][b] + m[i][3]*t[3][b]
		}
		for a := range b + 1 {
			dst[a][b] += t[0][a]*v[0] + t[1][a]*v[1] + t[2][a]*v[2] + t[3][a]*v[3]
		}
	}
}

// addRoughness fills R of the system. Rows of cells that share no spline are done side by side,
// so that the order of each sum stays.
func (s *system) addRoughness(r roughness) {
	const apart = splineReach + 1
	cubes := s.cubes()
	faint := s.faintCell(&cubes, r.flat)
	inside := s.insideCell(&cubes)
	for first := range min(apart, s.ny) {
		parallel.Chunks(workers(), (s.ny-first+apart-1)/apart, 1, func(k, _ int) {
			j := first + apart*k
			for i := range s.nx {
				cell := faint
				s.addCell(&cell, r, &cubes, &inside, [2]int{i, j})
				s.addRough(s.index(i, j), &cell)
			}
		})
	}
}

// addCell adds the integral over one cell to dst. Where a = 1 it is that of inside, whichever way
// the normal points.
func (s *system) addCell(dst *[16][16]float64, r roughness, cubes *[quadPerCell][quadPerCell]thirds, inside *[16][16]float64, ij [2]int) {
	middle := plane.Point{s.x0 + s.size*(float64(ij[0])+0.5), s.y0 + s.size*(float64(ij[1])+0.5)}
	reach := s.size / math.Sqrt2 // of the places in the cell from its middle
	d := r.rim.nearest(middle).signed()
	switch {
	case d < -outerMargin-reach:
		return
	case d > r.even()+reach:
		for a := range dst {
			for b := range dst[a] {
				dst[a][b] += inside[a][b]
			}
		}
		return
	}
	area := s.size * s.size / (quadPerCell * quadPerCell)
	for q := range quadPerCell {
		for p := range quadPerCell {
			at := plane.Point{
				s.x0 + s.size*(float64(ij[0])+(float64(p)+0.5)/quadPerCell),
				s.y0 + s.size*(float64(ij[1])+(float64(q)+0.5)/quadPerCell),
			}
			f := r.rim.nearestWithin(at, math.Abs(d)+reach)
			if f.signed() <= -outerMargin {
				continue
			}
			m := gram(f.inward, r.weight(f.signed()), area)
			addGram(dst, &cubes[p][q], &m)
		}
	}
}

// insideCell returns the integral over a cell with a = 1.
func (s *system) insideCell(cubes *[quadPerCell][quadPerCell]thirds) (m [16][16]float64) {
	g := gram(plane.Point{1, 0}, 1, s.size*s.size/(quadPerCell*quadPerCell))
	for p := range quadPerCell {
		for q := range quadPerCell {
			addGram(&m, &cubes[p][q], &g)
		}
	}
	return m
}

// faintCell returns the faint terms of one cell: third derivatives with a = 1
// and second derivatives of weight flat.
func (s *system) faintCell(cubes *[quadPerCell][quadPerCell]thirds, flat float64) (m [16][16]float64) {
	area := s.size * s.size / (quadPerCell * quadPerCell)
	g := gram(plane.Point{1, 0}, 1, area*faintWeight)
	for p := range quadPerCell {
		bx := basis((float64(p) + 0.5) / quadPerCell)
		for q := range quadPerCell {
			addGram(&m, &cubes[p][q], &g)
			by := basis((float64(q) + 0.5) / quadPerCell)
			for k, w := range [3]float64{1, 2, 1} { // f_xx² + 2 f_xy² + f_yy²
				w *= area * flat / (s.size * s.size * s.size * s.size)
				for a := range 16 {
					for b := range 16 {
						m[a][b] += w * bx[2-k][a%4] * by[k][a/4] * bx[2-k][b%4] * by[k][b/4]
					}
				}
			}
		}
	}
	return m
}

const (
	usualCell = 6.0 // mm
	mostCells = 2e4 // larger outlines get larger cells
)

// cellSize returns the edge of the spline cells, mm, from the one wanted.
func (r *rimLine) cellSize(wanted float64) float64 {
	area := (r.hi[0] - r.lo[0]) * (r.hi[1] - r.lo[1])
	return max(cmp.Or(wanted, usualCell), math.Sqrt(area/mostCells))
}
