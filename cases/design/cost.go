package design

import (
	"math"

	"reflect"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/materials"
)

// Cost is what a change of a design has to be paid with, the dearest of all
// keys that differ.
type Cost uint8

// The costs, cheapest first.
const (
	Nothing  Cost = iota // nothing that is computed
	Refit                // strings, relief, bridge: the contact alone, on the same factor
	Refactor             // wood, arch, thickness, section of a brace, rim: the same plan of triangles, a new factor
	Remesh               // outline, hole, place of foot or brace: everything anew
)

// String says it in a maker's words.
func (c Cost) String() string {
	switch c {
	case Nothing:
		return "changes no number"
	case Refit:
		return "another set-up on the same top"
	case Refactor:
		return "the same top in other wood, arch or thickness"
	}
	return "another top"
}

// keyCost is the cost of a key and of all below it. Entry numbers of lists are
// left out: brace.width stands for the width of every brace.
type keyCost struct {
	key   string
	cost  Cost
	light bool // no more than the strings' forces and the gap under the foot
}

// keyCosts is the one table of what a key costs; of two entries that hold a
// key the longer counts. A key that is not in it costs a new mesh.
func keyCosts() []keyCost {
	var out []keyCost
	add := func(cost Cost, light bool, keys ...string) {
		for _, k := range keys {
			out = append(out, keyCost{k, cost, light})
		}
	}
	add(Nothing, true, "title", "base", "format", "brace.name", "plate.hole.name", "load.name", "body.back.brace.name", "body.back.hole.name", "support.name", "post.name",
		"motion", "season", "tap", "tone", "mass.name", "strings.each.core")
	add(Refit, true, "bridge.relief", "bridge.misfit", "bridge.friction", "gauge", "strings.front_angle", "strings.back_angle", "strings.path",
		"strings.scale", "strings.tension_scale", "strings.saddle_friction", "strings.each.tension", "strings.each.note",
		"strings.each.plain", "strings.each.wound", "strings.each.unit_weight", "strings.gauges", "strings.notes", "strings.wrap",
		"strings.each.rise", "strings.each.front_angle", "strings.each.back_angle")
	add(Refit, false, "strings", "bridge", "load.force")
	add(Remesh, false, "bridge.at")
	add(Refactor, false, "plate.wood", "plate.made", "plate.cut", "plate.ring_angle", "plate.grain_angle", "plate.arch", "plate.thickness",
		"plate.thickness_scale", "plate.thickness_change", "brace.wood", "brace.width", "brace.height", "brace.height_scale", "brace.joined", "brace.fitted",
		"rim", "body.back.wood", "body.back.made", "body.back.cut", "body.back.ring_angle", "body.back.grain_angle", "body.back.arch", "body.back.thickness",
		"body.back.thickness_scale", "body.back.brace.wood", "body.back.brace.width", "body.back.brace.height",
		"body.back.brace.height_scale", "body.back.brace.joined", "body.back.brace.fitted", "body.back_lining", "body.block_wood", "body.block_grain", "post.stiffness", "post.wood")
	add(Refit, true, "body.neck_joint")
	return out
}

// priced is the table's entry for a key.
func priced(key string) keyCost {
	best := keyCost{cost: Remesh}
	for _, k := range keyCosts() {
		if withinKey(key, k.key) && len(k.key) > len(best.key) {
			best = k
		}
	}
	return best
}

// costOf is the cost of one key.
func costOf(key string) Cost { return priced(key).cost }

// costBetween is the cost of a key in which two cases differ. A bridge or
// strings that one has and the other has not make another mesh; a wood as stiff
// as the other is at most another bridge, whose weight it may change.
func costBetween(a, b *cases.Case, key string) Cost {
	if key == "bridge" || key == "strings" {
		return Remesh
	}
	if a.Bodied() || b.Bodied() { // the mesh ends at the blocks
		switch key {
		case "body", "rim.support", "rim.neck_block", "rim.tail_block":
			return Remesh
		}
	}
	before, was := a.Cards[key]
	after, is := b.Cards[key]
	if was && is && sameStiffness(before.Wood, after.Wood) {
		return min(costOf(key), Refit)
	}
	return costOf(key)
}

// sameStiffness says whether two woods differ in density at most.
func sameStiffness(a, b materials.Orthotropic) bool {
	a.Density = b.Density
	return a == b
}

// Light says whether a key leaves the top, the bridge's body and its contact
// points as they are.
func Light(key string) bool { return priced(key).light }

// ChangedKeys lists the keys in which two cases differ, as decoded: a value
// that is written another way is the same. Own woods are compared where they
// are used, not where they are defined.
func ChangedKeys(a, b *cases.Case) []string {
	var out []string
	for _, f := range tree.CaseFields(reflect.TypeFor[cases.Case]()) {
		if name := f.Tag.Get("toml"); name != "wood" {
			changedBelow(&out, name, reflect.ValueOf(a).Elem().FieldByIndex(f.Index), reflect.ValueOf(b).Elem().FieldByIndex(f.Index))
		}
	}
	for _, key := range append(tree.SortedKeys(a.Cards), tree.SortedKeys(b.Cards)...) {
		if !slices.Contains(out, key) && !reflect.DeepEqual(a.Cards[key], b.Cards[key]) {
			out = append(out, key)
		}
	}
	return out
}

// changedBelow adds the keys below key in which two values differ.
func changedBelow(out *[]string, key string, a, b reflect.Value) {
	for a.Kind() == reflect.Pointer && !a.IsNil() && !b.IsNil() {
		a, b = a.Elem(), b.Elem()
	}
	_, whole := a.Interface().(cases.SettingText)
	switch {
	case whole:
	case a.Kind() == reflect.Struct:
		for _, f := range tree.CaseFields(a.Type()) {
			changedBelow(out, tree.JoinKey(key, f.Tag.Get("toml")), a.FieldByIndex(f.Index), b.FieldByIndex(f.Index))
		}
		return
	case a.Kind() == reflect.Slice && a.Len() == b.Len() && a.Type().Elem().Kind() == reflect.Struct:
		for i := range a.Len() {
			changedBelow(out, tree.EntryKey(key, i+1), a.Index(i), b.Index(i))
		}
		return
	}
	if !reflect.DeepEqual(a.Interface(), b.Interface()) {
		*out = append(*out, key)
	}
}

// withinKey says whether key is k or lies below it; entry numbers do not
// count.
func withinKey(key, k string) bool { return tree.IsWithin(WithoutEntries(key), k) }

// WithoutEntries strips the entry numbers from a key: brace[2].joined to
// brace.joined.
func WithoutEntries(key string) string {
	for {
		i := strings.IndexByte(key, '[')
		j := strings.IndexByte(key, ']')
		if i < 0 || j < i {
			return key
		}
		key = key[:i] + key[j+1:]
	}
}

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
	most := coarsestFoot * shape.Edge(c.Mesh, shape.FootEdge) / t.refine
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
