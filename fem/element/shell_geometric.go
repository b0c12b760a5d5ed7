package element

// GeometricTo sets k to the 18 x 18 stiffness that membrane forces in the triangle lend it,
// row-major, global degrees of freedom node by node, N/mm; forces as in Resultants.N, positive in
// tension. They do work on the square of the slopes of all three movements, taken linear:
//
//	½ A Σ over movements of (grad u) · N (grad u).
//
// Tension stiffens, compression softens, up to buckling (R. D. Cook et al., Concepts and
// Applications of Finite Element Analysis, 4th ed. 2002, ch. 18; from memory).
func (s *Shell) GeometricTo(k *[324]float64, n [3]float64) {
	*k = [324]float64{}
	g := &s.frame.grad
	for i := range g {
		for j := range g {
			c := s.frame.area * (g[i][0]*(n[0]*g[j][0]+n[2]*g[j][1]) + g[i][1]*(n[2]*g[j][0]+n[1]*g[j][1]))
			for d := range 3 {
				k[18*(6*i+d)+6*j+d] = c
			}
		}
	}
	for i := range 18 {
		for j := range i {
			k[18*i+j] = k[18*j+i]
		}
	}
}
