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
