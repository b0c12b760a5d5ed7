// Package pull is what the strings do to the bridge, string by string and in sum: the
// part of a report that tells of them, and the table of archload strings.
package pull

import (
	"math"

	"archload/cases"
	"archload/cases/shape"
)

// StringsReport holds the strings' forces, N.
type StringsReport struct {
	Tension   float64        `json:"tension"`
	Downforce float64        `json:"downforce"`
	Along     float64        `json:"along"` // positive toward the neck
	Grip      float64        `json:"grip"`  // friction in the slots lets the push lie between along - grip and along + grip
	Rocking   *RockingReport `json:"rocking"`
	Each      []StringReport `json:"each"`
}

// RockingReport is how near the strings' push is to tipping the bridge; null
// without one.
type RockingReport struct {
	Moment    float64 `json:"moment"`       // N·mm, push times height of the contact above the top, positive toward the neck
	Lever     float64 `json:"friction"`     // N·mm, what friction in the slots can add to or take from it
	Shift     float64 `json:"shift"`        // mm, the downforce's at the contact plane, toward the neck
	HalfWidth float64 `json:"half_width"`   // mm, of the foot: beyond it the bridge tips
	Used      float64 `json:"used"`         // 1, shift over half width, without sign; beyond 1/3 one edge lifts
	UsedMost  float64 `json:"used_at_most"` // 1, the same where friction is at its worst
}

// StringReport is one string.
type StringReport struct {
	Name       string  `json:"name"`
	X          float64 `json:"x"`      // mm from the bridge's middle
	Height     float64 `json:"height"` // mm, of its contact above the top at the bridge's middle
	Tension    float64 `json:"tension"`
	Rise       float64 `json:"rise"` // N, of the speaking length alone: a plucked string
	FrontAngle float64 `json:"front_angle"`
	BackAngle  float64 `json:"back_angle"`
	Downforce  float64 `json:"downforce"`
	Along      float64 `json:"along"`
	Grip       float64 `json:"grip"` // N
}

// StringsOf is the strings' part of a report; nil without strings.
func StringsOf(g *shape.Geometry) *StringsReport {
	forces := g.StringForces()
	if len(forces) == 0 {
		return nil
	}
	sum := cases.SumStrings(forces)
	r := &StringsReport{Tension: sum.Tension, Downforce: sum.Downforce, Along: sum.Along, Grip: sum.Grip, Rocking: rocking(g.Case, sum)}
	for _, f := range forces {
		r.Each = append(r.Each, StringReport(f))
	}
	return r
}

// rocking weighs the push against the foot's width; nil without a bridge.
func rocking(c *cases.Case, s cases.StringSum) *RockingReport {
	if c.Bridge == nil || s.Downforce <= 0 {
		return nil
	}
	half := float64(c.Bridge.Width) / 2
	return &RockingReport{
		Moment: s.Moment, Lever: s.Lever, Shift: s.Rocking, HalfWidth: half,
		Used: math.Abs(s.Rocking) / half, UsedMost: (math.Abs(s.Moment) + s.Lever) / s.Downforce / half,
	}
}
