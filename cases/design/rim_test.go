package design

import (
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/shape"
	"archload/fem"
	"archload/fem/contact"
	"archload/materials"
	"archload/mesh"
)

// wallCase is a plate of the given outline whose sides alone are looked at.
const wallCase = `format = 1
[plate]
wood = "sitka-spruce"
outline = %s
thickness = 3
arch.formula = { height = 3 }
[rim]
support = "elastic"
side_height = 80
side_thickness = 2
side_wood = "sugar-maple"
lining = [0, 0]
neck_block = 0
tail_block = 0
[[load]]
at = [0, 0]
force = [0, 0, -1]
`

// sidesAlone builds the sides of a plate, without the plate and without the
// back.
func sidesAlone(t *testing.T, fsys fs.FS) (m *fem.Model, loop []int32, rows int) {
	t.Helper()
	c := casetest.Load(t, fsys, "a.toml")
	g, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := mesh.Triangulate(g.Domain())
	if err != nil {
		t.Fatal(err)
	}
	b, err := Build(g, mesh.Lift(plan, g.Plate), nil)
	if err != nil {
		t.Fatal(err)
	}
	return onlySides(b), plan.Rim, (len(b.Model.Nodes) - b.PlateN) / len(plan.Rim)
}

// onlySides keeps the sides' shells and their nodes: the outline's first, in
// the order of the loop, then row by row.
func onlySides(b *Built) *fem.Model {
	number := map[int32]int32{}
	m := &fem.Model{Sections: b.Model.Sections}
	for _, n := range b.Mesh.Rim {
		number[n] = int32(len(m.Nodes))
		m.Nodes = append(m.Nodes, b.Model.Nodes[n])
	}
	for n := b.PlateN; n < len(b.Model.Nodes); n++ {
		number[int32(n)] = int32(len(m.Nodes))
		m.Nodes = append(m.Nodes, b.Model.Nodes[n])
	}
	for _, e := range b.Model.Shells[len(b.Mesh.Tris):] {
		for k, n := range e.Nodes {
			e.Nodes[k] = number[n]
		}
		m.Shells = append(m.Shells, e)
	}
	return m
}

// solveModel solves a bare model under nodal forces given as corner loads.
func solveModel(t *testing.T, m *fem.Model, load func(n int32) [3]float64) *contact.Result {
	t.Helper()
	s, err := fem.Assemble(m, 2)
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Prepare(2)
	if err != nil {
		t.Fatal(err)
	}
	at := map[int32]fem.SurfacePoint{}
	for i := range m.Shells {
		for k, n := range m.Shells[i].Nodes {
			sp := fem.SurfacePoint{Shell: int32(i)}
			sp.L[k] = 1
			at[n] = sp
		}
	}
	var loads []fem.PointForce
	for n := range int32(len(m.Nodes)) {
		if f := load(n); f != ([3]float64{}) {
			loads = append(loads, fem.PointForce{At: at[n], F: f})
		}
	}
	return contact.Condense(p, nil, contact.Slip, loads).RecoverPlate()
}

// TestSidesAsRing: the sides alone as a closed ring, pinched across by a line
// load over their height, against ring theory: the diameter shortens by
// (π/4 − 2/π) P R³/(E I) = 0.149 P R³/(E I). Source: S. Timoshenko, Strength of
// Materials, part II, thin ring under two opposite forces (from memory, and
// recomputed: (π² − 8)/(4π) = 0.14878).
func TestSidesAsRing(t *testing.T) {
	var pts []string
	for i := range 48 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 48)
		pts = append(pts, fmt.Sprintf("[%.9f, %.9f]", 200*c, 200*s))
	}
	m, loop, rows := sidesAlone(t, casetest.Files("a.toml", fmt.Sprintf(wallCase, "["+strings.Join(pts, ",")+"]")))
	n := len(loop)
	const radius, height, thick, force = 200.0, 80.0, 2.0, 1.0
	wood, err := materials.Find("sugar-maple")
	if err != nil {
		t.Fatal(err)
	}
	east, west := nearestAt(m, n, radius, 0), nearestAt(m, n, -radius, 0)
	// Hold the ring against rigid motion where symmetry keeps it still.
	north := nearestAt(m, n, 0, radius)
	m.Fixed = []fem.Fix{{Node: int32(north), Dof: 0}, {Node: int32(north), Dof: 2}, {Node: int32(east), Dof: 1},
		{Node: int32(east), Dof: 2}, {Node: int32(west), Dof: 2}, {Node: int32(west), Dof: 1}}
	share := func(row int) float64 { // trapezoids over the height
		if row == 0 || row == rows {
			return 0.5 / float64(rows)
		}
		return 1 / float64(rows)
	}
	r := solveModel(t, m, func(k int32) [3]float64 {
		row, i := int(k)/n, int(k)%n
		switch i {
		case east:
			return [3]float64{-force * share(row), 0, 0}
		case west:
			return [3]float64{force * share(row), 0, 0}
		}
		return [3]float64{}
	})
	closing := 0.0
	for row := range rows + 1 {
		k := row * n
		closing += share(row) * (r.U[6*(k+west)] - r.U[6*(k+east)])
	}
	inertia := height * thick * thick * thick / 12
	want := (math.Pi*math.Pi - 8) / (4 * math.Pi) * force * cube(radius) / (wood.Wood.EL * inertia)
	if math.Abs(closing-want) > 0.02*want {
		t.Errorf("the ring closes by %.5g mm, want %.5g mm within 2 %% (%d nodes round, %d rows)", closing, want, n, rows)
	}
	t.Logf("ring closes by %.5g mm, ring theory %.5g mm (%+.2f %%)", closing, want, 100*(closing/want-1))
}

func nearestAt(m *fem.Model, n int, x, y float64) int {
	best, least := 0, math.Inf(1)
	for i := range n {
		if d := math.Hypot(m.Nodes[i].P[0]-x, m.Nodes[i].P[1]-y); d < least {
			best, least = i, d
		}
	}
	return best
}

// TestSideAsWall: a straight stretch of the side, its foot clamped and its ends
// in symmetry, pushed outward by a line load along its top, against the bending
// of a plate strip: w = p H³/(3 D) with D = E_R h³/(12 (1 − ν_LR ν_RL)).
// Source: S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells,
// cylindrical bending (closed form).
func TestSideAsWall(t *testing.T) {
	outline := "\"o.csv\""
	table := "x_mm,y_mm,corner\n-500,-150,1\n500,-150,1\n500,150,1\n-500,150,1\n"
	m, loop, rows := sidesAlone(t, casetest.Files("a.toml", fmt.Sprintf(wallCase, outline), "o.csv", table))
	n := len(loop)
	wood, err := materials.Find("sugar-maple")
	if err != nil {
		t.Fatal(err)
	}
	const height, thick, load = 80.0, 2.0, 0.1 // mm, mm, N/mm
	keepStretch(m)
	var top []int32
	lo, hi := math.Inf(1), math.Inf(-1)
	used := map[int32]bool{}
	for i := range m.Shells {
		for _, k := range m.Shells[i].Nodes {
			used[k] = true
			lo, hi = math.Min(lo, m.Nodes[k].P[0]), math.Max(hi, m.Nodes[k].P[0])
		}
	}
	for k := range int32(len(m.Nodes)) {
		dofs := []int{}
		p := m.Nodes[k].P
		switch {
		case !used[k], int(k)/n == rows:
			dofs = []int{0, 1, 2, 3, 4, 5}
		case p[0] == lo || p[0] == hi:
			dofs = []int{0, 4, 5}
		}
		for _, d := range dofs {
			m.Fixed = append(m.Fixed, fem.Fix{Node: k, Dof: d})
		}
		if used[k] && int(k)/n == 0 {
			top = append(top, k)
		}
	}
	r := solveModel(t, m, func(k int32) [3]float64 {
		if !used[k] || int(k)/n != 0 {
			return [3]float64{}
		}
		return [3]float64{0, load * tributary(m, top, k), 0}
	})
	mid := top[0]
	for _, k := range top {
		if math.Abs(m.Nodes[k].P[0]) < math.Abs(m.Nodes[mid].P[0]) {
			mid = k
		}
	}
	w := wood.Wood
	rigidity := w.ER * cube(thick) / 12 / (1 - w.NuLR*w.NuLR*w.ER/w.EL)
	want := load * cube(height) / (3 * rigidity)
	got := r.U[6*mid+1]
	if math.Abs(got-want) > 0.02*want {
		t.Errorf("the top of the side moves out %.5g mm, want %.5g mm within 2 %%", got, want)
	}
	t.Logf("wall moves %.5g mm, plate strip %.5g mm (%+.2f %%)", got, want, 100*(got/want-1))
}

// keepStretch keeps the shells of the long straight side at y = 150, away from
// the corners.
func keepStretch(m *fem.Model) {
	var keep []fem.ShellElem
	for _, e := range m.Shells {
		in := true
		for _, k := range e.Nodes {
			p := m.Nodes[k].P
			in = in && math.Abs(p[1]-150) < 1e-6 && math.Abs(p[0]) < 450
		}
		if in {
			keep = append(keep, e)
		}
	}
	m.Shells = keep
}

// tributary is half the distance between the neighbours of node k along the
// top, mm.
func tributary(m *fem.Model, top []int32, k int32) float64 {
	x := m.Nodes[k].P[0]
	left, right := 0.0, 0.0
	for _, o := range top {
		d := m.Nodes[o].P[0] - x
		if d < 0 && (left == 0 || -d < left) {
			left = -d
		}
		if d > 0 && (right == 0 || d < right) {
			right = d
		}
	}
	return (left + right) / 2
}
