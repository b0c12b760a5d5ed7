package fit

import (
	"math"

	"archload/cases/bench"
	"archload/cases/design"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// scene is a piece of wood as it lies when it is tapped or pressed: a model whose section 0 is the
// wood that is looked for.
type scene struct {
	model *fem.Model
	free  int // motions that nothing holds
	at    func(q mesh.Point) (fem.SurfacePoint, bool)
	lo    mesh.Point // the piece's box in plan, mm
	hi    mesh.Point
	loads []fem.PointForce
	thin  bool // without shear strain through the thickness
	flat  bool // rings lying
}

// maker builds a scene with triangles so many times smaller.
type maker func(refine float64) (*scene, error)

// flatPiece is a flat piece, grain along y or across it.
type flatPiece struct {
	length, width float64        // mm; 0 for a piece with an outline
	thickness     [2]float64     // mm, at -x and +x
	outline       *plane.Curve   // instead of length and width
	axes          materials.Axes // of its wood
	fine          bool           // the edges' layers of twisting shear are resolved
	lines         []float64      // y of straight edges that it rests on, mm
	points        []mesh.Point   // points that it rests on
	hinged        bool           // held when it swings, too
	thin          bool           // without shear strain through the thickness
	flat          bool           // rings lying
}

// Triangles of a flat piece: this many along it and across it.
const alongParts, acrossParts = 20, 14

// make builds the scene. What lies in its plane does not couple with its bending and is held.
func (f flatPiece) make(refine float64) (*scene, error) {
	plan, err := f.plan(refine)
	if err != nil {
		return nil, err
	}
	s := &scene{free: 3, thin: f.thin, flat: f.flat}
	s.lo, s.hi = plane.Bounds(plan.Points)
	m := &fem.Model{Sections: []fem.Section{{Axes: f.axes}}}
	for i, p := range plan.Points {
		share := (p[0] - s.lo[0]) / (s.hi[0] - s.lo[0])
		m.Nodes = append(m.Nodes, mesh.Node{P: [3]float64{p[0], p[1], 0}, N: [3]float64{0, 0, 1}, H: f.thickness[0] + share*(f.thickness[1]-f.thickness[0])})
		for _, d := range [3]int{0, 1, 5} {
			m.Fixed = append(m.Fixed, fem.Fix{Node: int32(i), Dof: d})
		}
		for _, y := range f.lines {
			if math.Abs(p[1]-y) < 1e-9*(1+math.Abs(y)) {
				m.Fixed = append(m.Fixed, fem.Fix{Node: int32(i), Dof: 2})
				s.free = 0
			}
		}
	}
	for _, t := range plan.Tris {
		m.Shells = append(m.Shells, fem.ShellElem{Nodes: t})
	}
	s.model = m
	find := mesh.NewLocator(plan)
	s.at = func(q mesh.Point) (fem.SurfacePoint, bool) {
		tri, l, inside := find.Find(q)
		return fem.SurfacePoint{Shell: tri, L: l}, inside
	}
	for _, q := range f.points {
		at, _ := s.at(q)
		m.Springs = append(m.Springs, fem.Spring{At: at, Dir: [3]float64{0, 0, 1}, K: ground})
		s.free = 0
	}
	return s, nil
}

// ground is how stiff a point that a piece rests on is, N/mm: a thousand times a stiff bar.
const ground = 1e6

// plan meshes the piece: a rectangle on halved squares in alternate directions, an outline on the
// program's own triangles.
func (f flatPiece) plan(refine float64) (*mesh.Plan, error) {
	if f.outline != nil {
		lo, hi := f.outline.Bounds()
		return mesh.Triangulate(mesh.Domain{Outline: f.outline, Size: math.Sqrt((hi[0]-lo[0])*(hi[1]-lo[1])/(alongParts*acrossParts)) / refine})
	}
	n, m := acrossParts, alongParts
	if f.length > 4*f.width {
		n, m = 8, 60
	}
	if whole := math.Ceil(refine); whole != refine { // triangles in between: larger ones, cut into a whole number
		n, m, refine = int(math.Ceil(refine/whole*float64(n))), int(math.Ceil(refine/whole*float64(m))), whole
	}
	xs, ys := even(f.width, n), marked(even(f.length, m), f.lines)
	if f.fine {
		xs = edged(f.width, math.Max(f.thickness[0], f.thickness[1]), n)
	}
	xs, ys = finer(xs, refine), finer(ys, refine)
	p := &mesh.Plan{}
	for _, y := range ys {
		for _, x := range xs {
			p.Points = append(p.Points, mesh.Point{x, y})
		}
	}
	w := int32(len(xs))
	for j := range int32(len(ys) - 1) {
		for i := range w - 1 {
			a := j*w + i
			b, c, d := a+1, a+w+1, a+w
			if (i+j)%2 == 0 {
				p.Tris = append(p.Tris, [3]int32{a, b, c}, [3]int32{a, c, d})
			} else {
				p.Tris = append(p.Tris, [3]int32{a, b, d}, [3]int32{b, c, d})
			}
		}
	}
	return p, nil
}

// even cuts a length about 0 into n parts.
func even(length float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = length * (float64(i)/float64(n) - 0.5)
	}
	return out
}

// edged cuts a width into parts that grow from both edges: in a layer there, about a third of the
// thickness wide, the shear of twisting dies out.
func edged(width, h float64, most int) []float64 {
	var from []float64
	for x, step := 0.0, 0.2*h; x < width/2; step *= 1.7 {
		from = append(from, x)
		x += math.Min(step, width/float64(most))
	}
	if last := len(from) - 1; last > 0 && width/2-from[last] < 0.6*(from[last]-from[last-1]) {
		from = from[:last]
	}
	out := make([]float64, 0, 2*len(from)+1)
	for _, x := range from {
		out = append(out, x-width/2)
	}
	out = append(out, 0)
	for i := len(from) - 1; i >= 0; i-- {
		out = append(out, width/2-from[i])
	}
	return out
}

// marked moves the nearest of some stations onto each mark.
func marked(at, marks []float64) []float64 {
	for _, m := range marks {
		best := 0
		for i := range at {
			if math.Abs(at[i]-m) < math.Abs(at[best]-m) {
				best = i
			}
		}
		at[best] = m
	}
	return at
}

// finer cuts each part into a whole number of equal ones.
func finer(at []float64, refine float64) []float64 {
	n := max(1, int(math.Round(refine)))
	out := []float64{at[0]}
	for i := 1; i < len(at); i++ {
		for k := 1; k <= n; k++ {
			out = append(out, at[i-1]+(at[i]-at[i-1])*float64(k)/float64(n))
		}
	}
	return out
}

// topPiece builds a case's plate from its model in a state.
func topScene(b *design.Built, free int) *scene {
	s := &scene{model: b.Model, free: free, loads: b.Loads}
	s.lo, s.hi = plane.Bounds(b.Mesh.Points)
	s.at = b.OnOuter
	return s
}

// axesOf are the wood's axes of a piece whose length runs along the grain or across it.
func axesOf(f *bench.File, across, onEdge bool) materials.Axes {
	ring := float64(f.RingAngle)
	flat := f.Cut == "flat"
	if onEdge {
		flat, ring = !flat, -ring
	}
	cut := materials.Cut{Flat: flat, RingAngle: ring}
	if across {
		cut.GrainAngle = 90
	}
	return materials.PlateAxes(cut)
}

// in says how a scene's model is in a given wood and thickness; the scene itself stays.
func (s *scene) in(w materials.Orthotropic, thicker float64) *fem.Model {
	if s.thin {
		const rigid = 1e6
		w.GRT *= rigid
		if s.flat {
			w.GLR *= rigid
		} else {
			w.GLT *= rigid
		}
	}
	m := *s.model
	m.Sections = append([]fem.Section(nil), m.Sections...)
	m.Sections[0].Wood, m.Sections[0].Density = w.Compliance(), w.Density
	if thicker != 1 {
		m.Nodes = append([]mesh.Node(nil), m.Nodes...)
		for i := range m.Nodes {
			m.Nodes[i].H *= thicker
		}
	}
	return &m
}

// volume is that of the wood that is looked for, mm³.
func (s *scene) volume() float64 {
	sum := 0.0
	for i := range s.model.Shells {
		e := &s.model.Shells[i]
		if e.Section != 0 {
			continue
		}
		var p [3][3]float64
		h := 0.0
		for k, n := range e.Nodes {
			p[k] = s.model.Nodes[n].P
			h += s.model.Nodes[n].H / 3
		}
		sum += h * area(p)
	}
	return sum
}

func area(p [3][3]float64) float64 {
	var a, b [3]float64
	for k := range 3 {
		a[k], b[k] = p[1][k]-p[0][k], p[2][k]-p[0][k]
	}
	c := [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	return math.Sqrt(c[0]*c[0]+c[1]*c[1]+c[2]*c[2]) / 2
}

// spots are the places under a rectangle, some along and across.
func (s *scene) spots(at mesh.Point, size [2]float64) ([]fem.SurfacePoint, bool) {
	const n = 5
	var out []fem.SurfacePoint
	all := true
	for i := range n {
		for j := range n {
			q := mesh.Point{at[0] + size[0]*((float64(i)+0.5)/n-0.5), at[1] + size[1]*((float64(j)+0.5)/n-0.5)}
			place, inside := s.at(q)
			all = all && inside
			out = append(out, place)
		}
	}
	return out, all
}
