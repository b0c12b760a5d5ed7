// Package mesh holds the geometry of a plate and its triangles: the outline
// and sound holes in plan, the carved outer surface, the graduation, the
// mid-surface that follows from both, and a conforming triangulation.
//
// Lengths are mm. The plan is seen from outside: x across (treble positive),
// y along the centre line (neck positive), z outward.
package mesh
