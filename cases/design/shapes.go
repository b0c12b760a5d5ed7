package design

import (
	"math"
	"reflect"

	"archload/cases"
	"archload/fem"
	"archload/mesh"
)

// OnOuter returns the place of the outer surface whose plan is q, mm; inside is
// false beyond the plate's edge or over a hole, where it is the nearest one.
func (b *Built) OnOuter(q mesh.Point) (at fem.SurfacePoint, inside bool) { return b.place.Outer(q) }

// SamePlate says whether two designs have the same plate, triangles and bars: what is carved and glued.
func (b *Built) SamePlate(o *Built) bool {
	return b.Mesh == o.Mesh && b.Plate == o.Plate && reflect.DeepEqual(b.Case.Braces, o.Case.Braces)
}

// WithinOuter is OnOuter at little cost where it is not inside; the place then means nothing.
func (b *Built) WithinOuter(q mesh.Point) (at fem.SurfacePoint, inside bool) {
	return b.place.outerWithin(q)
}

// OnInner is OnOuter for the inner surface.
func (b *Built) OnInner(q mesh.Point) (at fem.SurfacePoint, inside bool) { return b.place.inner(q) }

// OnMiddle is OnOuter for the middle surface, in whose plan the mesh and the
// load flow are.
func (b *Built) OnMiddle(q mesh.Point) (at fem.SurfacePoint, inside bool) { return b.place.middle(q) }

// PlateShape is the carved plate at one place in plan, unloaded.
type PlateShape struct {
	Height    float64 // mm, of the outer surface above z = 0
	Thickness float64 // mm
	Slope     float64 // deg, of the outer surface
}

// PlateAt tells the plate's shape at a place in plan.
func (b *Built) PlateAt(q mesh.Point) PlateShape {
	j := b.Plate.Outer.At(q)
	return PlateShape{Height: j.Z, Thickness: b.Plate.Thickness.At(q).Z, Slope: math.Atan(math.Hypot(j.Zx, j.Zy)) * 180 / math.Pi}
}

// BraceShares gives the place of each node of brace i along its line, 0 to 1.
func (b *Built) BraceShares(i int) []float64 { return fractions(b.Model.Nodes, b.Mesh.Lines[i]) }

// BridgePoint is a corner of the bridge with what moves it.
type BridgePoint struct {
	At   [3]float64 // mm, fitted to the top without a gap
	Gap  float64    // relief and misfit, mm: how far above At the wood begins
	Node int32      // of the bridge's frame that carries it
}

// BridgePart is a part of the bridge by its sections, one after another along
// it. Each section is a closed loop of the same number of corners,
// anticlockwise seen from the last section's side.
type BridgePart struct {
	Name     string // "base", "saddle", "post", "saddle beam"
	Sections [][]BridgePoint
}

// How the parts of the bridge that the case does not measure are drawn, mm.
const (
	sectionStep = 3.0  // between sections
	drawnFree   = 1.0  // clearance under the ends of the base beyond its feet
	drawnArch   = 0.3  // 1, of the base's height: clearance between two feet
	drawnRim    = 1.0  // depth of the hollow inside a perimeter bearing
	drawnBlade  = 2.4  // thickness of a one-piece bridge under the strings
	drawnFlank  = 0.55 // 1, of the base's width: the same at the base's top
	drawnBeyond = 7.0  // of the blade beyond the outer strings
)

// BridgeParts returns the bridge as it stands on the unloaded top; nil without
// a bridge. What the case leaves open is drawn by custom: the clearance
// between two feet, and the blade of a one-piece bridge between its base and
// the strings.
func (b *Built) BridgeParts() []BridgePart {
	if b.Bridge == nil {
		return nil
	}
	parts := []BridgePart{b.baseShape()}
	if b.Case.Bridge.Build != "posts" {
		if blade := b.bladeShape(); len(blade.Sections) > 1 {
			parts = append(parts, blade)
		}
		return parts
	}
	for _, x := range b.Case.Bridge.Posts.Places() {
		parts = append(parts, b.postShape(x))
	}
	return append(parts, b.beamShape())
}

// baseShape is the base: its sections have six corners below, toward the neck,
// and two above.
func (b *Built) baseShape() BridgePart {
	br := b.Case.Bridge
	half := float64(br.Length) / 2
	marks := []float64{-half, half}
	for i, f := range br.Feet {
		w := br.Wall(i)
		marks = append(marks, float64(f.From), float64(f.To), float64(f.From)+w, float64(f.To)-w)
	}
	for _, s := range br.Height.Stations {
		if math.Abs(s.At) < half {
			marks = append(marks, s.At)
		}
	}
	xs := stations(marks, sectionStep)
	part := BridgePart{Name: "base"}
	for i := 1; i < len(xs); i++ { // both ends of each stretch: the underside has steps
		mid := (xs[i-1] + xs[i]) / 2
		part.Sections = append(part.Sections, b.baseSection(xs[i-1], mid), b.baseSection(xs[i], mid))
	}
	return part
}

// baseSection is the base's section at x, with the underside of the stretch
// that mid lies in; both mm from the bridge's middle.
func (b *Built) baseSection(x, mid float64) []BridgePoint {
	br := b.Case.Bridge
	node := b.Bridge.nearestNode(br.At[0]+x, 0, b.Bridge.Base)
	half, height := float64(br.Width)/2, br.Height.Value(x)
	wall, deep, free := half/2, 0.0, b.clearance(mid, height)
	if w := hollowWalls(br, mid); w > 0 {
		wall, deep = w, drawnRim
		if br.Hollow != nil {
			deep = float64(br.Hollow.Depth)
		}
	}
	var out []BridgePoint
	for _, c := range [6][2]float64{{-half, 0}, {-half + wall, 0}, {-half + wall, deep}, {half - wall, deep}, {half - wall, 0}, {half, 0}} {
		p := mesh.Point{br.At[0] + x, br.At[1] + c[0]}
		one := BridgePoint{At: [3]float64{p[0], p[1], b.Plate.Outer.At(p).Z + c[1] + free}, Node: node}
		if c[1]+free == 0 {
			one.Gap = br.Gap(x, c[0])
		}
		out = append(out, one)
	}
	top := b.Plate.Outer.At(mesh.Point{br.At[0] + x, br.At[1]}).Z + height
	for _, y := range [2]float64{half, -half} {
		out = append(out, BridgePoint{At: [3]float64{br.At[0] + x, br.At[1] + y, top}, Node: node})
	}
	return out
}

// hollowWalls is the width of the walls about the hollow that a section at x cuts,
// mm; 0 where the base's face is whole.
func hollowWalls(b *cases.Bridge, x float64) float64 {
	for i := range b.Feet {
		if hollowAt(b, i, x, 0) {
			return b.Wall(i)
		}
	}
	return 0
}

// clearance is how far the base stands clear of the top at x, mm; 0 on a foot.
func (b *Built) clearance(x, height float64) float64 {
	from, to := math.Inf(1), math.Inf(-1)
	for _, f := range b.Case.Bridge.Feet {
		if x > float64(f.From) && x < float64(f.To) {
			return 0
		}
		from, to = math.Min(from, float64(f.From)), math.Max(to, float64(f.To))
	}
	if x > from && x < to {
		return drawnArch * height
	}
	return math.Min(drawnFree, height/4)
}

// bladeShape is the part of a one-piece bridge between base and strings.
func (b *Built) bladeShape() BridgePart {
	br := b.Case.Bridge
	half := math.Min(b.widest()+drawnBeyond, float64(br.Length)/2)
	part := BridgePart{Name: "saddle"}
	for _, x := range stations([]float64{-half, 0, half}, sectionStep) {
		low := b.Plate.Outer.At(mesh.Point{br.At[0] + x, br.At[1]}).Z + br.Height.Value(x)
		high := b.Saddle(x)[2]
		if high < low+0.2 {
			return BridgePart{} // the strings rest on the base itself
		}
		part.Sections = append(part.Sections, b.slab(x, [2]float64{low, high}, [2]float64{drawnFlank * float64(br.Width), drawnBlade}))
	}
	return part
}

// widest is the place of the outermost string from the bridge's middle, mm.
func (b *Built) widest() float64 {
	most := 0.0
	for _, x := range b.stringPlaces() {
		most = math.Max(most, math.Abs(x))
	}
	return most
}

// slab is a section across the strings at x that the saddle's node carries,
// from z[0] to z[1] with the widths there, mm.
func (b *Built) slab(x float64, z, width [2]float64) []BridgePoint {
	br, node := b.Case.Bridge, b.SaddleNode(x)
	var out []BridgePoint
	for _, c := range [4][2]float64{{-width[0] / 2, z[0]}, {width[0] / 2, z[0]}, {width[1] / 2, z[1]}, {-width[1] / 2, z[1]}} {
		out = append(out, BridgePoint{At: [3]float64{br.At[0] + x, br.At[1] + c[0], c[1]}, Node: node})
	}
	return out
}

// beamShape is the saddle beam.
func (b *Built) beamShape() BridgePart {
	sb := &b.Case.Bridge.SaddleBeam
	half, low, w := float64(sb.Length)/2, b.Saddle(0)[2]-float64(sb.Height), float64(sb.Width)
	part := BridgePart{Name: "saddle beam"}
	for _, x := range stations([]float64{-half, 0, half}, sectionStep) {
		part.Sections = append(part.Sections, b.slab(x, [2]float64{low, b.Saddle(x)[2]}, [2]float64{w, w}))
	}
	return part
}

// postShape is the post at x, its lower end on the base and its upper end
// under the saddle beam.
func (b *Built) postShape(x float64) BridgePart {
	br := b.Case.Bridge
	const corners = 16
	low := b.Plate.Outer.At(mesh.Point{br.At[0] + x, br.At[1]}).Z + br.Height.Value(x)
	ends := []struct {
		z    float64
		node int32
	}{{low, b.Bridge.nearestNode(br.At[0]+x, 0, b.Bridge.Base)}, {b.Saddle(0)[2] - float64(br.SaddleBeam.Height), b.SaddleNode(x)}}
	part := BridgePart{Name: "post"}
	for _, e := range ends {
		ring := make([]BridgePoint, corners)
		for k := range ring {
			s, c := math.Sincos(2 * math.Pi * float64(k) / corners)
			r := float64(br.Posts.Diameter) / 2
			ring[k] = BridgePoint{At: [3]float64{br.At[0] + x + r*c, br.At[1] + r*s, e.z}, Node: e.node}
		}
		part.Sections = append(part.Sections, ring)
	}
	return part
}

// StringShape is one string over the saddle.
type StringShape struct {
	Name       string
	Saddle     BridgePoint
	Neck, Tail [3]float64 // where it leads from the saddle, unit vectors
}

// StringShapes returns the strings in the order listed, by their break angles;
// nil without a bridge.
func (b *Built) StringShapes() []StringShape {
	if b.Bridge == nil {
		return nil
	}
	var out []StringShape
	for _, f := range b.Geometry.StringForces() {
		sf, cf := math.Sincos(f.FrontAngle * math.Pi / 180)
		sb, cb := math.Sincos(f.BackAngle * math.Pi / 180)
		out = append(out, StringShape{Name: f.Name, Saddle: BridgePoint{At: b.Saddle(f.X), Node: b.SaddleNode(f.X)},
			Neck: [3]float64{0, cf, -sf}, Tail: [3]float64{0, -cb, -sb}})
	}
	return out
}

// BridgeMove is the movement of a point of the bridge from where it was fitted,
// mm: down to its rest on an uneven foot, and on under the strings.
func (s *Solution) BridgeMove(p BridgePoint) [3]float64 {
	u := s.Result.BodyMove(p.Node, p.At)
	rest, o := s.Result.State.SlackRest, s.Top.Built.Bridge.Body.Nodes[0]
	x, y, z := p.At[0]-o[0], p.At[1]-o[1], p.At[2]-o[2]
	u[0] += rest[4] * z
	u[1] -= rest[3] * z
	u[2] += rest[2] + rest[3]*y - rest[4]*x
	return u
}

// FootGaps is the gap left at each cell of FootCells, mm; nil without a bridge.
func (s *Solution) FootGaps() []float64 {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	return append([]float64(nil), s.Result.State.Gap...)
}
