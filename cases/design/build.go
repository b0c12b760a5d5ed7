package design

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/fem"
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
)

// Built is a case turned into mechanics: the mesh, the model, and what ties
// results back to the maker's words.
type Built struct {
	Case     *cases.Case
	Geometry *Geometry
	Plate    mesh.Plate // of the geometry
	Mesh     *mesh.Mesh
	Model    *fem.Model
	Bridge   *BridgeModel     // nil without a bridge
	Loads    []fem.PointForce // on the plate itself
	Bars     []Bar            // the braces that are fitted, in the order of the case

	Place     placer
	joints    map[int32]int32 // joint node of a plate node where joined braces cross
	FirstPost int             // first spring of the model that is a post
	PlateN    int             // nodes of the plate; those of the sides come after
}

// Bar is one brace of the model.
type Bar struct {
	Name  string
	Brace int // of the case, from 0
	First int // first beam of the model
	Count int
}

// gramPerMM3 turns kg/m³ into g/mm³.
const gramPerMM3 = 1e-6

// tonnePerGram turns g into the tonne of mechanics, which goes with mm, N and s.
const tonnePerGram = 1e-6

// Build turns a meshed geometry into a model. The mesh's lines are the braces,
// then the support lines, in the order of the case.
func Build(g *Geometry, m *mesh.Mesh) (*Built, error) {
	c := g.Case
	b := &Built{Case: c, Geometry: g, Plate: g.Plate, Mesh: m, Place: newPlacer(g.Plate, m), PlateN: len(m.Nodes)}
	b.Model = &fem.Model{Nodes: append([]mesh.Node(nil), m.Nodes...)}
	if err := b.plateShells(); err != nil {
		return nil, err
	}
	if err := b.braces(); err != nil {
		return nil, err
	}
	if err := b.rim(); err != nil {
		return nil, err
	}
	b.supports()
	b.friction()
	b.posts()
	b.masses()
	b.Loads = b.loads()
	if c.Bridge != nil && c.Strings != nil {
		var err error
		if b.Bridge, err = newBridgeModel(b); err != nil {
			return nil, err
		}
		b.Model.Zone = b.contactNodes(b.Bridge)
	}
	return b, nil
}

func (b *Built) plateShells() error {
	card, err := b.Case.Wood("plate.wood")
	if err != nil {
		return err
	}
	p := &b.Case.Plate
	cut := materials.Cut{Flat: p.Cut == "flat", RingAngle: float64(p.RingAngle), GrainAngle: float64(p.GrainAngle)}
	b.Model.Sections = []fem.Section{{
		Wood: card.Wood.Compliance(), Axes: materials.PlateAxes(cut),
		Pressed: p.Made == "pressed", Part: PartPlate, Density: card.Wood.Density,
	}}
	b.Model.Shells = make([]fem.ShellElem, len(b.Mesh.Tris))
	for i, t := range b.Mesh.Tris {
		b.Model.Shells[i] = fem.ShellElem{Nodes: t}
	}
	return nil
}

// braces adds each brace as beams along its chain of nodes, glued under the
// plate's inner face; its axis lies half its height straight below, as bars
// are cut with upright sides.
func (b *Built) braces() error {
	b.findJoints()
	for i := range b.Case.Braces {
		br := &b.Case.Braces[i]
		if !br.Fitted {
			continue
		}
		card, err := b.Case.Wood(fmt.Sprintf("brace[%d].wood", i+1))
		if err != nil {
			return err
		}
		one := b.bar(br, b.Mesh.Lines[i], card, int32(len(b.Bars)))
		one.Brace = i
		b.Bars = append(b.Bars, one)
	}
	return nil
}

// findJoints adds a joint at every node where two braces cross and one of them
// is joined.
func (b *Built) findJoints() {
	b.joints = map[int32]int32{}
	users := map[int32][]int{}
	for i := range b.Case.Braces {
		if !b.Case.Braces[i].Fitted {
			continue
		}
		for _, n := range b.Mesh.Lines[i] {
			users[n] = append(users[n], i)
		}
	}
	for i := range b.Case.Braces { // in the order of the lines, not of the map
		for _, n := range b.Mesh.Lines[i] {
			_, done := b.joints[n]
			done = done || !b.Case.Braces[i].Fitted
			for _, k := range users[n] {
				if k != i && !done && (b.Case.Braces[i].Joined || b.Case.Braces[k].Joined) {
					b.joints[n] = b.Model.AddJoint(b.Model.Nodes[n])
					done = true
				}
			}
		}
	}
}

// Bar adds the beams of one brace.
func (b *Built) bar(br *cases.Brace, chain []int32, card materials.Card, group int32) Bar {
	one := Bar{Name: br.Name, First: len(b.Model.Beams), Count: len(chain) - 1}
	along := fractions(b.Model.Nodes, chain)
	lean := make([]int32, len(chain))
	joined := make([]bool, len(chain))
	for k, n := range chain {
		lean[k], joined[k] = b.joints[n]
		if !joined[k] {
			lean[k] = b.Model.AddLean(b.Model.Nodes[n])
		}
	}
	for k := 1; k < len(chain); k++ {
		s := (along[k-1] + along[k]) / 2
		w, h := br.Width.Value(s), br.HeightAt(s)
		p, q := b.Mesh.Points[chain[k-1]], b.Mesh.Points[chain[k]]
		sec := rectangle(w, h, card.Wood)
		dir := Unit2(q[0]-p[0], q[1]-p[1])
		e := fem.BeamElem{
			Nodes: [2]int32{chain[k-1], chain[k]}, Glued: true,
			Lean: [2]int32{lean[k-1], lean[k]}, Joined: [2]bool{joined[k-1], joined[k]}, Across: [3]float64{-dir[1], dir[0], 0},
			Up: [3]float64{0, 0, 1}, Section: sec, Mass: stretchMass(sec, p, q, card.Wood.Density),
			Part: PartBraces, Group: group,
		}
		for end := range 2 {
			e.Glue[end], _ = b.Place.inner(b.Mesh.Points[chain[k-1+end]])
			e.Offset[end] = [3]float64{0, 0, -br.HeightAt(along[k-1+end]) / 2}
		}
		b.Model.Beams = append(b.Model.Beams, e)
	}
	return one
}

// rectangle is a beam section with L along, R upright and T across.
func rectangle(width, height float64, w materials.Orthotropic) element.Rectangle {
	return element.Rectangle{Width: width, Height: height, E: w.EL, Gxy: w.GLT, Gxz: w.GLR}
}

// fractions gives each node's place along its chain in plan, 0 to 1.
func fractions(nodes []mesh.Node, chain []int32) []float64 {
	s := make([]float64, len(chain))
	for k := 1; k < len(chain); k++ {
		p, q := nodes[chain[k-1]].P, nodes[chain[k]].P
		s[k] = s[k-1] + math.Hypot(q[0]-p[0], q[1]-p[1])
	}
	for k := range s {
		s[k] /= s[len(s)-1]
	}
	return s
}

// benchPin is the stiffness of a point support on the bench, N/mm: so much
// more than a plate's that 100 N press it down by a hundred-thousandth of a
// millimetre.
const benchPin = 1e7

// supports holds the plate vertically at the bench supports.
func (b *Built) supports() {
	line := len(b.Case.Braces)
	for i := range b.Case.Supports {
		s := &b.Case.Supports[i]
		if s.At != nil {
			at, _ := b.Place.inner(*s.At)
			b.Model.Springs = append(b.Model.Springs, fem.Spring{Part: PartRim, At: at, Dir: [3]float64{0, 0, 1}, K: benchPin})
			continue
		}
		for _, n := range b.Mesh.Lines[line] {
			b.Model.Fixed = append(b.Model.Fixed, fem.Fix{Node: n, Dof: 2})
		}
		line++
	}
}

// friction keeps a plate that only lies on bench supports from sliding: three
// ties in its plane at the two supports farthest apart, just enough to hold it,
// so that they carry nothing under loads straight down.
func (b *Built) friction() {
	if b.Case.Rim.Support != "free" {
		return
	}
	var at []mesh.Point
	for _, s := range b.Case.Supports {
		if s.At != nil {
			at = append(at, *s.At)
		}
		at = append(at, s.Line...)
	}
	if len(at) < 2 {
		return // nothing holds it: a plate in the hand
	}
	p, q, far := mesh.Point{}, mesh.Point{}, -1.0
	for i := range at {
		for _, o := range at[i+1:] {
			if d := math.Hypot(o[0]-at[i][0], o[1]-at[i][1]); d > far {
				p, q, far = at[i], o, d
			}
		}
	}
	side := Unit2(p[1]-q[1], q[0]-p[0])
	for _, tie := range []struct {
		at  mesh.Point
		dir [3]float64
	}{{p, [3]float64{1, 0, 0}}, {p, [3]float64{0, 1, 0}}, {q, [3]float64{side[0], side[1], 0}}} {
		place, _ := b.Place.middle(tie.at)
		b.Model.Springs = append(b.Model.Springs, fem.Spring{Part: PartRim, At: place, Dir: tie.dir, K: benchPin})
	}
}

// PostSprings is how many springs stand for one post: its end bears on a disc,
// as a plate that shears sinks without limit under a true point.
const PostSprings = 7

// posts are springs between the plate's inner face and the back, spread over
// the end of each post: one in its middle, six around it.
func (b *Built) posts() {
	b.FirstPost = len(b.Model.Springs)
	for i := range b.Case.Posts {
		p := &b.Case.Posts[i]
		for k := range PostSprings {
			q := p.At
			if k > 0 {
				sin, cos := math.Sincos(float64(k) * math.Pi / 3)
				q[0] += float64(p.Diameter) / 3 * cos
				q[1] += float64(p.Diameter) / 3 * sin
			}
			at, _ := b.Place.inner(q)
			b.Model.Springs = append(b.Model.Springs, fem.Spring{Part: PartRim, At: at, Dir: [3]float64{0, 0, 1}, K: float64(p.Stiffness) / PostSprings})
		}
	}
}

// stretchMass is the mass of a stretch of a bar between two places in plan, tonne: its section
// stands upright.
func stretchMass(s element.Section, p, q mesh.Point, density float64) float64 {
	return s.Area() * math.Hypot(q[0]-p[0], q[1]-p[1]) * density * gramPerMM3 * tonnePerGram
}

// BraceMass is the mass of a brace, g.
func (b *Built) BraceMass(one Bar, wood materials.Orthotropic) float64 {
	br, chain := &b.Case.Braces[one.Brace], b.Mesh.Lines[one.Brace]
	along := fractions(b.Model.Nodes, chain)
	mass := 0.0
	for k := 1; k < len(chain); k++ {
		s := (along[k-1] + along[k]) / 2
		p, q := b.Mesh.Points[chain[k-1]], b.Mesh.Points[chain[k]]
		mass += stretchMass(rectangle(br.Width.Value(s), br.HeightAt(s), wood), p, q, wood.Density) / tonnePerGram
	}
	return mass
}

// loads are the forces on the plate itself at full load: each load is spread
// over its rectangle, in steps of about a millimetre, and the squeeze over the
// blocks.
func (b *Built) loads() []fem.PointForce {
	var out []fem.PointForce
	for i := range b.Case.Loads {
		l := &b.Case.Loads[i]
		pts := b.spots(l.At, l.Size)
		f := [3]float64{}
		for k := range 3 {
			f[k] = float64(l.Force[k]) / float64(len(pts))
		}
		for _, at := range pts {
			out = append(out, fem.PointForce{At: at, F: f})
		}
	}
	return append(out, b.squeeze()...)
}
