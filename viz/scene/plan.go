package scene

import "archload/mesh"

// Plan returns where on the unloaded outer surface a hit on one of the plate's
// skins reads, in plan, mm; ok is false for a hit on anything else. A hit on
// the inner skin reads the place of the outer one that lies above it along the
// normal.
func (k *Skeleton) Plan(h Hit) (q mesh.Point, ok bool) {
	if h.Solid == nil || len(h.Solid.Points) != len(k.mesh.Nodes) || h.Tri >= len(h.Solid.Tris) {
		return q, false
	}
	for c, n := range h.Solid.Tris[h.Tri] {
		d := &k.mesh.Nodes[n]
		for i := range q {
			q[i] += h.Bary[c] * (d.P[i] + d.H/2*d.N[i])
		}
	}
	return q, true
}
