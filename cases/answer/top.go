package answer

import (
	"math"

	"archload/cases/design"
	"archload/mesh"
)

// TopReport is the plate's shape and how far it sinks where it sinks most.
type TopReport struct {
	Thinnest Spot `json:"thinnest"`  // mm
	Thickest Spot `json:"thickest"`  // mm
	Steepest Spot `json:"steepest"`  // deg, of the outer surface
	Apex     Spot `json:"apex"`      // mm above z = 0, before loading
	ApexSink Num  `json:"apex_sink"` // mm; null for a flat top, which has no apex
	MostSunk Spot `json:"most_sunk"` // mm
}

// Arched says whether the outer surface slopes at all: a flat top is highest
// wherever rounding has it.
func (t TopReport) Arched() bool { return t.Steepest.Value > 0.1 }

// topReport finds the extremes of the plate's shape and where it sinks most.
func topReport(s *design.Solution) TopReport {
	e := s.Top.Built.Plate.Extremes(s.Top.Built.Mesh)
	t := TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
		Apex: apex(s.Top.Built, e.Highest), ApexSink: None()}
	if at, inside := s.Top.Built.OnOuter(mesh.Point{t.Apex.X, t.Apex.Y}); inside && t.Arched() {
		t.ApexSink = Num(-s.Result.MoveAt(at)[2])
	}
	for i := range s.Top.Built.PlateN {
		if w := -s.Result.U[6*i+2]; i == 0 || w > t.MostSunk.Value {
			p := s.Top.Built.Mesh.Points[i]
			t.MostSunk = Spot{Value: w, X: p[0], Y: p[1]}
		}
	}
	return t
}

// apex climbs from the highest node to the top of the surface: Newton's method
// on a slope of zero. Where that leads away (a flat plate, a rim higher than
// the middle) it stays at the node.
func apex(b *design.Built, node mesh.Place) Spot {
	const far, steps, near = 10, 60, 1e-9 // mm, 1, mm; a flat crown takes many steps
	p := node.At
	for range steps {
		j := b.Plate.Outer.At(p)
		det := j.Zxx*j.Zyy - j.Zxy*j.Zxy
		if !(det > 0) || j.Zxx >= 0 {
			return spotOf(node)
		}
		step := mesh.Point{(j.Zx*j.Zyy - j.Zy*j.Zxy) / det, (j.Zy*j.Zxx - j.Zx*j.Zxy) / det}
		p[0], p[1] = p[0]-step[0], p[1]-step[1]
		if math.Hypot(step[0], step[1]) < near {
			break
		}
		if math.Hypot(p[0]-node.At[0], p[1]-node.At[1]) > far {
			return spotOf(node)
		}
	}
	return Spot{Value: b.Plate.Outer.At(p).Z, X: p[0], Y: p[1]}
}
