package answer

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/design"
)

// gramPerMM3 is how many g/mm³ are 1 kg/m³.
const gramPerMM3 = 1e-6

// tonnePerGram turns g into t.
const tonnePerGram = 1e-6

// TestWeights: what vibrates is what is weighed: the masses of plate and braces, from the elements' mass
// under rigid motions, are those of the report, and their centres those of the volumes.
func TestWeights(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"course-guitar", "course-guitar-elastic", "course-guitar-crossed"} {
		c, err := cases.Open(nil, name)
		if err != nil {
			t.Fatal(err)
		}
		top, err := design.Prepare(context.Background(), c, design.Options{})
		if err != nil {
			t.Fatal(err)
		}
		w := top.Factored.Weights()
		want := MassOf(top.Built)
		card, _ := c.Wood("plate.wood")
		if got := w[design.PartPlate].Mass / tonnePerGram; math.Abs(got-want.Plate) > 1e-9*want.Plate {
			t.Errorf("%s: plate %.12g g vibrate, %.12g g are weighed", name, got, want.Plate)
		}
		if got := w[design.PartBraces].Mass / tonnePerGram; math.Abs(got-want.Braces) > 1e-9*want.Braces {
			t.Errorf("%s: braces %.12g g vibrate, %.12g g are weighed", name, got, want.Braces)
		}
		var centre [3]float64
		m := top.Built.Mesh
		for i, tri := range m.Tris {
			h, one := 0.0, [3]float64{}
			for _, n := range tri {
				h += m.Nodes[n].H / 3
				for k := range 3 {
					one[k] += m.Nodes[n].P[k] / 3
				}
			}
			for k := range 3 {
				centre[k] += one[k] * h * m.TriArea(int32(i)) * card.Wood.Density * gramPerMM3
			}
		}
		for k := range 3 {
			if v := centre[k] / want.Plate; math.Abs(v-w[design.PartPlate].Centre[k]) > 1e-9*100 {
				t.Errorf("%s: centre %d at %.12g mm, want %.12g", name, k, w[design.PartPlate].Centre[k], v)
			}
		}
	}
}
