package cases

import (
	"fmt"
	"strings"
)

// later is what a case file may say and this version does not compute. Taking
// a row out lets the key through.
func later() []laterRow {
	return []laterRow{}
}

// laterRow is one key; with a value, only that value of it.
type laterRow struct {
	key   string // without entry numbers
	value any
	what  string
}

// postponed returns why a key cannot be computed yet, or "". A zero asks for
// nothing.
func postponed(key string, n *node) string {
	if n.val == int64(0) || n.val == float64(0) {
		return ""
	}
	plain := withoutEntries(key)
	for _, row := range later() {
		if row.key != plain || row.value != nil && row.value != n.val {
			continue
		}
		if row.value == nil {
			return row.what + ": computed by a later version; leave this key out"
		}
		return fmt.Sprintf("%s: computed by a later version; want another value than %s", row.what, n.what())
	}
	return ""
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
