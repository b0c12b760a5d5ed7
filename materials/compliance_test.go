package materials

import (
	"math/rand/v2"
	"testing"
)

type tensor4 [3][3][3][3]float64

// tensorOf writes a compliance as the tensor of fourth order: engineering
// shear strain is twice the tensor's, so shear rows and columns are halved.
func tensorOf(s Compliance) tensor4 {
	order := [6][2]int{{0, 0}, {1, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}
	var c tensor4
	for m, a := range order {
		for n, b := range order {
			v := s[m][n]
			if m > 2 {
				v /= 2
			}
			if n > 2 {
				v /= 2
			}
			i, j, k, l := a[0], a[1], b[0], b[1]
			c[i][j][k][l], c[j][i][k][l], c[i][j][l][k], c[j][i][l][k] = v, v, v, v
		}
	}
	return c
}

// turned rotates the tensor plainly: c'_abcd = q_ai q_bj q_ck q_dl c_ijkl.
func (c tensor4) turned(q Axes, a, b, e, f int) float64 {
	var sum float64
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				for l := range 3 {
					sum += q[a][i] * q[b][j] * q[e][k] * q[f][l] * c[i][j][k][l]
				}
			}
		}
	}
	return sum
}

func TestTurnedAgainstFourthOrderTensor(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	order := [6][2]int{{0, 0}, {1, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}}
	for range 20 {
		q, s := randomAxes(r), sitka().Compliance()
		c := tensorOf(s)
		var want Compliance
		for m, a := range order {
			for n, b := range order {
				want[m][n] = c.turned(q, a[0], a[1], b[0], b[1])
				if m > 2 {
					want[m][n] *= 2
				}
				if n > 2 {
					want[m][n] *= 2
				}
			}
		}
		sameCompliance(t, "turned", s.Turned(q), want, 1e-14)
	}
}

func TestEnergyIsInvariant(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	energy := func(s Compliance, stress [6]float64) (u float64) {
		for m := range s {
			for n := range s {
				u += stress[m] * s[m][n] * stress[n] / 2
			}
		}
		return u
	}
	for range 50 {
		q, s := randomAxes(r), sitka().Compliance()
		var stress [6]float64
		for i := range stress {
			stress[i] = r.NormFloat64()
		}
		near(t, "energy in turned axes, N/mm²", energy(s.Turned(q), TurnStress(q, stress)), energy(s, stress), 1e-12)
	}
}

func TestTurnedThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	a, b := randomAxes(r), randomAxes(r)
	s := sitka().Compliance()
	sameCompliance(t, "there and back", s.Between(a, b).Between(b, a), s, 1e-13)
	sameCompliance(t, "to the same axes", s.Between(a, a), s, 1e-14)
	iso := isotropic(1000, 0.25, 1).Compliance()
	sameCompliance(t, "isotropic", iso.Between(a, b), iso, 1e-14)
	turned := s.Between(a, b)
	for i := range turned {
		for j := range turned {
			if turned[i][j] != turned[j][i] {
				t.Errorf("turned S[%d][%d] is not exactly symmetric", i, j)
			}
		}
	}
}

// TestBetweenSwapsAxes relabels: a frame whose x y z run along T, L, R.
func TestBetweenSwapsAxes(t *testing.T) {
	o := sitka()
	wood := GlobalAxes()
	s := o.Compliance().Between(wood, Axes{wood[2], wood[0], wood[1]})
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"xx", s[0][0], 1 / o.ET}, {"yy", s[1][1], 1 / o.EL}, {"zz", s[2][2], 1 / o.ER},
		{"yz", s[3][3], 1 / o.GLR}, {"xz", s[4][4], 1 / o.GRT}, {"xy", s[5][5], 1 / o.GLT},
		{"xx yy", s[0][1], -o.NuLT / o.EL}, {"xx zz", s[0][2], -o.NuRT / o.ER}, {"yy zz", s[1][2], -o.NuLR / o.EL},
	} {
		near(t, c.what, c.got, c.want, 1e-14)
	}
}

func TestOffAxisModulus(t *testing.T) {
	s := tw1().Compliance()
	for _, c := range []struct{ degrees, want float64 }{ // GPa
		{5, 9.10901}, {10, 7.20688}, {15, 5.38110}, {30, 2.40690}, {45, 1.39346},
	} {
		sin, cos := sincosDegrees(c.degrees)
		turned := s.Turned(Axes{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1}})
		got := 1 / turned[0][0] / 1000
		// Source: 1/E = c⁴/E1 + (1/G12 - 2 nu12/E1) s²c² + s⁴/E2, worked out
		// independently to six digits.
		near(t, "off-axis modulus, GPa", got, c.want, 1e-6)
	}
}
