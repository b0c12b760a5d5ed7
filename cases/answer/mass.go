package answer

import (
	"fmt"

	"archload/cases/design"
)

// MassReport holds the masses, g.
type MassReport struct {
	Plate        float64     `json:"plate"`
	Braces       float64     `json:"braces"`
	Back         float64     `json:"back,omitempty"` // of a body, with its bars
	Bridge       Num         `json:"bridge"`
	BridgeCentre *[3]float64 `json:"bridge_centre"` // mm, of mass; null without a bridge
}

// MassOf weighs the parts of a built case.
func MassOf(b *design.Built) MassReport {
	m := MassReport{Bridge: None()}
	if card, err := b.Case.Wood("plate.wood"); err == nil {
		m.Plate = b.Mesh.Mass(card.Wood.Density)
	}
	for k := range b.Bars {
		m.Braces += braceMass(b, k)
	}
	m.Back = b.BackMass()
	if b.Bridge != nil {
		m.Bridge = Num(b.Bridge.Mass)
		m.BridgeCentre = &b.Bridge.Centre
	}
	return m
}

// braceMass is the mass of brace k of those that are fitted, g.
func braceMass(b *design.Built, k int) float64 {
	card, err := b.Case.Wood(fmt.Sprintf("brace[%d].wood", b.Bars[k].Brace+1))
	if err != nil {
		return 0 // Build would not have made it
	}
	return b.BraceMass(b.Bars[k], card.Wood)
}
