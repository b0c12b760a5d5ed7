package verify

import (
	"encoding/json"
	"math"
)

// Row is one check: what the program computes beside what is expected.
type Row struct {
	Name      string  `json:"name"`
	Quantity  string  `json:"quantity"`
	Mesh      string  `json:"mesh"`   // "16 regular"; empty where there is none
	By        string  `json:"by"`     // author and year, short
	Source    string  `json:"source"` // author, title, year, table or page
	Obtained  string  `json:"obtained"`
	Kind      string  `json:"kind"`
	Expected  float64 `json:"expected"`
	Bound     string  `json:"bound,omitempty"` // "most" or "least" where Expected is a limit
	Got       float64 `json:"got"`
	Deviation float64 `json:"deviation"` // got - expected, over the expected value or the check's scale; in the unit if Absolute
	Allowed   float64 `json:"allowed"`   // greatest |Deviation|
	Absolute  bool    `json:"absolute,omitempty"`
	Unit      string  `json:"unit"`
	Reason    string  `json:"reason"` // of what is allowed
	Pass      bool    `json:"pass"`
	Trend     []Step  `json:"trend,omitempty"` // with Options.Refine, on the finest row of a check
	Order     Number  `json:"order"`           // observed order of convergence; null if it was not asked for or not found
}

// Step is the answer on one mesh.
type Step struct {
	Mesh      string  `json:"mesh"` // divisions, or the length of the edges
	Got       float64 `json:"got"`
	Deviation float64 `json:"deviation"`
}

// Number is a number that may not be had: NaN, null in JSON.
type Number float64

// Known says whether the number can be had.
func (n Number) Known() bool { return !math.IsNaN(float64(n)) && !math.IsInf(float64(n), 0) }

// MarshalJSON writes null for a number that cannot be had.
func (n Number) MarshalJSON() ([]byte, error) {
	if !n.Known() {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// judge makes the row of a check.
func (c *Check) judge(got, allowed float64, mesh string) Row {
	r := Row{Name: c.Name, Quantity: c.Quantity, Mesh: mesh, By: c.By, Source: c.Source, Obtained: c.Obtained,
		Kind: c.Kind, Expected: c.Value, Bound: c.Bound, Got: got, Deviation: c.deviation(got), Allowed: allowed,
		Absolute: c.Absolute || c.Bound != "", Unit: c.Unit, Reason: c.Reason, Order: Number(math.NaN())}
	r.Pass = math.Abs(r.Deviation) <= allowed
	switch c.Bound {
	case "most":
		r.Pass = got <= c.Value
	case "least":
		r.Pass = got >= c.Value
	}
	return r
}

// deviation is how far an answer lies off.
func (c *Check) deviation(got float64) float64 {
	switch {
	case c.Absolute || c.Bound != "":
		return got - c.Value
	case c.Scale != 0:
		return (got - c.Value) / math.Abs(c.Scale)
	}
	return got/c.Value - 1
}

// order is the observed order of convergence of the three finest answers, each
// on a mesh twice as fine: log2 of the ratio of successive changes. It needs no
// reference; NaN where the changes turn round or are no more than rounding.
func order(steps []Step) Number {
	n := len(steps)
	if n < 3 {
		return Number(math.NaN())
	}
	const rounding = 1e-6 // of the answer
	first, second := steps[n-2].Got-steps[n-3].Got, steps[n-1].Got-steps[n-2].Got
	if !(first/second > 0) || math.Abs(second) < rounding*math.Abs(steps[n-1].Got) {
		return Number(math.NaN())
	}
	return Number(math.Log2(first / second))
}
