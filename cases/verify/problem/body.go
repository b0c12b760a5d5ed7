package problem

import (
	"context"
	"math"

	"archload/fem"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// squeezedBody is a closed body of two carved plates on an ellipse, sides between
// their mid-surfaces and two rigid blocks, pressed together lengthwise at the
// blocks. testdata/README.md defines it and says what an independent 3D solid
// gives.
//
// The model is put together by hand from the program's own mesh and elements:
// what is judged is the joint of plate and side, the rigid blocks and the walls.
type squeezedBody struct {
	model *fem.Model
	plan  *mesh.Plan
	back  int32 // first node of the back
	walls [][]int32
	block [2]int32 // nodes of the neck's and the tail's block
}

// The body's measures, mm and N.
const (
	bodyHalfWidth, bodyHalfLength = 150.0, 200.0
	bodyDepth, bodyBlock          = 80.0, 60.0
	bodyTop, bodyBack, bodySide   = 5.0, 4.5, 2.3
	bodySqueeze, bodySqueezeAt    = 700.0, -20.0
)

// The parts of the body.
const (
	bodyTopPart fem.Part = iota
	bodyBackPart
	bodySidePart
)

// solveSqueezedBody reads movements, energy and balance.
func solveSqueezedBody(_ context.Context, d Density) (Readings, error) {
	b, err := newSqueezedBody(defaultEdge * defaultDensity / float64(d.N))
	if err != nil {
		return nil, err
	}
	sys, err := fem.Assemble(b.model, 1)
	if err != nil {
		return nil, err
	}
	p, err := sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	r := &fem.Result{Plate: sys, Load: make([]float64, 6*len(b.model.Nodes))}
	for i, push := range []float64{-bodySqueeze, bodySqueeze} {
		n := 6 * int(b.block[i])
		r.Load[n+1], r.Load[n+3] = push, -(bodySqueezeAt+bodyDepth)*push // about the block's node at the back
	}
	r.U = append([]float64(nil), r.Load...)
	p.Solve(r.U)
	r.Recover()
	r.CheckAlone()
	return b.read(r), nil
}

func newSqueezedBody(edge float64) (*squeezedBody, error) {
	outline, err := plane.NewCurve(bodyEllipse(), nil)
	if err != nil {
		return nil, err
	}
	b := &squeezedBody{}
	if b.plan, err = mesh.Triangulate(mesh.Domain{Outline: outline, Size: edge, Lines: blockEnds()}); err != nil {
		return nil, err
	}
	spruce := materials.Orthotropic{EL: 10800, ER: 842, ET: 464, GLR: 691, GLT: 659, GRT: 32, NuLR: 0.372, NuLT: 0.467, NuRT: 0.435}
	maple := materials.Orthotropic{EL: 13860, ER: 1830, ET: 901, GLR: 1538, GLT: 873, GRT: 290, NuLR: 0.424, NuLT: 0.476, NuRT: 0.774}
	b.model = &fem.Model{}
	b.addPlate(0, 18, bodyTop, spruce, bodyTopPart)
	b.back = int32(len(b.model.Nodes))
	b.addPlate(-bodyDepth, -15, bodyBack, maple, bodyBackPart)
	b.addSides(max(6, int(math.Round(bodyDepth/edge))), maple)
	b.addBlocks()
	return b, nil
}

func bodyEllipse() []plane.Point {
	const points = 400
	p := make([]plane.Point, points)
	for i := range p {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / points)
		p[i] = plane.Point{bodyHalfWidth * cos, bodyHalfLength * sin}
	}
	return p
}

// blockEnds are short lines inward from where the blocks end, so that nodes stand
// there.
func blockEnds() [][]mesh.Point {
	const x, inward = bodyBlock / 2, 15
	y := bodyHalfLength * math.Sqrt(1-x*x/bodyHalfWidth/bodyHalfWidth)
	var lines [][]mesh.Point
	for _, side := range []float64{1, -1} {
		for _, end := range []float64{1, -1} {
			lines = append(lines, []mesh.Point{{side * x, end * y}, {side * x, end * (y - inward)}})
		}
	}
	return lines
}

// addPlate adds a carved plate whose mid-surface is z0 + rise (1-s)², s the
// ellipse's form, with the grain along y.
func (b *squeezedBody) addPlate(z0, rise, h float64, wood materials.Orthotropic, part fem.Part) {
	first := int32(len(b.model.Nodes))
	for _, q := range b.plan.Points {
		s := q[0]*q[0]/bodyHalfWidth/bodyHalfWidth + q[1]*q[1]/bodyHalfLength/bodyHalfLength
		slope := -4 * rise * (1 - s)
		zx, zy := slope*q[0]/bodyHalfWidth/bodyHalfWidth, slope*q[1]/bodyHalfLength/bodyHalfLength
		l := math.Sqrt(1 + zx*zx + zy*zy)
		b.model.Nodes = append(b.model.Nodes, mesh.Node{P: [3]float64{q[0], q[1], z0 + rise*(1-s)*(1-s)},
			N: [3]float64{-zx / l, -zy / l, 1 / l}, H: h})
	}
	section := int32(len(b.model.Sections))
	b.model.Sections = append(b.model.Sections, fem.Section{Wood: wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{}), Part: part})
	for _, t := range b.plan.Tris {
		b.model.Shells = append(b.model.Shells, fem.ShellElem{Nodes: [3]int32{t[0] + first, t[1] + first, t[2] + first}, Section: section})
	}
}

// addSides adds the wall between both rims, its grain along the outline.
func (b *squeezedBody) addSides(rows int, wood materials.Orthotropic) {
	rim := b.plan.Rim
	b.walls = [][]int32{rim}
	for row := 1; row <= rows; row++ {
		ids := make([]int32, len(rim))
		for k, n := range rim {
			ids[k] = n + b.back
			if row < rows {
				p := b.model.Nodes[n].P
				p[2] = -bodyDepth * float64(row) / float64(rows)
				ids[k] = int32(len(b.model.Nodes))
				b.model.Nodes = append(b.model.Nodes, mesh.Node{P: p, H: bodySide})
			}
		}
		b.walls = append(b.walls, ids)
	}
	for k := range rim {
		next := (k + 1) % len(rim)
		p, q := b.plan.Points[rim[k]], b.plan.Points[rim[next]]
		l := plane.Dist(p, q)
		x, y := (q[0]-p[0])/l, (q[1]-p[1])/l
		section := int32(len(b.model.Sections))
		b.model.Sections = append(b.model.Sections, fem.Section{Wood: wood.Compliance(),
			Axes: materials.Axes{{x, y, 0}, {0, 0, 1}, {y, -x, 0}}, Part: bodySidePart})
		for row := range rows {
			a, c, d, e := b.walls[row][k], b.walls[row][next], b.walls[row+1][k], b.walls[row+1][next]
			pair := [2][3]int32{{a, d, e}, {a, e, c}}
			if (k+row)%2 == 0 {
				pair = [2][3]int32{{a, d, c}, {d, e, c}}
			}
			for _, t := range pair {
				b.model.Shells = append(b.model.Shells, fem.ShellElem{Nodes: t, Section: section, Flat: true, H: bodySide})
			}
		}
	}
}

// addBlocks makes each block a rigid body and holds them as on a stand: enough to
// keep the body where it is, too little to carry anything.
func (b *squeezedBody) addBlocks() {
	for i, end := range []float64{1, -1} {
		var nodes []int32
		for _, row := range b.walls {
			for _, n := range row {
				if p := b.model.Nodes[n].P; p[1]*end > 0 && math.Abs(p[0]) <= bodyBlock/2+1e-6 {
					nodes = append(nodes, n)
				}
			}
		}
		b.block[i] = b.model.AddBody([3]float64{0, end * bodyHalfLength, -bodyDepth}, nodes)
	}
	neck, tail := b.block[0], b.block[1]
	b.model.Fixed = []fem.Fix{{Node: neck, Dof: 0}, {Node: neck, Dof: 1}, {Node: neck, Dof: 2}, {Node: neck, Dof: 4}, {Node: tail, Dof: 0}, {Node: tail, Dof: 2}}
}

// read gathers the readings: heights of the top and the back, mm; how much
// nearer the blocks come at some heights, mm; their turn, degrees; energies, N·mm.
func (b *squeezedBody) read(r *fem.Result) Readings {
	loc := mesh.NewLocator(b.plan)
	rise := func(x, y float64, tri int32) float64 {
		t, l, _ := loc.Find(mesh.Point{x, y})
		return r.MoveAt(fem.SurfacePoint{Shell: t + tri, L: l})[2]
	}
	nearer := func(z float64) float64 {
		move := func(n int32) float64 { return r.U[6*n+1] - r.U[6*n+3]*(z+bodyDepth) }
		return move(b.block[1]) - move(b.block[0])
	}
	carried := 0.0
	for _, re := range r.Reactions {
		for k := range 3 {
			carried = max(carried, math.Abs(re.F[k]))
		}
	}
	top := r.Energy.Membrane + r.Energy.Bending + r.Energy.Shear
	return Readings{
		"centre": rise(0, 0, 0), "bass foot": rise(-37, -20, 0), "treble foot": rise(37, -20, 0), "between": rise(0, -20, 0), "neckward": rise(0, 60, 0),
		"bout": rise(80, 0, 0), "back": rise(0, 0, int32(len(b.plan.Tris))),
		"nearer 0": nearer(0), "nearer 20": nearer(-20), "nearer 40": nearer(-40), "nearer 80": nearer(-80),
		"turn": r.U[6*b.block[0]+3] / degree, "energy": r.Energy.Total(), "energy top": top,
		"carried": carried / bodySqueeze, "balance": max(r.Checks.Force, r.Checks.Energy),
	}
}
