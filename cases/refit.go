package cases

import (
	"context"
	"slices"
	"strings"
)

// Prepare does the costly part of a solve once: arch, mesh, factor and the
// plate's compliance under the bridge. Refit and Answer then cost
// milliseconds.
func Prepare(ctx context.Context, c *Case, o Options) (*Prepared, error) {
	g, err := newShape(c, o)
	if err != nil {
		return nil, err
	}
	return g.prepare(ctx, o, o.refine())
}

// Answer solves the prepared case.
func (p *Prepared) Answer() (*Solution, error) { return p.answer() }

// editable are the keys that Refit takes: what changes the strings' forces and
// the gap under the foot, and nothing of wood or geometry.
func editable() []string {
	return []string{"title", "base", "strings", "bridge.relief", "bridge.misfit", "gauge", "bridge.saddle_height"}
}

// Refit answers a case that differs from the prepared one in strings, relief
// or misfit alone, on the same factor. Any other difference is an error that
// names the key.
func (p *Prepared) Refit(c *Case) (*Solution, error) {
	for _, d := range keyDiffs([]*Case{p.Case, c}) {
		if !slices.ContainsFunc(editable(), func(k string) bool { return withinKey(d.Key, k) }) {
			return nil, c.Fault(d.Key, "changes the top or the bridge itself, which needs a new solve")
		}
	}
	if (c.Bridge == nil) != (p.Bridge == nil) || c.Bridge == nil {
		return nil, c.Fault("bridge", "changes the top or the bridge itself, which needs a new solve")
	}
	return p.regap(c).answer()
}

// withinKey says whether key is k or lies below it; entry numbers do not
// count.
func withinKey(key, k string) bool {
	key = withoutEntries(key)
	return key == k || strings.HasPrefix(key, k+".")
}

// withoutEntries strips the entry numbers from a key: brace[2].joined to
// brace.joined.
func withoutEntries(key string) string {
	for {
		i := strings.IndexByte(key, '[')
		j := strings.IndexByte(key, ']')
		if i < 0 || j < i {
			return key
		}
		key = key[:i] + key[j+1:]
	}
}
