package tree

import (
	"maps"
	"slices"
)

// Overlay lays a tree over another: tables key by key, everything else whole.
// alternatives lists the groups of keys of a table that exclude each other: a
// tree that writes one of a group takes the others below it away.
func Overlay(over, base *Node, key string, alternatives func(table string) [][]string) *Node {
	upper, ok := over.Val.(map[string]*Node)
	lower, ok2 := base.Val.(map[string]*Node)
	if !ok || !ok2 {
		return over
	}
	kids := make(map[string]*Node, len(upper)+len(lower))
	for k, n := range lower {
		kids[k] = n
	}
	for _, group := range alternatives(key) {
		if hasAny(upper, group) {
			DropOthers(kids, alternatives(key), group)
			break
		}
	}
	for k, n := range upper {
		if b, both := lower[k]; both {
			n = Overlay(n, b, JoinKey(key, k), alternatives)
		}
		kids[k] = n
	}
	return &Node{Src: over.Src, Line: over.Line, Val: kids}
}

// hasAny reports whether a table has one of the keys.
func hasAny(table map[string]*Node, keys []string) bool {
	for _, k := range keys {
		if _, ok := table[k]; ok {
			return true
		}
	}
	return false
}

// DropOthers removes the keys of all groups but the one kept.
func DropOthers(table map[string]*Node, groups [][]string, kept []string) {
	for _, g := range groups {
		if g[0] == kept[0] {
			continue
		}
		for _, k := range g {
			delete(table, k)
		}
	}
}

// SortedKeys returns the keys of a map in order.
func SortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
