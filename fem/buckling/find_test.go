package buckling

import (
	"math"
	"testing"

	"archload/fem"
	"archload/fem/vibration"
	"archload/materials"
	"archload/mesh"
)

// column is a flat strip along x of n halved squares, its ends hinged, bent to a cylinder alone; nu 0.
func column(t *testing.T, long, wide, h, e float64, n int) *fem.System {
	t.Helper()
	wood := materials.Orthotropic{EL: e, ER: e, ET: e, GLR: e / 2, GLT: e / 2, GRT: e / 2}
	m := &fem.Model{Sections: []fem.Section{{Wood: wood.Compliance(), Axes: materials.GlobalAxes()}}}
	for i := range n + 1 {
		for j := range 2 {
			m.Nodes = append(m.Nodes, mesh.Node{P: [3]float64{long * float64(i) / float64(n), wide * float64(j), 0}, H: h})
			held := []int{0, 1, 3, 5}
			if i == 0 || i == n {
				held = append(held, 2)
			}
			for _, d := range held {
				m.Fixed = append(m.Fixed, fem.Fix{Node: int32(2*i + j), Dof: d})
			}
		}
	}
	for i := range n {
		a := int32(2 * i)
		m.Shells = append(m.Shells, fem.ShellElem{Nodes: [3]int32{a, a + 2, a + 3}}, fem.ShellElem{Nodes: [3]int32{a, a + 3, a + 1}})
	}
	s, err := fem.Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestColumn: factors of a compressed column are Euler's n² π² E I/(N L²), all of them; pulled, it has
// none.
func TestColumn(t *testing.T) {
	const long, wide, h, e, strain = 100, 5, 1, 1000, 1e-6
	s := column(t, long, wide, h, e, 40)
	u := make([]float64, 6*len(s.Model.Nodes))
	for i := range s.Model.Nodes {
		u[6*i] = -strain * s.Model.Nodes[i].P[0]
	}
	first := math.Pi * math.Pi * h * h / 12 / (long * long) / strain // strain at which it gives way over that
	m, err := Find(Input{Input: vibration.Input{Plate: s, Workers: 1}, U: u}, 3)
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range m.Factors {
		if want := first * float64((i+1)*(i+1)); math.Abs(f/want-1) > 3e-3 {
			t.Errorf("factor %d: %.4f, want %.4f", i+1, f, want)
		}
	}
	if len(m.Factors) != 3 || !(m.Below > m.Factors[2]) {
		t.Errorf("%d factors, none other below %g", len(m.Factors), m.Below)
	}
	for i := range u {
		u[i] = -u[i]
	}
	if m, err = Find(Input{Input: vibration.Input{Plate: s, Workers: 1}, U: u}, 1); err != nil || len(m.Factors) > 0 || m.Most < mostFactor {
		t.Errorf("pulled: %v, %+v", err, m)
	}
}

// TestTwins asks two columns side by side, whose factors come in pairs, for one factor: that no other lies below may then
// be said of no more than the first.
func TestTwins(t *testing.T) {
	one := column(t, 100, 5, 1, 1000, 20).Model
	both, n := *one, int32(len(one.Nodes))
	for _, node := range one.Nodes {
		node.P[1] += 20
		both.Nodes = append(both.Nodes, node)
	}
	for _, e := range one.Shells {
		for k := range e.Nodes {
			e.Nodes[k] += n
		}
		both.Shells = append(both.Shells, e)
	}
	for _, f := range one.Fixed {
		both.Fixed = append(both.Fixed, fem.Fix{Node: f.Node + n, Dof: f.Dof})
	}
	s, err := fem.Assemble(&both, 1)
	if err != nil {
		t.Fatal(err)
	}
	u := make([]float64, 6*len(both.Nodes))
	for i := range both.Nodes {
		u[6*i] = -1e-6 * both.Nodes[i].P[0]
	}
	m, err := Find(Input{Input: vibration.Input{Plate: s, Workers: 1}, U: u}, 1)
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Factors) != 1 || math.Abs(m.Below/m.Factors[0]-1) > 1e-9 {
		t.Errorf("factors %v, none other below %g", m.Factors, m.Below)
	}
}
