package problem

import (
	"errors"
	"math"

	"archload/cases/verify/reference"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// spectrum looks at the free motions of single triangles (equilateral and half a
// square, the grain at any angle) and of a distorted patch, thin, reference.Isotropic and
// of wood: the largest of the first six eigenvalues
// over the largest of all, and the seventh over the smallest eigenvalue of a
// constant bending. A seventh far below would be a spurious mode.
func spectrum() (Readings, error) {
	out := Readings{"rigid": 0, "seventh": math.Inf(1), "patch rigid": 0, "patch seventh": math.Inf(1)}
	for _, w := range []materials.Orthotropic{reference.Isotropic(1e4, 0.3), reference.TestWood()} {
		for _, h := range []float64{0.3, 0.03} {
			patch := newPanel(Density{Shake: Distortion}, 4, 3, flat(24, 18), makeup{h: h, wood: w})
			if err := out.free("patch ", patch); err != nil {
				return nil, err
			}
			for deg := 0.0; deg < 180; deg += 15 {
				s, c := math.Sincos(deg * degree)
				axes := materials.Axes{{c, s, 0}, {-s, c, 0}, {0, 0, 1}}
				for _, top := range [][2]float64{{0, 6}, {3, 3 * math.Sqrt(3)}} {
					one := &panel{}
					one.Nodes = append(one.Nodes, node(0, 0, h), node(6, 0, h), node(top[0], top[1], h))
					one.make([][3]int32{{0, 1, 2}}, makeup{wood: w, axes: axes})
					if err := out.free("", one); err != nil {
						return nil, err
					}
				}
			}
		}
	}
	return out, nil
}

// free keeps the worst of a panel's free motions.
func (out Readings) free(name string, p *panel) error {
	rigid, seventh, err := p.freeMotions()
	out[name+"rigid"] = max(out[name+"rigid"], rigid)
	out[name+"seventh"] = min(out[name+"seventh"], seventh)
	return err
}

// freeMotions returns the largest of the first six eigenvalues over the
// largest, and the seventh over the smallest of constant bending.
func (p *panel) freeMotions() (rigid, seventh float64, err error) {
	if err := p.build(); err != nil {
		return 0, 0, err
	}
	k := symmetric(p.dense())
	var e mat.EigenSym
	if !e.Factorize(k, false) {
		return 0, 0, errors.New("eigenvalues do not converge")
	}
	v := e.Values(nil)
	for _, l := range v[:6] {
		rigid = max(rigid, math.Abs(l)/v[len(v)-1])
	}
	bend, err := p.softestBending(k)
	return rigid, v[6] / bend, err
}

func symmetric(k *mat.Dense) *mat.SymDense {
	n, _ := k.Dims()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (k.At(i, j)+k.At(j, i))/2)
		}
	}
	return s
}

// softestBending is the least Rayleigh quotient of the three constant bendings
// of a flat panel, freed of rigid motions: w = x²/2, xy, y²/2 with the
// rotations that belong to them.
func (p *panel) softestBending(k *mat.SymDense) (float64, error) {
	n := 6 * len(p.Nodes)
	fields := mat.NewDense(n, 6, nil)
	for i := range p.Nodes {
		x, y := p.Nodes[i].P[0], p.Nodes[i].P[1]
		for c, f := range [6][3]float64{{1, 0, 0}, {y, 1, 0}, {-x, 0, 1}, // w, theta_x = w,y, theta_y = -w,x
			{x * x / 2, 0, -x}, {x * y, x, -y}, {y * y / 2, y, 0}} {
			for d := range f {
				fields.Set(6*i+2+d, c, f[d])
			}
		}
	}
	var qr mat.QR
	qr.Factorize(fields) // the last three columns of Q: bendings free of rigid motions
	var q, kq, small mat.Dense
	qr.QTo(&q)
	b := q.Slice(0, n, 3, 6)
	kq.Mul(k, b)
	small.Mul(b.T(), &kq)
	var e mat.EigenSym
	if !e.Factorize(symmetric(&small), false) {
		return 0, errors.New("eigenvalues do not converge")
	}
	return e.Values(nil)[0], nil
}
