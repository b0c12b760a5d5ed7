package stability

import "archload/cases/study"

// Comparison sets designs side by side on their moved shapes, with the linear numbers of each.
type Comparison struct {
	*study.Comparison
	Order  string    `json:"order"` // second
	Times  float64   `json:"times"`
	Second []Order   `json:"second_order"` // of each case
	Linear []Linear  `json:"linear"`       // likewise
	each   []*Report // likewise
}

// Compare adds to a comparison of answers on their moved shapes what each has beside it.
func Compare(c *study.Comparison, each []*Report) *Comparison {
	out := &Comparison{Comparison: c, Order: "second", each: each}
	for _, r := range each {
		out.Times = r.Times
		out.Second, out.Linear = append(out.Second, r.Second), append(out.Linear, r.Linear)
	}
	return out
}

// Each are the answers, in the order of the cases.
func (c *Comparison) Each() []*Report { return c.each }
