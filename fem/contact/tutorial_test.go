package contact_test

// A tutorial: from four corner points to a solved plate with a bridge in contact,
// in six steps. Each step is an Example whose output is tested; read them from top
// to bottom. A step calls the one before it, so that the whole way stands here with
// nothing between the lines. Lengths are mm, forces N, stresses MPa.

import (
	"fmt"
	"math"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// must is for a page that nothing is expected to fail on: a program hands its
// errors on.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// # Step 1: the outline
//
// Points, some of them corners, become a closed curve: between corners a cubic
// spline, here four straight lines (see package plane for the equations).
func outline() *plane.Curve {
	corners := []plane.Point{{-150, -100}, {150, -100}, {150, 100}, {-150, 100}}
	return must(plane.NewCurve(corners, []bool{true, true, true, true}))
}

func Example_step1Outline() {
	fmt.Printf("%.0f mm² within %.0f mm\n", outline().Area(), outline().Length())
	// Output: 60000 mm² within 1000 mm
}

// # Step 2: triangles
//
// Triangulate covers a Domain with triangles of the edge length asked for, with
// smaller ones where a foot will stand. Lift puts them on the mid-surface of a
// Plate, which has an outer surface and a thickness; this one is a board of 4 mm.
func board() *mesh.Mesh {
	plan := must(mesh.Triangulate(mesh.Domain{
		Outline: outline(),
		Fine:    []mesh.Fine{{Along: []mesh.Point{{-footHalf, 0}, {footHalf, 0}}, Radius: 10, Size: 5}},
		Size:    20,
	}))
	return mesh.Lift(plan, mesh.Plate{Outer: surface.Flat(4), Thickness: surface.Flat(4)})
}

// footHalf is half of the length of the bridge's foot, which runs across the board
// along y = 0.
const footHalf = 40.0 // mm

func Example_step2Mesh() {
	m := board()
	fmt.Printf("no angle below 20 degrees: %t\n", m.Quality().MinAngle > 20)
	fmt.Printf("mid-surface at z = %g mm; at 420 kg/m³ it weighs %.1f g\n", m.Nodes[0].P[2], m.Mass(420))
	// Output:
	// no angle below 20 degrees: true
	// mid-surface at z = 2 mm; at 420 kg/m³ it weighs 100.8 g
}

// # Step 3: the model, and its factor
//
// A Model is nodes, elements and what is held. Each triangle becomes a shell of
// orthotropic wood, whose grain runs along y (materials.PlateAxes); all six freedoms
// of the rim's nodes are held. Assemble sums the elements' stiffness,
//
//	K = Σ Tᵀ Kₑ T,
//
// and Prepare factorises it once: K = L Lᵀ. Every later question is two triangular
// solves with L. The nodes of Zone, which may come to carry contact, are eliminated
// last: then the end of the factor alone says what pads do to each other.
func prepared() (*fem.Prepared, *mesh.Mesh) {
	m := board()
	wood := must(materials.Find("sitka-spruce")).Wood
	model := &fem.Model{Nodes: m.Nodes, Sections: []fem.Section{{Wood: wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{})}}}
	for _, t := range m.Tris {
		model.Shells = append(model.Shells, fem.ShellElem{Nodes: t})
	}
	for _, n := range m.Rim {
		for dof := range 6 {
			model.Fixed = append(model.Fixed, fem.Fix{Node: n, Dof: dof})
		}
	}
	for i, p := range m.Points {
		if math.Abs(p[0]) < footHalf+10 && math.Abs(p[1]) < 15 {
			model.Zone = append(model.Zone, int32(i))
		}
	}
	return must(must(fem.Assemble(model, 1)).Prepare(1)), m
}

// on is the place of the outer face below or above a point of the plan.
func on(m *mesh.Mesh, x, y float64) fem.SurfacePoint {
	tri, share, _ := mesh.NewLocator(m.Plan).Find(mesh.Point{x, y})
	return fem.SurfacePoint{Shell: tri, L: share, Zeta: 1}
}

// One newton down in the middle: u = K⁻¹ f, and the rim must hold it up.
func Example_step3Plate() {
	p, m := prepared()
	f := make([]float64, 6*len(p.Model.Nodes))
	middle := on(m, 0, 0)
	p.AddForce(f, middle, [3]float64{0, 0, -1})
	u := append([]float64(nil), f...)
	p.Solve(u)
	r := fem.Result{Plate: p.System, U: u, Load: f}
	r.Recover()
	up := 0.0
	for _, held := range r.Reactions {
		up += held.F[2]
	}
	fmt.Printf("the middle sinks %.4f mm, the rim holds up %.6f N\n", -r.MoveAt(middle)[2], up)
	// The force's work is stored: f·u/2.
	fmt.Printf("work %.6f, energy %.6f N mm\n", -r.MoveAt(middle)[2]/2, r.Energy.Total())
	// Output:
	// the middle sinks 0.0117 mm, the rim holds up 1.000000 N
	// work 0.005829, energy 0.005829 N mm
}

// # Step 4: a bridge in contact
//
// The bridge is a maple beam along x that carries 30 N at x = −20 and at x = 20. Its
// foot is cut into pads, 9 along and 2 across, relieved by up to 0.1 mm in the
// middle. Condense keeps of the plate only what its pads feel, the compliance
//
//	C = Bᵀ K⁻¹ B, mm/N,  B one column for each pad,
//
// and Problem adds the body's own flexibility and that of the bedding, A = C + F + D.
// With the gap g, the load's share t, the pads' forces λ and the body's rigid motion
// ρ, all along the outer surface's normal, Follow finds for t from 0 to 1
//
//	w = g + b t + A λ + R ρ,   w ≥ 0,  λ ≥ 0,  w λ = 0:
//
// a pad is open and carries nothing, or it is closed and presses.
func bridge(m *mesh.Mesh, height float64) (*contact.Body, []contact.Pad) {
	maple := must(materials.Find("sugar-maple")).Wood
	section := element.Rectangle{Width: 8, Height: height, E: maple.EL, Gxy: maple.GLT, Gxz: maple.GLR}
	b, pads := &contact.Body{}, []contact.Pad(nil)
	for i := range 9 {
		x := footHalf * float64(i-4) / 4
		b.Nodes = append(b.Nodes, [3]float64{x, 0, 4 + height/2}) // on the beam's axis
		if i > 0 {
			b.Beams = append(b.Beams, contact.BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1}, Section: section})
		}
		for _, y := range []float64{-2, 2} {
			pads = append(pads, contact.Pad{
				Node: int32(i), At: [3]float64{x, y, 4}, Dir: [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}},
				Spread: []fem.SurfacePoint{on(m, x, y)}, Area: 10 * 4, Bedding: [2]float64{1e-4, 1e-4},
			})
		}
	}
	for _, node := range []int32{2, 6} { // x = −20 and 20
		top := b.Nodes[node]
		top[2] += height / 2
		b.Loads = append(b.Loads, contact.BodyLoad{Node: node, At: top, F: [3]float64{0, 0, -30}})
	}
	// In slip nothing but these keeps the body from gliding off.
	for _, g := range []contact.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}}, {Dir: [3]float64{0, 0, 1}, Turn: true}} {
		g.Node, g.At = 4, b.Nodes[4]
		b.Guides = append(b.Guides, g)
	}
	return b, pads
}

// relief is the gap of each pad, mm: a parabola, deepest in the middle.
func relief(pads []contact.Pad, depth float64) []float64 {
	gap := make([]float64, len(pads))
	for i, p := range pads {
		s := p.At[0] / footHalf
		gap[i] = depth * (1 - s*s)
	}
	return gap
}

func Example_step4Contact() {
	p, m := prepared()
	body, pads := bridge(m, 12)
	problem := must(contact.Condense(p, pads, contact.Slip, nil).Problem(body))
	state := must(problem.Follow(contact.LoadCase{Gap: relief(pads, 0.1)}))
	sum := 0.0
	for _, force := range state.Lambda[:len(pads)] { // in slip one row for each pad
		sum += force
	}
	fmt.Printf("the pads carry %.6f N\n", sum)
	for _, e := range state.Events {
		if at := pads[e.Pad].At; at[1] < 0 && at[0] <= 0 { // the other quarters follow alike
			happens := "opens"
			if e.Closes {
				happens = "closes"
			}
			fmt.Printf("at %4.1f %% of the load the pad at x = %3.0f %s\n", 100*e.Load, at[0], happens)
		}
	}
	// Output:
	// the pads carry 60.000000 N
	// at  0.0 % of the load the pad at x = -40 closes
	// at 66.0 % of the load the pad at x =   0 closes
	// at 77.6 % of the load the pad at x = -10 closes
}

// # Step 5: back to the plate
//
// Recover puts the pads' forces on the plate, solves once more with the factor, and
// tells reactions, energies and checks, which are rounding if all is well.
func Example_step5Recover() {
	p, m := prepared()
	body, pads := bridge(m, 12)
	problem := must(contact.Condense(p, pads, contact.Slip, nil).Problem(body))
	load := contact.LoadCase{Gap: relief(pads, 0.1)}
	r := problem.Recover(must(problem.Follow(load)), load)
	fmt.Printf("the plate sinks %.3f mm in the middle\n", -r.MoveAt(on(m, 0, 0))[2])
	fmt.Printf("gap left there: %.4f mm\n", r.State.Gap[8])
	fmt.Printf("balanced: %t, energy is work: %t, nothing pulls or overlaps: %t\n",
		r.Checks.Force < 1e-8 && r.Checks.Moment < 1e-8, math.Abs(r.Checks.Energy) < 1e-8, r.Complementarity < 1e-8)
	// Output:
	// the plate sinks 0.264 mm in the middle
	// gap left there: 0.0000 mm
	// balanced: true, energy is work: true, nothing pulls or overlaps: true
}

// # Step 6: ask again
//
// What was dear is kept. Another relief is another Follow on the same Problem;
// another body on the same pads another Problem on the same Condensed plate; another
// foot another Condense of the same factor. With History the State knows every
// lesser load as well. Package cases/design does just this for a maker's case: see
// "How a prepared top is reused" there.
func Example_step6Again() {
	p, m := prepared()
	low, pads := bridge(m, 12)
	plate := contact.Condense(p, pads, contact.Slip, nil)
	problem := must(plate.Problem(low))
	middle := func(s *contact.State) float64 { return s.Lambda[8] + s.Lambda[9] } // the pads at x = 0

	for _, depth := range []float64{0, 0.1, 0.2} {
		s := must(problem.Follow(contact.LoadCase{Gap: relief(pads, depth)}))
		fmt.Printf("relieved by %.1f mm: the middle carries %.1f N\n", depth, middle(s))
	}
	whole := must(problem.Follow(contact.LoadCase{Gap: relief(pads, 0.1), History: true}))
	fmt.Printf("under half of the load: %.1f N\n", middle(whole.At(0.5)))

	high, _ := bridge(m, 24)
	other := must(plate.Problem(high))
	s := must(other.Follow(contact.LoadCase{Gap: relief(pads, 0.1)}))
	fmt.Printf("under a bridge twice as high: %.1f N\n", middle(s))
	// Output:
	// relieved by 0.0 mm: the middle carries 3.8 N
	// relieved by 0.1 mm: the middle carries 2.4 N
	// relieved by 0.2 mm: the middle carries 0.0 N
	// under half of the load: 0.0 N
	// under a bridge twice as high: 2.2 N
}
