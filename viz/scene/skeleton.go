package scene

import (
	"math"

	"archload/cases/design"
	"archload/fem"
	"archload/mesh"
)

// Skeleton is what stays of a design while load, strings, relief and field
// change: the plate's triangles, its edges, the braces and the sides. It is
// never changed, so that any number of goroutines may build scenes from it.
type Skeleton struct {
	mesh    *mesh.Mesh
	of      *design.Built // that it was made from
	below   [][3]int32    // the plate's triangles, turned to face inward
	edges   edgeBand
	braces  []braceFrame
	sides   sheetFrame
	bench   []mesh.Point // the outline, for the shadow
	flat    [][3]int32   // triangles between its places
	lo, hi  mesh.Point   // box of the outline, mm
	hollow  []float64    // how far each node lies below what is about it, mm
	across  []float64    // of each node, mm from the joint across the grain
	along   vec          // along the grain
	heights [2]float64   // least and greatest of the outer surface at the nodes, mm
}

// spot is a place on a triangle of the plan, carried by whatever skin is drawn
// on it.
type spot struct {
	n [3]int32   // its corners
	l [3]float64 // their weights, sum 1
}

func (k *Skeleton) spot(at fem.SurfacePoint) spot { return spot{k.mesh.Tris[at.Shell], at.L} }

// on returns the spot's place on a skin.
func (s spot) on(skin []vec) vec {
	var p vec
	for k, n := range s.n {
		p = plus(p, s.l[k], skin[n])
	}
	return p
}

// value is a field of the nodes at the spot.
func (s spot) value(v []float64) float64 {
	return s.l[0]*v[s.n[0]] + s.l[1]*v[s.n[1]] + s.l[2]*v[s.n[2]]
}

// edgeBand is the cut edge of the plate along its outline and its holes. Every
// loop node has a point above and one below.
type edgeBand struct {
	nodes []int32 // of the plan, loop by loop
	tris  [][3]int32
	loops [][]int32 // of the plan, the outline first
}

// braceFrame is a brace before it moves.
type braceFrame struct {
	name     string
	stations []braceStation
}

// braceStation is a section of a brace: two edges glued to the inner skin, two
// below.
type braceStation struct {
	middle spot    // on the inner skin, what carries the section
	edge   [2]spot // left and right of the line
	above  [2]spot // the same on the outer skin
	below  [2]vec  // from the middle of the glue, mm
}

// sheetFrame is a skin of model nodes: the sides.
type sheetFrame struct {
	nodes []int32
	tris  [][3]int32
	foot  []int32 // its lower edge, a closed loop of entries of nodes
}

// NewSkeleton prepares the scenes of a design. It is made again when wood is
// cut: after a change of outline, arch, thickness, holes, braces or rim. Fits
// tells.
func NewSkeleton(s *design.Solution) *Skeleton {
	k := &Skeleton{mesh: s.Top.Built.Mesh, of: s.Top.Built, below: make([][3]int32, len(s.Top.Built.Mesh.Tris))}
	for i, t := range s.Top.Built.Mesh.Tris {
		k.below[i] = [3]int32{t[0], t[2], t[1]}
	}
	k.lo = mesh.Point{math.Inf(1), math.Inf(1)}
	k.hi = mesh.Point{math.Inf(-1), math.Inf(-1)}
	for _, n := range s.Top.Built.Mesh.Rim {
		for i, v := range s.Top.Built.Mesh.Points[n] {
			k.lo[i], k.hi[i] = math.Min(k.lo[i], v), math.Max(k.hi[i], v)
		}
	}
	k.heights = [2]float64{math.Inf(1), math.Inf(-1)}
	for _, n := range s.Top.Built.Mesh.Nodes {
		z := n.P[2] + n.H/2*n.N[2]
		k.heights[0], k.heights[1] = math.Min(k.heights[0], z), math.Max(k.heights[1], z)
	}
	k.hollow = hollows(k.mesh)
	k.across, k.along = k.acrossGrain(float64(s.Top.Built.Case.Plate.GrainAngle))
	k.edges = newEdgeBand(s.Top.Built.Mesh)
	k.braces = k.fittedBraces(s)
	k.sides = newSides(s)
	k.bench = shadowOutline(k.mesh)
	k.flat = flatTris(k.bench)
	return k
}

// Fits tells whether the skeleton serves a solution, too: it does while the
// plate, its mesh and its braces are the same.
func (k *Skeleton) Fits(s *design.Solution) bool {
	return s.Top.Built.SamePlate(k.of)
}

// fittedBraces lays out the braces that are glued in.
func (k *Skeleton) fittedBraces(s *design.Solution) []braceFrame {
	var out []braceFrame
	for i := range s.Top.Built.Case.Braces {
		if s.Top.Built.Case.Braces[i].Fitted {
			out = append(out, k.newBrace(s, i))
		}
	}
	return out
}

func newEdgeBand(m *mesh.Mesh) edgeBand {
	e := edgeBand{loops: append([][]int32{m.Rim}, m.Holes...)}
	for i, loop := range e.loops {
		first, n := int32(2*len(e.nodes)), int32(len(loop))
		e.nodes = append(e.nodes, loop...)
		for j := range n {
			a, c := first+2*j, first+2*((j+1)%n) // above; below is the next
			if i > 0 {                           // a hole: wood lies on the loop's other side
				a, c = c, a
			}
			e.tris = append(e.tris, [3]int32{a + 1, c + 1, c}, [3]int32{a + 1, c, a})
		}
	}
	return e
}

// newBrace lays out brace i along its nodes.
func (k *Skeleton) newBrace(s *design.Solution, i int) braceFrame {
	br := &s.Top.Built.Case.Braces[i]
	chain, share := k.mesh.Lines[i], s.Top.Built.BraceShares(i)
	b := braceFrame{name: br.Name}
	for j, n := range chain {
		p, q := k.mesh.Points[chain[max(j-1, 0)]], k.mesh.Points[chain[min(j+1, len(chain)-1)]]
		l := math.Hypot(q[0]-p[0], q[1]-p[1])
		side := mesh.Point{-(q[1] - p[1]) / l, (q[0] - p[0]) / l}
		half, height := br.Width.Value(share[j])/2, br.HeightAt(share[j])
		at := k.mesh.Points[n]
		mid, _ := s.Top.Built.OnInner(at)
		st := braceStation{middle: k.spot(mid)}
		for e, w := range [2]float64{half, -half} {
			q := mesh.Point{at[0] + w*side[0], at[1] + w*side[1]}
			in, _ := s.Top.Built.OnInner(q)
			out, _ := s.Top.Built.OnOuter(q)
			st.edge[e], st.above[e] = k.spot(in), k.spot(out)
			st.below[e] = vec{w * side[0], w * side[1], -height}
		}
		b.stations = append(b.stations, st)
	}
	return b
}

// newSides gathers the shells of the sides.
func newSides(s *design.Solution) sheetFrame {
	var f sheetFrame
	local := map[int32]int32{}
	edge := map[[2]int32]bool{}
	for _, e := range s.Top.Built.Model.Shells {
		if s.Top.Built.Model.Sections[e.Section].Part != design.PartRim {
			continue
		}
		var t [3]int32
		for k, n := range e.Nodes {
			id, seen := local[n]
			if !seen {
				id = int32(len(f.nodes))
				local[n], f.nodes = id, append(f.nodes, n)
			}
			t[k] = id
		}
		for k := range t {
			edge[[2]int32{t[k], t[(k+1)%3]}] = true
		}
		f.tris = append(f.tris, t)
	}
	f.foot = f.lowerEdge(s, edge)
	return f
}

// lowerEdge walks the free edge of the sides that is not the plate's.
func (f *sheetFrame) lowerEdge(s *design.Solution, edge map[[2]int32]bool) []int32 {
	next := map[int32]int32{}
	first := int32(-1)
	for _, t := range f.tris {
		for k := range t {
			a, b := t[k], t[(k+1)%3]
			if edge[[2]int32{b, a}] || int(f.nodes[a]) < len(s.Top.Built.Mesh.Nodes) {
				continue
			}
			next[a] = b
			if first < 0 {
				first = a
			}
		}
	}
	if first < 0 {
		return nil
	}
	loop := []int32{first}
	for at, ok := next[first]; ok && at != first && len(loop) <= len(next); at, ok = next[at] {
		loop = append(loop, at)
	}
	return loop
}
