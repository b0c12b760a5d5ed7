package opening

import (
	"slices"
	"sync"

	"archload/cases/live"
)

// lookEvery is how often the files of designs are compared with what was read of them, s. They are while the window
// is looked at: nobody is told who is not there.
const lookEvery = 3.0

// Watch looks beside the window whether files still say what was read of them.
type Watch struct {
	since float64 // s, when it was looked last

	mu      sync.Mutex
	looking bool
	of      []*live.Live // what was looked at last
	stale   string       // the file that says something else, or is gone
}

// Look looks again at the files of designs, if it is time to; wake is called where what is known changes.
func (w *Watch) Look(now float64, of []*live.Live, wake func()) {
	if len(of) == 0 {
		return
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.looking || now-w.since < lookEvery && slices.Equal(w.of, of) {
		return
	}
	w.since, w.of, w.looking = now, of, true
	go func() {
		stale := ""
		for _, l := range of {
			if s := l.Stale(); s != "" && stale == "" {
				stale = s
			}
		}
		w.mu.Lock()
		was := w.stale
		w.stale, w.looking = stale, false
		w.mu.Unlock()
		if stale != was {
			wake()
		}
	}()
}

// Changed is the file that no longer says what is shown; "": none is known.
func (w *Watch) Changed() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.stale
}
