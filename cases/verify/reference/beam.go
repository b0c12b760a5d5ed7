package reference

// TimoshenkoBeam is the exact stiffness of a shear-deformable beam of length l,
// E I in N mm² and k G A in N, for w and theta_y = -w,x at both ends, N and mm
// (J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, ch. 5, from
// memory; it follows from the flexibility).
func TimoshenkoBeam(ei, ga, l float64) [4][4]float64 {
	phi := 12 * ei / (ga * l * l)
	c := ei / (l * l * l * (1 + phi))
	a, b, d, e := 12*c, 6*l*c, (4+phi)*l*l*c, (2-phi)*l*l*c
	return [4][4]float64{{a, -b, -a, -b}, {-b, d, b, e}, {-a, b, a, b}, {-b, e, b, d}}
}
