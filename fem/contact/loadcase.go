package contact

// LoadCase is what may change on a standing body at the cost of milliseconds.
type LoadCase struct {
	Gap       []float64  // of each pad before loading, mm
	Loads     []BodyLoad // nil keeps the body's own
	Swell     []float64  // movement of each row by the body's own swelling, pad-major, then the guides, mm; nil: none. Onward alone looks at it
	Tolerance float64    // what counts as no force or no gap in an event, relative, 1; 0 means 1e-11. Friction does not look at it
	Unapplied float64    // 1 less the fraction of the loads on the plate that a result is for
	Friction  float64    // coefficient of friction of pads that are Rough, 1
	Order     []int32    // all pads, in the order in which they are likely to close: saves time, changes nothing; may be nil
	Likely    int        // how many pads of Order, from the first, are likely to close at all: saves more; 0: any
	History   bool       // State keeps the whole path, for State.At
}

// share is the fraction of the loads on the plate.
func (f LoadCase) share() float64 { return 1 - f.Unapplied }

// loadsAt are the loads on the plate's nodes at their share, pads left out.
func (c *Condensed) loadsAt(fit LoadCase) []float64 {
	t := fit.share()
	if t == 1 {
		return c.loadF
	}
	out := make([]float64, len(c.loadF))
	for i, f := range c.loadF {
		out[i] = t * f
	}
	return out
}
