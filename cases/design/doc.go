// Package design turns a case into mechanics and solves it.
//
//	cases.Case ─NewGeometry→ Geometry ─Build→ Built ─Prepare→ Top ─Top.Answer→ Solution
//
// Solve walks the whole way: read solve.go first, then top.go. geometry.go and
// geometryfit.go fit arch and graduation and lay out holes and lines; fine.go says
// where the triangles are small; build.go makes shells and braces, buildrim.go what
// holds the edge, buildbridge.go and buildposts.go the bridge as a body with its
// pads, bearing.go and bedding.go what lies under them; section.go and bend.go the
// sections of a bridge and how sharply an arch bends; place.go and shapes.go find
// places on the built plate and read the solved one there.
//
// Two things follow from the geometry and cannot be checked when a case is read:
// whether something stands on wood (placecheck.go), and the angles of strings whose
// path over the arch is given (pathover.go). NewGeometry finds those faults and names
// file, line and key as the reading does.
//
// adapt.go is the one way from a prepared top to that of another case, cost.go and
// costfoot.go say what a change has to be paid with. What follows is the reason.
package design
