package scene

import (
	"math"
	"testing"
)

// Beside the bridge and in the hollow along the edge a place sees less of the sky; the
// crown lies open, and colours that mean something are dimmed less than bare wood.
func TestShadeWhereLittleSkyIsSeen(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	k := NewSkeleton(s)
	dims := map[Field][]float64{}
	for _, f := range []Field{Wood, Sink, FootPressure} {
		dims[f] = named(k.Build(Show{Solution: s, Load: 1, Field: f, Enlarge: 1}), "plate outside").Dim
	}
	br := s.Top.Built.Case.Bridge
	beside, hollow := 0, 0
	for i, p := range k.mesh.Points {
		dx, dy := math.Abs(p[0]-br.At[0])-float64(br.Length)/2, math.Abs(p[1]-br.At[1])-float64(br.Width)/2
		wood, sink, foot := dims[Wood][i], dims[Sink][i], dims[FootPressure][i]
		if !(wood > 0.3 && wood <= 1 && sink >= wood && sink <= foot) {
			t.Fatalf("node %d: factors %g on wood, %g on colours, %g without the bridge", i, wood, sink, foot)
		}
		switch far := math.Max(dx, dy); {
		case far < 0 && wood > 0.6:
			t.Fatalf("under the bridge, at %v, the factor is %g", p, wood)
		case far < 3:
			beside++
		case far > 40 && math.Abs(p[0]) < 30 && math.Abs(p[1]) < 60 && wood < 0.97:
			t.Errorf("on the crown, at %v, the factor is %g", p, wood)
		case far > 40 && wood < 0.9:
			hollow++
		}
	}
	if n := len(k.mesh.Points); beside == 0 || hollow < n/20 || hollow > n/2 {
		t.Errorf("of %d nodes %d lie beside the bridge, %d in the hollow", n, beside, hollow)
	}
}

// The tones of the shadow on the bench lie side by side, no place under two of them, and are
// together as large as the largest outline; they grow fainter outward.
func TestShadowIsDrawnOnce(t *testing.T) {
	s := solved(t, "course-guitar", 0.3)
	k := NewSkeleton(s)
	all, largest, last := 0.0, 0.0, uint8(255)
	area := func(a, b, c vec) float64 { return ((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])) / 2 }
	for _, o := range k.Build(Show{Solution: s, Load: 1, Enlarge: 1}).Solids {
		if o.Name != Shadow {
			continue
		}
		if o.Paint.A >= last || o.Paint.A == 0 {
			t.Errorf("a tone of opacity %d follows one of %d", o.Paint.A, last)
		}
		for _, tri := range o.Tris {
			one := area(o.Points[tri[0]], o.Points[tri[1]], o.Points[tri[2]])
			if one < 0 {
				t.Fatal("a triangle lies on its face")
			}
			all += one
		}
		last, largest = o.Paint.A, 0
		rim := o.Points[len(o.Points)-len(k.bench):]
		for i, p := range rim {
			largest += area(vec{}, p, rim[(i+1)%len(rim)])
		}
	}
	if !(largest > 1e4) || math.Abs(all-largest) > 1e-9*largest {
		t.Errorf("the tones cover %g mm², the largest outline %g", all, largest)
	}
}
