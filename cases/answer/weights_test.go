package answer

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/mesh"
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

// TestBridgeWeighs: what stands on the base weighs by its measures: the saddle part of a one-piece bridge, the
// wheels of one on posts; and what vibrates is what is weighed.
func TestBridgeWeighs(t *testing.T) {
	t.Parallel()
	weigh := func(name, key string, value tree.ChangeValue) (*design.Top, float64) {
		c, err := cases.OpenChanged(nil, name, "test", []tree.KeyValue{{Key: key, Value: value}})
		if err != nil {
			t.Fatal(err)
		}
		top, err := design.Prepare(context.Background(), c, design.Options{})
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, b := range top.Built.Bridge.Body.Beams {
			sum += b.Mass / tonnePerGram
		}
		for _, m := range top.Built.Bridge.Body.Masses {
			sum += m.Mass / tonnePerGram
		}
		got := float64(MassOf(top.Built).Bridge)
		if math.Abs(sum-got) > 1e-12*sum {
			t.Errorf("%s: %.12g g vibrate, %.12g g are weighed", name, sum, got)
		}
		return top, got
	}
	top, whole := weigh("first", "bridge.saddle_part.width", tree.Valued(5.0))
	_, base := weigh("first", "bridge.saddle_part.width", tree.Valued(0.0))
	card, _ := top.Built.Case.Wood("bridge.wood")
	b, most, want := top.Built.Case.Bridge, 0.0, 0.0
	for _, f := range top.Built.Geometry.StringForces() {
		most = math.Max(most, math.Abs(f.X))
	}
	const n = 2000
	for i := range n { // 8 mm beyond the outer strings
		x := (most + 8) * (2*(float64(i)+0.5)/n - 1)
		p := mesh.Point{b.At[0] + x, b.At[1]}
		want += 5 * (top.Built.Saddle(x)[2] - top.Built.Plate.Outer.At(p).Z - b.Height.Value(x)) * 2 * (most + 8) / n * card.Wood.Density * gramPerMM3
	}
	if math.Abs(whole-base-want) > 2e-3*want {
		t.Errorf("the saddle part weighs %.4f g, want %.4f", whole-base, want)
	}
	_, with := weigh("course-guitar-posts", "bridge.posts.wheel", tree.ChangeValue{Text: "[16, 3]", Value: []any{16.0, 3.0}})
	top, without := weigh("course-guitar-posts", "bridge.posts.wheel", tree.ChangeValue{Text: "[0, 0]", Value: []any{0.0, 0.0}})
	d := float64(top.Built.Case.Bridge.Posts.Diameter)
	if want := 2 * math.Pi / 4 * (16*16 - d*d) * 3 * 8500 * gramPerMM3; math.Abs(with-without-want) > 1e-9*want {
		t.Errorf("two wheels weigh %.6f g, want %.6f", with-without, want)
	}
}
