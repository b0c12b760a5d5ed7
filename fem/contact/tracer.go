package contact

import "slices"

// tracer is the state of the path while it is followed.
type tracer struct {
	p            *lcp
	active       *activeSet
	load         float64
	lambda       []float64 // all rows
	gap          []float64 // normal rows only are kept current: relative movement of each pad
	rho          [6]float64
	closed       []bool
	slides       []bool      // closed pads that bear without drag
	releases     map[int]int // how often a pad let go within a millionth of the load
	releasesFrom float64     // load at which that count began
	fades        []bool      // pads whose drag fades in a stage that has not ended
	stages       int         // fading stages so far
	stage        []int       // of each row: the stage in which it fades
	offset       []float64   // tangential rows: where the pad stuck, mm
	pending      []int32     // pads that opened with tangential force left
	lastRates    *rates      // along direction lastID at lastDt, nil if pads have come or gone since
	lastID       int
	lastDt       float64
	batch        int // stretches to guess at once
	segments     int // passed so far, against a path without end
	state        *State
	force        float64 // scale of forces, N
	length       float64 // scale of movements, mm
}

// direction is one straight stage of the path: the load rises by dt, and the
// tangential forces left on opened pads fade out.
type direction struct {
	id   int // of the stage, see tracer.stage
	dt   float64
	fade []int32   // rows
	rate []float64 // dλ/ds of those rows, N
}

// equations asks for the forces under which the active rows stay where they are.
type equations struct {
	dt float64
	v  []float64  // movement of every row without them; nil: under a share dt of the load
	f  [6]float64 // resultant of the forces
}

func (w *tracer) closePads(pads []int) error {
	var rows []int32
	for _, i := range pads {
		w.closed[i] = true
		rows = append(rows, w.rowsOf(i)...)
	}
	return w.active.add(rows)
}

// rowsOf are the rows of a closed pad that are held.
func (w *tracer) rowsOf(i int) []int32 {
	rows := make([]int32, w.rowsHeld(i))
	for a := range rows {
		rows[a] = int32(i*w.p.per + a)
	}
	return rows
}

// rowsHeld is how many rows of a closed pad are held: a sliding one's normal only.
func (w *tracer) rowsHeld(i int) int {
	if w.slides[i] {
		return 1
	}
	return w.p.per
}

func (w *tracer) openPads(pads []int) error {
	out := map[int32]bool{}
	for _, i := range pads {
		w.closed[i] = false
		for a := range w.p.per {
			out[int32(i*w.p.per+a)] = true
		}
		w.lambda[i*w.p.per] = 0
	}
	return w.active.remove(out)
}

// record notes an event, or strikes out its opposite at the same load.
func (w *tracer) record(i int, closes bool) {
	st := w.state
	for k := len(st.Events) - 1; k >= 0 && st.Events[k].Load == w.load; k-- {
		if st.Events[k].Pad == int32(i) && st.Events[k].Closes != closes {
			st.Events = slices.Delete(st.Events, k, k+1)
			return
		}
	}
	st.Events = append(st.Events, Event{Load: w.load, Pad: int32(i), Closes: closes})
}

// stick notes the tangential place of a pad that closes.
func (w *tracer) stick(i int) {
	for a := 1; a < w.p.per; a++ {
		j := int32(i*w.p.per + a)
		w.offset[j] = w.p.movement(j, w.load, w.lambda, w.rho)
	}
}

func (w *tracer) hasDrag(i int) bool {
	for a := 1; a < w.p.per; a++ {
		if w.lambda[i*w.p.per+a] != 0 {
			return true
		}
	}
	return false
}

// fadesIn says whether a row still fades in the stage d: not if its pad closed
// again and sticks, nor if it then let go anew, which is a stage of its own.
func (w *tracer) fadesIn(d direction, row int32) bool {
	return !w.stuck(row) && w.stage[row] == d.id
}

// stuck says whether a tangential row's pad is closed and does not slide.
func (w *tracer) stuck(row int32) bool {
	i := w.p.padOf(row)
	return w.closed[i] && !w.slides[i]
}

// noteClosed notes that pads close.
func (w *tracer) noteClosed(pads []int) {
	for _, i := range pads {
		w.lambda[w.p.normal(i)] = 0
		w.gap[i] = 0
		w.slides[i] = w.releases[i] >= 2
		w.fades[i] = w.fades[i] && w.slides[i] // one that sticks keeps what it has
		w.stick(i)
		w.record(i, true)
		w.closed[i] = true
	}
}
