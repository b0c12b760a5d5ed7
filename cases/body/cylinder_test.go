package body_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/design"
	"archload/fem"
)

// TestClosedCylinder: a round body of one isotropic wood, flat top and back 5 mm and 4 mm thick on a cylindrical side, pressed
// together by p all over both plates. Plate and wall meet in a moment M and a force Q for each mm of edge that make
// both turn and widen alike, nu being 0:
//
//	plate, radius a:  turn = p a³/(8 D) − M a/D,      widening = Q a/(E h)
//	wall, long:       turn = M/(β D') − Q/(2 β² D'),  widening = M/(2 β² D') − Q/(2 β³ D')
//
// with β⁴ = 3/(a t)², D = E h³/12, D' = E t³/12 (S. Timoshenko, S. Woinowsky-Krieger, Theory of plates and shells, 1959, articles 16 and
// 114; from memory). A plate's middle then sinks by p a⁴ 5/(64 D) − M a²/(2 D) and p a²/(4 G 5/6 h) by shear below its edge, and
// the edges come nearer by p a H/(2 E t).
func TestClosedCylinder(t *testing.T) {
	const a, top, back, wall, side, modulus, p = 100.0, 5.0, 4.0, 2.5, 90.0, 10000.0, 0.01
	sys := round(t, a, top, back, wall, side)
	m := sys.Model
	prepared, err := sys.Prepare(1)
	if err != nil {
		t.Fatal(err)
	}
	u := make([]float64, 6*len(m.Nodes))
	for _, e := range m.Shells {
		part := m.Sections[e.Section].Part
		if part == design.PartRim {
			continue
		}
		push := -p / 3
		if part == design.PartBack {
			push = -push
		}
		x, y, z := m.Nodes[e.Nodes[0]].P, m.Nodes[e.Nodes[1]].P, m.Nodes[e.Nodes[2]].P
		area := math.Abs((y[0]-x[0])*(z[1]-x[1])-(y[1]-x[1])*(z[0]-x[0])) / 2
		for _, n := range e.Nodes {
			u[6*n+2] += push * area
		}
	}
	prepared.Solve(u)
	wood := map[int32]bool{}
	for _, e := range m.Shells {
		for _, n := range e.Nodes {
			wood[n] = true
		}
	}
	edge := func(z float64) float64 { // how far it comes down, in the mean
		down, count := 0.0, 0.0
		for n := range wood {
			if q := m.Nodes[n].P; math.Abs(q[2]-z) < 1e-6 && math.Hypot(q[0], q[1]) > a-1e-3 {
				down, count = down-u[6*n+2], count+1
			}
		}
		return down / count
	}
	middle := func(z float64) (down float64) { // at the node nearest to it
		least := math.Inf(1)
		for n := range wood {
			if q := m.Nodes[n].P; math.Abs(q[2]-z) < 1e-6 && math.Hypot(q[0], q[1]) < least {
				least, down = math.Hypot(q[0], q[1]), -u[6*n+2]
			}
		}
		return down
	}
	sinks := func(h float64) float64 {
		d, dw, beta := modulus*h*h*h/12, modulus*wall*wall*wall/12, math.Pow(3, 0.25)/math.Sqrt(a*wall)
		// turn:     M (a/D + 1/(β D')) − Q/(2 β² D') = p a³/(8 D)
		// widening: M/(2 β² D') − Q (1/(2 β³ D') + a/(E h)) = 0
		a11, a12, b := a/d+1/(beta*dw), -1/(2*beta*beta*dw), p*a*a*a/(8*d)
		a21, a22 := 1/(2*beta*beta*dw), -(1/(2*beta*beta*beta*dw) + a/(modulus*h))
		moment := b * a22 / (a11*a22 - a12*a21)
		return p*math.Pow(a, 4)*5/(64*d) - moment*a*a/(2*d) + p*a*a/(4*modulus/2*5/6*h)
	}
	near(t, "top sinks below its edge", middle(0)-edge(0), sinks(top), 0.01)
	near(t, "back sinks into the body", edge(-side)-middle(-side), sinks(back), 0.01)
	near(t, "the side shortens", edge(0)-edge(-side), p*a*side/(2*modulus*wall), 0.01)
}

// round is a closed cylinder without blocks, radius a, its plates' middles side apart, held at the middle of its top, mm.
func round(t *testing.T, a, top, back, wall, side float64) *fem.System {
	t.Helper()
	var circle strings.Builder
	circle.WriteString("x_mm,y_mm\n")
	for i := range 120 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 120)
		fmt.Fprintf(&circle, "%.9f,%.9f\n", a*cos, a*sin)
	}
	text := fmt.Sprintf("format = 1\n[plate]\nwood = \"even\"\noutline = \"circle.csv\"\nthickness = %g\narch = { formula = { height = %g }, rim_height = %g }\n"+
		"[rim]\nsupport = \"body\"\nside_height = %g\nside_thickness = %g\nside_wood = \"even\"\nlining = [0, 0]\nneck_block = 4\ntail_block = 4\n"+
		"[body.back]\nwood = \"even\"\nthickness = %g\narch = { formula = { height = %g }, rim_height = %g }\n"+
		"[[load]]\nat = [0, 0]\nsize = [10, 10]\nforce = [0, 0, -1]\n[mesh]\nsize = 6\n",
		top, top/2, top/2, side, wall, back, back/2, back/2)
	c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte(text + even("even", 10000))}, "circle.csv": {Data: []byte(circle.String())}}, "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	prepared, err := design.Prepare(t.Context(), c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	m := *prepared.Built.Model
	m.Fixed, m.Zone = nil, nil
	for _, b := range m.Bodies { // what leads no node stands still
		for d := range 6 {
			m.Fixed = append(m.Fixed, fem.Fix{Node: b.Ref, Dof: d})
		}
	}
	m.Bodies = nil
	held := 0
	for i, q := range prepared.Built.Mesh.Points {
		if h := prepared.Built.Mesh.Points[held]; math.Hypot(q[0], q[1]) < math.Hypot(h[0], h[1]) {
			held = i
		}
	}
	for d := range 6 {
		m.Fixed = append(m.Fixed, fem.Fix{Node: int32(held), Dof: d})
	}
	sys, err := fem.Assemble(&m, 1)
	if err != nil {
		t.Fatal(err)
	}
	return sys
}
