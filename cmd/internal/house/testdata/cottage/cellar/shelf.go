package cellar

const thisYear = 1800

// Shelf uses wine.go.
type Shelf []Wine

// Oldest uses wine.go once more, by a field and a method.
func (s Shelf) Oldest() Wine {
	best := Wine{Year: thisYear}
	for _, w := range s {
		if w.Age() > best.Age() {
			best = w
		}
	}
	return best
}
