package design

import (
	"time"

	"archload/cases"
)

// Options steer a solve; the zero value is the default.
type Options struct {
	Workers  int                // goroutines; 0 means 1. The answer does not depend on it
	Refine   float64            // multiplies the case's own mesh.refine; 0 means 1
	Clock    Clock              // for the timings; nil leaves them zero
	NoFlow   bool               // leave out the load flow
	NoError  bool               // leave out the second, coarser solve behind the discretisation estimate
	Swells   bool               // the wood is to swell: nothing has to load it, and a free plate may lie in the hand
	AnyFoot  bool               // a hand moves the design: any foot under the base is to stand on the same factor, an arch to keep its fit
	Progress func(stage string) // told what starts; may be nil
}

// atRest refuses a case that has no state of rest; one that is to swell needs no load.
func (o Options) atRest(c *cases.Case) error {
	if !o.Swells {
		return c.AtRest()
	}
	if c.SwellsAlone() {
		return nil
	}
	if err := c.Held(); err != nil {
		return err
	}
	return nil
}

// WorkerCount is how many goroutines may work, 1 at least.
func (o Options) WorkerCount() int { return max(1, o.Workers) }

func (o Options) refine() float64 {
	if o.Refine == 0 {
		return 1
	}
	return o.Refine
}

// Say tells the stage that starts to Progress, if that is wanted.
func (o Options) Say(stage string) {
	if o.Progress != nil {
		o.Progress(stage)
	}
}

// Now is the time by the clock; without one it stands still.
func (o Options) Now() time.Time {
	if o.Clock == nil {
		return time.Time{}
	}
	return o.Clock()
}

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
