package materials

import "math"

// ShearShare is 6/5, the compliance of transverse shear with the parabola of
// shear stress over the thickness against a constant one, 1.
const ShearShare = 6.0 / 5

// Reduced is the compliance of a shell with zero stress along its normal,
// 1/MPa: m stands for xx yy xy, s for xz yz, engineering shear strain.
type Reduced struct {
	MM [3][3]float64 // xx yy xy with xx yy xy
	MS [3][2]float64 // xx yy xy with xz yz
	SS [2][2]float64 // xz yz with xz yz
}

// Reduce drops row and column 33 of a compliance that is already in the
// shell's frame x y z, z its normal.
func (s Compliance) Reduce() Reduced {
	m, t := [3]int{0, 1, 5}, [2]int{4, 3}
	var r Reduced
	for i, mi := range m {
		for j, mj := range m {
			r.MM[i][j] = s[mi][mj]
		}
		for j, tj := range t {
			r.MS[i][j] = s[mi][tj]
		}
	}
	for i, ti := range t {
		for j, tj := range t {
			r.SS[i][j] = s[ti][tj]
		}
	}
	return r
}

// MembraneShear returns h times the inverse of [MM MS; SM (6/5) SS], N/mm,
// for a thickness h in mm: resultants Nxx Nyy Nxy Qx Qy from the mean strains
// xx yy xy xz yz. It panics if the compliance is not positive definite, which
// Orthotropic.Check rules out.
func (r Reduced) MembraneShear(h float64) [5][5]float64 {
	a := make([][]float64, 5)
	for i := range a {
		a[i] = make([]float64, 5)
	}
	for i := range 3 {
		copy(a[i], r.MM[i][:])
		for j := range 2 {
			a[i][3+j], a[3+j][i] = r.MS[i][j], r.MS[i][j]
		}
	}
	for i := range 2 {
		for j := range 2 {
			a[3+i][3+j] = ShearShare * r.SS[i][j]
		}
	}
	var out [5][5]float64
	for i, row := range inverse(a) {
		for j, v := range row {
			out[i][j] = h * v
		}
	}
	return out
}

// PlaneStress returns the inverse of MM, MPa: the stiffness of bending and of
// a plate whose transverse shear is free. It panics if MM is not positive
// definite, which Orthotropic.Check rules out.
func (r Reduced) PlaneStress() [3][3]float64 {
	a := make([][]float64, 3)
	for i := range a {
		a[i] = r.MM[i][:]
	}
	var out [3][3]float64
	for i, row := range inverse(a) {
		copy(out[i][:], row)
	}
	return out
}

// Bending returns (h³/12) MM⁻¹, N·mm, for a thickness h in mm: moments per
// length Mxx Myy Mxy from the curvatures xx yy and twice xy.
func (r Reduced) Bending(h float64) [3][3]float64 {
	d := r.PlaneStress()
	for i := range d {
		for j := range d[i] {
			d[i][j] *= h * h * h / 12
		}
	}
	return d
}

// inverse returns the inverse of a symmetric positive definite matrix by
// Cholesky, exactly symmetric; the lower triangle of a is read. It panics if
// a is not positive definite.
func inverse(a [][]float64) [][]float64 {
	n := len(a)
	low := cholesky(a)
	inv := make([][]float64, n) // of the triangle
	for i := range inv {
		inv[i] = make([]float64, n)
		inv[i][i] = 1 / low[i][i]
		for j := range i {
			var sum float64
			for k := j; k < i; k++ {
				sum -= low[i][k] * inv[k][j]
			}
			inv[i][j] = sum / low[i][i]
		}
	}
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, n)
		for j := 0; j <= i; j++ {
			var sum float64
			for k := i; k < n; k++ {
				sum += inv[k][i] * inv[k][j]
			}
			out[i][j], out[j][i] = sum, sum
		}
	}
	return out
}

// cholesky returns the lower triangle with a = low low'.
func cholesky(a [][]float64) [][]float64 {
	low := make([][]float64, len(a))
	for i := range a {
		low[i] = make([]float64, len(a))
		for j := 0; j <= i; j++ {
			sum := a[i][j]
			for k := range j {
				sum -= low[i][k] * low[j][k]
			}
			if i != j {
				low[i][j] = sum / low[j][j]
				continue
			}
			if !(sum > 0) {
				panic("materials: compliance is not positive definite")
			}
			low[i][i] = math.Sqrt(sum)
		}
	}
	return low
}
