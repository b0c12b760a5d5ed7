// Package design turns a case into mechanics and solves it.
//
//	cases.Case ─shape.NewGeometry→ shape.Geometry ─Build→ Built ─Prepare→ Top ─Top.Answer→ Solution
//
// Solve walks the whole way: read solve.go first, then top.go. build.go makes the shells, buildbraces.go the
// braces, buildrim.go what holds the plate; bridgemodel.go is the bridge as a body
// with its pads, made by buildbridge.go, buildsaddle.go and buildposts.go of the
// sections in section.go. place.go and shapes.go find
// places on the built plate and read the solved one there.
//
// adapt.go is the one way from a prepared top to that of another case, cost.go says
// what a change has to be paid with. What follows is the reason.
//
// # How a prepared top is reused
//
// An answer goes through five nouns, each a plain struct that the stages after it
// only read:
//
//	Case -> Geometry -> Built -> Top -> Solution
//	keys    outline     mesh     factor       full load:
//	        arch        model    compliance   contact, movements,
//	        thickness   bridge   under foot   forces
//
// [shape.NewGeometry] fits surfaces through the maker's data. Meshing and [Build] turn
// them into triangles, beams and the bridge's frame. [Prepare] assembles the
// stiffness K, factorises it by Cholesky's method, and solves it once for a unit force on
// each contact point under the foot: what is left of the plate is the dense
// matrix of its compliance there. [Top.Answer] follows the contact on that small
// matrix alone and recovers the movements of the whole plate at the end.
//
// These steps do not cost alike, and that is why a top is kept. On the bundled
// course guitar surfaces and mesh take a good third of the way to an answer,
// stiffness and factor another, the compliance a tenth, contact and recovery
// less ("timing" in the JSON of a solve tells). A maker who tries forty
// depths of relief changes nothing but a gap in the contact problem, and must pay
// for no more than that forty times.
//
// There is one door: [Adapt] takes a prepared top and another case and returns the
// prepared top of that case. It compares the two cases key by key, as decoded,
// so that a value that is written another way is the same; looks up in one table
// (keyCosts in cost.go) what each key that differs touches; and makes anew what is touched.
// The rest is shared, by pointer. The old top is as good as before: any number of
// tops may share a factor, and any number of goroutines may ask them. Whoever
// changes a design goes through it: the window's sliders (live.Live.Set), the trial
// of reliefs (study.Try), a series, and the scatter of wood behind the ranges of a
// comparison. From the cheapest change to the dearest:
//
//   - Names and titles. The case is another one, all else is shared.
//   - Strings, relief, misfit. The gaps and the forces on the saddle change. The
//     contact is followed again on the same problem. A relief that is only
//     deeper is not even followed under the hand or in a trial: gap and load enter
//     the problem together, so that a gap k times as deep is the same path gone
//     1/k as far. A path is followed to the load of its own design; one that is to
//     serve shallower reliefs too is followed that much farther.
//   - The bridge: its wood, its height, its saddle. Another frame stands on the
//     same points, so the compliance of the plate under them stays; the frame's
//     own flexibility, a matrix of the same size, is added to it anew. A saddle
//     that is only higher on a foot that grips leaves that too.
//   - Another foot, or the foot elsewhere on triangles that are fine enough. Its
//     points press elsewhere, on nodes that were put last in the order of
//     elimination for just that. The flexibility of all those nodes is found once,
//     by the first foot that moves; the compliance under it and every later one is
//     two thin products with that (contact.Condensed.Moved). A foot
//     that leaves them asks for another order, and so for another factor of the
//     same matrix. Both feet's nodes stay last from then on, so that the way back
//     is cheap.
//   - The size of a load on the plate. One more solve with the factor.
//   - Density and strength. Nothing that moves depends on them: the result itself
//     is shared, and only masses and the strength used are read anew.
//   - Wood, thickness, the section of a brace, the rim. K has other numbers: it is
//     assembled and factorised again, on the same triangles and, where the same
//     nodes couple, in the same order of elimination. Other wood leaves the triangles' frames
//     and strains as they are; another bar all of the plate, and most of the factor
//     (fem.AssembleLike, sparse's Renew). A fitted graduation is scaled without
//     another fit; the arch is fitted again only if the height of its rim follows
//     the thickness, and under a hand not even then: a fit is linear in that height
//     (surface.Spline.RimRaised), but for how smooth it is.
//   - The arch. The plan of triangles is lifted onto the new surface, as long as none of
//     them is coarser, over what the surface's curvature asks for there, than the coarsest of a
//     plan that is laid for its own surface ([mesh.Domain.Serves]); then all is as with another
//     thickness, else there is another mesh. An arch that is raised is not fitted again.
//     Bars that come to hang on other triangles couple other nodes; the stiffness then has
//     room for both, so that there and back again one order of elimination serves.
//   - The outline, a hole, a brace's or a foot's place. The triangles
//     follow features, so there is another mesh, and everything after it is made
//     anew. Of the surfaces those are kept whose data have not changed.
//
// What a key costs is a promise about numbers: the answer on a shared top is that
// of a solve of its own to the rounding of the last digits, except where a
// foot or an arch stands on triangles that were not laid for it, or a hand raises a rim; there the two agree
// within the error of the mesh, and whoever shows the last digit solves the case afresh,
// as the window does when the hand rests. TestLiveCosts of package live holds an edit of every kind
// to that.
//
// To add a key, give it a line in keyCosts; a key that has none costs a new mesh,
// which is slow and right. To add a kind of change that is cheaper than the table
// allows, compare what has been built and not what was written: bearsAlike in
// bridgemodel.go is the example.
package design
