package design

import (
	"math"
	"strings"

	"archload/cases"
)

// coarsestFoot is how long the edges of the triangles under a moved foot may be
// over the edge that a foot asks for, 1: on meshes made for a foot the longest
// is 1.7 times as long (measured on the bundled cases).
const coarsestFoot = 1.8

// footCost is what it costs to put the feet of a case on this top: no more than
// the contact where they press on nodes that may carry it, another order of
// elimination where the triangles are still as fine as those of a foot, a new
// mesh elsewhere.
func footCost(t *Top, c *cases.Case) Cost {
	if t.Built.Bridge == nil || c.Bridge == nil || c.Strings == nil {
		return Remesh
	}
	most := coarsestFoot * edge(c.Mesh, footEdge) / t.refine
	cost := Refit
	zone := map[int32]bool{}
	for _, n := range t.Factored.Model.Zone {
		zone[n] = true
	}
	for _, k := range Cells(c.Bridge) {
		for _, at := range t.Built.under(c.Bridge, k) {
			if t.Built.longest(at.Shell) > most {
				return Remesh
			}
			for _, n := range t.Built.Model.Shells[at.Shell].Nodes {
				if !zone[n] {
					cost = Refactor
				}
			}
		}
	}
	return cost
}

// longest is the longest edge of a triangle in plan, mm.
func (b *Built) longest(tri int32) float64 {
	most := 0.0
	t := b.Mesh.Tris[tri]
	for k := range 3 {
		a, b := b.Mesh.Points[t[k]], b.Mesh.Points[t[(k+1)%3]]
		most = max(most, math.Hypot(b[0]-a[0], b[1]-a[1]))
	}
	return most
}

// movesFoot says whether a key moves the places where the bridge bears.
func movesFoot(key string) bool {
	plain := WithoutEntries(key)
	return plain == "bridge.at" || plain == "bridge.width" || strings.HasPrefix(plain, "bridge.foot") || strings.HasPrefix(plain, "bridge.hollow")
}
