package answer

import (
	"math"

	"archload/cases/design"
	"archload/fem"
	"archload/mesh"
)

// ReadingAt is what a dial gauge and strain gauges would show at a place of
// the outer surface, with no name; inside is false beyond the plate's edge or
// over a hole, where nothing stands.
func ReadingAt(s *design.Solution, q mesh.Point) (r GaugeReport, inside bool) {
	at, inside := s.Top.Built.Place.Outer(q)
	return reading(s, q, at), inside
}

func reading(s *design.Solution, q mesh.Point, at fem.SurfacePoint) GaugeReport {
	u := s.Result.MoveAt(at)
	return GaugeReport{X: q[0], Y: q[1], Sink: -u[2], Measured: None(), Displacement: u,
		Outer: stressAround(s, q, at, 1), Inner: stressAround(s, q, at, -1)}
}

// WoodAt is the plate's shape at a place.
type WoodAt struct {
	Height    float64 // mm, of the outer surface above z = 0, unloaded
	Thickness float64 // mm
	Slope     float64 // deg, of the outer surface
}

// WoodUnder tells the plate's shape at a place in plan.
func WoodUnder(b *design.Built, q mesh.Point) WoodAt {
	j := b.Plate.Outer.At(q)
	return WoodAt{Height: j.Z, Thickness: b.Plate.Thickness.At(q).Z, Slope: degrees(math.Atan(math.Hypot(j.Zx, j.Zy)))}
}

// BridgeNow reports the bridge at the solution's own load: all but what
// follows from the whole path of the load (by_load and when the middle touches
// and closes). Nil without a bridge.
func BridgeNow(s *design.Solution) *BridgeReport {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	r := bridgeState(s)
	r.MiddleTouchesAt, r.MiddleClosesAt = None(), None()
	return r
}
