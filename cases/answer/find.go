package answer

// FindQuantity looks a quantity up by its key.
func FindQuantity(key string) (Quantity, bool) {
	for _, q := range Quantities() {
		if q.Key == key {
			return q, true
		}
	}
	return Quantity{}, false
}

// QuantityOf is the quantity with a key that the program itself spells; it
// panics if there is none.
func QuantityOf(key string) Quantity {
	q, ok := FindQuantity(key)
	if !ok {
		panic("cases: no quantity " + key)
	}
	return q
}

// QuantitiesOf are those that something wants, in the table's order.
func QuantitiesOf(wants func(Quantity) bool) []Quantity {
	var out []Quantity
	for _, q := range Quantities() {
		if wants(q) {
			out = append(out, q)
		}
	}
	return out
}

// Compared are the quantities of a comparison.
func Compared() []Quantity {
	return QuantitiesOf(func(q Quantity) bool { return q.Compare != NotCompared })
}

// Reported are the quantities of a printed report.
func Reported() []Quantity { return QuantitiesOf(func(q Quantity) bool { return q.Report }) }

// Shown are the quantities of the window's table of the load shown.
func Shown() []Quantity { return QuantitiesOf(func(q Quantity) bool { return q.Window }) }
