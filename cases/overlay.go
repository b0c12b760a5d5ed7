package cases

import (
	"maps"
	"slices"
)

// overlay lays a tree over another: tables key by key, everything else whole.
// alternatives lists the groups of keys of a table that exclude each other: a
// tree that writes one of a group takes the others below it away.
func overlay(over, base *node, key string, alternatives func(table string) [][]string) *node {
	upper, ok := over.val.(map[string]*node)
	lower, ok2 := base.val.(map[string]*node)
	if !ok || !ok2 {
		return over
	}
	kids := make(map[string]*node, len(upper)+len(lower))
	for k, n := range lower {
		kids[k] = n
	}
	for _, group := range alternatives(key) {
		if hasAny(upper, group) {
			dropOthers(kids, alternatives(key), group)
			break
		}
	}
	for k, n := range upper {
		if b, both := lower[k]; both {
			n = overlay(n, b, joinKey(key, k), alternatives)
		}
		kids[k] = n
	}
	return &node{src: over.src, line: over.line, val: kids}
}

// hasAny reports whether a table has one of the keys.
func hasAny(table map[string]*node, keys []string) bool {
	for _, k := range keys {
		if _, ok := table[k]; ok {
			return true
		}
	}
	return false
}

// dropOthers removes the keys of all groups but the one kept.
func dropOthers(table map[string]*node, groups [][]string, kept []string) {
	for _, g := range groups {
		if g[0] == kept[0] {
			continue
		}
		for _, k := range g {
			delete(table, k)
		}
	}
}

// sortedKeys returns the keys of a map in order.
func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
