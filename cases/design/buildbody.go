package design

import (
	"slices"

	"archload/cases/shape"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// body closes the body under the top: the back, the walls between both rims with
// the linings at their edges, and the blocks. The walls meet the middle surfaces
// of both plates and share all six freedoms with them there (bodywalls.go).
func (b *Built) body() error {
	if err := b.addBack(); err != nil {
		return err
	}
	card, err := b.Case.Wood("rim.side_wood")
	if err != nil {
		return err
	}
	onTop, onBack := b.bodyWalls(card)
	for i := range b.Geometry.Blocks {
		swell, err := b.blockSwell(&b.Geometry.Blocks[i])
		if err != nil {
			return err
		}
		b.addBlock(&b.Geometry.Blocks[i], slices.Concat(onTop[1:], onBack[1:]), swell)
	}
	b.stand()
	return nil
}

// addBack adds the back's shells and bars. The back's shape is told outward from
// its own gluing surface, so that in the model it is upside down: seen from
// outside its triangles run the other way round, and its wood's axes are mirrored.
func (b *Built) addBack() error {
	back := b.Back
	card, err := b.Case.Wood("body.back.wood")
	if err != nil {
		return err
	}
	back.First = int32(len(b.Model.Nodes))
	for _, n := range back.Mesh.Nodes {
		n.P[2], n.N[2] = -float64(b.Case.Rim.SideHeight)-n.P[2], -n.N[2]
		b.Model.Nodes = append(b.Model.Nodes, n)
	}
	p := &b.Case.Body.Back
	axes := materials.PlateAxes(materials.Cut{Flat: p.Cut == "flat", RingAngle: float64(p.RingAngle), GrainAngle: float64(p.GrainAngle)})
	for k := range axes {
		axes[k][2] = -axes[k][2]
	}
	axes[2] = scale(axes[2], -1) // right-handed again; the wood does not tell the ends of an axis apart
	section := int32(len(b.Model.Sections))
	b.Model.Sections = append(b.Model.Sections, fem.Section{Wood: card.Wood.Compliance(), Axes: axes, Pressed: p.Made == "pressed",
		Part: PartBack, Density: card.Wood.Density, Swell: card.Water.Swell})
	back.place = newPlacer(back.Plate, back.Mesh)
	back.Shell = int32(len(b.Model.Shells))
	back.place.first, back.place.below = back.Shell, true
	for _, t := range back.Mesh.Tris {
		b.Model.Shells = append(b.Model.Shells, fem.ShellElem{Nodes: [3]int32{t[0] + back.First, t[2] + back.First, t[1] + back.First}, Section: section})
	}
	back.Bars, err = b.barsOn(barred{braces: p.Braces, key: "body.back.brace", mesh: back.Mesh, place: back.place,
		first: back.First, up: 1, part: PartBack})
	return err
}

// backOn is the mesh of the back in the same plan for another geometry; nil without a
// body.
func (b *Built) backOn(g *shape.Geometry) *mesh.Mesh {
	if b.Back == nil {
		return nil
	}
	return mesh.Lift(b.Back.Mesh.Plan, g.Back.Plate)
}

// OnOuter is Built.OnOuter for the back: its place seen through the top.
func (k *Back) OnOuter(q mesh.Point) (at fem.SurfacePoint, inside bool) { return k.place.Outer(q) }

// rim lists the model's nodes along the back's edge.
func (k *Back) rim() []int32 {
	out := make([]int32, len(k.Mesh.Rim))
	for i, n := range k.Mesh.Rim {
		out[i] = n + k.First
	}
	return out
}

// addBlock makes a rigid body of all that is glued to a block: the wall before it,
// both rims there, and the plates over its faces. What it holds stores no energy; from
// season to season it swells by so much along x, y and z for each percentage point.
func (b *Built) addBlock(block *shape.Block, walls [][]int32, swell [3]float64) {
	var nodes []int32
	add := func(n int32, p mesh.Point, edge bool) {
		if edge && block.HoldsEdge(p) || !edge && block.Holds(p) {
			nodes = append(nodes, n)
		}
	}
	onTop, onBack := onEdge(b.Mesh), onEdge(b.Back.Mesh)
	for i, p := range b.Mesh.Points {
		add(int32(i), p, onTop[i])
	}
	for i, p := range b.Back.Mesh.Points {
		add(int32(i)+b.Back.First, p, onBack[i])
	}
	for _, row := range walls {
		for _, n := range row {
			p := b.Model.Nodes[n].P
			add(n, mesh.Point{p[0], p[1]}, true)
		}
	}
	low := -float64(b.Case.Rim.SideHeight) - b.Back.Plate.Mid(block.Edge).P[2]
	b.Model.AddBody([3]float64{block.Edge[0], block.Edge[1], low}, nodes)
	b.Model.Bodies[len(b.Model.Bodies)-1].Swell = swell
}

// onEdge marks the nodes of a mesh's outline.
func onEdge(m *mesh.Mesh) []bool {
	out := make([]bool, len(m.Points))
	for _, n := range m.Rim {
		out[n] = true
	}
	return out
}

// stand holds the body at its blocks, where they meet the back: the neck block does
// not move there nor turn about the centre line, the tail block keeps its place
// across and upright. So much keeps a body where it is and resists no change of its
// shape: loads that balance each other leave it with no force.
func (b *Built) stand() {
	neck, tail := b.BlockNode("neck"), b.BlockNode("tail")
	for _, d := range []int{0, 1, 2, 4} {
		b.Model.Fixed = append(b.Model.Fixed, fem.Fix{Node: neck, Dof: d})
	}
	for _, d := range []int{0, 2} {
		b.Model.Fixed = append(b.Model.Fixed, fem.Fix{Node: tail, Dof: d})
	}
}

// hangFree takes the stand away: a body that swings without strings hangs in the air.
func (b *Built) hangFree() {
	if b.Back == nil {
		return
	}
	stood := map[int32]bool{b.BlockNode("neck"): true, b.BlockNode("tail"): true}
	b.Model.Fixed = slices.DeleteFunc(b.Model.Fixed, func(f fem.Fix) bool { return stood[f.Node] })
}

// blockBody is the number of a block among the model's rigid bodies, from 1.
func (b *Built) blockBody(name string) int32 {
	for i := range b.Geometry.Blocks {
		if b.Geometry.Blocks[i].Name == name {
			return int32(i + 1)
		}
	}
	panic("design: no block " + name) // a body has both
}

// BlockAt names the block that holds a node of the top inside its edge, "neck" or
// "tail"; "" for most.
func (b *Built) BlockAt(n int32) string {
	if b.Back == nil || int(n) >= b.PlateN {
		return ""
	}
	for i := range b.Geometry.Blocks {
		if k := &b.Geometry.Blocks[i]; k.Holds(b.Mesh.Points[n]) {
			return k.Name
		}
	}
	return ""
}

// BlockNode is the node that leads a block.
func (b *Built) BlockNode(name string) int32 { return b.Model.Bodies[b.blockBody(name)-1].Ref }

// stringEnds are the strings' pulls at the blocks of a body: each pulls at the nut,
// which neck and neck block carry, and at the tail, along its own two lines from the
// saddle. A force on a rigid part may be put anywhere on its line: both stand at the
// saddle, where the string's push on the bridge is their opposite, so that all
// strings leave the body in balance by themselves.
func (b *Built) stringEnds() []fem.PointForce {
	if b.Bridge == nil || !b.Case.Bodied() {
		return nil
	}
	var out []fem.PointForce
	for _, s := range b.Geometry.StringForces() {
		front, back := s.Tension+s.Rise, s.Tension
		at := b.Saddle(s.X)
		out = append(out,
			fem.PointForce{Body: b.blockBody("neck"), Place: at, F: [3]float64{0, -front * cosDeg(s.FrontAngle), front * sinDeg(s.FrontAngle)}},
			fem.PointForce{Body: b.blockBody("tail"), Place: at, F: [3]float64{0, back * cosDeg(s.BackAngle), back * sinDeg(s.BackAngle)}})
	}
	return out
}

// StringTies are where each string of a body is tied: at the nut, which goes with the neck block, and where it
// leaves the tailpiece, which goes with the tail block, mm. Their forces are the last of Loads, two a string
// in this order, and those of the bridge, one a string.
func (b *Built) StringTies() (ties [][2][3]float64) {
	if b.Bridge == nil || !b.Case.Bodied() {
		return nil
	}
	for _, s := range StringSpans(b.Case, b.Geometry.TopAtBridge) {
		at, f := b.Saddle(s.Force.X), s.Force
		ties = append(ties, [2][3]float64{
			{at[0], at[1] + s.Front*cosDeg(f.FrontAngle), at[2] - s.Front*sinDeg(f.FrontAngle)},
			{at[0], at[1] - s.Back*cosDeg(f.BackAngle), at[2] - s.Back*sinDeg(f.BackAngle)}})
	}
	return ties
}
