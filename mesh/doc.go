// Package mesh makes triangles: a [Domain] in plan becomes a [Plan], a
// conforming triangulation, and the Plan is lifted onto the mid-surface of a
// carved [Plate] and becomes a [Mesh]. Lengths are mm. The plan is seen from
// outside: x across (treble positive), y along the centre line (neck
// positive), z outward.
//
// # Use
//
//	outline, err := plane.NewCurve(pts, corners)
//	plan, err := mesh.Triangulate(mesh.Domain{Outline: outline, Size: 6})
//	m := mesh.Lift(plan, mesh.Plate{Outer: arch, Thickness: surface.Flat(3)})
//	m.Mass(420) // g, of 420 kg/m³
//
// The example of the package runs this from four corner points.
//
// # Triangles
//
// [Triangulate] cuts outline, holes and lines where they meet (lines.go), asks
// everywhere for the wanted edge length
//
//	h(p) = min over the sources (h_source + slope · distance),
//
// the sources being curvature of edges and surface, narrow gaps and the zones
// asked for (size.go), places nodes on the true curves so that each edge is
// about h long and turns by at most 0.8 radians (chords.go), and leaves the
// inside to package delaunay: constrained Delaunay refinement after J. Ruppert
// (J. Algorithms 18, 1995), sources there. What cannot be meshed is refused as
// a *[PlaceError] that names the part and the place.
//
// # Mirror images
//
// Coordinates are rounded to 1e-9 mm, curves brought into a form that does not
// depend on where they begin, and of a domain and its image in the y axis the
// lesser is meshed (mirror.go): mirror images get mirrored plans, bit for bit. A
// domain whose outline, holes and lines are their own image is meshed on the side
// x >= 0, with the axis as a boundary, and unfolded (half.go).
//
// # Mid-surface
//
// With f the outer surface, g its gradient, W = √(1 + g·g) and h the thickness
// along its normal, the mid-surface point below p is
//
//	q = p + h/(2W) g,  z = f − h/(2W);
//
// [Plate.OuterOf] turns q back into p by Newton's method. Normals follow from
// the derivatives of the map, not from the triangles.
//
// # Packages below
//
//	mesh/plane     points, closed curves
//	mesh/surface   arches and graduations: fits, formula, contours
//	mesh/delaunay  constrained Delaunay triangulation
//
// Everything is deterministic; nothing is kept between calls.
package mesh
