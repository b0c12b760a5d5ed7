package design

import (
	"math"

	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// bodyWalls adds the sides. Straight below the nodes of the top's rim stand rows of nodes,
// the first on the top's inner face; straight above those of the back's rim, which need not lie under
// them, stands one on the back's inner face. Between the last of both a strip takes the
// one spacing to the other. Between a plate's middle and its inner face runs a strip of their joint: see
// jointWood. It returns the rows by the edges to which they belong, each edge first.
func (b *Built) bodyWalls(card materials.Card) (top, back [][]int32) {
	r, loop, low := &b.Case.Rim, b.Mesh.Rim, b.Back.rim()
	rows := max(leastRows, int(math.Round(float64(r.SideHeight)/meanStep(b.Mesh))))
	top, back = [][]int32{loop}, [][]int32{low, b.row(low, func(n mesh.Node) float64 { return n.P[2] + n.H/2 })}
	for row := range rows {
		top = append(top, b.row(loop, func(n mesh.Node) float64 {
			under := b.Back.Plate.Mid(mesh.Point{n.P[0], n.P[1]})
			end, begin := under.H/2-float64(r.SideHeight)-under.P[2], n.P[2]-n.H/2
			return begin + (end-begin)*float64(row)/float64(rows)
		}))
	}
	z := zipper{b: b, card: card, upper: top[rows], lower: back[1], toNeck: rows%2 == 0}
	onTop, onBack := b.jointWood(0, card), b.jointWood(b.Back.Shell, card)
	for k := range loop {
		next := (k + 1) % len(loop)
		wall, _ := b.wallSection(k, next, card)
		z.sections = append(z.sections, wall)
		b.wallQuad([2][]int32{top[0], top[1]}, k, onTop(wall), true)
		for row := 1; row < rows; row++ {
			b.wallQuad([2][]int32{top[row], top[row+1]}, k, wall, row%2 == 0)
		}
		b.lining(strip{r.Lining, -1}, loop[k], loop[next], card)
	}
	z.close()
	for k := range low {
		next := (k + 1) % len(low)
		wall := b.grainAlong(b.Model.Nodes[low[k]].P, b.Model.Nodes[low[next]].P, card)
		b.wallQuad([2][]int32{back[1], low}, k, onBack(wall), rows%2 != 0)
		b.lining(strip{b.Case.BackLining(), 1}, low[k], low[next], card)
	}
	return top, back
}

// row adds a row of nodes of the wall at the places of others in plan, at its own height, mm.
func (b *Built) row(over []int32, height func(mesh.Node) float64) []int32 {
	ids := make([]int32, len(over))
	for k, n := range over {
		p := b.Model.Nodes[n].P
		p[2] = height(b.Model.Nodes[n])
		ids[k] = int32(len(b.Model.Nodes))
		b.Model.Nodes = append(b.Model.Nodes, mesh.Node{P: p, H: float64(b.Case.Rim.SideThickness)})
	}
	return ids
}

// wallQuad adds stretch k of the wall between two rows of one edge, the upper first; its diagonal rises toward the
// neck, or toward the tail.
func (b *Built) wallQuad(rows [2][]int32, k int, section int32, toNeck bool) {
	upper, lower, next := rows[0], rows[1], (k+1)%len(rows[0])
	rises := b.Model.Nodes[upper[next]].P[1] > b.Model.Nodes[upper[k]].P[1]
	b.wallPair([4]int32{upper[k], upper[next], lower[next], lower[k]}, section, float64(b.Case.Rim.SideThickness), rises == toNeck)
}

// jointWood returns what makes of a stretch of wall the strip between a plate's middle surface and its inner face of
// which a triangle is given.
//
// In the body that is built the side ends at the plate, which lies on it and reaches to its outer face: where
// both middle surfaces meet there is the plate's wood. Of the plate the model leaves out what lies outside
// the side's middle, half the side's thickness t wide and h high; of the wall it adds h/2 by t, just as much. So
// along the outline this strip stretches as the plate's wood does there and weighs what it weighs: as the side's,
// with its grain along the outline, it would be a hoop that is not there. Upright it stays as stiff as the side, since
// it is no wall that bends but a joint, short and held by the plate: as a wall of the plate's wood it would
// nearly be a hinge.
func (b *Built) jointWood(shell int32, side materials.Card) func(wall int32) int32 {
	plate := b.Model.Sections[b.Model.Shells[shell].Section]
	return func(wall int32) int32 {
		s := b.Model.Sections[wall]
		wood := side.Wood
		wood.EL = 1 / plate.Wood.Between(plate.Axes, s.Axes)[0][0]
		wood.NuLR, wood.NuLT = 0, 0
		s.Wood, s.Density = wood.Compliance(), plate.Density
		s.Swell[0] = 0
		for k, axis := range plate.Axes {
			along := vec3.Dot(axis, s.Axes[0])
			s.Swell[0] += plate.Swell[k] * along * along
		}
		b.Model.Sections = append(b.Model.Sections, s)
		return int32(len(b.Model.Sections) - 1)
	}
}

// leastRows is how many rows of triangles a wall has at least.
const leastRows = 4

// meanStep is the mean distance of the nodes along a mesh's outline, mm: the walls'
// rows are as high, as long thin triangles bend too hard.
func meanStep(m *mesh.Mesh) float64 {
	long := 0.0
	for k, n := range m.Rim {
		long += plane.Dist(m.Points[n], m.Points[m.Rim[(k+1)%len(m.Rim)]])
	}
	return long / float64(len(m.Rim))
}
