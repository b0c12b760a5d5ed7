package scene

import (
	"math"
	"testing"

	"archload/mesh"
)

// Of a cone over a square the lines at its levels are closed rings of the right radius; of a slope
// they run from edge to edge.
func TestLevelLines(t *testing.T) {
	const n = 40
	m := &mesh.Mesh{Plan: &mesh.Plan{}}
	for j := range n + 1 {
		for i := range n + 1 {
			m.Points = append(m.Points, mesh.Point{float64(i) - n/2, float64(j) - n/2})
			if i < n && j < n {
				a := int32(j*(n+1) + i)
				m.Tris = append(m.Tris, [3]int32{a, a + 1, a + n + 2}, [3]int32{a, a + n + 2, a + n + 1})
			}
		}
	}
	cone, slope := make([]float64, len(m.Points)), make([]float64, len(m.Points))
	for i, p := range m.Points {
		cone[i], slope[i] = math.Hypot(p[0], p[1]), p[0]
	}
	lines := levelLines(&Before{Mesh: m, Values: cone}, 10.3)
	if len(lines) != 1 || lines[0][0] != lines[0][len(lines[0])-1] {
		t.Fatalf("a cone has %d lines at one level, want a closed one", len(lines))
	}
	for _, p := range lines[0] {
		if r := math.Hypot(p[0], p[1]); math.Abs(r-10.3) > 0.05 {
			t.Fatalf("a line of radius 10.3 passes %v, at %g", p, r)
		}
	}
	lines = levelLines(&Before{Mesh: m, Values: slope}, 3) // a value of nodes
	if len(lines) != 1 || len(lines[0]) < n || math.Abs(math.Abs(lines[0][0][1])-n/2) > 1e-9 {
		t.Fatalf("a slope has lines %v, want one from edge to edge", lines)
	}
	for _, p := range lines[0] {
		if math.Abs(p[0]-3) > 1e-9 {
			t.Errorf("the line at 3 passes %v", p)
		}
	}
}
