package quantity

import (
	"fmt"

	"archload/cases/answer"
	"archload/cases/design"
)

// Summarize is answer.Summarize with what the mesh may cost each number, where
// the case was solved on triangles twice as large too.
func Summarize(s *design.Solution) *answer.Report {
	r := answer.Summarize(s)
	if s.Coarse != nil {
		r.Error.Mesh = meshRanges(r, answer.SummarizeCompanion(s.Coarse))
	}
	return r
}

// meshRanges estimates what the triangles cost each number of an answer, in the
// quantity's unit, from the coarser answer (answer.MeshRange).
func meshRanges(r, coarse *answer.Report) map[string]answer.Num {
	out := map[string]answer.Num{}
	add := func(q Quantity, key string) {
		if v := answer.MeshRange(q.Get(r), q.Get(coarse), q.Peak); v.Known() {
			out[key] = v
		}
	}
	for _, q := range All() {
		if q.Compare != UnderMesh {
			add(q, q.Key)
		}
	}
	for i, g := range r.Gauges {
		q := OfGauge(i, g.Name)
		add(q, GaugeKey(i))
	}
	return out
}

// GaugeKey is the key of gauge i's sink, counted from 0, in ErrorReport.Mesh.
func GaugeKey(i int) string { return fmt.Sprintf("gauge_sink[%d]", i+1) }
