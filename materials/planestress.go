package materials

// ShearFactor is k of the transverse shear of a rectangular section, 1: the
// parabola of shear stress over its depth takes 1/k = 6/5 times the energy of the
// mean stress (any text on strength of materials).
const ShearFactor = 5.0 / 6

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
