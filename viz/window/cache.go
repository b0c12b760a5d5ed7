//go:build cgo

package window

// graphic is something that holds graphics memory until it is dropped.
type graphic interface{ drop() }

// patience is how many drawn frames something stays after its last use, so
// that going back and forth between two designs uploads nothing.
const patience = 6

// cache keeps uploaded things by what they were made from. The makers never
// change (a scene, a colour map, an atlas), so a key stands for its contents.
type cache[K comparable, V graphic] struct {
	kept  map[K]*entry[V]
	frame int
}

type entry[V graphic] struct {
	held V
	used int // frame of the last use
}

// get returns the thing for a key, uploaded on the first call.
func (c *cache[K, V]) get(k K, upload func() V) V {
	if c.kept == nil {
		c.kept = map[K]*entry[V]{}
	}
	e := c.kept[k]
	if e == nil {
		e = &entry[V]{held: upload()}
		c.kept[k] = e
	}
	e.used = c.frame
	return e.held
}

// sweep ends a frame: what no frame used lately is dropped.
func (c *cache[K, V]) sweep() {
	c.frame++
	for k, e := range c.kept {
		if c.frame-e.used > patience {
			e.held.drop()
			delete(c.kept, k)
		}
	}
}

// drop drops everything.
func (c *cache[K, V]) drop() {
	for k, e := range c.kept {
		e.held.drop()
		delete(c.kept, k)
	}
}
