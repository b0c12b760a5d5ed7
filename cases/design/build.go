package design

import (
	"slices"

	"archload/cases/shape"
	"archload/cases/tree"

	"archload/cases"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// Build turns a meshed geometry into a model; back is the mesh of a body's back.
// The mesh's lines are the braces, then the support lines, in the order of the
// case.
func Build(g *shape.Geometry, m, back *mesh.Mesh) (*Built, error) {
	return build(g, m, back, nil)
}

// build is Build on the plan of triangles of another top, on which places are found already;
// nil: none.
func build(g *shape.Geometry, m, back *mesh.Mesh, like *Built) (*Built, error) {
	c := g.Case
	b := &Built{Case: c, Geometry: g, Plate: g.Plate, Mesh: m, PlateN: len(m.Nodes)}
	if like == nil {
		b.place = newPlacer(g.Plate, m)
	} else {
		b.place = like.place.on(g.Plate)
	}
	b.Model = &fem.Model{Nodes: append([]mesh.Node(nil), m.Nodes...)}
	if err := b.plateShells(); err != nil {
		return nil, err
	}
	if err := b.braces(); err != nil {
		return nil, err
	}
	if back != nil {
		b.Back = &Back{Plate: g.Back.Plate, Mesh: back}
	}
	if err := b.rim(); err != nil {
		return nil, err
	}
	b.supports()
	b.friction()
	b.posts()
	b.masses()
	if c.Bridge != nil && c.Strings != nil {
		var err error
		if like != nil && like.Plate != b.Plate {
			like = nil // the same place of the foot presses on another of the middle surface
		}
		if b.Bridge, err = newBridgeModel(b, like, 1); err != nil {
			return nil, err
		}
		b.Model.Zone = b.contactNodes(b.Bridge)
	}
	b.Loads = b.loads()
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
		Pressed: p.Made == "pressed", Part: PartPlate, Density: card.Wood.Density, Swell: card.Water.Swell,
	}}
	b.Model.Shells = make([]fem.ShellElem, len(b.Mesh.Tris))
	for i, t := range b.Mesh.Tris {
		b.Model.Shells[i] = fem.ShellElem{Nodes: t}
	}
	return nil
}

// loads are the forces on plate and blocks themselves at full load: each load is
// spread over its rectangle, in steps of about a millimetre, the squeeze over the
// plate's edge, and the strings pull at the blocks of a body.
func (b *Built) loads() []fem.PointForce {
	var out []fem.PointForce
	for i := range b.Case.Loads {
		l := &b.Case.Loads[i]
		if l.On == cases.OnBridge {
			continue
		}
		if name := l.OnBlock(); name != "" {
			out = append(out, fem.PointForce{Body: b.blockBody(name), Place: [3]float64{l.At[0], l.At[1], float64(l.Z)},
				F: [3]float64{float64(l.Force[0]), float64(l.Force[1]), float64(l.Force[2])}})
			continue
		}
		pts := b.spots(l.At, l.Size)
		f := [3]float64{}
		for k := range 3 {
			f[k] = float64(l.Force[k]) / float64(len(pts))
		}
		for _, at := range pts {
			out = append(out, fem.PointForce{At: at, F: f})
		}
	}
	return slices.Concat(out, b.squeeze(), b.stringEnds())
}

// spots are the places of the outer surface under a rectangle about a point, in steps of about a
// millimetre; the point alone without a size.
func (b *Built) spots(at mesh.Point, size *[2]tree.Length) []fem.SurfacePoint {
	if size == nil {
		return b.place.spread(at, at, 1, 1)
	}
	lo, hi := shape.Rect(at, size)
	return b.place.spread(lo, hi, cases.Pieces(float64(size[0]), 1), cases.Pieces(float64(size[1]), 1))
}

// masses puts what sits on the plate into the model.
func (b *Built) masses() {
	for i := range b.Case.Masses {
		m := &b.Case.Masses[i]
		b.Model.Masses = append(b.Model.Masses, fem.PointMass{At: b.spots(m.At, m.Size), Mass: float64(m.Mass) * tonnePerGram})
	}
}
