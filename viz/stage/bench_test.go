package stage

import (
	"testing"

	"archload/cases/design"
	"archload/cases/tree"

	"archload/viz/scene"
)

// reliefGuitar is an answered course guitar at its own mesh.
func reliefGuitar(b *testing.B) (*Answerer, Want, *Shown) {
	a := NewAnswerer(nil, design.Options{Workers: 2})
	w := Want{Designs: []Design{{Name: "course-guitar-relief"}}, Display: Display{Load: 1, Field: scene.Sink, Strings: true}}
	s, err := a.Answer(b.Context(), w, nil)
	if err != nil {
		b.Fatal(err)
	}
	return a, w, s
}

// BenchmarkReliefDrag is one step of a drag of the relief's slider: contact,
// sink, numbers and scene.
func BenchmarkReliefDrag(b *testing.B) {
	a, w, last := reliefGuitar(b)
	var err error
	for i := 0; b.Loop(); i++ {
		w.Designs = []Design{w.Designs[0].With(tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.1 + 0.001*float64(i%100))})}
		if last, err = a.Answer(b.Context(), w, last); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkLoadStep is one step of the load's slider.
func BenchmarkLoadStep(b *testing.B) {
	a, w, last := reliefGuitar(b)
	var err error
	for i := 0; b.Loop(); i++ {
		w.Load = 0.01 * float64(i%100)
		if last, err = a.Answer(b.Context(), w, last); err != nil {
			b.Fatal(err)
		}
	}
}
