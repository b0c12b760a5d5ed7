package study

import (
	"context"
	"fmt"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/contact"
)

// Shapes lists the shapes of relief that have a formula; Bridge.Gap gives it.
func Shapes() []string { return []string{"parabola", "cosine", "wedge", "flat"} }

// Trial is a relief tried before it is cut: the same top and strings with one
// depth and shape after the other.
type Trial struct {
	Format    int            `json:"format"`
	Units     string         `json:"units"`
	Title     string         `json:"title"`
	Downforce float64        `json:"downforce"`        // N, of all strings
	Crushing  answer.Num     `json:"crushing"`         // MPa, strength of the softer wood under the foot
	Points    []TrialPoint   `json:"points"`           // shape by shape, each from the least depth on
	Sheet     *TrialPoint    `json:"sheet"`            // of the bench sheet: the case's own relief, or the one asked for; null without
	Bench     []BenchStation `json:"bench"`            // what to take off for the sheet's relief; null without
	Wood      *TrialWood     `json:"wood"`             // what the wood's scatter does to it
	Order     string         `json:"order,omitempty"`  // second: on the moved shape; else linear
	Linear    *LinearTrial   `json:"linear,omitempty"` // of one on the moved shape: the same on the shape as carved
	Command   string         `json:"-"`                // that made it, without a depth: Write ends with the next one; empty: it does not
}

// LinearTrial are the reliefs of a trial on the shape as carved.
type LinearTrial struct {
	Points []TrialPoint `json:"points"`
	Sheet  *TrialPoint  `json:"sheet"`
}

// OnMovedShape sets a trial on the moved shape beside the linear one.
func (t *Trial) OnMovedShape(linear *Trial) {
	t.Order, t.Linear = "second", &LinearTrial{linear.Points, linear.Sheet}
}

// TrialPoint is what one relief does at full load. Lengths mm.
type TrialPoint struct {
	Shape           string              `json:"shape"` // "stations" if the case lists depths
	Depth           float64             `json:"depth"` // at its deepest
	Share           answer.ShareReport  `json:"share"`
	Feet            []answer.FootReport `json:"feet,omitempty"`    // of two feet
	MiddleTouchesAt answer.Num          `json:"middle_touches_at"` // fraction of full load; null: never
	MiddleClosesAt  answer.Num          `json:"middle_closes_at"`
	GapLeft         float64             `json:"gap_left"`      // the greatest remaining
	FootPressure    answer.Num          `json:"foot_pressure"` // MPa, the greatest mean over 8 mm of foot
	FootUsed        answer.Num          `json:"foot_used"`     // 1, of the crushing strength
	Sink            float64             `json:"sink"`          // of the bridge at its middle
	TopBend         float64             `json:"top_bend"`      // how much more the top gives way under the foot's middle than under its ends: positive flattens the arch
	TopCurvature    float64             `json:"top_curvature"` // 1/m, added under the foot along its length: positive makes the arch rounder
	StrengthUsed    answer.Num          `json:"strength_used"` // null where it was not worked out
	Checks          string              `json:"checks_failed"` // names of the built-in checks that it does not pass, where the strength was worked out
}

// Bearing is how the foot bears in a trial: its ends and what lies between them.
type Bearing struct {
	Ends    [2]float64 // shares, 0 to 1: of the bass and treble ends, or of the bass and treble foot
	Between float64    // of the middle third, or of the inner heels (which the feet hold too)
	Touches answer.Num // fraction of full load at which that first touches; none: never
	Closes  answer.Num // and at which it has closed
}

// Bearing tells how the foot bears: of a continuous one by thirds, of two by
// feet and heels.
func (p *TrialPoint) Bearing() Bearing {
	if len(p.Feet) == 0 {
		return Bearing{[2]float64{p.Share.BassEnd, p.Share.TrebleEnd}, p.Share.Middle, p.MiddleTouchesAt, p.MiddleClosesAt}
	}
	return Bearing{[2]float64{p.Feet[0].Share, p.Feet[1].Share}, answer.InnerHeels(p.Feet), answer.HeelsTouchAt(p.Feet), answer.HeelsCloseAt(p.Feet)}
}

// TrialWood is the sheet's relief on the same design in wood that is all softer
// or all stiffer by the scatter of stiffness.
type TrialWood struct {
	Scatter float64    `json:"scatter"` // 1
	Softer  TrialPoint `json:"softer"`
	Stiffer TrialPoint `json:"stiffer"`
}

// mostStrengths is at how many depths of a shape the strength used is worked
// out: it needs the whole top, the rest only what is under the foot.
const mostStrengths = 11

// TrialOptions say what to try.
type TrialOptions struct {
	Depths []float64 // mm, rising from 0 on, each once
	Shapes []string  // of Shapes
	Moved  *Moved    // nil: linear
	Sheet  *float64  // mm, depth for the bench sheet in the first shape; nil: the case's own relief, if it has one
}

// Moved lets reliefs be tried on the moved shape.
type Moved struct {
	// About is the top about its moved shape under some relief near those tried, where other gaps are a
	// linear problem again; Loads are the bridge's there.
	About *design.Top
	Loads []contact.BodyLoad
	// Settle finds the whole answer of a top on its moved shape under a share of its load.
	Settle func(ctx context.Context, top *design.Top, share float64) (*contact.Result, error)
}

// BenchStation is what to take from under the foot at one place.
type BenchStation struct {
	X      float64 `json:"x"`      // mm from the bridge's middle
	Remove float64 `json:"remove"` // mm, on the bridge's middle line
	Gap    float64 `json:"gap"`    // mm, what a feeler gauge finds there, strings slack: the measured misfit with it
}

// Failed tells which built-in checks a relief does not pass, and where.
func (t *Trial) Failed() []string {
	var out []string
	for _, p := range t.Points {
		if p.Checks != "" {
			out = append(out, fmt.Sprintf("%s of %s %g mm deep", p.Checks, p.Shape, p.Depth))
		}
	}
	if t.Sheet != nil && t.Sheet.Checks != "" {
		out = append(out, t.Sheet.Checks+" of the bench sheet's relief")
	}
	return out
}
