package cases

import (
	"context"
	"strings"
)

// Prepare does the costly part of a solve once: arch, mesh, factor and the
// plate's compliance under the bridge. Refit and Answer then cost
// milliseconds.
func Prepare(ctx context.Context, c *Case, o Options) (*Top, error) {
	g, err := newShape(c, o)
	if err != nil {
		return nil, err
	}
	return g.prepare(ctx, o, o.refine())
}

// Answer solves the prepared case.
func (p *Top) Answer() (*Solution, error) { return p.answer() }

// Refit answers a case that differs from the prepared one in strings, bridge,
// gauges or the size of loads alone, on the same factor, if the feet stay where
// they are. Any other difference is an error that names the key.
func (p *Top) Refit(c *Case) (*Solution, error) {
	changed := changedKeys(p.Built.Case, c)
	for _, k := range changed {
		if costOf(k) > Refit || movesFoot(k) || k == "bridge" {
			return nil, c.Fault(k, "changes the top or where the bridge stands, which needs a new solve")
		}
	}
	q, err := p.refitted(c, changed, p.workers)
	if err != nil {
		return nil, err
	}
	return q.answer()
}

// withinKey says whether key is k or lies below it; entry numbers do not
// count.
func withinKey(key, k string) bool { return isWithin(withoutEntries(key), k) }

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
