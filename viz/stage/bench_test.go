package stage

import (
	"testing"

	"archload/cases/design"
	"archload/cases/tree"

	"archload/viz/scene"
)

// guitar is an answered course guitar at its own mesh.
func guitar(b *testing.B, name string) (*Answerer, Want, *Shown) {
	a := NewAnswerer(nil, design.Options{Workers: 2})
	w := Want{Designs: []Design{{Name: name}}, Display: Display{Load: 1, Field: scene.Sink, Strings: true}, Cut: Cut{Kind: CrossArch}, Held: true}
	s, err := a.Answer(b.Context(), w, nil)
	if err != nil {
		b.Fatal(err)
	}
	return a, w, s
}

// BenchmarkDrag is one step of a drag at each of the sliders that the hand is to feel no
// wait at: contact, sink, section, numbers and scene.
func BenchmarkDrag(b *testing.B) {
	for _, c := range []struct {
		name, key string
		value     func(i int) tree.ChangeValue
	}{
		{"relief", "bridge.relief.depth", func(i int) tree.ChangeValue { return tree.Valued(0.1 + 0.001*float64(i%100)) }},
		{"shape", "bridge.relief.shape", func(i int) tree.ChangeValue { return tree.Valued([]string{"cosine", "wedge", "parabola"}[i%3]) }},
		{"tension", "strings.tension_scale", func(i int) tree.ChangeValue { return tree.Valued(0.9 + 0.002*float64(i%100)) }},
		{"saddle", "bridge.saddle_height", func(i int) tree.ChangeValue { return tree.Valued(24 + 0.1*float64(i%40)) }},
		{"wood", "bridge.wood", func(i int) tree.ChangeValue { return tree.Valued([]string{"sugar-maple", "ebony"}[i%2]) }},
		{"foot", "bridge.foot[1].from", func(i int) tree.ChangeValue { return tree.Valued(-64 + 0.2*float64(i%20)) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			a, w, last := guitar(b, "course-guitar-relief")
			var err error
			for i := 0; b.Loop(); i++ {
				w.Designs = []Design{w.Designs[0].With(tree.KeyValue{Key: c.key, Value: c.value(i)})}
				if last, err = a.Answer(b.Context(), w, last); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkLoadStep is one step of the load's slider.
func BenchmarkLoadStep(b *testing.B) {
	a, w, last := guitar(b, "course-guitar-relief")
	var err error
	for i := 0; b.Loop(); i++ {
		w.Load = 0.01 * float64(i%100)
		if last, err = a.Answer(b.Context(), w, last); err != nil {
			b.Fatal(err)
		}
	}
}
