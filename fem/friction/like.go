package friction

// Like follows the load in the increments of an earlier path, of a problem with the same pads that
// differs little: what each increment came to there is the guess from which its state of rest is
// searched here. Where that finds none, or leaves more work open than may be, the load is followed anew.
// The error is ErrNoRest.
func (p *Problem) Like(earlier *Path) (*Path, error) {
	path := &Path{Moments: []Moment{*p.rest()}}
	p.factor = earlier.factor
	for k := range earlier.Moments[1:] {
		m, ok := p.again(path, &earlier.Moments[k+1])
		if !ok {
			return p.Follow()
		}
		path.Moments = append(path.Moments, *m)
	}
	if m := path.Last(); m.Loose > openAgain*p.tolerance()*m.Work {
		return p.Follow()
	}
	path.factor = p.factor
	return path, nil
}

// openAgain is how many times the work that a path may leave open is left to one in the increments of another.
const openAgain = 2

// Ends solves the last increment of an earlier path again, for a problem that differs a little: what
// had happened until then is taken over. The error is ErrNoRest.
func (p *Problem) Ends(earlier *Path) (*Path, error) {
	n := len(earlier.Moments) - 1
	path := &Path{Moments: earlier.Moments[:n:n]}
	p.factor = earlier.factor
	m, ok := p.again(path, earlier.Last())
	if !ok {
		return nil, ErrNoRest
	}
	path.Moments, path.factor = append(path.Moments, *m), p.factor
	return path, nil
}

// again solves the increment from the last moment of a path to the load of another, which is the
// first guess.
func (p *Problem) again(path *Path, like *Moment) (*Moment, bool) {
	from := path.Last()
	s := p.increment(from, like.Load)
	if s.guided = like.Guided; s.guided {
		copy(s.hold, from.held)
	}
	s.like = like
	ok := s.search(false)
	path.Solves += s.solves
	if !ok {
		return nil, false
	}
	return s.moment(), true
}
