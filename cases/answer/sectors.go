package answer

import (
	"math"

	"archload/cases/design"
	"archload/mesh"
)

// SectorsReport is the upward reaction at the two blocks and the two sides, N.
type SectorsReport struct {
	Neck   float64 `json:"neck"`
	Tail   float64 `json:"tail"`
	Bass   float64 `json:"bass"`
	Treble float64 `json:"treble"`
}

// add shares out a force by parts that sum to 1.
func (s *SectorsReport) add(part SectorsReport, force float64) {
	s.Neck += part.Neck * force
	s.Tail += part.Tail * force
	s.Bass += part.Bass * force
	s.Treble += part.Treble * force
}

// at is the part of a name that Built.SectorOf gives.
func (s *SectorsReport) at(name string) *float64 {
	switch name {
	case "neck":
		return &s.Neck
	case "tail":
		return &s.Tail
	case "bass":
		return &s.Bass
	}
	return &s.Treble
}

// rimParts says for each node of the outline, by its place in plan, which part
// of its stretch of edge lies before which block or side: a node at a block's
// end is shared by length, so that the sectors do not jump with the mesh.
func rimParts(b *design.Built) map[mesh.Point]SectorsReport {
	const samples = 8 // on each side of the node
	lo, hi := b.Span()
	out := map[mesh.Point]SectorsReport{}
	loop := b.Mesh.Rim
	for k, n := range loop {
		p := b.Mesh.Points[n]
		var part SectorsReport
		stretch := 0.0
		for _, o := range []int32{loop[(k+len(loop)-1)%len(loop)], loop[(k+1)%len(loop)]} {
			q := b.Mesh.Points[o]
			length := math.Hypot(q[0]-p[0], q[1]-p[1]) / 2
			stretch += length
			for i := range samples {
				u := (float64(i) + 0.5) / (2 * samples)
				*part.at(b.SectorOf(p[0]+u*(q[0]-p[0]), p[1]+u*(q[1]-p[1]), lo, hi)) += length / samples
			}
		}
		out[p] = SectorsReport{Neck: part.Neck / stretch, Tail: part.Tail / stretch, Bass: part.Bass / stretch, Treble: part.Treble / stretch}
	}
	return out
}
