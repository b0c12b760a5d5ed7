package answer

import (
	"archload/mesh"

	"encoding/json"
	"math"
)

// Num is a number of a report; one that cannot be had is NaN and becomes null
// in JSON.
type Num float64

// None is the number that cannot be had.
func None() Num { return Num(math.NaN()) }

// Known says whether the number can be had.
func (n Num) Known() bool { return !math.IsNaN(float64(n)) && !math.IsInf(float64(n), 0) }

// MarshalJSON writes null for a number that cannot be had.
func (n Num) MarshalJSON() ([]byte, error) {
	if !n.Known() {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// UnmarshalJSON reads null as a number that cannot be had.
func (n *Num) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*n = None()
		return nil
	}
	return json.Unmarshal(b, (*float64)(n))
}

// Max is the larger of a number and v: v if the number cannot be had, the number
// if v is NaN.
func (n Num) Max(v float64) Num {
	if math.IsNaN(v) || float64(n) >= v {
		return n
	}
	return Num(v)
}

// Spot is a value at a place in plan.
type Spot struct {
	Value float64 `json:"value"`
	X     float64 `json:"x"` // mm
	Y     float64 `json:"y"` // mm
}

// spotOf is a value of the mesh at its place.
func spotOf(p mesh.Place) Spot { return Spot{Value: p.Value, X: p.At[0], Y: p.At[1]} }
