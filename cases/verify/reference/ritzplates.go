package reference

import "gonum.org/v1/gonum/mat"

// kirchhoff is a quarter of a thin plate under a unit load, its ends (x = const)
// clamped, its sides clamped or supported.
func kirchhoff(p Law, a, b float64, clampY bool) *ritz {
	law := mat.NewSymDense(3, []float64{p.d11, p.d12, 0, p.d12, p.d22, 0, 0, 0, p.d66})
	return &ritz{a: a, b: b, law: law, load: 1,
		fields: []field{{deflection(true), deflection(clampY)}},
		strain: func(_ int, v *[3][3]float64) []float64 { return []float64{-v[2][0], -v[0][2], -2 * v[1][1]} },
	}
}

// mindlin is a quarter of a clamped shear-deformable plate: w and the rotations
// b that replace its slopes.
func mindlin(p Law, a, b float64) *ritz {
	law := mat.NewSymDense(5, nil)
	law.SetSym(0, 0, p.d11)
	law.SetSym(0, 1, p.d12)
	law.SetSym(1, 1, p.d22)
	law.SetSym(2, 2, p.d66)
	law.SetSym(3, 3, p.s13)
	law.SetSym(4, 4, p.s23)
	return &ritz{a: a, b: b, law: law, load: 1,
		fields: []field{{held(), held()}, {odd(), held()}, {held(), odd()}},
		strain: func(f int, v *[3][3]float64) []float64 {
			switch f {
			case 0:
				return []float64{0, 0, 0, v[1][0], v[0][1]}
			case 1:
				return []float64{-v[1][0], 0, -v[0][1], -v[0][0], 0}
			}
			return []float64{0, -v[0][1], -v[1][0], 0, -v[0][0]}
		},
	}
}

// ribbedRitz is a quarter of the clamped test plate with a rib under its
// middle: w, u and v.
func ribbedRitz(d float64) *ritz {
	w := TestWood()
	p := PlateLaw(w, 4)
	c := 12.0 / (4 * 4) // from bending to membrane stiffness
	law := mat.NewSymDense(6, nil)
	for k, s := range [2]float64{1, c} {
		law.SetSym(3*k, 3*k, s*p.d11)
		law.SetSym(3*k, 3*k+1, s*p.d12)
		law.SetSym(3*k+1, 3*k+1, s*p.d22)
		law.SetSym(3*k+2, 3*k+2, s*p.d66)
	}
	return &ritz{a: WoodLong, b: WoodWide, law: law, load: 1e-3,
		fields: []field{{deflection(true), deflection(true)}, {odd(), held()}, {held(), odd()}},
		strain: func(f int, v *[3][3]float64) []float64 {
			switch f {
			case 0:
				return []float64{-v[2][0], -v[0][2], -2 * v[1][1], 0, 0, 0}
			case 1:
				return []float64{0, 0, 0, v[1][0], 0, v[0][1]}
			}
			return []float64{0, 0, 0, 0, v[0][1], v[1][0]}
		},
		rib: &rib{ea: 1e4 * 72, ei: 1e4 * 864, d: d},
	}
}

// Ritz solves anew what the tables hold for clamped plates.
func Ritz() (map[string]float64, error) {
	out := map[string]float64{}
	wood := PlateLaw(TestWood(), 4)
	iso := PlateLaw(Isotropic(12*(1-0.09), 0.3), 1)
	for _, c := range []struct {
		name string
		of   *ritz
		q    float64
	}{
		{"clamped square", kirchhoff(iso, 1, 1, true), 1},
		{"clamped long", kirchhoff(iso, 1, 5, true), 1},
		{"wood", kirchhoff(wood, WoodLong, WoodWide, true), 1e-3},
		{"wood, two edges", kirchhoff(wood, WoodLong, WoodWide, false), 1e-3},
		{"wood, sheared", mindlin(PlateLaw(TestWood(), 12), WoodLong, WoodWide), 1e-3},
	} {
		s, err := c.of.solve()
		if err != nil {
			return nil, err
		}
		out[c.name+" w"] = c.q * s.first(0, 0)
		m, end, side := s.force(0, 0), s.force(1, 0), s.force(0, 1)
		out[c.name+" Mx"], out[c.name+" My"] = c.q*m[0], c.q*m[1]
		out[c.name+" Mx end"], out[c.name+" My side"] = c.q*end[0], c.q*side[1]
	}
	return out, ritzRibs(out)
}

func ritzRibs(out map[string]float64) error {
	for name, d := range map[string]float64{"rib below": -8, "rib in the middle": 0} {
		r := ribbedRitz(d)
		s, err := r.solve()
		if err != nil {
			return err
		}
		out[name+" w"] = s.first(0, 0)
		axial, _ := r.ribRows(0)
		for i, e := range axial {
			out[name+" N"] += r.rib.ea * e * s.c[i]
		}
	}
	return nil
}
