package cutout

import (
	"math"

	"archload/cases/design"
	"archload/fem"
)

// Push is the force, N, with which the strip |x - x0| <= half, mm, of a plate presses outward, along y, on
// what holds its edge: at the end toward the tail and at the one toward the neck. Positive
// pushes the edge outward. It is what the nodes of the rim
// must give to the plate's elements.
func Push(s *design.Solution, x0, half float64) (tail, neck float64) {
	b := s.Top.Built
	lo, hi := b.Span()
	middle := (lo + hi) / 2
	rim := map[int32]bool{}
	for _, n := range b.Mesh.Rim {
		rim[n] = math.Abs(b.Mesh.Points[n][0]-x0) <= half
	}
	for i, e := range s.Result.Plate.Elements {
		if e.Part() != design.PartPlate {
			continue
		}
		var f []float64
		for k, n := range fem.OwnNodes(e) {
			if !rim[n] {
				continue
			}
			if f == nil {
				f = s.Result.PullOwn(i)
			}
			if b.Mesh.Points[n][1] < middle {
				tail += f[6*k+1]
			} else {
				neck -= f[6*k+1]
			}
		}
	}
	return tail, neck
}
