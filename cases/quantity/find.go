package quantity

// Find looks a quantity up by its key.
func Find(key string) (Quantity, bool) {
	for _, q := range All() {
		if q.Key == key {
			return q, true
		}
	}
	return Quantity{}, false
}

// Of is the quantity with a key that the program itself spells; it
// panics if there is none.
func Of(key string) Quantity {
	q, ok := Find(key)
	if !ok {
		panic("cases: no quantity " + key)
	}
	return q
}

// Where are those that something wants, in the table's order.
func Where(wants func(Quantity) bool) []Quantity {
	var out []Quantity
	for _, q := range All() {
		if wants(q) {
			out = append(out, q)
		}
	}
	return out
}

// Compared are the quantities of a comparison.
func Compared() []Quantity {
	return Where(func(q Quantity) bool { return q.Compare != NotCompared })
}

// Reported are the quantities of a printed report.
func Reported() []Quantity { return Where(func(q Quantity) bool { return q.Report }) }

// Shown are the quantities of the window's table of the load shown.
func Shown() []Quantity { return Where(func(q Quantity) bool { return q.Window }) }
