package cases

import (
	"math"

	"archload/fem"
	"archload/mesh"
)

// ReadingAt is what a dial gauge and strain gauges would show at a place of
// the outer surface, with no name; inside is false beyond the plate's edge or
// over a hole, where nothing stands.
func (s *Solution) ReadingAt(q mesh.Point) (r GaugeReport, inside bool) {
	at, inside := s.Top.Built.place.outer(q)
	return s.reading(q, at), inside
}

func (s *Solution) reading(q mesh.Point, at fem.SurfacePoint) GaugeReport {
	u := s.Result.MoveAt(at)
	return GaugeReport{X: q[0], Y: q[1], Sink: -u[2], Measured: None(), Displacement: u,
		Outer: s.stressAround(q, at, 1), Inner: s.stressAround(q, at, -1)}
}

// WoodAt is the plate's shape at a place.
type WoodAt struct {
	Height    float64 // mm, of the outer surface above z = 0, unloaded
	Thickness float64 // mm
	Slope     float64 // deg, of the outer surface
}

// WoodUnder tells the plate's shape at a place in plan.
func (b *Built) WoodUnder(q mesh.Point) WoodAt {
	j := b.Plate.Outer.At(q)
	return WoodAt{Height: j.Z, Thickness: b.Plate.Thickness.At(q).Z, Slope: degrees(math.Atan(math.Hypot(j.Zx, j.Zy)))}
}

// BridgeNow reports the bridge at the solution's own load: all but what
// follows from the whole path of the load (by_load and when the middle touches
// and closes). Nil without a bridge.
func (s *Solution) BridgeNow() *BridgeReport {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	r := s.bridgeState()
	r.MiddleTouchesAt, r.MiddleClosesAt = None(), None()
	return r
}
