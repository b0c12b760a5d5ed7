package window

import "math"

// Times of the window, s.
const (
	frameTime = 1.0 / 60 // the least from one page to the next while things move
	turnTime  = 0.004    // the least from one turn of the app to the next while the pointer moves
	mostHeld  = 0.050    // the most that a page is kept back for a better one
	leastWait = 0.001    // what a wait can resolve
)

// reasons are why the app may want a turn.
type reasons struct {
	any   bool // of its own: it moves, it settles
	news  bool // somebody has asked for it
	hands bool // did something
	edges bool // a press, a release, a key, a letter is among it
}

// toTurn returns how long to wait for events before the app's next turn, s: for ever, +Inf,
// without a reason; not at all with news or an edge. The pointer's way is told soon, so that what it
// asks for is begun while the last page is still on its way to the screen; what moves by itself
// keeps the pace of the pages.
func toTurn(r reasons, sinceTurn, sinceShown float64) float64 {
	switch {
	case r.news || r.edges:
		return 0
	case r.hands:
		return max(0, turnTime-sinceTurn)
	case r.any:
		return max(0, frameTime-sinceShown)
	}
	return math.Inf(1)
}

// toShow returns when a page is shown at the latest: at once, or a page's time after the last one
// was; where a better one is due soon, that much later. The first page that was kept back for
// it came at since.
func toShow(once bool, soon, now, since, shown float64) float64 {
	at := shown + frameTime
	if once {
		at = now
	}
	if soon > 0 {
		at = max(at, min(now+soon, since+mostHeld))
	}
	return at
}

// spent is the time that went into a page, s: of the processor, and by the clock.
type spent struct{ cpu, wall float64 }
