package vibration

import (
	"math"
	"testing"

	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// spruce is a plate wood, rigid enough across its thickness.
func spruce() materials.Orthotropic {
	return materials.Orthotropic{EL: 10800, ER: 842, ET: 464, GLR: 691, GLT: 659, GRT: 32,
		NuLR: .372, NuLT: .467, NuRT: .435, Density: 400}
}

// plate is a supported rectangle a x b, h thick, of n x n halved squares; held names what its
// edges hold: 0 nothing, 1 the deflection, 3 all movements.
func plate(t *testing.T, n int, a, b, h float64, w materials.Orthotropic, held int) *fem.System {
	t.Helper()
	m := &fem.Model{Sections: []fem.Section{{Wood: w.Compliance(), Axes: materials.GlobalAxes(), Density: w.Density}}}
	for j := range n + 1 {
		for i := range n + 1 {
			x, y := a*float64(i)/float64(n), b*float64(j)/float64(n)
			v := int32(len(m.Nodes))
			m.Nodes = append(m.Nodes, mesh.Node{P: [3]float64{x, y, 0}, H: h})
			if i == 0 || i == n || j == 0 || j == n {
				switch held {
				case 1:
					m.Fixed = append(m.Fixed, fem.Fix{Node: v, Dof: 2})
				case 3:
					for d := range 3 {
						m.Fixed = append(m.Fixed, fem.Fix{Node: v, Dof: d})
					}
				}
			}
		}
	}
	if held == 1 {
		m.Fixed = append(m.Fixed, fem.Fix{Node: 0, Dof: 0}, fem.Fix{Node: 0, Dof: 1}, fem.Fix{Node: int32(n), Dof: 1})
	}
	for j := range n {
		for i := range n {
			v := int32(j*(n+1) + i)
			p, q, r := v+1, v+int32(n)+2, v+int32(n)+1
			m.Shells = append(m.Shells, fem.ShellElem{Nodes: [3]int32{v, p, q}}, fem.ShellElem{Nodes: [3]int32{v, q, r}})
		}
	}
	s, err := fem.Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// at is the node at a place of the grid's own numbering.
func corner(s *fem.System, node int32) []fem.SurfacePoint {
	for e := range s.Model.Shells {
		for k, n := range s.Model.Shells[e].Nodes {
			if n == node {
				p := fem.SurfacePoint{Shell: int32(e)}
				p.L[k] = 1
				return []fem.SurfacePoint{p}
			}
		}
	}
	return nil
}

// Compression lowers the squares of the frequencies of a supported plate in proportion, to zero at
// the load under which it buckles: omega² = omega0² (1 - N/Ncr), Ncr = 4 pi² D/b² for a square
// (S. Timoshenko, J. Gere, Theory of Elastic Stability, 2nd ed. 1961, art. 9.2; M. Lurie, Lateral
// vibrations as related to structural stability, 1952; both from memory).
func TestGeometricStiffness(t *testing.T) {
	const n, a, h, e, nu = 24, 200.0, 1.0, 1e4, 0.3
	w := materials.Orthotropic{EL: e, ER: e, ET: e, NuLR: nu, NuLT: nu, NuRT: nu, Density: 400,
		GLR: e / 2 / (1 + nu), GLT: e / 2 / (1 + nu), GRT: e / 2 / (1 + nu)}
	s := plate(t, n, a, a, h, w, 1)
	critical := 4 * math.Pi * math.Pi * e * h * h * h / 12 / (1 - nu*nu) / (a * a)
	bare := lowest(t, Input{Plate: s, Workers: 1})
	for _, share := range []float64{-0.5, 0.3, 0.6, 0.9} {
		u := make([]float64, 6*len(s.Model.Nodes)) // N along x: stress -N/h, free to widen
		eps := -share * critical / h / e
		for i := range s.Model.Nodes {
			u[6*i], u[6*i+1] = eps*s.Model.Nodes[i].P[0], -nu*eps*s.Model.Nodes[i].P[1]
		}
		got := lowest(t, Input{Plate: s, Loaded: u, Workers: 1})
		want := bare * math.Sqrt(1-share)
		if math.Abs(got-want) > 0.01*bare {
			t.Errorf("at %g of the critical load: %.3f Hz, want %.3f", share, got, want)
		}
	}
}

func lowest(t *testing.T, in Input) float64 {
	t.Helper()
	s, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	tones, err := s.Tones(1, 0)
	if err != nil {
		t.Fatal(err)
	}
	return tones.List[0].Hz
}
