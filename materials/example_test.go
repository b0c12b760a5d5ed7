package materials_test

import (
	"fmt"

	"archload/materials"
)

// What a card of Sitka spruce says: stiffness along and across the grain, where
// the first comes from, and how much of its strength a stress uses.
func Example() {
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		fmt.Println(err)
		return
	}
	w := card.Wood
	fmt.Printf("EL %.0f, ER %.0f, GLT %.0f MPa, %.0f kg/m³\n", w.EL, w.ER, w.GLT, w.Density)
	fmt.Println("EL:", card.Sources["EL"].Words())
	cv, _ := materials.Scatter("EL")
	fmt.Printf("one plank in three lies more than %.0f %% off\n", 100*cv)
	_, factor := materials.Hoffman([3]float64{20, -1.5, 3}, card.Strength.Limits())
	fmt.Printf("20 MPa along, -1.5 across, shear 3: %.0f %% of the strength used\n", 100/factor)
	_, err = materials.Find("sitka-sprice")
	fmt.Println(err)
	// Output:
	// EL 10890, ER 849, GLT 664 MPa, 403 kg/m³
	// EL: Wood Handbook, table 5-3a; EL = 1.10 MOE, its footnote (from memory)
	// one plank in three lies more than 22 % off
	// 20 MPa along, -1.5 across, shear 3: 67 % of the strength used
	// no wood card "sitka-sprice"; nearest: sitka-spruce
}

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
