// Package motion is what a case file says of how the design is to vibrate: what
// is lost, what sits on the plate, where it is tapped, what was heard.
package motion

import (
	"archload/cases/tree"
	"archload/mesh"
)

// Motion says how the design is to vibrate.
type Motion struct {
	// 1, loss factor of every stiffness: what a swing loses in a radian, as a share of its energy; default: 0.02
	Loss float64 `toml:"loss" default:"0.02" want:"0.0001..0.5" eg:"0.03"`
	// each wood's own loss, loss_along and loss_across, in the place of this one, where its card has them;
	// default: false
	ByWood bool `toml:"by_wood" default:"false" eg:"true"`
	// tones and levels of the strung top stand among the answers that solve, compare, series and report give;
	// default: false
	Judged bool `toml:"judged" default:"false" eg:"true"`
	// the load's own stress stiffens or softens the strung plate; default: true
	Stress bool `toml:"stress" default:"true" eg:"false"`
}

// PlateMass is a small thing that sits on the outer surface: clay, a weight, a pickup. It
// moves with the plate and does not stiffen it.
type PlateMass struct {
	// what messages call it; default: "mass N"
	Name string `toml:"name" eg:"'clay'"`
	// mm, in plan
	At mesh.Point `toml:"at" need:"the place [x, y] in mm" eg:"[0, 120]"`
	// mm, rectangle it is spread on, across and along; default: a point
	Size *[2]tree.Length `toml:"size" want:">0" eg:"[20, 20]"`
	// how heavy it is, g
	Mass tree.Mass `toml:"mass" need:"how heavy it is, in g" want:">0" eg:"15"`
}

// Tap is a place of the outer surface that is tapped, or whose movement is looked at.
type Tap struct {
	// what tables call it; default: "tap N"
	Name string `toml:"name" eg:"'treble side'"`
	// mm, in plan
	At mesh.Point `toml:"at" need:"the place [x, y] in mm" eg:"[60, -40]"`
	// mm, rectangle the tap is spread on; default: a point
	Size *[2]tree.Length `toml:"size" want:">0" eg:"[6, 6]"`
	// of the force and the movement, any length; default: [0, 0, 1]
	Direction [3]float64 `toml:"direction" default:"[0, 0, 1]" eg:"[0, 0, 1]"`
}

// HeardTone is a tone of the plate that was heard or measured.
type HeardTone struct {
	// Hz, the tone that was heard
	Hz tree.Frequency `toml:"hz" need:"the frequency in Hz" want:">0" eg:"98"`
	// what sand or fingers showed, "ring", "cross" or "twist", or how many lines stand still across and along the grain,
	// "2 1": the tone is then found by its shape; or in the maker's own words; default: none
	Pattern string `toml:"pattern" eg:"'ring'"`
}
