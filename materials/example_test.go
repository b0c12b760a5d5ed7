package materials_test

import (
	"fmt"

	"archload/materials"
)

// A billet like the card, but weighed and bent by its owner.
func ExampleCard_Like() {
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		fmt.Println(err)
		return
	}
	density, stiffness := 410.0, 11500.0 // kg/m³, MPa
	mine, err := card.Like("mine", materials.Change{Density: &density, EL: &stiffness})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("ER %.0f MPa, source: %s\n", mine.Wood.ER, mine.Sources["ER"].Text)
	// Output: ER 897 MPa, source: ratio to EL as sitka-spruce: Wood Handbook, table 5-1, ER/EL (from memory)
}

// The stiffness a carved quarter-cut plate has along the grain where it
// climbs 10 degrees.
func ExampleCompliance_Between() {
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		fmt.Println(err)
		return
	}
	const sin, cos = 0.17364817766693, 0.98480775301221 // 10 degrees
	frame := materials.Axes{{1, 0, 0}, {0, cos, sin}, {0, -sin, cos}}
	wood := materials.PlateAxes(materials.Cut{})
	r := card.Wood.Compliance().Between(wood, frame).Reduce()
	fmt.Printf("%.0f of %.0f MPa\n", 1/r.MM[1][1], card.Wood.EL)
	// Output: 7702 of 10890 MPa
}
