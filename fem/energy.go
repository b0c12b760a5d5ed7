package fem

// Energy is the strain energy of a result, N·mm: of part 0 by kind, of every
// other part as a whole.
type Energy struct {
	Membrane, Bending, Shear float64   // of part 0
	Parts                    []float64 // of each part what is not told by kind
}

// Of returns what is not told by kind of a part, N·mm.
func (e *Energy) Of(p Part) float64 {
	if int(p) < len(e.Parts) {
		return e.Parts[p]
	}
	return 0
}

// Total is the sum, N·mm.
func (e *Energy) Total() float64 {
	sum := e.Membrane + e.Bending + e.Shear
	for _, v := range e.Parts {
		sum += v
	}
	return sum
}

// Add counts energy of a part that is not told by kind, N·mm.
func (e *Energy) Add(p Part, v float64) {
	for len(e.Parts) <= int(p) {
		e.Parts = append(e.Parts, 0)
	}
	e.Parts[p] += v
}

// addStrain counts the energy of an element.
func (e *Energy) addStrain(p Part, s Strain) {
	if p == 0 {
		e.Membrane, e.Bending, e.Shear = e.Membrane+s.Membrane, e.Bending+s.Bending, e.Shear+s.Shear
		e.Add(p, s.Other)
		return
	}
	e.Add(p, s.Membrane+s.Bending+s.Shear+s.Other)
}
