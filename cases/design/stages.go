package design

import "time"

// Stages is the time that each stage took, s.
type Stages struct {
	Mesh     float64 `json:"mesh"` // arch, triangulation and model
	Assemble float64 `json:"assemble"`
	Factor   float64 `json:"factor"`
	Condense float64 `json:"condense"`
	Contact  float64 `json:"contact"`
	Flow     float64 `json:"flow"` // where the load goes
	Total    float64 `json:"total"`
}

// Clock tells the time for Stages. The package has none of its own.
type Clock func() time.Time

// time runs one stage and adds what it took; without a clock it only runs.
func (c Clock) time(sum *float64, stage func()) {
	if c == nil {
		stage()
		return
	}
	t := c()
	stage()
	*sum += c().Sub(t).Seconds()
}
