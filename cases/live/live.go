package live

import (
	"io/fs"
	"slices"
	"sync"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tree"
)

// Live is a design under the hand: a case, the keys set on top of it, and the
// prepared top that answers it. It never changes; Set gives another one, which
// shares what it can. Any number of goroutines may ask it at the same time.
type Live struct {
	fsys fs.FS
	name string
	keys []tree.KeyValue
	o    design.Options
	from *readCase
	c    *cases.Case
	top  *design.Top

	mu    sync.Mutex
	track *track // of the load, nil: not yet followed
	ways  tracks // that designs before this one were followed along, on its top and bridge
	near  *closings
	ahead bool // the track is to serve a shallower relief too
}

// Name is the case's name as Begin took it.
func (l *Live) Name() string { return l.name }

// Case is the case with the keys set.
func (l *Live) Case() *cases.Case { return l.c }

// Keys are the keys set on top of the case, each once, in the order in which
// they were last set.
func (l *Live) Keys() []tree.KeyValue { return slices.Clone(l.keys) }
