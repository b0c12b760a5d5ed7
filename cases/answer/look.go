package answer

import (
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/pull"
	"archload/cases/shape"
	"archload/fem/contact"
)

// Overview is what can be said of a case without solving it.
type Overview struct {
	Format   int                 `json:"format"`
	Units    string              `json:"units"`
	Title    string              `json:"title"`
	Keys     []cases.Setting     `json:"keys"`
	Mass     MassReport          `json:"mass"`
	Top      TopReport           `json:"top"`
	Strings  *pull.StringsReport `json:"strings"`
	Nodes    int                 `json:"nodes"`
	Memory   float64             `json:"memory_mb"` // about, MB
	Work     float64             `json:"gigaflop"`  // about, of the factorisation
	Warnings []string            `json:"warnings"`
	Assumed  []string            `json:"assumed,omitempty"` // of a body where the case does not say
}

// Look checks a case as far as it can be checked without solving, and
// estimates what a solve costs.
func Look(c *cases.Case) (*Overview, error) {
	g, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	b, err := design.MeshAndBuild(g, 1)
	if err != nil {
		return nil, err
	}
	e := b.Plate.Extremes(b.Mesh)
	o := &Overview{Format: cases.Format, Units: cases.UnitsNote, Title: c.Title, Keys: cases.Resolved(c), Mass: MassOf(b),
		Top: TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
			Apex: apex(b, e.Highest), ApexSink: None()},
		Strings: pull.StringsOf(g), Nodes: len(b.Model.Nodes), Warnings: warnings(b), Assumed: c.Assumed()}
	o.Memory = memory(b)
	// Work of nested dissection on a plate, fitted to measured factors of
	// 2 000 to 50 000 nodes.
	o.Work = 3.5 * math.Pow(float64(o.Nodes)/1e4, 1.5)
	return o, nil
}

// onMovedShape is how many times as much a solve takes at most to find the moved shape beside the linear answer,
// the program itself apart: measured at 6 500 and 11 000 nodes.
const onMovedShape = 1.5

// memory is about what a solve with its error estimate takes at most, MB: the
// program itself, the factor by nested dissection, its last front, which holds
// the nodes under the foot, the compliance of the foot's points, and the bars,
// which couple more than their neighbours. The shares are fitted to the peaks of
// 41 linear solves of 1 000 to 53 000 nodes on two cores. On the moved shape the
// peaks of 22 cases of 6 300 to 18 300 nodes, three solves of each, lie between
// 8 % below and 4 % above, that of a flat plate, which moves most, 30 % above;
// one case's differ by up to 7 %, as the collector comes.
func memory(b *design.Built) float64 {
	n, foot, bars := float64(len(b.Model.Nodes)), float64(len(b.Model.Zone)), float64(len(b.Model.Beams))
	rows := 0.0 // forces between foot and top
	if b.Bridge != nil {
		rows = float64(len(b.Bridge.Pads))
		if b.Bridge.Hold != contact.Slip {
			rows *= 3
		}
	}
	return 45 + onMovedShape*(19.3e-4*n*math.Log2(math.Max(2, n/2))+223e-6*foot*foot+46e-6*rows*rows+115e-3*bars)
}
