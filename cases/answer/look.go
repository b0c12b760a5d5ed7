package answer

import (
	"math"

	"archload/cases"
	"archload/cases/design"
)

// Overview is what can be said of a case without solving it.
type Overview struct {
	Format   int             `json:"format"`
	Units    string          `json:"units"`
	Title    string          `json:"title"`
	Keys     []cases.Setting `json:"keys"`
	Mass     MassReport      `json:"mass"`
	Top      TopReport       `json:"top"`
	Strings  *StringsReport  `json:"strings"`
	Nodes    int             `json:"nodes"`
	Memory   float64         `json:"memory_mb"` // about, MB
	Work     float64         `json:"gigaflop"`  // about, of the factorisation
	Warnings []string        `json:"warnings"`
}

// Look checks a case as far as it can be checked without solving, and
// estimates what a solve costs.
func Look(c *cases.Case) (*Overview, error) {
	g, err := design.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	b, err := g.Built(1)
	if err != nil {
		return nil, err
	}
	e := b.Plate.Extremes(b.Mesh)
	o := &Overview{Format: cases.Format, Units: UnitsNote, Title: c.Title, Keys: cases.Resolved(c), Mass: MassOf(b),
		Top: TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
			Apex: apex(b, e.Highest), ApexSink: None()},
		Strings: stringsReport(g), Nodes: len(b.Model.Nodes), Warnings: warnings(b)}
	// Fill and work of nested dissection on a plate, fitted to measured
	// factors of 2 000 to 50 000 nodes.
	n := float64(o.Nodes)
	entries := 6 * 28 * n * math.Log2(math.Max(2, n/2))
	o.Memory = 8 * entries * 1.6 / 1e6
	o.Work = 3.5 * math.Pow(n/1e4, 1.5)
	return o, nil
}
