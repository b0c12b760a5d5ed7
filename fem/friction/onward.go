package friction

// Onward is the contact at full load of a problem that has changed since a moment at which its
// load was full before: compliance, movements and gaps are those after the change, which is taken as one
// increment. Pads that bore begin where they stood, pads that close where they stood off. Work is not told. The error is
// ErrNoRest.
func (p *Problem) Onward(m *Moment) (*Moment, error) {
	from := *m
	from.Load, from.rise, from.rate = 0, nil, make([][3]float64, p.pads())
	s, ok := p.rests(&from, 1, true)
	if !ok {
		return nil, ErrNoRest
	}
	return s.moment(), nil
}
